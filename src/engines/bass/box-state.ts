import { type Allocate, createArena } from './arena.ts';
import { type AxisModes, shapeAxis } from './axis-modes.ts';
import { type AxisRoots, solveAxis } from './axis-solver.ts';
import { type ClosedTerms, emptyTerms, fillTerm, growTerms } from './closed-axis.ts';
import type { Axis, BoxSpec } from './room-field.ts';
import { listTerms, type TransverseTerms } from './transverse-terms.ts';

/** Transverse sums stop at this frequency's wavenumber at the latest (engine's range: responses to 600 Hz). */
export const CUT_HZ = 900;
/** Relative error aimed at by the truncation of the transverse sum. */
export const EPSILON = 5e-5;
/** Share of the cut up to which axes are solved at first. */
const USUAL = 0.6;
/** Numbers in a block of memory: half a megabyte. */
const BLOCK_NUMBERS = 65_536;
export const AXES: readonly Axis[] = [0, 1, 2];
/** The two axes across a closed one. */
export const ACROSS: readonly (readonly [Axis, Axis])[] = [
  [1, 2],
  [0, 2],
  [0, 1],
];

/** What depends on the room alone. */
export interface BoxGeometry {
  readonly sizeM: readonly [number, number, number];
  readonly soundSpeed: number;
  /** beta per axis: b0 re, im, b1 re, im. */
  readonly beta: readonly Float64Array[];
  readonly rigid: boolean;
  /** Largest transverse wavenumber squared. */
  readonly cutK2: number;
  /** Where the reach ln(1 / eps) / separation exceeds this, all terms are kept and the screened rest is added. */
  readonly wholeAbove: number;
  readonly orders: readonly [number, number, number];
  /** Orders solved for a new state: enough for points a metre apart at first, more once more were needed. */
  readonly usualOrders: [number, number, number];
  /** Mode pairs across each axis, made when first needed. */
  terms(axis: Axis): TransverseTerms;
  /** Memory for what states hold. */
  allocate(numbers: number): Float64Array;
}

/** What depends on room and wavenumber. */
export interface BoxState {
  readonly kRe: number;
  readonly kIm: number;
  /** Modes of each axis, as many orders as were needed so far. */
  readonly axes: AxisModes[];
  /** Counts how often an axis was solved anew: mode values of another generation must not be mixed with these. */
  generation: number;
  /** B = j k beta per axis: B0 re, im, B1 re, im. */
  readonly walls: readonly Float64Array[];
  readonly closed: readonly ClosedTerms[];
}

export const boxGeometry = (spec: BoxSpec): BoxGeometry => {
  const size: [number, number, number] = [spec.sizeM[0], spec.sizeM[1], spec.sizeM[2]];
  const cutK = (2 * Math.PI * CUT_HZ) / spec.soundSpeed;
  const lists: (TransverseTerms | null)[] = [null, null, null];
  const beta = AXES.map((axis) => Float64Array.from([...spec.admittance[2 * axis], ...spec.admittance[2 * axis + 1]]));
  return {
    sizeM: size,
    soundSpeed: spec.soundSpeed,
    beta,
    rigid: beta.every((walls) => walls.every((part) => part === 0)),
    cutK2: cutK * cutK,
    wholeAbove: Math.sqrt(0.75) * cutK,
    orders: ordersTo(size, cutK),
    usualOrders: ordersTo(size, USUAL * cutK),
    allocate: createArena(BLOCK_NUMBERS),
    terms: (axis) => {
      const [b, c] = ACROSS[axis];
      lists[axis] ??= listTerms(size[b], size[c], cutK * cutK);
      return lists[axis];
    },
  };
};

const ordersTo = (sizeM: readonly number[], k: number): [number, number, number] => {
  const orders = (axis: Axis): number => Math.floor((sizeM[axis] * k) / Math.PI) + 1;
  return [orders(0), orders(1), orders(2)];
};

/** True when a rigid box resonates within 1e-9 of k: the response has no limit there. */
const resonates = (geometry: BoxGeometry, k: number): boolean => {
  const [x, y, z] = geometry.sizeM;
  for (let l = 0; (l * Math.PI) / x <= k * 1.001; l++) {
    for (let m = 0; (m * Math.PI) / y <= k * 1.001; m++) {
      const left = k * k - ((l * Math.PI) / x) ** 2 - ((m * Math.PI) / y) ** 2;
      const n = Math.round((Math.sqrt(Math.max(0, left)) * z) / Math.PI);
      if (Math.abs(left - ((n * Math.PI) / z) ** 2) < 2e-9 * k * k) return true;
    }
  }
  return false;
};

