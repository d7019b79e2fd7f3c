import { valuesAt } from '../axis-modes.ts';
import { ACROSS, type BoxGeometry, type BoxState } from '../box-state.ts';
import type { Axis } from '../room-field.ts';
import type { BoxPatch } from './box-patches.ts';
import type { FunctionsOfPatch } from './patch-functions.ts';
import { closedIntegrals, type ModeIntegrals, type WallFactors } from './patch-integrals.ts';
import type { PatchLayout } from './patch-layout.ts';

/**
 * W of coupled-system.ts in a box: the double modal sum with the third axis in closed form, integrated over both patches.
 * Patches on one wall or on opposite walls close the axis across them; patches on walls that meet close the normal of
 * one, and the other's integral along that axis is taken over the closed form. Each pair is a sum over rows (orders of one
 * axis) of a sum over columns (orders of the other), which factorises in the functions' orders.
 */
export interface CouplingInputs {
  readonly geometry: BoxGeometry;
  readonly state: BoxState;
  readonly patches: readonly BoxPatch[];
  readonly layout: PatchLayout;
  readonly integrals: readonly (readonly [ModeIntegrals, ModeIntegrals])[];
  /** For the axes that are the normal of some patch. */
  readonly walls: readonly (WallFactors | null)[];
}

/** Terms laid out by row and column, re, im at 2 (row columns + column). */
interface Grid {
  values: Float64Array;
  rows: number;
  columns: number;
  /** Columns in use per row. */
  readonly used: Int32Array;
}

const grid: Grid = { values: new Float64Array(0), rows: 0, columns: 0, used: new Int32Array(512) };
let product = new Float64Array(512);
let sums = new Float64Array(512);

/** Prepares an empty grid; `rowIsFirst` says whether rows are the orders of the first axis across. */
const openGrid = ({ layout, geometry }: CouplingInputs, axis: Axis, rowIsFirst: boolean): void => {
  const [first, second] = ACROSS[axis];
  const terms = geometry.terms(axis);
  grid.rows = layout.orders[rowIsFirst ? first : second];
  grid.columns = layout.orders[rowIsFirst ? second : first];
  const size = 2 * grid.rows * grid.columns;
  if (grid.values.length < size) grid.values = new Float64Array(size);
  if (product.length < 2 * grid.columns) product = new Float64Array(2 * grid.columns);
  if (sums.length < 2 * grid.rows) sums = new Float64Array(2 * grid.rows);
  grid.values.fill(0, 0, size);
  grid.used.fill(0, 0, grid.rows);
  const row = rowIsFirst ? terms.first : terms.second;
  const column = rowIsFirst ? terms.second : terms.first;
  for (let t = 0; t < layout.counts[axis]; t++) if (column[t] >= grid.used[row[t]]) grid.used[row[t]] = column[t] + 1;
};

/** Grid value of term t = (aRe + j aIm) (bRe + j bIm). */
const setTerm = (at: number, aRe: number, aIm: number, bRe: number, bIm: number): void => {
  grid.values[at] = aRe * bRe - aIm * bIm;
  grid.values[at + 1] = aRe * bIm + aIm * bRe;
};

/** sums[row] = sum over columns of a[column] b[column] grid[row, column]; a and b start at the given places. */
const sumColumns = (a: Float64Array, ao: number, b: Float64Array, bo: number): void => {
  const { values, rows, columns, used } = grid;
  for (let n = 0; n < 2 * columns; n += 2) {
    product[n] = a[ao + n] * b[bo + n] - a[ao + n + 1] * b[bo + n + 1];
    product[n + 1] = a[ao + n] * b[bo + n + 1] + a[ao + n + 1] * b[bo + n];
  }
  for (let m = 0; m < rows; m++) {
    const g = 2 * columns * m;
    const end = 2 * used[m];
    let re = 0;
    let im = 0;
    for (let n = 0; n < end; n += 2) {
      re += product[n] * values[g + n] - product[n + 1] * values[g + n + 1];
      im += product[n] * values[g + n + 1] + product[n + 1] * values[g + n];
    }
    sums[2 * m] = re;
    sums[2 * m + 1] = im;
  }
};

