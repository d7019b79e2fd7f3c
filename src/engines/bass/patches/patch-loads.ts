import { valuesAt } from '../axis-modes.ts';
import { ACROSS, AXES, type BoxGeometry, type BoxState } from '../box-state.ts';
import { BOTH, pointFactors } from '../closed-axis.ts';
import { termsWithin } from '../transverse-terms.ts';
import { cutKappa2, newCut, setCut } from '../truncation.ts';
import type { BoxPatch } from './box-patches.ts';
import type { PatchState } from './patch-state.ts';

/** Relative error aimed at in what a patch and a point have to do with each other: ln(1 / 1e-4). */
const REACH = Math.log(1e4);
const cuts = AXES.map(newCut);
const values = AXES.map(() => new Float64Array(256));
let factors = new Float64Array(0);
let terms4 = new Float64Array(0);
let partial = new Float64Array(0);

/**
 * v of coupled-system.ts: integrals of the patch functions times G0 to each point (x, y, z triples), re, im at
 * 2 (point functions + function) of `out`. The axis across the patch's wall is closed.
 */
export const patchLoads = (
  geometry: BoxGeometry,
  state: BoxState,
  patches: readonly BoxPatch[],
  own: PatchState,
  points: Float64Array,
  out: Float64Array,
): void => {
  const { layout } = own;
  const width = 2 * layout.functions.count;
  for (const axis of AXES) {
    if (values[axis].length < 2 * layout.orders[axis]) values[axis] = new Float64Array(2 * layout.orders[axis]);
    if (own.walls[axis] !== null) setCut(geometry, state, axis, cuts[axis]);
  }
  const most = Math.max(...layout.counts);
  if (factors.length < 4 * most) {
    factors = new Float64Array(4 * most);
    terms4 = new Float64Array(2 * most);
  }
  for (let p = 0; 3 * p < points.length; p++) {
    for (const axis of AXES) valuesAt(state.axes[axis], points[3 * p + axis], layout.orders[axis], values[axis], 0);
    for (const axis of AXES) {
      const wall = own.walls[axis];
      if (wall === null) continue;
      for (const side of [0, 1] as const) {
        if (!patches.some((patch) => patch.normal === axis && patch.side === side)) continue;
        const xM = points[3 * p + axis];
        const gap = side === 0 ? xM : geometry.sizeM[axis] - xM;
        const count = Math.min(
          layout.counts[axis],
          termsWithin(geometry.terms(axis), cutKappa2(cuts[axis], REACH / Math.max(gap, 1e-9))),
        );
        setTerms(geometry, state, axis, side, xM, wall.withD[side], count);
        for (const [i, patch] of patches.entries())
          if (patch.normal === axis && patch.side === side) addPatch(geometry, own, patch, i, count, out, width * p);
      }
    }
  }
};

/** g(wall, point) Y_m Z_n per term into `terms4`. */
const setTerms = (
  geometry: BoxGeometry,
  state: BoxState,
  axis: 0 | 1 | 2,
  side: 0 | 1,
  xM: number,
  wall: Float64Array,
  count: number,
): void => {
  const [b, c] = ACROSS[axis];
  const { first, second } = geometry.terms(axis);
  pointFactors(state.closed[axis], 0, count, xM, state.walls[axis], geometry.sizeM[axis], false, BOTH, factors);
  const valuesB = values[b];
  const valuesC = values[c];
  const near = side === 0 ? 0 : 2;
  const far = 2 - near;
  for (let t = 0; t < count; t++) {
    const i = 4 * t + near;
    const j = 4 * t + far;
    const gRe = wall[i] * factors[j] - wall[i + 1] * factors[j + 1];
    const gIm = wall[i] * factors[j + 1] + wall[i + 1] * factors[j];
    const m = 2 * first[t];
    const n = 2 * second[t];
    const yRe = valuesB[m] * valuesC[n] - valuesB[m + 1] * valuesC[n + 1];
    const yIm = valuesB[m] * valuesC[n + 1] + valuesB[m + 1] * valuesC[n];
    terms4[2 * t] = gRe * yRe - gIm * yIm;
    terms4[2 * t + 1] = gRe * yIm + gIm * yRe;
  }
};

/** Sums the terms against one patch's integrals, the second axis first. */
const addPatch = (
  geometry: BoxGeometry,
  { layout, integrals }: PatchState,
  patch: BoxPatch,
  i: number,
  count: number,
  out: Float64Array,
  offset: number,
): void => {
  const { first, second } = geometry.terms(patch.normal);
  const functions = layout.functions.patches[i];
  const rowsM = 2 * layout.orders[patch.axes[0]];
  const rowsN = 2 * layout.orders[patch.axes[1]];
  const [u, v] = integrals[i];
  const need = rowsM * functions.orders[1];
  if (partial.length < need) partial = new Float64Array(2 * need);
  partial.fill(0, 0, need);
  const sums = partial;
  for (let q = 0; q < functions.orders[1]; q++) {
    const row = q * rowsM;
    const at = q * rowsN;
    for (let t = 0; t < count; t++) {
      const m = row + 2 * first[t];
      const n = at + 2 * second[t];
      sums[m] += terms4[2 * t] * v[n] - terms4[2 * t + 1] * v[n + 1];
      sums[m + 1] += terms4[2 * t] * v[n + 1] + terms4[2 * t + 1] * v[n];
    }
  }
  for (let f = 0; f < functions.first.length; f++) {
    const row = functions.second[f] * rowsM;
    const at = functions.first[f] * rowsM;
    let re = 0;
    let im = 0;
    for (let m = 0; m < rowsM; m += 2) {
      re += u[at + m] * sums[row + m] - u[at + m + 1] * sums[row + m + 1];
      im += u[at + m] * sums[row + m + 1] + u[at + m + 1] * sums[row + m];
    }
    out[offset + 2 * (functions.start + f)] = re;
    out[offset + 2 * (functions.start + f) + 1] = im;
  }
};
