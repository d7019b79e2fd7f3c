import { valuesAt } from '../axis-modes.ts';
import type { BoxGeometry, BoxState } from '../box-state.ts';
import { BOTH, pointFactors } from '../closed-axis.ts';
import type { Axis } from '../room-field.ts';
import type { BoxPatch } from './box-patches.ts';
import type { Stretch } from './gauss.ts';
import type { PatchLayout } from './patch-layout.ts';

/** Integrals of one stretch's polynomials over the damped modes of its axis: re, im at 2 (p orders + m). */
export type ModeIntegrals = Float64Array;

let scratch = new Float64Array(0);

const modeIntegrals = (
  state: BoxState,
  axis: Axis,
  { atM, weighted, orders }: Stretch,
  modes: number,
): ModeIntegrals => {
  const width = 2 * modes;
  const places = atM.length;
  const out = new Float64Array(orders * width);
  if (scratch.length < width) scratch = new Float64Array(2 * width);
  const values = scratch;
  for (let j = 0; j < places; j++) {
    valuesAt(state.axes[axis], atM[j], modes, values, 0);
    for (let p = 0; p < orders; p++) {
      const weight = weighted[p * places + j];
      const row = p * width;
      for (let m = 0; m < width; m++) out[row + m] += weight * values[m];
    }
  }
  return out;
};

/** Per patch the integrals along its two axes, for the orders the layout needs. */
export const allModeIntegrals = (
  state: BoxState,
  patches: readonly BoxPatch[],
  layout: PatchLayout,
): [ModeIntegrals, ModeIntegrals][] =>
  patches.map(({ axes }, i) => [
    modeIntegrals(state, axes[0], layout.stretches[i][0], layout.orders[axes[0]]),
    modeIntegrals(state, axes[1], layout.stretches[i][1], layout.orders[axes[1]]),
  ]);

/**
 * Integrals of one stretch's polynomials over the two halves L and R of the closed axis' function (closed-axis.ts, without
 * D), for the first `count` terms: Lre, Lim, Rre, Rim at 4 (p count + t).
 */
export const closedIntegrals = (
  geometry: BoxGeometry,
  state: BoxState,
  axis: Axis,
  count: number,
  { atM, weighted, orders }: Stretch,
): Float64Array => {
  const width = 4 * count;
  const places = atM.length;
  const out = new Float64Array(orders * width);
  if (scratch.length < width) scratch = new Float64Array(width);
  const factors = scratch;
  for (let j = 0; j < places; j++) {
    pointFactors(state.closed[axis], 0, count, atM[j], state.walls[axis], geometry.sizeM[axis], false, BOTH, factors);
    for (let p = 0; p < orders; p++) {
      const weight = weighted[p * places + j];
      const row = p * width;
      for (let i = 0; i < width; i++) out[row + i] += weight * factors[i];
    }
  }
  return out;
};

/** The closed axis' halves at its two walls, each with and without D, four numbers a term as pointFactors writes them. */
export interface WallFactors {
  readonly plain: readonly [Float64Array, Float64Array];
  readonly withD: readonly [Float64Array, Float64Array];
}

export const wallFactors = (geometry: BoxGeometry, state: BoxState, axis: Axis, count: number): WallFactors => {
  const lengthM = geometry.sizeM[axis];
  const at = (xM: number, withD: boolean): Float64Array => {
    const out = new Float64Array(4 * count);
    pointFactors(state.closed[axis], 0, count, xM, state.walls[axis], lengthM, withD, BOTH, out);
    return out;
  };
  return { plain: [at(0, false), at(lengthM, false)], withD: [at(0, true), at(lengthM, true)] };
};
