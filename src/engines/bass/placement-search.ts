import { createPlacementKernel, type PlacementKernel } from './kernels/placement-kernel.ts';
import type { UnitResponses } from './room-field.ts';

/** Powers of two in decibels: 10 log10 2. */
const DB_PER_DOUBLING = 10 * Math.log10(2);
const LANES = 4;

/** Fields of candidates at seats, and what stays as it is (`base`, index receiver * frequencies + frequency; null for nothing). */
export interface PlacementInput {
  readonly candidates: UnitResponses;
  readonly base: { readonly re: Float64Array; readonly im: Float64Array } | null;
  /** How many are chosen of the candidates: 1 to 4. */
  readonly choose: number;
}

export interface PlacementSearch {
  readonly total: number;
  /** Combinations scored so far. */
  readonly done: number;
  /** Scores at least `combinations` more; true when all are scored. */
  step(combinations: number): boolean;
  /**
   * Mean over frequency of the standard deviation over the seats in dB (divisor n - 1) of every combination, in
   * lexicographic order of the ascending candidate numbers.
   */
  readonly spreadDb: Float32Array;
  /** The candidates of a combination by its place in the order. */
  combination(index: number): number[];
}

/** n choose k. */
export const choose = (n: number, k: number): number => {
  let count = 1;
  for (let i = 1; i <= k; i++) count = (count * (n - k + i)) / i;
  return k > n ? 0 : Math.round(count);
};

/** The combination of `k` out of 0..n-1 at `index` of the lexicographic order. */
export const combinationAt = (n: number, k: number, index: number): number[] => {
  const chosen: number[] = [];
  let left = index;
  for (let next = 0; chosen.length < k; next++) {
    const here = choose(n - next - 1, k - chosen.length - 1);
    if (left < here) chosen.push(next);
    else left -= here;
  }
  return chosen;
};

/**
 * Scores every choice of `choose` among the candidates, all driven alike, on top of `base`: exhaustive, with nested partial
 * sums so that a combination costs one addition, one logarithm and three sums a seat and frequency. Needs at least two seats.
 */
export const createPlacementSearch = (
  { candidates, base, choose: k }: PlacementInput,
  createKernel: (floats: number) => PlacementKernel = createPlacementKernel,
): PlacementSearch => {
  const { sources: n, receivers: seats, frequencies } = candidates;
  if (seats < 2) throw new RangeError('one seat has no spread');
  if (k < 1 || k > 4 || k > n) throw new RangeError('1 to 4 of the candidates are chosen');
  const groups = Math.ceil(frequencies / LANES);
  const stride = groups * seats * 2 * LANES;
  const partials = n * stride;
  const scores = partials + k * stride;
  const total = choose(n, k);
  const kernel = createKernel(scores + total + (total % LANES));
  const { floats } = kernel;
  const lay = (to: number, re: Float64Array, im: Float64Array, from: number): void => {
    for (let f = 0; f < frequencies; f++) {
      for (let s = 0; s < seats; s++) {
        const at = to + ((f >> 2) * seats + s) * 2 * LANES + (f & 3);
        floats[at] = re[from + s * frequencies + f];
        floats[at + LANES] = im[from + s * frequencies + f];
      }
    }
  };
  for (let c = 0; c < n; c++) lay(c * stride, candidates.re, candidates.im, c * seats * frequencies);
  if (base) lay(partials, base.re, base.im, 0);
  const scale = DB_PER_DOUBLING / frequencies;
  let done = 0;

  function* visit(level: number, from: number): Generator<void> {
    const partial = partials + level * stride;
    if (level === k - 1) {
      kernel.scores(partial, from * stride, stride, n - from, groups, seats, scale, scores + done);
      done += n - from;
      return;
    }
    for (let c = from; c <= n - (k - level); c++) {
      kernel.add(partial + stride, partial, c * stride, stride);
      yield* visit(level + 1, c + 1);
      yield;
    }
  }
  const walk = visit(0, 0);
  return {
    total,
    get done() {
      return done;
    },
    step: (combinations) => {
      const until = done + combinations;
      while (done < until) if (walk.next().done === true) return true;
      return done === total;
    },
    spreadDb: floats.subarray(scores, scores + total),
    combination: (index) => combinationAt(n, k, index),
  };
};
