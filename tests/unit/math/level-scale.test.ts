import { describe, expect, it } from 'vitest';
import { levelScale, shareOf } from '../../../src/math/level-scale.ts';

describe('level scale', () => {
  const levels = (top: number) => Float32Array.from({ length: 400 }, (_, i) => top - 40 * (1 - i / 384));

  it('spans 24 dB under the top, on whole 3 dB', () => {
    expect(levelScale(levels(10))).toEqual({ lowDb: -12, highDb: 12, stepDb: 3 });
    expect(levelScale(levels(-13))).toEqual({ lowDb: -36, highDb: -12, stepDb: 3 });
  });

  it('stays while the top wanders a little and follows when it leaves', () => {
    const first = levelScale(levels(11));
    expect(levelScale(levels(13), first)).toBe(first);
    expect(levelScale(levels(7), first)).toBe(first);
    expect(levelScale(levels(16), first).highDb).toBe(18);
    expect(levelScale(levels(0), first).highDb).toBe(0);
  });

  it('is not stretched by the few points at the mouth of a source, nor by points outside the room', () => {
    const some = levels(10);
    some[0] = 60;
    for (let i = 1; i < 100; i++) some[i] = Number.NaN;
    expect(levelScale(some).highDb).toBe(12);
  });

  it('keeps the last scale when there is nothing to go by', () => {
    const last = { lowDb: -12, highDb: 12, stepDb: 3 };
    expect(levelScale(new Float32Array([Number.NaN, Number.NaN]), last)).toBe(last);
    expect(levelScale(new Float32Array(0), last)).toBe(last);
  });

  it('places a level on the scale, clamped', () => {
    const scale = { lowDb: -24, highDb: 12, stepDb: 3 };
    expect([shareOf(-30, scale), shareOf(-24, scale), shareOf(-6, scale), shareOf(20, scale)]).toEqual([0, 0, 0.5, 1]);
  });
});
