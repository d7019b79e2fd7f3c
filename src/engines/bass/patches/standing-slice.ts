import { valuesAt } from '../axis-modes.ts';
import { ACROSS, type BoxGeometry, type BoxState } from '../box-state.ts';
import { BOTH, pointFactors } from '../closed-axis.ts';
import type { Axis, SlicePlane } from '../room-field.ts';
import { multiplyRows } from '../slice-kernel.ts';
import { sameGrid } from '../slice-rest.ts';
import type { BoxPatch } from './box-patches.ts';
import type { PatchState } from './patch-state.ts';

let rows = new Float64Array(0);

/** Adds strength times both integrals of one patch's functions to each of the first `count` terms across its wall. */
export const spreadStrength = (
  geometry: BoxGeometry,
  own: PatchState,
  patch: BoxPatch,
  i: number,
  count: number,
  strength: Float64Array,
  out: Float64Array,
): void => {
  const { start, first, second, orders } = own.layout.functions.patches[i];
  const [u, v] = own.integrals[i];
  const width = 2 * own.layout.orders[patch.axes[0]];
  const across = 2 * own.layout.orders[patch.axes[1]];
  const terms = geometry.terms(patch.normal);
  if (rows.length < width) rows = new Float64Array(width);
  for (let q = 0; q < orders[1]; q++) {
    rows.fill(0, 0, width);
    for (let f = 0; f < first.length; f++) {
      if (second[f] !== q) continue;
      const re = strength[2 * (start + f)];
      const im = strength[2 * (start + f) + 1];
      const at = width * first[f];
      for (let m = 0; m < width; m += 2) {
        rows[m] += re * u[at + m] - im * u[at + m + 1];
        rows[m + 1] += re * u[at + m + 1] + im * u[at + m];
      }
    }
    for (let t = 0; t < count; t++) {
      const m = 2 * terms.first[t];
      const n = across * q + 2 * terms.second[t];
      out[2 * t] += rows[m] * v[n] - rows[m + 1] * v[n + 1];
      out[2 * t + 1] += rows[m] * v[n + 1] + rows[m + 1] * v[n];
    }
  }
};

export interface StandingSlices {
  /** Adds what the patches on walls standing on the plane radiate to the field over its grid. */
  add(
    state: BoxState,
    own: PatchState,
    plane: SlicePlane,
    strength: Float64Array,
    re: Float64Array,
    im: Float64Array,
  ): void;
}

/** What depends on state and grid only, for the walls across one of the grid's axes. */
interface Kept {
  state: BoxState | null;
  own: PatchState | null;
  /** Per grid line along the walls' normal: L and R of each term. */
  profiles: Float64Array;
  /** Per grid line along the walls: mode values. */
  modes: Float64Array;
}

/**
 * Patches on a wall across one of the grid's own axes, e. Terms over the plane's modes would converge slowly near that wall;
 * closing e instead, the field is the sum over the orders n of the grid's other axis of F_n(e) Z_n(d), where
 *
 *   F_n(e) = sum over orders l of the plane's normal of X_l(plane) c_ln g_ln(wall, e)
 *
 * and c is the strength of the patches times their integrals. Derived.
 */
export const createStandingSlices = (geometry: BoxGeometry, patches: readonly BoxPatch[]): StandingSlices => {
  let grid: SlicePlane | null = null;
  const kept: Kept[] = [0, 1].map(() => ({
    state: null,
    own: null,
    profiles: new Float64Array(0),
    modes: new Float64Array(0),
  }));
  let rowsU = new Float64Array(0);
  let rowsV = new Float64Array(0);
  let fieldRe = new Float64Array(0);
  let fieldIm = new Float64Array(0);

  const prepare = (state: BoxState, own: PatchState, plane: SlicePlane, which: 0 | 1): Kept => {
    const values = kept[which];
    if (values.state === state && values.own === own) return values;
    const axis = which === 0 ? plane.uAxis : plane.vAxis;
    const other = which === 0 ? plane.vAxis : plane.uAxis;
    const across = which === 0 ? plane.uM : plane.vM;
    const along = which === 0 ? plane.vM : plane.uM;
    const count = own.layout.counts[axis];
    const orders = own.layout.orders[other];
    if (values.profiles.length < 4 * count * across.length)
      values.profiles = new Float64Array(4 * count * across.length);
    if (values.modes.length < 2 * orders * along.length) values.modes = new Float64Array(2 * orders * along.length);
    const lengthM = geometry.sizeM[axis];
    for (let i = 0; i < across.length; i++) {
      const row = values.profiles.subarray(4 * count * i, 4 * count * (i + 1));
      const atM = Math.min(lengthM, Math.max(0, across[i]));
      pointFactors(state.closed[axis], 0, count, atM, state.walls[axis], lengthM, false, BOTH, row);
    }
    for (let i = 0; i < along.length; i++) valuesAt(state.axes[other], along[i], orders, values.modes, 2 * orders * i);
    values.state = state;
    values.own = own;
    return values;
  };

  const add: StandingSlices['add'] = (state, own, plane, strength, re, im) => {
    if (grid === null || !sameGrid(grid, plane)) {
      grid = { ...plane, uM: Float64Array.from(plane.uM), vM: Float64Array.from(plane.vM) };
      for (const one of kept) one.state = null;
    }
    const hasU = own.walls[plane.uAxis] !== null;
    const hasV = own.walls[plane.vAxis] !== null;
    const ordersU = hasU ? own.layout.orders[plane.vAxis] : 0;
    const ordersV = hasV ? own.layout.orders[plane.uAxis] : 0;
    const orders = ordersU + ordersV;
    if (orders === 0) return;
    const nu = plane.uM.length;
    const nv = plane.vM.length;
    if (rowsU.length < 2 * orders * nu) rowsU = new Float64Array(2 * orders * nu);
    if (rowsV.length < 2 * orders * nv) rowsV = new Float64Array(2 * orders * nv);
    if (fieldRe.length < nu * nv) {
      fieldRe = new Float64Array(nu * nv);
      fieldIm = new Float64Array(nu * nv);
    }
    if (hasU) {
      const values = prepare(state, own, plane, 0);
      coefficientsOf(geometry, state, own, patches, plane, plane.uAxis, plane.vAxis, strength);
      fillProfiles(geometry, own, plane.uAxis, plane.vAxis, values.profiles, nu, rowsU, orders, 0);
      copyModes(values.modes, ordersU, nv, rowsV, orders, 0);
    }
    if (hasV) {
      const values = prepare(state, own, plane, 1);
      coefficientsOf(geometry, state, own, patches, plane, plane.vAxis, plane.uAxis, strength);
      fillProfiles(geometry, own, plane.vAxis, plane.uAxis, values.profiles, nv, rowsV, orders, ordersU);
      copyModes(values.modes, ordersV, nu, rowsU, orders, ordersU);
    }
    multiplyRows(rowsU, nu, rowsV, nv, orders, fieldRe, fieldIm, 1, nu);
    for (let i = 0; i < nu * nv; i++) {
      re[i] += fieldRe[i];
      im[i] += fieldIm[i];
    }
  };
  return { add };
};

