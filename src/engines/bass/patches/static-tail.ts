import type { BoxGeometry } from '../box-state.ts';
import type { BoxPatch } from './box-patches.ts';
import { stretchOf } from './gauss.ts';
import type { FunctionsOfPatch, PatchFunctions } from './patch-functions.ts';

/**
 * The part of a patch's coupling to itself that lies beyond the cut of the transverse sum. There the one-dimensional
 * function at the wall is that of a half space, 1 / (gamma + B), gamma^2 = kappa^2 - k^2, B = j k beta_wall, and the modes are
 * the rigid ones, so that with the integrals P of the patch functions over rigid modes
 *
 *   sum of P_a P_b / (gamma + B) = T1 - B T2 + (k^2 / 2 + B^2) T3 + ...,     Tn = sum of P_a P_b / kappa^n
 *
 * does not depend on frequency. Derived; summed to five times the cut, where 1/25 of it is left.
 */
export interface StaticTail {
  /** T1, T2, T3 of functions a, b of the patch at 3 (a count + b). */
  readonly sums: Float64Array;
}

const REACH = 5;

/** Integrals of the stretch's polynomials over rigid cosines of norm 1, at p * orders + m. */
const rigidIntegrals = (
  fromM: number,
  toM: number,
  orders: number,
  lengthM: number,
  kappa: number,
  modes: number,
): Float64Array => {
  const { atM, weighted } = stretchOf(fromM, toM, orders, kappa);
  const places = atM.length;
  const out = new Float64Array(orders * modes);
  for (let j = 0; j < places; j++) {
    const step = (Math.PI * atM[j]) / lengthM;
    for (let m = 0; m < modes; m++) {
      const value = Math.sqrt((m === 0 ? 1 : 2) / lengthM) * Math.cos(m * step);
      for (let p = 0; p < orders; p++) out[p * modes + m] += weighted[p * places + j] * value;
    }
  }
  return out;
};

export const staticTails = (
  geometry: BoxGeometry,
  patches: readonly BoxPatch[],
  functions: PatchFunctions,
  cut: number,
): StaticTail[] => patches.map((patch, i) => tailOf(geometry, patch, functions.patches[i], cut));

const tailOf = (geometry: BoxGeometry, patch: BoxPatch, own: FunctionsOfPatch, cut: number): StaticTail => {
  const [lengthU, lengthV] = patch.axes.map((axis) => geometry.sizeM[axis]);
  const far = REACH * cut;
  const modesU = Math.floor((lengthU * far) / Math.PI) + 1;
  const modesV = Math.floor((lengthV * far) / Math.PI) + 1;
  const [ordersU, ordersV] = own.orders;
  const u = rigidIntegrals(patch.fromM[0], patch.toM[0], ordersU, lengthU, far, modesU);
  const v = rigidIntegrals(patch.fromM[1], patch.toM[1], ordersV, lengthV, far, modesV);
  const count = own.first.length;
  const sums = new Float64Array(3 * count * count);
  // for every pair of orders along v: the sum over n as a function of m, three powers
  const rows = new Float64Array(3 * modesU);
  for (let q = 0; q < ordersV; q++) {
    for (let r = 0; r <= q; r++) {
      rows.fill(0);
      for (let m = 0; m < modesU; m++) {
        const own2 = ((m * Math.PI) / lengthU) ** 2;
        const last = Math.floor((Math.sqrt(Math.max(0, far * far - own2)) * lengthV) / Math.PI);
        const first = own2 > cut * cut ? 0 : Math.floor((Math.sqrt(cut * cut - own2) * lengthV) / Math.PI) + 1;
        for (let n = first; n <= last; n++) {
          const inverse = 1 / Math.sqrt(own2 + ((n * Math.PI) / lengthV) ** 2);
          let term = v[q * modesV + n] * v[r * modesV + n] * inverse;
          rows[3 * m] += term;
          term *= inverse;
          rows[3 * m + 1] += term;
          rows[3 * m + 2] += term * inverse;
        }
      }
      addPairs(own, q, r, u, modesU, rows, sums);
    }
  }
  return { sums };
};

const addPairs = (
  own: FunctionsOfPatch,
  q: number,
  r: number,
  u: Float64Array,
  modes: number,
  rows: Float64Array,
  sums: Float64Array,
): void => {
  const count = own.first.length;
  for (let a = 0; a < count; a++) {
    if (own.second[a] !== q) continue;
    for (let b = 0; b < count; b++) {
      if (own.second[b] !== r) continue;
      const at = own.first[a] * modes;
      const to = own.first[b] * modes;
      for (let power = 0; power < 3; power++) {
        let sum = 0;
        for (let m = 0; m < modes; m++) sum += u[at + m] * u[to + m] * rows[3 * m + power];
        sums[3 * (a * count + b) + power] = sum;
        sums[3 * (b * count + a) + power] = sum;
      }
    }
  }
};
