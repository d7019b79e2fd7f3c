import { valuesAt } from '../axis-modes.ts';
import { AXES, type BoxGeometry, type BoxState, readyTerms, solveState } from '../box-state.ts';
import type { BoxPatch } from './box-patches.ts';
import { answerOfPatches, couplePatches } from './coupled-system.ts';
import { patchCouplings } from './patch-couplings.ts';
import { allModeIntegrals, wallFactors } from './patch-integrals.ts';
import type { PatchLayout } from './patch-layout.ts';
import type { TiedMatrix } from './tied-guesses.ts';

export type Order = readonly [number, number, number];

/** A box with patches, whose even walls `geometry` knows. */
export interface PatchedBox {
  readonly geometry: BoxGeometry;
  readonly patches: readonly BoxPatch[];
}

/** The modes of an even box tied together by its patches at one complex wavenumber. */
export interface TiedModes extends TiedMatrix {
  readonly state: BoxState;
}

/** Share of k^2 nearer than which a mode of the even box cannot be taken out of the couplings exactly. */
const CLEAR = 2e-5;

/** k^2 - lambda of a mode of the even box, re, im, into `out` at `at`. */
export const setGap = (
  { sizeM }: BoxGeometry,
  { kRe, kIm, axes }: BoxState,
  order: Order,
  out: Float64Array,
  at = 0,
): void => {
  out[at] = kRe * kRe - kIm * kIm;
  out[at + 1] = 2 * kRe * kIm;
  for (const axis of AXES) {
    const per = 1 / sizeM[axis] ** 2;
    out[at] -= axes[axis].roots.w[2 * order[axis]] * per;
    out[at + 1] -= axes[axis].roots.w[2 * order[axis] + 1] * per;
  }
};

/**
 * With lambda_m(k) the eigenvalues of the even box, psi_m the integrals of the patch functions over its modes and W' the couplings
 * of the patches through all modes but those of `orders`, a mode of the patched box is p = sum of x_m u_m with
 *
 *   A x = k^2 x,     A_mn = lambda_m if m = n, + psi_m . j k D (1 + j k W' D)^-1 psi_n
 *
 * Exact at any complex k, however few or many are taken out; derived from the singular system of coupled-system.ts. k is moved
 * aside by CLEAR where it meets a mode of the even box. Null when the system is singular.
 */
export const tieModes = (
  { geometry, patches }: PatchedBox,
  layout: PatchLayout,
  orders: readonly Order[],
  [kRe, kIm]: readonly [number, number],
  near: BoxState | null,
): TiedModes | null => {
  const gaps = new Float64Array(2 * orders.length);
  let state = solveState(geometry, kRe, kIm, near);
  for (const [m, order] of orders.entries()) setGap(geometry, state, order, gaps, 2 * m);
  const least = CLEAR * (kRe * kRe + kIm * kIm);
  for (let m = 0; m < gaps.length; m += 2) {
    if (Math.hypot(gaps[m], gaps[m + 1]) >= least) continue;
    // one side of what lies there will do as well as the other: a little farther it is clear
    state = solveState(geometry, kRe, kIm + 3 * CLEAR * kRe, state);
    for (const [n, order] of orders.entries()) setGap(geometry, state, order, gaps, 2 * n);
    break;
  }
  const { count, delta } = layout.functions;
  for (const axis of AXES) readyTerms(geometry, state, axis, layout.counts[axis]);
  const integrals = allModeIntegrals(state, patches, layout);
  const walls = AXES.map((axis) =>
    patches.some(({ normal }) => normal === axis) ? wallFactors(geometry, state, axis, layout.counts[axis]) : null,
  );
  const couplings = patchCouplings({ geometry, state, patches, layout, integrals, walls });
  const loads = orders.map((order) => modeLoads(geometry, patches, layout, order, state, integrals));
  for (const [m, psi] of loads.entries()) takeOut(count, psi, gaps[2 * m], gaps[2 * m + 1], couplings);
  const system = couplePatches(count, couplings, delta, state.kRe, state.kIm);
  if (system === null) return null;
  const size = orders.length;
  const matrix = new Float64Array(2 * size * size);
  const k2Re = state.kRe * state.kRe - state.kIm * state.kIm;
  const k2Im = 2 * state.kRe * state.kIm;
  for (let n = 0; n < size; n++) {
    const answer = loads[n].slice();
    answerOfPatches(system, answer);
    for (let m = 0; m <= n; m++) {
      const psi = loads[m];
      let re = m === n ? k2Re - gaps[2 * m] : 0;
      let im = m === n ? k2Im - gaps[2 * m + 1] : 0;
      for (let i = 0; i < 2 * count; i += 2) {
        re += psi[i] * answer[i] - psi[i + 1] * answer[i + 1];
        im += psi[i] * answer[i + 1] + psi[i + 1] * answer[i];
      }
      for (const at of [2 * (m * size + n), 2 * (n * size + m)]) {
        matrix[at] = re;
        matrix[at + 1] = im;
      }
    }
  }
  return { kRe: state.kRe, kIm: state.kIm, matrix, state };
};

/** W' = W + psi psi^T / (k^2 - lambda), on and right of the diagonal. */
const takeOut = (count: number, psi: Float64Array, gapRe: number, gapIm: number, couplings: Float64Array): void => {
  const square = gapRe * gapRe + gapIm * gapIm;
  for (let a = 0; a < count; a++) {
    const re = (psi[2 * a] * gapRe + psi[2 * a + 1] * gapIm) / square;
    const im = (psi[2 * a + 1] * gapRe - psi[2 * a] * gapIm) / square;
    for (let b = a; b < count; b++) {
      const i = 2 * (a * count + b);
      couplings[i] += re * psi[2 * b] - im * psi[2 * b + 1];
      couplings[i + 1] += re * psi[2 * b + 1] + im * psi[2 * b];
    }
  }
};

let wallValues = new Float64Array(64);

/** psi: integrals of the patch functions over the mode, re, im per function. */
const modeLoads = (
  geometry: BoxGeometry,
  patches: readonly BoxPatch[],
  layout: PatchLayout,
  order: Order,
  state: BoxState,
  integrals: ReturnType<typeof allModeIntegrals>,
): Float64Array => {
  const psi = new Float64Array(2 * layout.functions.count);
  for (const [i, { normal, side, axes }] of patches.entries()) {
    const { start, first, second } = layout.functions.patches[i];
    const [u, v] = integrals[i];
    const own = order[normal];
    if (wallValues.length < 2 * own + 2) wallValues = new Float64Array(4 * own + 4);
    valuesAt(state.axes[normal], side === 0 ? 0 : geometry.sizeM[normal], own + 1, wallValues, 0);
    const xRe = wallValues[2 * own];
    const xIm = wallValues[2 * own + 1];
    for (let f = 0; f < first.length; f++) {
      const m = 2 * (first[f] * layout.orders[axes[0]] + order[axes[0]]);
      const n = 2 * (second[f] * layout.orders[axes[1]] + order[axes[1]]);
      const yRe = u[m] * v[n] - u[m + 1] * v[n + 1];
      const yIm = u[m] * v[n + 1] + u[m + 1] * v[n];
      psi[2 * (start + f)] = xRe * yRe - xIm * yIm;
      psi[2 * (start + f) + 1] = xRe * yIm + xIm * yRe;
    }
  }
  return psi;
};
