import { factoriseComplex, solveComplex } from '../complex-lu.ts';
import { symmetricKernel } from '../kernels/symmetric-kernel.ts';

const MOST_STEPS = 20;
/** A root is made exact by moving it by less than this share. */
const FARTHEST = 0.05;

/** A v. */
export const timesVector = (a: Float64Array, v: Float64Array): Float64Array => {
  const n = v.length / 2;
  const out = new Float64Array(2 * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      const at = 2 * (i * n + j);
      out[2 * i] += a[at] * v[2 * j] - a[at + 1] * v[2 * j + 1];
      out[2 * i + 1] += a[at] * v[2 * j + 1] + a[at + 1] * v[2 * j];
    }
  }
  return out;
};

/** Adds u . v, bilinear, at out[at], out[at + 1]. */
export const setDot = (u: Float64Array, v: Float64Array, out: Float64Array, at: number): void => {
  for (let i = 0; i < u.length; i += 2) {
    out[at] += u[i] * v[i] - u[i + 1] * v[i + 1];
    out[at + 1] += u[i] * v[i + 1] + u[i + 1] * v[i];
  }
};

/**
 * Inverse iteration for (M + M' (k - k0) - k^2) v = 0, M and M' symmetric, from `v` and `root`, which it moves (Ruhe, SIAM J. Numer.
 * Anal. 10 (1973) 674; from memory); where it wanders the root stays as it was, and the answer is false.
 */
export const refine = (
  k0: number,
  matrix: Float64Array,
  slopes: Float64Array,
  v: Float64Array,
  root: Float64Array,
): boolean => {
  const n = v.length / 2;
  const k = root.slice();
  const solve = createSolver(matrix, slopes, n, root);
  for (let step = 0; step < MOST_STEPS; step++) {
    const side = timesVector(slopes, v);
    for (let i = 0; i < n; i++) {
      side[2 * i] -= 2 * (k[0] * v[2 * i] - k[1] * v[2 * i + 1]);
      side[2 * i + 1] -= 2 * (k[0] * v[2 * i + 1] + k[1] * v[2 * i]);
    }
    if (!solve(k0, k, side)) break;
    let top = 0;
    for (let i = 2; i < 2 * n; i += 2)
      if (Math.hypot(side[i], side[i + 1]) > Math.hypot(side[top], side[top + 1])) top = i;
    const square = side[top] ** 2 + side[top + 1] ** 2;
    const moveRe = (v[top] * side[top] + v[top + 1] * side[top + 1]) / square;
    const moveIm = (v[top + 1] * side[top] - v[top] * side[top + 1]) / square;
    k[0] -= moveRe;
    k[1] -= moveIm;
    const scale = 1 / Math.sqrt(square);
    for (let i = 0; i < 2 * n; i++) v[i] = scale * side[i];
    if (!(Math.hypot(k[0] - root[0], k[1] - root[1]) < FARTHEST * k0)) return false;
    if (Math.hypot(moveRe, moveIm) < 1e-7 * k0) break;
  }
  root.set(k);
  return true;
};

/**
 * Solves (M + M' (k - k0) - k^2) x = side in place, false where it is singular. Without pivoting, the rows farthest from `root` first, so
 * that what nearly vanishes comes last; with it where a pivot vanishes before.
 */
const createSolver = (
  matrix: Float64Array,
  slopes: Float64Array,
  n: number,
  root: Float64Array,
): ((k0: number, k: Float64Array, side: Float64Array) => boolean) => {
  const [squareRe, squareIm] = [root[0] * root[0] - root[1] * root[1], 2 * root[0] * root[1]];
  const farness = Float64Array.from({ length: n }, (_, i) => {
    const at = 2 * (i * n + i);
    return Math.hypot(matrix[at] - squareRe, matrix[at + 1] - squareIm);
  });
  const order = Uint32Array.from(farness.keys()).sort((a, b) => farness[b] - farness[a]);
  const packed = new Float64Array(n * (n + 1));
  const turned = new Float64Array(2 * n);
  const setEntry = (i: number, j: number, k0: number, k: Float64Array, to: Float64Array, at: number): void => {
    const from = 2 * (i * n + j);
    to[at] = matrix[from] + slopes[from] * (k[0] - k0) - slopes[from + 1] * k[1];
    to[at + 1] = matrix[from + 1] + slopes[from] * k[1] + slopes[from + 1] * (k[0] - k0);
    if (i !== j) return;
    to[at] -= k[0] * k[0] - k[1] * k[1];
    to[at + 1] -= 2 * k[0] * k[1];
  };
  return (k0, k, side) => {
    let at = 0;
    for (let i = 0; i < n; i++) for (let j = i; j < n; j++, at += 2) setEntry(order[i], order[j], k0, k, packed, at);
    if (symmetricKernel().factorise(n, packed)) {
      for (let i = 0; i < n; i++) turned.set(side.subarray(2 * order[i], 2 * order[i] + 2), 2 * i);
      symmetricKernel().solve(n, packed, turned, 1);
      for (let i = 0; i < n; i++) side.set(turned.subarray(2 * i, 2 * i + 2), 2 * order[i]);
      return true;
    }
    const full = new Float64Array(2 * n * n);
    for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) setEntry(i, j, k0, k, full, 2 * (i * n + j));
    const rows = new Int32Array(n);
    if (!factoriseComplex(n, full, rows)) return false;
    solveComplex(n, full, rows, side);
    return true;
  };
};

/** Newton's method for mu + slope (k - k0) = k^2 from `start`. */
export const rootOf = (k0: number, mu: Float64Array, [sRe, sIm]: Float64Array, start: number): Float64Array | null => {
  let [kRe, kIm] = [start, 0];
  for (let step = 0; step < MOST_STEPS; step++) {
    const fRe = mu[0] + sRe * (kRe - k0) - sIm * kIm - (kRe * kRe - kIm * kIm);
    const fIm = mu[1] + sRe * kIm + sIm * (kRe - k0) - 2 * kRe * kIm;
    const gRe = sRe - 2 * kRe;
    const gIm = sIm - 2 * kIm;
    const square = gRe * gRe + gIm * gIm;
    const moveRe = (fRe * gRe + fIm * gIm) / square;
    const moveIm = (fIm * gRe - fRe * gIm) / square;
    kRe -= moveRe;
    kIm -= moveIm;
    if (moveRe * moveRe + moveIm * moveIm < 1e-24 * k0 * k0) return Float64Array.of(kRe, kIm);
  }
  return null;
};
