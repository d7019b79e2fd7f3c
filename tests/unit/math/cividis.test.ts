import { describe, expect, it } from 'vitest';
import { CIVIDIS_BYTES, cividis, cividisCss } from '../../../src/math/cividis.ts';
import { levelScale, shareOf } from '../../../src/math/level-scale.ts';

/** CIE lightness of an sRGB colour (IEC 61966-2-1 transfer curve, CIE 1976 L*; from memory). */
const lightness = (rgb: readonly number[]): number => {
  const [r, g, b] = rgb.map((byte) => {
    const v = byte / 255;
    return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
  });
  const y = 0.2126 * r + 0.7152 * g + 0.0722 * b;
  return y > 0.008856 ? 116 * Math.cbrt(y) - 16 : 903.3 * y;
};

describe('cividis', () => {
  it('has the published ends and quarter points (table of Nunez, Anderton, Renslow 2018, read)', () => {
    expect(CIVIDIS_BYTES.length).toBe(768);
    // Entries 0, 63 and 102 as printed: (0, 0.135112, 0.304751), (0.25974, 0.30512, 0.42281), (0.401418, 0.41179, 0.440708).
    expect(cividis(0)).toEqual([0, 34, 78]);
    expect(cividis(63 / 255)).toEqual([66, 78, 108]);
    expect(cividis(102 / 255)).toEqual([102, 105, 112]);
    expect(cividisCss(-1)).toBe('rgb(0 34 78)');
    expect(cividis(2)).toEqual(cividis(1));
  });

  it('grows lighter with every step of a sixteenth', () => {
    const steps = Array.from({ length: 17 }, (_, i) => lightness(cividis(i / 16)));
    for (let i = 1; i < steps.length; i++) expect(steps[i] - steps[i - 1]).toBeGreaterThan(2);
    // L* 13 to 92 for this map: an independent measurement of ours, printed in whole numbers, hence one either way.
    expect(Math.abs(steps[0] - 13)).toBeLessThanOrEqual(1);
    expect(Math.abs(steps[16] - 92)).toBeLessThanOrEqual(1);
  });
});

describe('level scale', () => {
  const levels = (top: number) => Float32Array.from({ length: 400 }, (_, i) => top - 40 * (1 - i / 399));

  it('spans 36 dB under the top, on whole 6 dB', () => {
    expect(levelScale(levels(10))).toEqual({ lowDb: -24, highDb: 12, stepDb: 3 });
    expect(levelScale(levels(-13))).toEqual({ lowDb: -48, highDb: -12, stepDb: 3 });
  });

  it('stays while the top wanders a little and follows when it leaves', () => {
    const first = levelScale(levels(11));
    expect(levelScale(levels(13), first)).toBe(first);
    expect(levelScale(levels(4), first)).toBe(first);
    expect(levelScale(levels(16), first).highDb).toBe(18);
    expect(levelScale(levels(0), first).highDb).toBe(0);
  });

  it('is not stretched by the few points at the mouth of a source', () => {
    const some = levels(10);
    some[0] = 60;
    expect(levelScale(some).highDb).toBe(12);
  });

  it('keeps the last scale when there is nothing to go by', () => {
    const last = { lowDb: -24, highDb: 12, stepDb: 3 };
    expect(levelScale(new Float32Array([Number.NaN, Number.NaN]), last)).toBe(last);
    expect(levelScale(new Float32Array(0), last)).toBe(last);
  });

  it('places a level on the scale, clamped', () => {
    const scale = { lowDb: -24, highDb: 12, stepDb: 3 };
    expect([shareOf(-30, scale), shareOf(-24, scale), shareOf(-6, scale), shareOf(20, scale)]).toEqual([0, 0, 0.5, 1]);
  });
});
