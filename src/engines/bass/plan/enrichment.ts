import { multiply, type PlanMatrices } from './plan-matrices.ts';
import type { PlanSpace } from './plan-space.ts';
import { type RigidModes, vectorsAtOnce } from './rigid-modes.ts';
import { addRows, dotOf, dotRows } from './row-products.ts';
import type { ShiftedFactor } from './shifted-factor.ts';
import { smallEigen } from './small-eigen.ts';

/** Functions beside the modes, M-orthonormal to them and each other, with a diagonal projected stiffness. */
export interface Enrichment {
  readonly values: Float64Array;
  /** One vector a row. */
  readonly vectors: Float64Array;
}

/** A load's answer is left out when less than this share of its squared length is new. */
const LEAST_NEW = 1e-10;

/**
 * Adds u = (K + s M)^-1 f for every load f. What lies in the span of modes and earlier functions is taken out, the rest
 * made orthonormal. Modes are eigenvectors, so that a vector orthogonal to them in M is so in K too: only the block
 * of the added functions needs to be made diagonal again. Pauses between loads.
 */
export function* enrich(
  space: PlanSpace,
  matrices: PlanMatrices,
  factor: ShiftedFactor,
  modes: RigidModes,
  before: Enrichment,
  loads: readonly Float64Array[],
): Generator<void, Enrichment> {
  const { size } = space;
  const atOnce = vectorsAtOnce(size);
  const modeCount = modes.values.length;
  let count = before.values.length;
  const rows = new Float64Array((count + loads.length) * size);
  rows.set(before.vectors);
  const scratch = new Float64Array(size);
  const weights = new Float64Array(Math.max(modeCount, count + loads.length));
  for (const [turn, load] of loads.entries()) {
    if (turn > 0 && turn % atOnce === 0) yield;
    const u = load.slice();
    factor.solve(u);
    multiply(space, matrices.mass, u, scratch);
    const whole = dotOf(u, scratch);
    for (let pass = 0; pass < 2; pass++) {
      multiply(space, matrices.mass, u, scratch);
      dotRows(modes.vectors, modeCount, size, scratch, weights);
      addRows(modes.vectors, modeCount, size, weights, 0, -1, u, 0);
      dotRows(rows, count, size, scratch, weights);
      addRows(rows, count, size, weights, 0, -1, u, 0);
    }
    multiply(space, matrices.mass, u, scratch);
    const left = dotOf(u, scratch);
    if (!(left > LEAST_NEW * whole)) continue;
    const scale = 1 / Math.sqrt(left);
    for (let k = 0; k < size; k++) rows[count * size + k] = scale * u[k];
    count++;
  }
  const block = new Float64Array(count * count);
  for (let i = 0; i < count; i++) {
    if (i % (4 * atOnce) === 0) yield;
    multiply(space, matrices.stiffness, rows.subarray(i * size, (i + 1) * size), scratch);
    dotRows(rows, i + 1, size, scratch, weights);
    for (let j = 0; j <= i; j++) {
      block[i * count + j] = weights[j];
      block[j * count + i] = weights[j];
    }
  }
  const { values, vectors: turns } = smallEigen(block, count);
  const vectors = new Float64Array(count * size);
  for (let i = 0; i < count; i++) addRows(rows, count, size, turns, i * count, 1, vectors, i * size);
  return { values, vectors };
}