/** Coefficient of L and of R per term, four numbers a term. */
let coefficients = new Float64Array(0);
let spread = new Float64Array(0);
let planeValues = new Float64Array(0);

const coefficientsOf = (
  geometry: BoxGeometry,
  state: BoxState,
  own: PatchState,
  patches: readonly BoxPatch[],
  plane: SlicePlane,
  axis: Axis,
  other: Axis,
  strength: Float64Array,
): void => {
  const count = own.layout.counts[axis];
  const wall = own.walls[axis];
  if (coefficients.length < 4 * count) coefficients = new Float64Array(4 * count);
  if (spread.length < 2 * count) spread = new Float64Array(2 * count);
  const orders = own.layout.orders[plane.normal];
  if (planeValues.length < 2 * orders) planeValues = new Float64Array(2 * orders);
  coefficients.fill(0, 0, 4 * count);
  if (wall === null) return;
  valuesAt(state.axes[plane.normal], plane.atM, orders, planeValues, 0);
  const terms = geometry.terms(axis);
  const order = ACROSS[axis][0] === other ? terms.second : terms.first;
  for (const side of [0, 1] as const) {
    spread.fill(0, 0, 2 * count);
    for (const [i, patch] of patches.entries())
      if (patch.normal === axis && patch.side === side)
        spreadStrength(geometry, own, patch, i, count, strength, spread);
    // wall at 0: (L D)(0) R(e); far wall: L(e) (R D)(a)
    const half = wall.withD[side];
    for (let t = 0; t < count; t++) {
      const w = 4 * t + 2 * side;
      const l = 2 * order[t];
      const sRe = spread[2 * t] * planeValues[l] - spread[2 * t + 1] * planeValues[l + 1];
      const sIm = spread[2 * t] * planeValues[l + 1] + spread[2 * t + 1] * planeValues[l];
      coefficients[4 * t + 2 - 2 * side] += half[w] * sRe - half[w + 1] * sIm;
      coefficients[4 * t + 3 - 2 * side] += half[w] * sIm + half[w + 1] * sRe;
    }
  }
};

/** F_n at every grid line, into columns `from...` of rows of `width` complex numbers. */
const fillProfiles = (
  geometry: BoxGeometry,
  own: PatchState,
  axis: Axis,
  other: Axis,
  profiles: Float64Array,
  lines: number,
  out: Float64Array,
  width: number,
  from: number,
): void => {
  const count = own.layout.counts[axis];
  const orders = own.layout.orders[other];
  const terms = geometry.terms(axis);
  const order = ACROSS[axis][0] === other ? terms.first : terms.second;
  const c = coefficients;
  for (let i = 0; i < lines; i++) {
    const row = 2 * (width * i + from);
    out.fill(0, row, row + 2 * orders);
    for (let t = 0, p = 4 * count * i, q = 0; t < count; t++, p += 4, q += 4) {
      const n = row + 2 * order[t];
      out[n] +=
        c[q] * profiles[p] - c[q + 1] * profiles[p + 1] + c[q + 2] * profiles[p + 2] - c[q + 3] * profiles[p + 3];
      out[n + 1] +=
        c[q] * profiles[p + 1] + c[q + 1] * profiles[p] + c[q + 2] * profiles[p + 3] + c[q + 3] * profiles[p + 2];
    }
  }
};

const copyModes = (
  modes: Float64Array,
  orders: number,
  lines: number,
  out: Float64Array,
  width: number,
  from: number,
): void => {
  for (let i = 0; i < lines; i++)
    for (let n = 0; n < 2 * orders; n++) out[2 * (width * i + from) + n] = modes[2 * orders * i + n];
};
