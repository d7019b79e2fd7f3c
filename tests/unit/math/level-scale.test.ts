import { describe, expect, it } from 'vitest';
import { levelScale, mapTopDb, ownScale, shareOf } from '../../../src/math/level-scale.ts';

/** Levels evenly from `span` under the top to a little above it: the 96 in 100 lie at or under `top`. */
const levels = (top: number, span: number) => Float32Array.from({ length: 400 }, (_, i) => top - span * (1 - i / 384));
const seats = (top: number, span: number) => [Float64Array.from(levels(top, span))];

describe('one scale for all maps and curves', () => {
  it('spans 24 dB under the top of all seats, on whole 3 dB', () => {
    expect(levelScale(seats(10, 15))).toEqual({ lowDb: -12, highDb: 12, stepDb: 3 });
    expect(levelScale([...seats(10, 15), ...seats(10, 6)])).toEqual({ lowDb: -12, highDb: 12, stepDb: 3 });
  });

  it('spans 36 dB where a tenth of the curves lies lower', () => {
    expect(levelScale(seats(9, 30))).toEqual({ lowDb: -27, highDb: 9, stepDb: 3 });
    expect(levelScale([...seats(-9, 20), ...seats(10, 15)])).toEqual({ lowDb: -24, highDb: 12, stepDb: 3 });
  });

  it('stays while top and depth wander a little and follows when they leave', () => {
    const first = levelScale(seats(11, 15));
    expect(levelScale(seats(13, 15), first)).toBe(first);
    expect(levelScale(seats(7, 15), first)).toBe(first);
    expect(levelScale(seats(16, 15), first).highDb).toBe(18);
    expect(levelScale(seats(0, 15), first).highDb).toBe(0);
    // The tenth lies 12 - 11 + 0.9 x 27 = 25.3 dB under the end: alone that asks for 36 dB, after 24 dB not yet.
    expect(levelScale(seats(11, 27)).lowDb).toBe(-24);
    expect(levelScale(seats(11, 27), first)).toBe(first);
    const wide = levelScale(seats(11, 35), first);
    expect(wide.lowDb).toBe(-24);
    expect(levelScale(seats(11, 24), wide)).toBe(wide);
    expect(levelScale(seats(11, 15), wide)).toEqual(first);
  });

  it('is not stretched by a few points, by points outside the room, nor by silence', () => {
    const some = Float64Array.from(levels(10, 15));
    some[399] = 60;
    for (let i = 0; i < 60; i++) some[i] = i % 2 === 0 ? Number.NaN : -300;
    expect(levelScale([some])).toEqual({ lowDb: -12, highDb: 12, stepDb: 3 });
  });

  it('keeps the last scale when there is nothing to go by', () => {
    const last = { lowDb: -12, highDb: 12, stepDb: 3 };
    expect(levelScale([Float64Array.of(Number.NaN, -300)], last)).toBe(last);
    expect(levelScale([], last)).toBe(last);
    expect(levelScale([])).toEqual({ lowDb: -24, highDb: 0, stepDb: 3 });
  });

  it('places a level on the scale, clamped', () => {
    const scale = { lowDb: -24, highDb: 12, stepDb: 3 };
    expect([shareOf(-30, scale), shareOf(-24, scale), shareOf(-6, scale), shareOf(20, scale)]).toEqual([0, 0, 0.5, 1]);
  });
});

describe('the top of one map', () => {
  it('is on whole 3 dB over all but the loudest 25th, and holds while it wanders', () => {
    expect(mapTopDb(levels(-13, 40), null)).toBe(-12);
    expect(mapTopDb(levels(-11, 40), -12)).toBe(-12);
    expect(mapTopDb(levels(-9, 40), -12)).toBe(-9);
    expect(mapTopDb(new Float32Array([Number.NaN]), 6)).toBe(6);
  });
});

describe('a map with a scale to itself', () => {
  it('uses all colours whatever its level: the least span that holds it, contours by the decibel where that is small', () => {
    // Nine tenths of these lie within 0.9 spans of the top, which itself lies up to 3 dB under the scale's.
    expect(ownScale(levels(-30, 3))).toEqual({ lowDb: -36, highDb: -30, stepDb: 1 });
    expect(ownScale(levels(-31, 8))).toEqual({ lowDb: -42, highDb: -30, stepDb: 1 });
    expect(ownScale(levels(12, 20))).toEqual({ lowDb: -12, highDb: 12, stepDb: 3 });
    expect(ownScale(levels(12, 90))).toEqual({ lowDb: -24, highDb: 12, stepDb: 3 });
    expect(ownScale(Float32Array.of(Number.NaN, -300))).toEqual({ lowDb: -24, highDb: 0, stepDb: 3 });
  });
});
