import { type AxisModes, shapeAxis } from '../axis-modes.ts';
import { solveAxis } from '../axis-solver.ts';
import { factoriseComplex, solveComplex } from '../complex-lu.ts';
import type { Section } from './section.ts';
import { factoriseSymmetric, packedLength, solveSymmetric } from './symmetric-solve.ts';

/** The factorised system of one mode of the even axis. */
interface Factor {
  readonly size: number;
  /** Packed L D L^T with the functions in descending order, or a full LU with its pivots. */
  readonly numbers: Float64Array;
  readonly rows: Int32Array | null;
}

/** What depends on room and wavenumber. */
export interface PrismState {
  readonly kRe: number;
  readonly kIm: number;
  readonly even: AxisModes;
  readonly factors: (Factor | null)[];
  /** Of the factorised systems. */
  bytes: number;
}

export interface PrismStates {
  /** The state at omega = 2 pi hz - j growth; a RangeError outside 0 < hz <= 600. */
  at(hz: number, growthPerS: number): PrismState;
  /** Solves (Lambda + w_n / L^2 - k^2 + j k B) X = X in place for `count` right sides, laid out as in symmetric-solve.ts but in ascending order. */
  solve(state: PrismState, n: number, x: Float64Array, count: number): void;
  /** Drops the oldest systems until the limit is kept; what else belongs to a state is small and stays. */
  trim(): void;
}

/** Frequencies the engine answers for; what it is right for is narrower (prism-field.ts). */
const HIGHEST_HZ = 600;
/** A state without its systems takes some 2 kB. */
const MOST_STATES = 2000;

export const createPrismStates = (section: Section, limitBytes: number): PrismStates => {
  const { geometry, orders } = section;
  const states = new Map<string, PrismState>();
  const scale = (2 * Math.PI) / geometry.soundSpeed;
  let latest: PrismState | null = null;
  let reversed = new Float64Array(0);

  const solved = (kRe: number, kIm: number): PrismState => {
    const walls = new Float64Array(4);
    for (let i = 0; i < 4; i += 2) {
      const [re, im] = [geometry.endBeta[i], geometry.endBeta[i + 1]];
      walls[i] = -(kRe * im + kIm * re) * geometry.lengthM;
      walls[i + 1] = (kRe * re - kIm * im) * geometry.lengthM;
    }
    const near = latest !== null && Math.hypot(kRe - latest.kRe, kIm - latest.kIm) < 0.5 * Math.hypot(kRe, kIm);
    let ratio: readonly [number, number] = [1, 0];
    if (latest !== null && near) {
      const square = latest.kRe ** 2 + latest.kIm ** 2;
      ratio = [(kRe * latest.kRe + kIm * latest.kIm) / square, (kIm * latest.kRe - kRe * latest.kIm) / square];
    }
    const even = shapeClear(geometry.lengthM, orders, walls, near ? latest : null, ratio);
    return { kRe, kIm, even, factors: Array.from({ length: orders }, () => null), bytes: 0 };
  };

  const factorOf = (state: PrismState, n: number): Factor => {
    const known = state.factors[n];
    if (known !== null) return known;
    const factor = factorise(section, state, n);
    state.factors[n] = factor;
    state.bytes += factor.numbers.byteLength;
    return factor;
  };

  return {
    at: (hz, growthPerS) => {
      if (!(hz > 0 && hz <= HIGHEST_HZ))
        throw new RangeError(`frequency ${hz} Hz; allowed: above 0 to ${HIGHEST_HZ} Hz`);
      const key = `${hz}/${growthPerS}`;
      let state = states.get(key);
      if (state === undefined) {
        const kRe = hz * scale;
        // a rigid room may resonate exactly there: moved by 1e-9 into damping
        const kIm = geometry.rigid && growthPerS === 0 ? -1e-9 * kRe : -growthPerS / geometry.soundSpeed;
        state = solved(kRe, kIm);
      } else states.delete(key);
      states.set(key, state);
      latest = state;
      return state;
    },
    solve: (state, n, x, count) => {
      const { size, numbers, rows } = factorOf(state, n);
      const width = 2 * count;
      if (reversed.length < width * size) reversed = new Float64Array(width * size);
      if (rows === null) {
        for (let i = 0; i < size; i++)
          for (let r = 0; r < width; r++) reversed[(size - 1 - i) * width + r] = x[i * width + r];
        solveSymmetric(size, numbers, reversed, count);
        for (let i = 0; i < size; i++)
          for (let r = 0; r < width; r++) x[i * width + r] = reversed[(size - 1 - i) * width + r];
        return;
      }
      for (let r = 0; r < count; r++) {
        for (let i = 0; i < size; i++) {
          reversed[2 * i] = x[i * width + 2 * r];
          reversed[2 * i + 1] = x[i * width + 2 * r + 1];
        }
        solveComplex(size, numbers, rows, reversed);
        for (let i = 0; i < size; i++) {
          x[i * width + 2 * r] = reversed[2 * i];
          x[i * width + 2 * r + 1] = reversed[2 * i + 1];
        }
      }
    },
    trim: () => {
      let total = 0;
      for (const state of states.values()) total += state.bytes;
      for (const state of states.values()) {
        if (total <= limitBytes) break;
        total -= state.bytes;
        state.factors.fill(null);
        state.bytes = 0;
      }
      for (const key of states.keys()) {
        if (states.size <= MOST_STATES) break;
        states.delete(key);
      }
    },
  };
};

/** At an exceptional point no shape can be normalised: move the ends by 1e-6. */
const shapeClear = (
  lengthM: number,
  orders: number,
  walls: Float64Array,
  near: PrismState | null,
  ratio: readonly [number, number],
): AxisModes => {
  const modes = shapeAxis(lengthM, solveAxis(orders, walls, near === null ? null : near.even.roots, ratio));
  if (modes.worstNorm < 1e6) return modes;
  return shapeAxis(
    lengthM,
    solveAxis(
      orders,
      walls.map((part) => part * (1 + 1e-6)),
    ),
  );
};

const factorise = (section: Section, state: PrismState, n: number): Factor => {
  const { size: all, lambda, wallRe, wallIm, functions, geometry } = section;
  const size = functions[n];
  const { kRe, kIm } = state;
  const perL2 = 1 / geometry.lengthM ** 2;
  const shiftRe = state.even.roots.w[2 * n] * perL2 - (kRe * kRe - kIm * kIm);
  const shiftIm = state.even.roots.w[2 * n + 1] * perL2 - 2 * kRe * kIm;
  const entry = (i: number, j: number, to: Float64Array, at: number): void => {
    const re = wallRe[i * all + j];
    const im = wallIm === null ? 0 : wallIm[i * all + j];
    to[at] = -(kRe * im + kIm * re);
    to[at + 1] = kRe * re - kIm * im;
    if (i !== j) return;
    to[at] += lambda[i] + shiftRe;
    to[at + 1] += shiftIm;
  };
  const packed = new Float64Array(packedLength(size));
  let at = 0;
  for (let k = size - 1; k >= 0; k--) for (let j = k; j >= 0; j--, at += 2) entry(k, j, packed, at);
  if (factoriseSymmetric(size, packed)) return { size, numbers: packed, rows: null };
  const full = new Float64Array(2 * size * size);
  for (let i = 0; i < size; i++) for (let j = 0; j < size; j++) entry(i, j, full, 2 * (i * size + j));
  const rows = new Int32Array(size);
  factoriseComplex(size, full, rows);
  return { size, numbers: full, rows };
};
