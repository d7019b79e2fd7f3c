/**
 * Dense complex linear systems in place: A = P L U with partial pivoting by rows (Golub and Van Loan, Matrix Computations,
 * section 3.4; from memory). Matrices are row-major, each number as re, im: entry (i, j) of a system of `n` stands at
 * 2 (i n + j). Pivots are chosen by |re| + |im|, which is within a factor sqrt 2 of the modulus. Nothing is allocated.
 * One factorisation costs (8/3) n^3 operations, one solution 8 n^2.
 */

/**
 * Factorises `a` in place; `rows[i]` becomes the row that was exchanged with row i at step i, and the diagonal holds the
 * pivots' inverses. False when a pivot is zero or not finite: the matrix is singular and `a` is spoilt.
 */
export const factoriseComplex = (n: number, a: Float64Array, rows: Int32Array): boolean => {
  const width = 2 * n;
  for (let k = 0; k < n; k++) {
    let pivot = k;
    let largest = -1;
    for (let i = k; i < n; i++) {
      const size = Math.abs(a[i * width + 2 * k]) + Math.abs(a[i * width + 2 * k + 1]);
      if (size > largest) {
        largest = size;
        pivot = i;
      }
    }
    if (!(largest > 0 && largest < Number.POSITIVE_INFINITY)) return false;
    rows[k] = pivot;
    const top = k * width;
    if (pivot !== k) {
      const other = pivot * width;
      for (let j = 0; j < width; j++) {
        const held = a[top + j];
        a[top + j] = a[other + j];
        a[other + j] = held;
      }
    }
    // scaled by the larger part, so that neither square over- nor underflows
    const diagonal = top + 2 * k;
    const re = a[diagonal] / largest;
    const im = a[diagonal + 1] / largest;
    const square = (re * re + im * im) * largest;
    const invRe = re / square;
    const invIm = -im / square;
    a[diagonal] = invRe;
    a[diagonal + 1] = invIm;
    for (let i = k + 1; i < n; i++) {
      const row = i * width;
      const xRe = a[row + 2 * k];
      const xIm = a[row + 2 * k + 1];
      if (xRe === 0 && xIm === 0) continue;
      const fRe = xRe * invRe - xIm * invIm;
      const fIm = xRe * invIm + xIm * invRe;
      a[row + 2 * k] = fRe;
      a[row + 2 * k + 1] = fIm;
      for (let j = 2 * k + 2; j < width; j += 2) {
        const uRe = a[top + j];
        const uIm = a[top + j + 1];
        a[row + j] -= fRe * uRe - fIm * uIm;
        a[row + j + 1] -= fRe * uIm + fIm * uRe;
      }
    }
  }
  return true;
};

/** Solves A x = b for one right side, b at `x[offset...]` as re, im, overwritten by the solution. */
export const solveComplex = (n: number, lu: Float64Array, rows: Int32Array, x: Float64Array, offset = 0): void => {
  const width = 2 * n;
  for (let k = 0; k < n; k++) {
    const other = rows[k];
    if (other === k) continue;
    const i = offset + 2 * k;
    const j = offset + 2 * other;
    const re = x[i];
    const im = x[i + 1];
    x[i] = x[j];
    x[i + 1] = x[j + 1];
    x[j] = re;
    x[j + 1] = im;
  }
  for (let i = 1; i < n; i++) {
    const row = i * width;
    let re = x[offset + 2 * i];
    let im = x[offset + 2 * i + 1];
    for (let j = 0; j < 2 * i; j += 2) {
      const lRe = lu[row + j];
      const lIm = lu[row + j + 1];
      const xRe = x[offset + j];
      const xIm = x[offset + j + 1];
      re -= lRe * xRe - lIm * xIm;
      im -= lRe * xIm + lIm * xRe;
    }
    x[offset + 2 * i] = re;
    x[offset + 2 * i + 1] = im;
  }
  for (let i = n - 1; i >= 0; i--) {
    const row = i * width;
    let re = x[offset + 2 * i];
    let im = x[offset + 2 * i + 1];
    for (let j = 2 * i + 2; j < width; j += 2) {
      const uRe = lu[row + j];
      const uIm = lu[row + j + 1];
      const xRe = x[offset + j];
      const xIm = x[offset + j + 1];
      re -= uRe * xRe - uIm * xIm;
      im -= uRe * xIm + uIm * xRe;
    }
    const dRe = lu[row + 2 * i];
    const dIm = lu[row + 2 * i + 1];
    x[offset + 2 * i] = re * dRe - im * dIm;
    x[offset + 2 * i + 1] = re * dIm + im * dRe;
  }
};
