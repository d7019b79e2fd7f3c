import { seededRandom } from '../../../math/random.ts';
import { multiply, type PlanMatrices } from './plan-matrices.ts';
import type { PlanSpace } from './plan-space.ts';
import { addRows, dotOf, dotRows } from './row-products.ts';
import { factorShifted, type ShiftedFactor } from './shifted-factor.ts';
import { tridiagonalEigen } from './tridiagonal.ts';

/** Eigenpairs of K x = lambda M x, ascending, M-orthonormal. */
export interface RigidModes {
  readonly values: Float64Array;
  /** One vector a row: values.length x space.size. */
  readonly vectors: Float64Array;
}

/** Residual of a pair of the inverted problem, relative to its value, at which it counts as found. */
const SETTLED = 1e-9;
const MOST_RUNS = 8;
/** Numbers of vectors worked on between two pauses: twelve vectors of a plan of 40 m2. */
const AT_ONCE = 15_000;
export const vectorsAtOnce = (size: number): number => Math.min(12, Math.max(1, Math.floor(AT_ONCE / size)));

interface Krylov {
  readonly rows: Float64Array;
  /** Mass times every row. */
  readonly heavy: Float64Array;
  readonly diagonal: Float64Array;
  readonly off: Float64Array;
  steps: number;
}

/** Modes looked for about one shift: making vectors orthogonal costs their square, a factorisation the same whatever there is. */
const PER_SLICE = 90;

/** The factorisation of K - s M at s or a little beside it, where s lies on an eigenvalue of a leading part. */
const steadyFactor = (space: PlanSpace, matrices: PlanMatrices, s: number) => {
  let at = s;
  let factor = factorShifted(space, matrices, -at);
  for (let nudge = 0; nudge < 20 && factor.steadiness < 1e-7; nudge++) {
    at *= 1.0007;
    factor = factorShifted(space, matrices, -at);
  }
  return { at, factor };
};

/**
 * All eigenpairs up to `bound`, the range cut into slices of some PER_SLICE pairs. In each, Lanczos on (K - s M)^-1 M with s
 * in its middle (Ericsson and Ruhe, 1980), every vector made orthogonal to all before it. How many there are is known by the negative
 * pivots of K - b M at both ends b of the slice (spectrum slicing: Grimes, Lewis and Simon, 1994; from memory); where a run ends
 * with fewer (equal eigenvalues show once a run) another starts orthogonal to what was found. Throws when a count is not reached. Pauses between vectors.
 */
export function* rigidModes(space: PlanSpace, matrices: PlanMatrices, bound: number): Generator<void, RigidModes> {
  const top = bound * (1 + 1e-9) + 1e-9;
  const wanted = factorShifted(space, matrices, -top).negative;
  const slices = Math.max(1, Math.round(wanted / PER_SLICE));
  const random = seededRandom(20_761);
  const vectors = new Float64Array(wanted * space.size);
  const values: number[] = [];
  let low = -top;
  for (let slice = 1; slice <= slices; slice++) {
    const last = slice === slices;
    // modes lie evenly over the square of the wavenumber, nearly
    const end = last ? null : steadyFactor(space, matrices, (top * slice) / slices);
    const high = end?.at ?? top;
    const count = end?.factor.negative ?? wanted;
    yield;
    yield* addSlice(space, matrices, { low, high }, count, values, vectors, random);
    low = high;
  }
  const order = values.map((_, i) => i).sort((a, b) => values[a] - values[b]);
  const sorted = new Float64Array(vectors.length);
  for (const [row, i] of order.entries())
    sorted.set(vectors.subarray(i * space.size, (i + 1) * space.size), row * space.size);
  return { values: Float64Array.from(order, (i) => Math.max(0, values[i])), vectors: sorted };
}

/** A stretch of eigenvalues, its lower end left out. */
interface Range {
  readonly low: number;
  readonly high: number;
}

/** Adds the pairs of one range to `values` and `vectors`, until there are `count` in all. */
function* addSlice(
  space: PlanSpace,
  matrices: PlanMatrices,
  range: Range,
  count: number,
  values: number[],
  vectors: Float64Array,
  random: () => number,
): Generator<void, void> {
  if (count === values.length) return;
  const first = values.length;
  const { at, factor } = steadyFactor(space, matrices, (Math.max(0, range.low) + range.high) / 2);
  for (let run = 0; run < MOST_RUNS && values.length < count; run++) {
    const locked = vectors.subarray(first * space.size, values.length * space.size);
    yield;
    const found = yield* runOnce(
      space,
      matrices,
      factor,
      at,
      range,
      count - values.length,
      locked,
      values.length - first,
      random,
    );
    if (values.length + found.values.length > count) break;
    vectors.set(found.vectors, values.length * space.size);
    values.push(...found.values);
  }
  if (values.length !== count)
    throw new RangeError(`${count} plan modes lie below a bound, ${values.length} were found.`);
}

