import { eigenpairsOf } from '../complex-eigen.ts';
import { refine, rootOf, setDot, timesVector } from '../prism/linear-in-k.ts';
import type { Guess } from './free-roots.ts';

/** A(k) of modes tied together, A x = k^2 x, at one complex wavenumber. */
export interface TiedMatrix {
  readonly kRe: number;
  readonly kIm: number;
  /** Row by row as re, im; symmetric. */
  readonly matrix: Float64Array;
}

/** Slope by a difference of this share of k. */
export const DIFFERENCE = 0.02;

/** A + A' (k - k_real) in place of A + A' (k - k_complex), as linear-in-k.ts wants it. */
export const fromReal = ({ matrix, kIm }: TiedMatrix, slopes: Float64Array): Float64Array => {
  const out = matrix.slice();
  for (let i = 0; i < out.length; i += 2) {
    out[i] += kIm * slopes[i + 1];
    out[i + 1] -= kIm * slopes[i];
  }
  return out;
};

/** dA/dk, from A at two places. */
export const slopesOf = (a: TiedMatrix, b: TiedMatrix): Float64Array => {
  const [dRe, dIm] = [b.kRe - a.kRe, b.kIm - a.kIm];
  const square = dRe * dRe + dIm * dIm;
  const out = new Float64Array(a.matrix.length);
  for (let i = 0; i < out.length; i += 2) {
    const re = b.matrix[i] - a.matrix[i];
    const im = b.matrix[i + 1] - a.matrix[i + 1];
    out[i] = (re * dRe + im * dIm) / square;
    out[i + 1] = (im * dRe - re * dIm) / square;
  }
  return out;
};

/**
 * Where the oscillations of `parts` are that A and its slope lead to, as far as Re k lies within `reachK` of its wavenumber: of as
 * many as there are parts.
 */
export const guessesFrom = <Part extends object>(
  tied: TiedMatrix,
  slopes: Float64Array,
  parts: readonly Part[],
  reachK: number,
): Guess<Part>[] => {
  const size = parts.length;
  const matrix = fromReal(tied, slopes);
  const pairs = eigenpairsOf(size, tied.matrix.slice());
  if (pairs === null) return [];
  const guesses: Guess<Part>[] = [];
  for (let i = 0; i < size; i++) {
    const x = pairs.vectors.slice(2 * i * size, 2 * (i + 1) * size);
    const rise = riseOf(slopes, x);
    const [re, im] = [pairs.values[2 * i], pairs.values[2 * i + 1]];
    const mu = Float64Array.of(re + tied.kIm * rise[1], im - tied.kIm * rise[0]);
    const k = rootOf(tied.kRe, mu, rise, Math.sqrt(Math.max(mu[0], tied.kRe ** 2 / 9)));
    if (k === null || Math.abs(k[0] - tied.kRe) > reachK) continue;
    refine(tied.kRe, matrix, slopes, x, k);
    guesses.push({ k, x, parts });
  }
  return guesses;
};

/** Below this share of |x|^2 x . x says nothing: two modes nearly are one. */
const LEAST_SQUARE = 1e-3;

/** How the eigenvalue of x rises with k: x . A' x / x . x. */
const riseOf = (slopes: Float64Array, x: Float64Array): Float64Array => {
  const [square, turned] = [new Float64Array(2), new Float64Array(2)];
  setDot(x, x, square, 0);
  const size = square[0] ** 2 + square[1] ** 2;
  if (size < LEAST_SQUARE * LEAST_SQUARE) return turned;
  setDot(x, timesVector(slopes, x), turned, 0);
  return Float64Array.of(
    (turned[0] * square[0] + turned[1] * square[1]) / size,
    (turned[1] * square[0] - turned[0] * square[1]) / size,
  );
};
