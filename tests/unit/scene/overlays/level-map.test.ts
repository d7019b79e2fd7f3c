import { describe, expect, it } from 'vitest';
import type { BassFloor } from '../../../../src/analysis/types.ts';
import { cividis } from '../../../../src/math/cividis.ts';
import { levelAt, levelColour } from '../../../../src/scene/overlays/level-map.ts';

const xM = Float64Array.from([-2, -1, 0, 1, 2]);
const zM = Float64Array.from([0, 2, 4, 6]);
/** A plane: what is linear must come out exactly, wherever it is asked. */
const plane = (x: number, z: number) => 3 * x - 2 * z + 1;
const floor: BassFloor = {
  frequencyHz: 40,
  heightM: 1.1,
  xM,
  zM,
  levelDb: Float32Array.from({ length: 20 }, (_, i) => plane(xM[i % 5], zM[Math.floor(i / 5)])),
};

describe('level of the floor', () => {
  it.each([
    [-2, 0],
    [0.3, 3.1],
    [1.99, 5.99],
    [2, 6],
    [-1.5, 4],
  ])('at %d, %d is the plane it was made of', (x, z) => {
    expect(levelAt(floor, x, z)).toBeCloseTo(plane(x, z), 5);
  });

  it('keeps to its edge outside', () => {
    expect(levelAt(floor, 9, -3)).toBeCloseTo(plane(2, 0), 5);
  });

  it('follows the corners of one cell bilinearly', () => {
    const cell: BassFloor = {
      ...floor,
      xM: xM.slice(0, 2),
      zM: zM.slice(0, 2),
      levelDb: Float32Array.from([0, 0, 0, 8]),
    };
    expect(levelAt(cell, -1.5, 1)).toBeCloseTo(2, 6);
    expect(levelAt(cell, -1, 2)).toBeCloseTo(8, 6);
  });

  it('is coloured by its place on the scale', () => {
    expect(levelColour(-6, { lowDb: -24, highDb: 12, stepDb: 3 })).toEqual(cividis(0.5));
  });
});
