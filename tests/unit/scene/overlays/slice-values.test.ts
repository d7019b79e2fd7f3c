import { describe, expect, it } from 'vitest';
import type { BassSlice } from '../../../../src/analysis/types.ts';
import { fillEdges, fullestTurn, OUTSIDE, sliceValues } from '../../../../src/scene/overlays/slice-values.ts';

const N = Number.NaN;

describe('points outside the room', () => {
  it('take the mean of their neighbours inside, three steps far', () => {
    const row = Float32Array.of(2, N, N, N, N);
    fillEdges(row, 5, 1, 1);
    expect([...row]).toEqual([2, 2, 2, 2, N]);
    const between = Float32Array.of(2, N, 6, N, 1, N);
    fillEdges(between, 3, 2, 1);
    // The middle of the upper row lies between 2, 6 and 1.
    expect([...between]).toEqual([2, 3, 6, 1.5, 1, 3.5]);
  });

  it('are marked as outside beyond that', () => {
    const levelDb = Float32Array.of(1, N, N, N, N, N);
    const slice: BassSlice = {
      cut: { normal: 'y', atM: 1 },
      as: 'difference',
      frequencyHz: 40,
      bandHz: null,
      uM: Float64Array.of(0, 1, 2, 3, 4, 5),
      vM: Float64Array.of(0),
      levelDb,
      pressure: null,
      meanDb: 4,
    };
    const values = sliceValues(slice);
    expect([values[0], values[2], values[6]]).toEqual([-3, -3, -3]);
    expect(values[8]).toBe(Math.fround(OUTSIDE));
  });
});

describe('the fullest turn', () => {
  it('brings a standing field of any phase to its real part', () => {
    const shape = [1, -2, 0.5, 3];
    for (const phase of [0.3, 1.2, -0.9]) {
      const re = Float32Array.from(shape, (x) => x * Math.cos(phase));
      const im = Float32Array.from(shape, (x) => x * Math.sin(phase));
      const turn = fullestTurn({ re, im });
      const energy = shape.reduce((sum, _, i) => sum + (re[i] * Math.cos(turn) - im[i] * Math.sin(turn)) ** 2, 0);
      expect(energy).toBeCloseTo(1 + 4 + 0.25 + 9, 4);
    }
  });
});
