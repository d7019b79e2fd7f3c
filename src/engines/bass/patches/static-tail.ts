import type { BoxGeometry } from '../box-state.ts';
import type { BoxPatch } from './box-patches.ts';
import { stretchOf } from './gauss.ts';
import type { FunctionsOfPatch, PatchFunctions } from './patch-functions.ts';

/**
 * The part of the coupling of a patch to itself, or to a neighbour on the same wall, that lies beyond the cut of the
 * transverse sum. There the one-dimensional function at the wall is that of a half space, 1 / (gamma + B), gamma^2 = kappa^2 -
 * k^2, B = j k beta_wall, and the modes are the rigid ones, so that with the integrals P of the patch functions over rigid modes
 *
 *   sum of P_a P_b / (gamma + B) = T1 - B T2 + (k^2 / 2 + B^2) T3 + ...,     Tn = sum of P_a P_b / kappa^n
 *
 * does not depend on frequency. Derived; summed to five times the cut, where 1/25 of it is left.
 */
export interface StaticTail {
  /** The two patches; the same twice for a patch and itself. */
  readonly i: number;
  readonly j: number;
  /** T1, T2, T3 of functions a of patch i and b of patch j at 3 (a count_j + b). */
  readonly sums: Float64Array;
}

const REACH = 5;
/** Patches farther apart than this have no tail worth adding: its terms cancel. */
const NEAR_M = 0.3;

/** Integrals of one patch's polynomials over rigid cosines of norm 1 along its two axes, at p * modes + m. */
export type RigidIntegrals = readonly [Float64Array, Float64Array];

/** Rigid modes to five times the cut. */
export interface RigidModes {
  readonly cut: number;
  readonly far: number;
  /** Per axis of the room. */
  readonly modes: readonly number[];
  /** Per patch. */
  readonly integrals: readonly RigidIntegrals[];
}

/** Integrals of a stretch's polynomials over rigid cosines of norm 1 of an axis, at p * modes + m; `kappa` is the highest rate. */
export const rigidIntegrals = (
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

const gapOf = (a: BoxPatch, b: BoxPatch): number =>
  Math.max(a.fromM[0] - b.toM[0], b.fromM[0] - a.toM[0], a.fromM[1] - b.toM[1], b.fromM[1] - a.toM[1]);

export const rigidModesOf = (
  geometry: BoxGeometry,
  patches: readonly BoxPatch[],
  functions: PatchFunctions,
  cut: number,
): RigidModes => {
  const far = REACH * cut;
  const modes = geometry.sizeM.map((lengthM) => Math.floor((lengthM * far) / Math.PI) + 1);
  const integrals = patches.map(({ axes, fromM, toM }, i): RigidIntegrals => {
    const along = (which: 0 | 1): Float64Array => {
      const axis = axes[which];
      const orders = functions.patches[i].orders[which];
      return rigidIntegrals(fromM[which], toM[which], orders, geometry.sizeM[axis], far, modes[axis]);
    };
    return [along(0), along(1)];
  });
  return { cut, far, modes, integrals };
};

/** Tails of all patches with themselves and with those near them on their wall. */
export const staticTails = (
  geometry: BoxGeometry,
  patches: readonly BoxPatch[],
  functions: PatchFunctions,
  { cut, far, integrals }: RigidModes,
): StaticTail[] => {
  const tails: StaticTail[] = [];
  for (const [i, a] of patches.entries()) {
    for (let j = 0; j <= i; j++) {
      const b = patches[j];
      if (a.normal !== b.normal || a.side !== b.side || gapOf(a, b) > NEAR_M) continue;
      const pair = [functions.patches[i], functions.patches[j]] as const;
      const lengths = [geometry.sizeM[a.axes[0]], geometry.sizeM[a.axes[1]]] as const;
      tails.push({ i, j, sums: tailOf(pair, integrals[i], integrals[j], lengths, cut, far) });
    }
  }
  return tails;
};

const tailOf = (
  [own, other]: readonly [FunctionsOfPatch, FunctionsOfPatch],
  [ownU, ownV]: RigidIntegrals,
  [otherU, otherV]: RigidIntegrals,
  [lengthU, lengthV]: readonly [number, number],
  cut: number,
  far: number,
): Float64Array => {
  const modesU = ownU.length / own.orders[0];
  const modesV = ownV.length / own.orders[1];
  const sums = new Float64Array(3 * own.first.length * other.first.length);
  // for every pair of orders along v: the sum over n as a function of m, three powers
  const rows = new Float64Array(3 * modesU);
  for (let q = 0; q < own.orders[1]; q++) {
    for (let r = 0; r < other.orders[1]; r++) {
      if (own === other && r > q) continue;
      rows.fill(0);
      for (let m = 0; m < modesU; m++) {
        const square = ((m * Math.PI) / lengthU) ** 2;
        const last = Math.floor((Math.sqrt(Math.max(0, far * far - square)) * lengthV) / Math.PI);
        const first = square > cut * cut ? 0 : Math.floor((Math.sqrt(cut * cut - square) * lengthV) / Math.PI) + 1;
        for (let n = first; n <= last; n++) {
          const inverse = 1 / Math.sqrt(square + ((n * Math.PI) / lengthV) ** 2);
          let term = ownV[q * modesV + n] * otherV[r * modesV + n] * inverse;
          rows[3 * m] += term;
          term *= inverse;
          rows[3 * m + 1] += term;
          rows[3 * m + 2] += term * inverse;
        }
      }
      addPairs(own, other, q, r, ownU, otherU, rows, sums);
    }
  }
  return sums;
};

const addPairs = (
  own: FunctionsOfPatch,
  other: FunctionsOfPatch,
  q: number,
  r: number,
  ownU: Float64Array,
  otherU: Float64Array,
  rows: Float64Array,
  sums: Float64Array,
): void => {
  const modes = rows.length / 3;
  const count = other.first.length;
  for (let a = 0; a < own.first.length; a++) {
    if (own.second[a] !== q) continue;
    for (let b = 0; b < count; b++) {
      if (other.second[b] !== r) continue;
      const at = own.first[a] * modes;
      const to = other.first[b] * modes;
      for (let power = 0; power < 3; power++) {
        let sum = 0;
        for (let m = 0; m < modes; m++) sum += ownU[at + m] * otherU[to + m] * rows[3 * m + power];
        sums[3 * (a * count + b) + power] = sum;
        if (own === other) sums[3 * (b * count + a) + power] = sum;
      }
    }
  }
};
