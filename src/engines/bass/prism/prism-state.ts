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
  /** The same with the functions' rows in descending order. */
  solveDescending(state: PrismState, n: number, x: Float64Array, count: number): void;
  /** Drops the oldest systems until the limit is kept; what else belongs to a state is small and stays. */
  trim(): void;
  /** Of the factorised systems. */
  bytes(): number;
}

/** Frequencies the engine answers for; what it is right for is narrower (prism-field.ts). */
const HIGHEST_HZ = 600;
/** A state without its systems takes some 2 kB. */
const MOST_STATES = 2000;

export const createPrismStates = (section: Section, limitBytes: number): PrismStates => {
  const { geometry, orders } = section;
  const states = new Map<string, PrismState>();
  const walls = packWalls(section);
  const scale = (2 * Math.PI) / geometry.soundSpeed;
  let latest: PrismState | null = null;
  let reversed = new Float64Array(0);

  const solved = (kRe: number, kIm: number): PrismState => {
    const ends = new Float64Array(4);
    for (let i = 0; i < 4; i += 2) {
      const [re, im] = [geometry.endBeta[i], geometry.endBeta[i + 1]];
      ends[i] = -(kRe * im + kIm * re) * geometry.lengthM;
      ends[i + 1] = (kRe * re - kIm * im) * geometry.lengthM;
    }
    const near = latest !== null && Math.hypot(kRe - latest.kRe, kIm - latest.kIm) < 0.5 * Math.hypot(kRe, kIm);
    let ratio: readonly [number, number] = [1, 0];
    if (latest !== null && near) {
      const square = latest.kRe ** 2 + latest.kIm ** 2;
      ratio = [(kRe * latest.kRe + kIm * latest.kIm) / square, (kIm * latest.kRe - kRe * latest.kIm) / square];
    }
    const even = shapeClear(geometry.lengthM, orders, ends, near ? latest : null, ratio);
    return { kRe, kIm, even, factors: Array.from({ length: orders }, () => null), bytes: 0 };
  };

  const factorOf = (state: PrismState, n: number): Factor => {
    const known = state.factors[n];
    if (known !== null) return known;
    const factor = factorise(section, walls, state, n);
    state.factors[n] = factor;
    state.bytes += factor.numbers.byteLength;
    return factor;
  };

  const solveDescending: PrismStates['solveDescending'] = (state, n, x, count) => {
    const { size, numbers, rows } = factorOf(state, n);
    if (rows === null) {
      solveSymmetric(size, numbers, x, count);
      return;
    }
    // the full system has its functions in ascending order
    const one = new Float64Array(2 * size);
    for (let r = 0; r < count; r++) {
      for (let i = 0; i < size; i++)
        for (const part of [0, 1]) one[2 * i + part] = x[2 * ((size - 1 - i) * count + r) + part];
      solveComplex(size, numbers, rows, one);
      for (let i = 0; i < size; i++)
        for (const part of [0, 1]) x[2 * ((size - 1 - i) * count + r) + part] = one[2 * i + part];
    }
  };

  const held = (): number => {
    let total = 0;
    for (const state of states.values()) total += state.bytes;
    return total;
  };

  return {
    bytes: held,
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
    solveDescending,
    solve: (state, n, x, count) => {
      const length = 2 * count * section.functions[n];
      if (reversed.length < length) reversed = new Float64Array(length);
      turnRows(x, reversed, section.functions[n], 2 * count);
      solveDescending(state, n, reversed, count);
      turnRows(reversed, x, section.functions[n], 2 * count);
    },
    trim: () => {
      let total = held();
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

/** to = the rows of `from` in the opposite order. */
const turnRows = (from: Float64Array, to: Float64Array, rows: number, width: number): void => {
  for (let i = 0, a = 0, b = (rows - 1) * width; i < rows; i++, a += width, b -= width)
    for (let r = 0; r < width; r++) to[b + r] = from[a + r];
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

/** Walls' couplings of all functions in descending order, packed as systems are: those of the first m functions are its last part. */
interface PackedWalls {
  readonly re: Float64Array;
  readonly im: Float64Array | null;
}

const packWalls = ({ size, wallRe, wallIm }: Section): PackedWalls => {
  const packed = (wall: Float64Array): Float64Array => {
    const list = new Float64Array((size * (size + 1)) / 2);
    let at = 0;
    for (let i = size - 1; i >= 0; i--) for (let j = i; j >= 0; j--, at++) list[at] = wall[i * size + j];
    return list;
  };
  return { re: packed(wallRe), im: wallIm === null ? null : packed(wallIm) };
};

const factorise = (section: Section, walls: PackedWalls, state: PrismState, n: number): Factor => {
  const { lambda, functions, geometry } = section;
  const size = functions[n];
  const { kRe, kIm } = state;
  const perL2 = 1 / geometry.lengthM ** 2;
  const shiftRe = state.even.roots.w[2 * n] * perL2 - (kRe * kRe - kIm * kIm);
  const shiftIm = state.even.roots.w[2 * n + 1] * perL2 - 2 * kRe * kIm;
  const numbers = new Float64Array(packedLength(size));
  const fill = (): void => {
    const wallsFrom = walls.re.length - numbers.length / 2;
    for (let i = 0; 2 * i < numbers.length; i++) {
      const re = walls.re[wallsFrom + i];
      numbers[2 * i] = -kIm * re;
      numbers[2 * i + 1] = kRe * re;
    }
    if (walls.im !== null) {
      for (let i = 0; 2 * i < numbers.length; i++) {
        const im = walls.im[wallsFrom + i];
        numbers[2 * i] -= kRe * im;
        numbers[2 * i + 1] -= kIm * im;
      }
    }
    for (let i = size - 1, at = 0; i >= 0; at += 2 * (i + 1), i--) {
      numbers[at] += lambda[i] + shiftRe;
      numbers[at + 1] += shiftIm;
    }
  };
  fill();
  if (factoriseSymmetric(size, numbers)) return { size, numbers, rows: null };
  fill();
  const full = new Float64Array(2 * size * size);
  for (let i = size - 1, at = 0; i >= 0; i--) {
    for (let j = i; j >= 0; j--, at += 2) {
      for (const to of [2 * (i * size + j), 2 * (j * size + i)]) {
        full[to] = numbers[at];
        full[to + 1] = numbers[at + 1];
      }
    }
  }
  const rows = new Int32Array(size);
  factoriseComplex(size, full, rows);
  return { size, numbers: full, rows };
};
