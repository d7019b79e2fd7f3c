/**
 * Complex symmetric systems A = L D L^T (no conjugate) without pivoting, in place. Packed rows of the upper triangle, re, im
 * each: row k holds (k, k) .. (k, n - 1) from 2 (k n - k (k - 1) / 2) on. After the factorisation the diagonal holds 1 / D
 * and the rest of row k the column k of L.
 *
 * The matrices here have an imaginary part whose sign never changes (walls only absorb), so that no pivot vanishes but on
 * a resonance of a lossless room, and the largest real parts come first. What is left is caught: `factoriseSymmetric`
 * answers false when a multiplier grows beyond MOST_GROWTH. (Golub and Van Loan, Matrix Computations, section 4.1; Higham,
 * Math. Comp. 67 (1998) 1591 on complex symmetric matrices; both from memory.)
 */
const MOST_GROWTH = 1e7;

export const packedLength = (n: number): number => n * (n + 1);

/** Start of row k. */
const rowAt = (n: number, k: number): number => 2 * k * n - k * (k - 1);

export const factoriseSymmetric = (n: number, a: Float64Array): boolean => {
  for (let k = 0; k < n; k++) {
    const top = rowAt(n, k);
    const dRe = a[top];
    const dIm = a[top + 1];
    const square = dRe * dRe + dIm * dIm;
    if (!(square > 1e-200 && square < 1e200)) return false;
    const invRe = dRe / square;
    const invIm = -dIm / square;
    a[top] = invRe;
    a[top + 1] = invIm;
    for (let i = k + 1; i < n; i++) {
      const at = top + 2 * (i - k);
      const xRe = a[at];
      const xIm = a[at + 1];
      if (xRe === 0 && xIm === 0) continue;
      const fRe = xRe * invRe - xIm * invIm;
      const fIm = xRe * invIm + xIm * invRe;
      if (Math.abs(fRe) + Math.abs(fIm) > MOST_GROWTH) return false;
      let to = rowAt(n, i);
      for (let j = at, end = top + 2 * (n - k); j < end; j += 2, to += 2) {
        const uRe = a[j];
        const uIm = a[j + 1];
        a[to] -= fRe * uRe - fIm * uIm;
        a[to + 1] -= fRe * uIm + fIm * uRe;
      }
      // row k is not read again left of here: its entry may become the multiplier
      a[at] = fRe;
      a[at + 1] = fIm;
    }
  }
  return true;
};

/**
 * Solves A X = B for `count` right sides at once, overwritten: entry (i, r) as re, im at 2 (i count + r) of `x`.
 */
export const solveSymmetric = (n: number, factor: Float64Array, x: Float64Array, count: number): void => {
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
