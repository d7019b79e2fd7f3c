import { factoriseComplex, solveComplex } from '../complex-lu.ts';

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
 * Inverse iteration for (M + M' (k - k0) - k^2) v = 0 from `v` and `root`, which it moves (Ruhe, SIAM J. Numer. Anal. 10
 * (1973) 674; from memory); where it wanders the root stays as it was.
 */
export const refine = (
  k0: number,
  matrix: Float64Array,
  slopes: Float64Array,
  v: Float64Array,
  root: Float64Array,
): void => {
  const n = v.length / 2;
  const k = root.slice();
  const a = new Float64Array(2 * n * n);
  const rows = new Int32Array(n);
  for (let step = 0; step < MOST_STEPS; step++) {
    const side = timesVector(slopes, v);
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) {
        const at = 2 * (i * n + j);
        a[at] = matrix[at] + slopes[at] * (k[0] - k0) - slopes[at + 1] * k[1];
        a[at + 1] = matrix[at + 1] + slopes[at] * k[1] + slopes[at + 1] * (k[0] - k0);
      }
      const at = 2 * (i * n + i);
      a[at] -= k[0] * k[0] - k[1] * k[1];
      a[at + 1] -= 2 * k[0] * k[1];
      side[2 * i] -= 2 * (k[0] * v[2 * i] - k[1] * v[2 * i + 1]);
      side[2 * i + 1] -= 2 * (k[0] * v[2 * i + 1] + k[1] * v[2 * i]);
    }
    if (!factoriseComplex(n, a, rows)) break;
    solveComplex(n, a, rows, side);
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
    if (!(Math.hypot(k[0] - root[0], k[1] - root[1]) < FARTHEST * k0)) return;
    if (Math.hypot(moveRe, moveIm) < 1e-7 * k0) break;
  }
  root.set(k);
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