/** The wavenumber the engine works with: moved by 1e-9 into damping where a rigid room resonates exactly. */
export const workingK = (geometry: BoxGeometry, kRe: number, kIm: number): readonly [number, number] =>
  geometry.rigid && kIm === 0 && resonates(geometry, kRe) ? [kRe, -1e-9 * kRe] : [kRe, kIm];

/** Solves the three axes at k; `near` is a state at a neighbouring k. */
export const solveState = (geometry: BoxGeometry, kRe: number, kIm: number, near: BoxState | null): BoxState => {
  const walls = geometry.beta.map((beta) => wallsAt(beta, kRe, kIm));
  let ratio: readonly [number, number] = [1, 0];
  if (near !== null) {
    const scale = near.kRe * near.kRe + near.kIm * near.kIm;
    ratio = [(kRe * near.kRe + kIm * near.kIm) / scale, (kIm * near.kRe - kRe * near.kIm) / scale];
  }
  const axes = AXES.map((axis) => {
    const lengthM = geometry.sizeM[axis];
    for (let i = 0; i < 4; i++) wallsTimesLength[i] = walls[axis][i] * lengthM;
    const from = near === null ? null : near.axes[axis].roots;
    return shapeClear(
      lengthM,
      solveAxis(geometry.usualOrders[axis], wallsTimesLength, from, ratio, geometry.allocate),
      geometry.allocate,
    );
  });
  return { kRe, kIm, axes, generation: 0, walls, closed: AXES.map(emptyTerms) };
};

const wallsTimesLength = new Float64Array(4);

/** Makes sure that the state holds at least `count` orders of an axis. */
const readyOrders = (geometry: BoxGeometry, state: BoxState, axis: Axis, count: number): void => {
  if (state.axes[axis].roots.count >= count) return;
  const { roots } = state.axes[axis];
  geometry.usualOrders[axis] = Math.min(geometry.orders[axis], Math.max(geometry.usualOrders[axis], count + 2));
  state.generation++;
  state.axes[axis] = shapeClear(geometry.sizeM[axis], solveAxis(geometry.usualOrders[axis], roots.b, roots));
};

/** At an exceptional point the integral of X^2 vanishes and no shape can be normalised: move the walls by 1e-6. */
const shapeClear = (lengthM: number, roots: AxisRoots, allocate?: Allocate): AxisModes => {
  const modes = shapeAxis(lengthM, roots, allocate);
  if (modes.worstNorm < 1e6) return modes;
  return shapeAxis(
    lengthM,
    solveAxis(
      roots.count,
      roots.b.map((part) => part * (1 + 1e-6)),
    ),
  );
};

/** j k beta for both walls. */
const wallsAt = (beta: Float64Array, kRe: number, kIm: number): Float64Array =>
  Float64Array.of(
    -(kRe * beta[1] + kIm * beta[0]),
    kRe * beta[0] - kIm * beta[1],
    -(kRe * beta[3] + kIm * beta[2]),
    kRe * beta[2] - kIm * beta[3],
  );

/** Makes the first `count` terms of the closed axis ready in the state. */
export const readyTerms = (geometry: BoxGeometry, state: BoxState, axis: Axis, count: number): ClosedTerms => {
  const closed = state.closed[axis];
  if (closed.filled >= count) return closed;
  const terms = geometry.terms(axis);
  growTerms(closed, Math.min(terms.count, Math.ceil(count * 1.1)), geometry.allocate);
  const [b, c] = ACROSS[axis];
  readyOrders(geometry, state, b, terms.firstCount[count - 1]);
  readyOrders(geometry, state, c, terms.secondCount[count - 1]);
  const wB = state.axes[b].roots.w;
  const wC = state.axes[c].roots.w;
  const perB = 1 / geometry.sizeM[b] ** 2;
  const perC = 1 / geometry.sizeM[c] ** 2;
  const k2Re = state.kRe * state.kRe - state.kIm * state.kIm;
  const k2Im = 2 * state.kRe * state.kIm;
  for (let t = closed.filled; t < count; t++) {
    const m = 2 * terms.first[t];
    const n = 2 * terms.second[t];
    fillTerm(
      closed,
      t,
      k2Re - wB[m] * perB - wC[n] * perC,
      k2Im - wB[m + 1] * perB - wC[n + 1] * perC,
      state.walls[axis],
      geometry.sizeM[axis],
    );
  }
  closed.filled = count;
  return closed;
};

/** Bytes held by a state. */
export const bytesOfState = (state: BoxState): number => {
  let bytes = 512;
  for (const axis of AXES) bytes += 110 * state.axes[axis].roots.count + state.closed[axis].table.byteLength;
  return bytes;
};
