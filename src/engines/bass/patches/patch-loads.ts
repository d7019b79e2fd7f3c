import { valuesAt } from '../axis-modes.ts';
import { ACROSS, AXES, type BoxGeometry, type BoxState } from '../box-state.ts';
import { BOTH, pointFactors } from '../closed-axis.ts';
import { termsWithin } from '../transverse-terms.ts';
import { cutKappa2, newCut, setCut } from '../truncation.ts';
import type { BoxPatch } from './box-patches.ts';
import { nearLoads } from './near-loads.ts';
import type { PatchState } from './patch-state.ts';

/** Relative error aimed at in what a patch and a point have to do with each other: ln(1 / 1e-4). */
const REACH = Math.log(1e4);
const cuts = AXES.map(newCut);
const values = AXES.map(() => new Float64Array(256));
/** Per axis: closed-axis factors, mode values' coordinate, factors' coordinate and count, of the point before. */
const factors = AXES.map(() => new Float64Array(0));
const valuesAtM = new Float64Array(3);
const factorsAtM = new Float64Array(3);
const factorsCount = new Int32Array(3);
let grid = new Float64Array(0);
let used = new Int32Array(0);
let sums = new Float64Array(0);

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
  valuesAtM.fill(Number.NaN);
  factorsAtM.fill(Number.NaN);
  for (let p = 0; 3 * p < points.length; p++) {
    for (const axis of AXES) {
      // seats in rows share coordinates with the seat before
      const xM = points[3 * p + axis];
      if (valuesAtM[axis] === xM) continue;
      valuesAt(state.axes[axis], xM, layout.orders[axis], values[axis], 0);
      valuesAtM[axis] = xM;
    }
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
        const [rows, columns] = ACROSS[axis].map((across) => layout.orders[across]);
        setTerms(geometry, state, axis, side, xM, wall.withD[side], count, rows, columns);
        for (const [i, patch] of patches.entries())
          if (patch.normal === axis && patch.side === side) addPatch(own, i, rows, columns, out, width * p);
      }
    }
    addNear(geometry, state, patches, own, points, p, out);
  }
};

/** The static part of what was cut, where the point is near a patch. */
const addNear = (
  geometry: BoxGeometry,
  state: BoxState,
  patches: readonly BoxPatch[],
  { layout }: PatchState,
  points: Float64Array,
  p: number,
  out: Float64Array,
): void => {
  const sums = nearLoads(geometry, patches, layout, [points[3 * p], points[3 * p + 1], points[3 * p + 2]]);
  if (sums === null) return;
  const k2Re = state.kRe * state.kRe - state.kIm * state.kIm;
  const k2Im = 2 * state.kRe * state.kIm;
  const { count, patches: functions } = layout.functions;
  for (const [i, { normal, side }] of patches.entries()) {
    const bRe = state.walls[normal][2 * side];
    const bIm = state.walls[normal][2 * side + 1];
    const { start, first } = functions[i];
    for (let f = start; f < start + first.length; f++) {
      const at = 2 * (count * p + f);
      out[at] += sums[3 * f] - bRe * sums[3 * f + 1] + k2Re * sums[3 * f + 2];
      out[at + 1] += k2Im * sums[3 * f + 2] - bIm * sums[3 * f + 1];
    }
  }
};

/** g(wall, point) Y_m Z_n by row m and column n into `grid`, with the columns in use per row. */
const setTerms = (
  geometry: BoxGeometry,
  state: BoxState,
  axis: 0 | 1 | 2,
  side: 0 | 1,
  xM: number,
  wall: Float64Array,
  count: number,
  rows: number,
  columns: number,
): void => {
  const [b, c] = ACROSS[axis];
  const { first, second } = geometry.terms(axis);
  if (factorsAtM[axis] !== xM || factorsCount[axis] < count) {
    if (factors[axis].length < 4 * count) factors[axis] = new Float64Array(4 * count);
    pointFactors(state.closed[axis], 0, count, xM, state.walls[axis], geometry.sizeM[axis], false, BOTH, factors[axis]);
    factorsAtM[axis] = xM;
    factorsCount[axis] = count;
  }
  const own = factors[axis];
  const valuesB = values[b];
  const valuesC = values[c];
  const near = side === 0 ? 0 : 2;
  const far = 2 - near;
  if (grid.length < 2 * rows * columns) grid = new Float64Array(2 * rows * columns);
  if (used.length < rows) used = new Int32Array(rows);
  grid.fill(0, 0, 2 * rows * columns);
  used.fill(0);
  for (let t = 0; t < count; t++) {
    const i = 4 * t + near;
    const j = 4 * t + far;
    const gRe = wall[i] * own[j] - wall[i + 1] * own[j + 1];
    const gIm = wall[i] * own[j + 1] + wall[i + 1] * own[j];
    const m = first[t];
    const n = second[t];
    const yRe = valuesB[2 * m] * valuesC[2 * n] - valuesB[2 * m + 1] * valuesC[2 * n + 1];
    const yIm = valuesB[2 * m] * valuesC[2 * n + 1] + valuesB[2 * m + 1] * valuesC[2 * n];
    const at = 2 * (m * columns + n);
    grid[at] = gRe * yRe - gIm * yIm;
    grid[at + 1] = gRe * yIm + gIm * yRe;
    if (n >= used[m]) used[m] = n + 1;
  }
};

/** Sums the terms against one patch's integrals, the second axis first. */
const addPatch = (
  { layout, integrals }: PatchState,
  i: number,
  rows: number,
  columns: number,
  out: Float64Array,
  offset: number,
): void => {
  const functions = layout.functions.patches[i];
  const [u, v] = integrals[i];
  if (sums.length < 2 * rows) sums = new Float64Array(2 * rows);
  for (let q = 0; q < functions.orders[1]; q++) {
    const to = 2 * columns * q;
    let last = 0;
    for (let m = 0; m < rows && used[m] > 0; m++) {
      const from = 2 * columns * m;
      const end = 2 * used[m];
      let re = 0;
      let im = 0;
      for (let n = 0; n < end; n += 2) {
        re += grid[from + n] * v[to + n] - grid[from + n + 1] * v[to + n + 1];
        im += grid[from + n] * v[to + n + 1] + grid[from + n + 1] * v[to + n];
      }
      sums[2 * m] = re;
      sums[2 * m + 1] = im;
      last = 2 * m + 2;
    }
    for (let f = 0; f < functions.first.length; f++) {
      if (functions.second[f] !== q) continue;
      const at = 2 * rows * functions.first[f];
      let re = 0;
      let im = 0;
      for (let m = 0; m < last; m += 2) {
        re += u[at + m] * sums[m] - u[at + m + 1] * sums[m + 1];
        im += u[at + m] * sums[m + 1] + u[at + m + 1] * sums[m];
      }
      out[offset + 2 * (functions.start + f)] = re;
      out[offset + 2 * (functions.start + f) + 1] = im;
    }
  }
};
