import { describe, expect, it } from 'vitest';
import { polygonShare } from '../../../../src/scene/light/lambert.ts';

/**
 * Differential element to a parallel rectangle, its normal through one corner: the standard closed form of configuration
 * factor catalogues (element dA1 to a x b at distance c; from memory, held here to direct integration as well).
 */
const cornerFactor = (a: number, b: number, c: number): number => {
  const A = a / c;
  const B = b / c;
  const p = Math.sqrt(1 + A * A);
  const q = Math.sqrt(1 + B * B);
  return ((A / p) * Math.atan(B / p) + (B / q) * Math.atan(A / q)) / (2 * Math.PI);
};

/** Integral of cos cos / (pi r^2) over a rectangle at height `c` above the point, midpoint rule; only above the horizon. */
const integrated = (
  [x0, x1, z0, z1]: readonly number[],
  c: number,
  [nx, ny, nz]: readonly number[],
  steps = 400,
): number => {
  let sum = 0;
  for (let i = 0; i < steps; i++)
    for (let j = 0; j < steps; j++) {
      const x = x0 + ((x1 - x0) * (i + 0.5)) / steps;
      const z = z0 + ((z1 - z0) * (j + 0.5)) / steps;
      const r2 = x * x + c * c + z * z;
      const cosHere = (x * nx + c * ny + z * nz) / Math.sqrt(r2);
      if (cosHere > 0) sum += (cosHere * (c / Math.sqrt(r2))) / (Math.PI * r2);
    }
  return (sum * (x1 - x0) * (z1 - z0)) / (steps * steps);
};

const rectangle = ([x0, x1, z0, z1]: readonly number[], c: number): Float64Array =>
  Float64Array.of(x0, c, z0, x1, c, z0, x1, c, z1, x0, c, z1);

describe('light of a polygon', () => {
  it.each([
    [1, 1, 1],
    [2.3, 1.3, 0.7],
    [0.2, 3, 2],
  ])('agrees with the corner formula for %d x %d at %d', (a, b, c) => {
    const share = polygonShare(rectangle([0, a, 0, b], c), 4, 0, 1, 0);
    // Both are closed forms: only rounding separates them.
    expect(share).toBeCloseTo(cornerFactor(a, b, c), 9);
    expect(share).toBeCloseTo(integrated([0, a, 0, b], c, [0, 1, 0]), 4);
  });

  it('is cut off at the horizon of a tilted surface', () => {
    const extent = [-1.5, 2, -1, 1.2];
    const normal = [Math.SQRT1_2, 0.1, Math.sqrt(1 - 0.5 - 0.01)];
    const share = polygonShare(rectangle(extent, 0.9), 4, normal[0], normal[1], normal[2]);
    // The midpoint rule's error at the horizon's edge, 400 x 400 cells, is some 1e-4.
    expect(Math.abs(share - integrated(extent, 0.9, normal))).toBeLessThan(5e-4);
    expect(share).toBeGreaterThan(0.01);
  });

  it('does not depend on the turning sense and is nothing from behind', () => {
    const there = rectangle([-1, 1, -1, 1], 1);
    const back = Float64Array.of(-1, 1, 1, 1, 1, 1, 1, 1, -1, -1, 1, -1);
    expect(polygonShare(there, 4, 0, 1, 0)).toBeCloseTo(polygonShare(back, 4, 0, 1, 0), 12);
    expect(polygonShare(there, 4, 0, -1, 0)).toBe(0);
  });

  it('nears 1 under a very large ceiling', () => {
    const share = polygonShare(rectangle([-500, 500, -500, 500], 1), 4, 0, 1, 0);
    expect(share).toBeGreaterThan(0.9999);
    expect(share).toBeLessThanOrEqual(1 + 1e-9);
  });
});
