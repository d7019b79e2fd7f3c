import type { SymmetricKernel } from './symmetric-kernel.ts';

/**
 * Complex symmetric systems A = L D L^T (no conjugate) without pivoting, in place. Packed rows of the upper triangle, re, im
 * each: row k holds (k, k) .. (k, n - 1) from 2 (k n - k (k - 1) / 2) on. After the factorisation the diagonal holds 1 / D
 * and the rest of row k the column k of L.
 *
 * The matrices here have an imaginary part whose sign never changes (walls only absorb), so that no pivot vanishes but on
 * a resonance of a lossless room, and the largest real parts come first. What is left is caught: `factorise`
 * answers false when a multiplier grows beyond MOST_GROWTH. (Golub and Van Loan, Matrix Computations, section 4.1; Higham,
 * Math. Comp. 67 (1998) 1591 on complex symmetric matrices; both from memory.)
 *
 * In plain TypeScript: the fallback where WebAssembly is not to be had, and the oracle of symmetric.as.
 */
export const MOST_GROWTH = 1e7;

/** Start of row k. */
const rowAt = (n: number, k: number): number => 2 * k * n - k * (k - 1);

/** Replaces the pivot at `top` by its inverse; false when it is nothing. */
const invertPivot = (a: Float64Array, top: number): boolean => {
  const re = a[top];
  const im = a[top + 1];
  const square = re * re + im * im;
  if (!(square > 1e-200 && square < 1e200)) return false;
  a[top] = re / square;
  a[top + 1] = -im / square;
  return true;
};

/** Two pivots at a time: every later row is read and written once for both. */
const factorise = (n: number, a: Float64Array): boolean => {
  for (let k = 0; k < n; k += 2) {
    const top = rowAt(n, k);
    if (!invertPivot(a, top)) return false;
    const pRe = a[top];
    const pIm = a[top + 1];
    if (k + 1 === n) return true;
    const second = rowAt(n, k + 1);
    // the second row less its share of the first
    const sRe = a[top + 2] * pRe - a[top + 3] * pIm;
    const sIm = a[top + 2] * pIm + a[top + 3] * pRe;
    if (Math.abs(sRe) + Math.abs(sIm) > MOST_GROWTH) return false;
    const end = 2 * (n - k);
    for (let j = 2; j < end; j += 2) {
      const uRe = a[top + j];
      const uIm = a[top + j + 1];
      a[second + j - 2] -= sRe * uRe - sIm * uIm;
      a[second + j - 1] -= sRe * uIm + sIm * uRe;
    }
    a[top + 2] = sRe;
    a[top + 3] = sIm;
    if (!invertPivot(a, second)) return false;
    const qRe = a[second];
    const qIm = a[second + 1];
    for (let i = 4; i < end; i += 2) {
      const x = top + i;
      const y = second + i - 2;
      const fRe = a[x] * pRe - a[x + 1] * pIm;
      const fIm = a[x] * pIm + a[x + 1] * pRe;
      const gRe = a[y] * qRe - a[y + 1] * qIm;
      const gIm = a[y] * qIm + a[y + 1] * qRe;
      if (Math.abs(fRe) + Math.abs(fIm) + Math.abs(gRe) + Math.abs(gIm) > MOST_GROWTH) return false;
      const to = rowAt(n, k + (i >> 1)) - i;
      for (let j = i; j < end; j += 2) {
        const uRe = a[top + j];
        const uIm = a[top + j + 1];
        const vRe = a[second + j - 2];
        const vIm = a[second + j - 1];
        a[to + j] -= fRe * uRe - fIm * uIm + gRe * vRe - gIm * vIm;
        a[to + j + 1] -= fRe * uIm + fIm * uRe + gRe * vIm + gIm * vRe;
      }
      // these rows are not read again left of here: their entries may become the multipliers
      a[x] = fRe;
      a[x + 1] = fIm;
      a[y] = gRe;
      a[y + 1] = gIm;
    }
  }
  return true;
};

/**
 * Solves A X = B for `count` right sides at once, overwritten: entry (i, r) as re, im at 2 (i count + r) of `x`.
 */
const solve = (n: number, factor: Float64Array, x: Float64Array, count: number): void => {
  const width = 2 * count;
  for (let k = 0; k < n; k++) {
    const top = rowAt(n, k);
    const from = k * width;
    for (let i = k + 1; i < n; i++) {
      const at = top + 2 * (i - k);
      const lRe = factor[at];
      const lIm = factor[at + 1];
      if (lRe === 0 && lIm === 0) continue;
      const to = i * width;
      for (let r = 0; r < width; r += 2) {
        const re = x[from + r];
        const im = x[from + r + 1];
        x[to + r] -= lRe * re - lIm * im;
        x[to + r + 1] -= lRe * im + lIm * re;
      }
    }
  }
  for (let k = n - 1; k >= 0; k--) {
    const top = rowAt(n, k);
    const to = k * width;
    const dRe = factor[top];
    const dIm = factor[top + 1];
    for (let r = 0; r < width; r += 2) {
      const re = x[to + r];
      const im = x[to + r + 1];
      x[to + r] = re * dRe - im * dIm;
      x[to + r + 1] = re * dIm + im * dRe;
    }
    for (let i = k + 1; i < n; i++) {
      const at = top + 2 * (i - k);
      const lRe = factor[at];
      const lIm = factor[at + 1];
      if (lRe === 0 && lIm === 0) continue;
      const from = i * width;
      for (let r = 0; r < width; r += 2) {
        const re = x[from + r];
        const im = x[from + r + 1];
        x[to + r] -= lRe * re - lIm * im;
        x[to + r + 1] -= lRe * im + lIm * re;
      }
    }
  }
};

/** out[m][l] = sum over i of p[i][m] x[i][l]: `p` real, `rows` by `left`; `x` re, im, `rows` by `right`; `out` re, im, `left` by `right`. */
const products = (
  rows: number,
  p: Float64Array,
  left: number,
  x: Float64Array,
  right: number,
  out: Float64Array,
): void => {
  const width = 2 * right;
  out.fill(0, 0, left * width);
  for (let i = 0; i < rows; i++) {
    const from = i * width;
    for (let m = 0; m < left; m++) {
      const value = p[i * left + m];
      const to = m * width;
      for (let r = 0; r < width; r++) out[to + r] += value * x[from + r];
    }
  }
};

export const plainSymmetricKernel: SymmetricKernel = { place: 'plain', factorise, solve, products };