/** Patches on one wall or on opposite walls. */
const addParallel = (inputs: CouplingInputs, i: number, j: number, size: number, out: Float64Array): void => {
  const { geometry, patches, layout, integrals, walls } = inputs;
  const { normal, side } = patches[i];
  const [first, second] = ACROSS[normal];
  const terms = geometry.terms(normal);
  const wall = walls[normal];
  if (wall === null) return;
  openGrid(inputs, normal, true);
  // g = (L D)(lower) R(upper)
  const lower = wall.withD[Math.min(side, patches[j].side)];
  const upper = wall.plain[Math.max(side, patches[j].side)];
  for (let t = 0; t < layout.counts[normal]; t++) {
    const at = 2 * (grid.columns * terms.first[t] + terms.second[t]);
    setTerm(at, lower[4 * t], lower[4 * t + 1], upper[4 * t + 2], upper[4 * t + 3]);
  }
  const a = layout.functions.patches[i];
  const b = layout.functions.patches[j];
  const width = 2 * layout.orders[first];
  const across = 2 * layout.orders[second];
  for (let q = 0; q < a.orders[1]; q++) {
    for (let r = 0; r < b.orders[1]; r++) {
      if (i === j && r > q) continue;
      sumColumns(integrals[i][1], q * across, integrals[j][1], r * across);
      for (let f = 0; f < a.first.length; f++) {
        if (a.second[f] !== q) continue;
        for (let h = 0; h < b.first.length; h++) {
          if (b.second[h] !== r) continue;
          setSum(integrals[i][0], a.first[f] * width, integrals[j][0], b.first[h] * width);
          store(size, a.start + f, b.start + h, out);
        }
      }
    }
  }
};

const total = new Float64Array(2);

/** total = sum over rows of a b sums. */
const setSum = (a: Float64Array, ao: number, b: Float64Array, bo: number): void => {
  let re = 0;
  let im = 0;
  for (let m = 0; m < 2 * grid.rows; m += 2) {
    const pRe = a[ao + m] * b[bo + m] - a[ao + m + 1] * b[bo + m + 1];
    const pIm = a[ao + m] * b[bo + m + 1] + a[ao + m + 1] * b[bo + m];
    re += pRe * sums[m] - pIm * sums[m + 1];
    im += pRe * sums[m + 1] + pIm * sums[m];
  }
  total[0] = re;
  total[1] = im;
};

/** W is symmetric: both places. */
const store = (size: number, a: number, b: number, out: Float64Array): void => {
  const i = 2 * (a * size + b);
  const j = 2 * (b * size + a);
  out[i] = total[0];
  out[i + 1] = total[1];
  out[j] = total[0];
  out[j + 1] = total[1];
};

/** Distance of the patch's stretch along `axis` from the wall `side` of that axis. */
const gapTo = (geometry: BoxGeometry, patch: BoxPatch, axis: Axis, side: number): number => {
  const which = patch.axes[0] === axis ? 0 : 1;
  return side === 0 ? patch.fromM[which] : geometry.sizeM[axis] - patch.toM[which];
};

/** Patches on walls that meet; the axis of i's normal is closed, or of j's where j's wall is farther away. */
const addMeeting = (
  inputs: CouplingInputs,
  i: number,
  j: number,
  size: number,
  out: Float64Array,
  along: (patch: number, axis: Axis) => Float64Array,
): void => {
  const { geometry, patches } = inputs;
  const gapI = gapTo(geometry, patches[j], patches[i].normal, patches[i].side);
  const gapJ = gapTo(geometry, patches[i], patches[j].normal, patches[j].side);
  if (gapJ > gapI) closeNormal(inputs, j, i, size, out, along);
  else closeNormal(inputs, i, j, size, out, along);
};

let wallValues = new Float64Array(512);