function* runOnce(
  space: PlanSpace,
  matrices: PlanMatrices,
  factor: ShiftedFactor,
  middle: number,
  range: Range,
  missing: number,
  locked: Float64Array,
  lockedCount: number,
  random: () => number,
): Generator<void, RigidModes> {
  const { size } = space;
  const atOnce = vectorsAtOnce(size);
  const most = Math.min(size - lockedCount, Math.ceil(2.6 * missing) + 60);
  const krylov: Krylov = {
    rows: new Float64Array((most + 1) * size),
    heavy: new Float64Array((most + 1) * size),
    diagonal: new Float64Array(most),
    off: new Float64Array(most),
    steps: 0,
  };
  const scratch = new Float64Array(size);
  const weights = new Float64Array(Math.max(most + 1, lockedCount));
  const purge = (x: Float64Array, known: number): void => {
    if (lockedCount > 0) {
      multiply(space, matrices.mass, x, scratch);
      dotRows(locked, lockedCount, size, scratch, weights);
      addRows(locked, lockedCount, size, weights, 0, -1, x, 0);
    }
    dotRows(krylov.heavy, known, size, x, weights);
    addRows(krylov.rows, known, size, weights, 0, -1, x, 0);
  };
  /** Makes x the next vector, of length 1; returns its length before. */
  const keep = (x: Float64Array, known: number): number => {
    multiply(space, matrices.mass, x, scratch);
    const length = Math.sqrt(Math.max(0, dotOf(x, scratch)));
    for (let k = 0; k < size; k++) {
      krylov.rows[known * size + k] = x[k] / length;
      krylov.heavy[known * size + k] = scratch[k] / length;
    }
    return length;
  };
  const x = Float64Array.from({ length: size }, () => random() - 0.5);
  purge(x, 0);
  purge(x, 0);
  keep(x, 0);
  let check = Math.min(most, Math.ceil(1.5 * missing) + 12);
  for (let step = 0; step < most; step++) {
    const heavy = krylov.heavy.subarray(step * size, (step + 1) * size);
    x.set(heavy);
    factor.solve(x);
    krylov.diagonal[step] = dotOf(x, heavy);
    purge(x, step + 1);
    krylov.off[step] = keep(x, step + 1);
    krylov.steps = step + 1;
    if (step % atOnce === atOnce - 1) yield;
    const broken = krylov.off[step] < 1e-13 * Math.abs(krylov.diagonal[step]);
    if (broken || krylov.steps === most || krylov.steps === check) {
      check = Math.min(most, check + Math.max(6, Math.ceil(0.06 * check)));
      if (broken || krylov.steps === most || isDone(krylov, middle, range, missing)) break;
    }
  }
  return yield* ritzPairs(krylov, size, middle, range);
}

/** Whether as many pairs as are missing have settled, or all in range have and one beyond either end too, where that holds one. */
const isDone = ({ diagonal, off, steps }: Krylov, middle: number, range: Range, missing: number): boolean => {
  const theta = diagonal.slice(0, steps);
  const last = new Float64Array(steps);
  last[steps - 1] = 1;
  tridiagonalEigen(theta, off.slice(0, steps), last, 1);
  let [settled, open, above, below] = [0, 0, false, range.low < 0];
  for (let i = 0; i < steps; i++) {
    const fine = Math.abs(off[steps - 1] * last[i]) <= SETTLED * Math.abs(theta[i]);
    const value = middle + 1 / theta[i];
    if (theta[i] === 0 || value > range.high) above ||= fine;
    else if (value <= range.low) below ||= fine;
    else if (fine) settled++;
    else open++;
  }
  return settled >= missing || (open === 0 && above && below);
};

/** The settled pairs in range. */
function* ritzPairs(
  { rows, diagonal, off, steps }: Krylov,
  size: number,
  middle: number,
  { low, high }: Range,
): Generator<void, RigidModes> {
  const theta = diagonal.slice(0, steps);
  const parts = new Float64Array(steps * steps);
  for (let i = 0; i < steps; i++) parts[i * steps + i] = 1;
  tridiagonalEigen(theta, off.slice(0, steps), parts, steps);
  const chosen: number[] = [];
  for (let i = 0; i < steps; i++) {
    const value = middle + 1 / theta[i];
    const fine = Math.abs(off[steps - 1] * parts[i * steps + steps - 1]) <= SETTLED * Math.abs(theta[i]);
    if (fine && value <= high && value > low) chosen.push(i);
  }
  const vectors = new Float64Array(chosen.length * size);
  const atOnce = vectorsAtOnce(size);
  for (const [row, i] of chosen.entries()) {
    if (row % atOnce === 0) yield;
    addRows(rows, steps, size, parts, i * steps, 1, vectors, row * size);
  }
  return { values: Float64Array.from(chosen, (i) => middle + 1 / theta[i]), vectors };
}
