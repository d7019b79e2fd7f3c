import { describe, expect, it } from 'vitest';
import type { BassSlice } from '../../../../src/analysis/types.ts';
import { cividis } from '../../../../src/math/cividis.ts';
import { diverging } from '../../../../src/math/diverging.ts';
import { legendColour, levelAt, valueAt } from '../../../../src/scene/overlays/level-map.ts';

const uM = Float64Array.from([-2, -1, 0, 1, 2]);
const vM = Float64Array.from([0, 2, 4, 6]);
/** A plane: what is linear must come out exactly, wherever it is asked. */
const plane = (x: number, z: number) => 3 * x - 2 * z + 1;
const over = (value: (x: number, z: number) => number) =>
  Float32Array.from({ length: 20 }, (_, i) => value(uM[i % 5], vM[Math.floor(i / 5)]));
const slice: BassSlice = {
  cut: { normal: 'y', atM: 1.1 },
  as: 'level',
  frequencyHz: 40,
  bandHz: null,
  uM,
  vM,
  levelDb: over(plane),
  pressure: { re: over((x) => x), im: over((_, z) => z) },
  meanDb: 7,
};

describe('level of a slice', () => {
  it.each([
    [-2, 0],
    [0.3, 3.1],
    [1.99, 5.99],
    [2, 6],
    [-1.5, 4],
  ])('at %d, %d is the plane it was made of', (x, z) => {
    expect(levelAt(slice, x, z)).toBeCloseTo(plane(x, z), 5);
  });

  it('keeps to its edge outside', () => {
    expect(levelAt(slice, 9, -3)).toBeCloseTo(plane(2, 0), 5);
  });

  it('follows the corners of one cell bilinearly', () => {
    const cell: BassSlice = {
      ...slice,
      uM: uM.slice(0, 2),
      vM: vM.slice(0, 2),
      levelDb: Float32Array.from([0, 0, 0, 8]),
    };
    expect(levelAt(cell, -1.5, 1)).toBeCloseTo(2, 6);
    expect(levelAt(cell, -1, 2)).toBeCloseTo(8, 6);
  });
});

describe('what a colour stands for', () => {
  it('is the level, the level less the seats’ mean, or Re(P e^(j turn))', () => {
    expect(valueAt(slice, 0.5, 3, 1)).toBeCloseTo(plane(0.5, 3), 5);
    expect(valueAt({ ...slice, as: 'difference' }, 0.5, 3, 1)).toBeCloseTo(plane(0.5, 3) - 7, 5);
    const pressure: BassSlice = { ...slice, as: 'pressure' };
    expect(valueAt(pressure, 0.5, 3, 0)).toBeCloseTo(0.5, 6);
    expect(valueAt(pressure, 0.5, 3, Math.PI / 2)).toBeCloseTo(-3, 6);
    expect(valueAt(pressure, 0.5, 3, 1)).toBeCloseTo(0.5 * Math.cos(1) - 3 * Math.sin(1), 6);
  });

  it('is coloured by its place on the legend', () => {
    expect(legendColour(-6, { kind: 'level', low: -24, high: 12, step: 3 })).toEqual(cividis(0.5));
    expect(legendColour(6, { kind: 'difference', low: -12, high: 12, step: 3 })).toEqual(diverging(0.75));
    expect(legendColour(-99, { kind: 'pressure', low: -4, high: 4, step: 1 })).toEqual(diverging(0));
  });
});