/** i lies across the closed axis, j along it. Rows are the orders of j's normal, columns those of the axis they share. */
const closeNormal = (
  inputs: CouplingInputs,
  i: number,
  j: number,
  size: number,
  out: Float64Array,
  along: (patch: number, axis: Axis) => Float64Array,
): void => {
  const { geometry, state, patches, layout, integrals, walls } = inputs;
  const { normal, side } = patches[i];
  const rowAxis = patches[j].normal;
  const rowIsFirst = ACROSS[normal][0] === rowAxis;
  const terms = geometry.terms(normal);
  const count = layout.counts[normal];
  const wall = walls[normal];
  if (wall === null) return;
  const closed = along(j, normal);
  const a = layout.functions.patches[i];
  const b = layout.functions.patches[j];
  // which of its two axes: i's rows (the other is shared), j's closed one
  const rowOfI = patches[i].axes[0] === rowAxis ? 0 : 1;
  const closedOfJ = patches[j].axes[0] === normal ? 0 : 1;
  const rows = integrals[i][rowOfI];
  const sharedI = integrals[i][1 - rowOfI];
  const sharedJ = integrals[j][1 - closedOfJ];
  const ordersOf = (which: FunctionsOfPatch, axis: number): Uint8Array => (axis === 0 ? which.first : which.second);
  const rowOrders = ordersOf(a, rowOfI);
  const sharedOrdersI = ordersOf(a, 1 - rowOfI);
  const closedOrders = ordersOf(b, closedOfJ);
  const sharedOrdersJ = ordersOf(b, 1 - closedOfJ);
  const rowCount = layout.orders[rowAxis];
  if (wallValues.length < 2 * rowCount) wallValues = new Float64Array(2 * rowCount);
  valuesAt(state.axes[rowAxis], patches[j].side === 0 ? 0 : geometry.sizeM[rowAxis], rowCount, wallValues, 0);
  const rowTerm = rowIsFirst ? terms.first : terms.second;
  const columnTerm = rowIsFirst ? terms.second : terms.first;
  for (let p = 0; p < b.orders[closedOfJ]; p++) {
    openGrid(inputs, normal, rowIsFirst);
    // wall at 0: (L D)(0) R(x); far wall: L(x) (R D)(a)
    const half = side === 0 ? 0 : 2;
    for (let t = 0; t < count; t++) {
      const at = 2 * (grid.columns * rowTerm[t] + columnTerm[t]);
      const own = 4 * t + half;
      const other = 4 * (p * count + t) + 2 - half;
      setTerm(at, wall.withD[side][own], wall.withD[side][own + 1], closed[other], closed[other + 1]);
    }
    for (let q = 0; q < a.orders[1 - rowOfI]; q++) {
      for (let r = 0; r < b.orders[1 - closedOfJ]; r++) {
        sumColumns(sharedI, 2 * grid.columns * q, sharedJ, 2 * grid.columns * r);
        for (let h = 0; h < b.first.length; h++) {
          if (closedOrders[h] !== p || sharedOrdersJ[h] !== r) continue;
          for (let f = 0; f < a.first.length; f++) {
            if (sharedOrdersI[f] !== q) continue;
            setSum(rows, 2 * grid.rows * rowOrders[f], wallValues, 0);
            store(size, a.start + f, b.start + h, out);
          }
        }
      }
    }
  }
};

/** W, row by row as re, im. */
export const patchCouplings = (inputs: CouplingInputs): Float64Array => {
  const { geometry, state, patches, layout } = inputs;
  const size = layout.functions.count;
  const out = new Float64Array(2 * size * size);
  const made = new Map<number, Float64Array>();
  const along = (patch: number, axis: Axis): Float64Array => {
    const key = 3 * patch + axis;
    const known = made.get(key);
    if (known !== undefined) return known;
    const stretch = layout.stretches[patch][patches[patch].axes[0] === axis ? 0 : 1];
    const fresh = closedIntegrals(geometry, state, axis, layout.counts[axis], stretch);
    made.set(key, fresh);
    return fresh;
  };
  for (let i = 0; i < patches.length; i++) {
    for (let j = 0; j <= i; j++) {
      if (patches[i].normal === patches[j].normal) addParallel(inputs, i, j, size, out);
      else addMeeting(inputs, i, j, size, out, along);
    }
  }
  addTails(inputs, size, out);
  return out;
};

/** The static tails of the couplings on one wall (static-tail.ts). */
const addTails = ({ state, patches, layout }: CouplingInputs, size: number, out: Float64Array): void => {
  for (const { i, j, sums: tail } of layout.tails) {
    const { normal, side } = patches[i];
    const [own, other] = [layout.functions.patches[i], layout.functions.patches[j]];
    const bRe = state.walls[normal][2 * side];
    const bIm = state.walls[normal][2 * side + 1];
    const re3 = (state.kRe * state.kRe - state.kIm * state.kIm) / 2 + bRe * bRe - bIm * bIm;
    const im3 = state.kRe * state.kIm + 2 * bRe * bIm;
    const count = other.first.length;
    for (let a = 0; a < own.first.length; a++) {
      for (let b = 0; b < count; b++) {
        const t = 3 * (a * count + b);
        const re = tail[t] - bRe * tail[t + 1] + re3 * tail[t + 2];
        const im = im3 * tail[t + 2] - bIm * tail[t + 1];
        const at = 2 * ((own.start + a) * size + other.start + b);
        out[at] += re;
        out[at + 1] += im;
        if (i === j) continue;
        const turned = 2 * ((other.start + b) * size + own.start + a);
        out[turned] += re;
        out[turned + 1] += im;
      }
    }
  }
};
