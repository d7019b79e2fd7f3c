// The Neumann eigenvalues of the L-shaped domain ]-1, 1[^2 without a quadrant: M. Dauge, benchmark computations for Maxwell
// equations / Laplace on the L-shaped domain. Standing: values from memory, reproduced to 4e-11 by general-purpose
// finite elements outside this project (tests/fixtures/bass/V_validation.json, copied whole).
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { createPlanBasis } from '../../src/engines/bass/plan/create-plan-basis.ts';
import { PLAN_DETAIL } from '../../src/engines/bass/plan/element-choice.ts';

const reference = JSON.parse(readFileSync(new URL('../fixtures/bass/V_validation.json', import.meta.url), 'utf8')) as {
  l_shape_neumann: { ref: number[] };
};
const CORNERS: readonly [number, number][] = [
  [-1, -1],
  [1, -1],
  [1, 1],
  [0, 1],
  [0, 0],
  [-1, 0],
];

/** Modes to `top` (1/m2); with c = 2 pi m/s an eigenvalue is the square of its frequency. */
const eigenvalues = (detail: 'first' | 'fine', top: number): Float64Array =>
  createPlanBasis(CORNERS, {
    maxHz: Math.sqrt(top),
    soundSpeed: 2 * Math.PI,
    wallFunctions: 0,
    ...PLAN_DETAIL[detail],
  }).rigid;

describe('L-shaped benchmark', () => {
  const { ref } = reference.l_shape_neumann;

  it('fine elements for modes to eight times the fifth: each of the five within 1e-4', () => {
    const found = eigenvalues('fine', 90);
    expect(ref).toHaveLength(6);
    for (const [i, value] of ref.entries()) expect(Math.abs(found[i] - value)).toBeLessThanOrEqual(1e-4 * value + 1e-9);
  });

  it('the double eigenvalue is found twice and nothing lies between', () => {
    const found = eigenvalues('fine', 12);
    expect(found).toHaveLength(6);
    expect(found[4] - found[3]).toBeLessThanOrEqual(2e-3 * found[3]);
  });

  it('elements for a picture: within 1 % up to the bound, from above as Galerkin values must be', () => {
    const found = eigenvalues('first', 12);
    for (const [i, value] of ref.entries()) {
      expect(found[i]).toBeGreaterThanOrEqual(value * (1 - 1e-9) - 1e-9);
      expect(found[i]).toBeLessThanOrEqual(value * 1.01 + 1e-9);
    }
  });
});
