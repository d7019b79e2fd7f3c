/**
 * Eigenvalues of the symmetric tridiagonal matrix with diagonal `diagonal` and `off[i]` beside it, by implicit QL with
 * Wilkinson's shift (Wilkinson and Reinsch, Handbook for Automatic Computation II, 1971, contribution II/4; from memory). Both
 * arrays are overwritten, the eigenvalues in no order. `vectors`, when given, holds rows of `width`: row i becomes the part
 * that the rows given have in eigenvector i (identity in: whole eigenvectors; last column of it: their last entries).
 */
export const tridiagonalEigen = (
  diagonal: Float64Array,
  off: Float64Array,
  vectors: Float64Array,
  width: number,
): void => {
  const size = diagonal.length;
  for (let start = 0; start < size; start++) {
    for (let sweep = 0; sweep < 80; sweep++) {
      let end = start;
      while (end < size - 1) {
        const scale = Math.abs(diagonal[end]) + Math.abs(diagonal[end + 1]);
        if (Math.abs(off[end]) <= 2.3e-16 * scale) break;
        end++;
      }
      if (end === start) break;
      const half = (diagonal[start + 1] - diagonal[start]) / (2 * off[start]);
      const root = Math.hypot(half, 1);
      let bulge = diagonal[end] - diagonal[start] + off[start] / (half + (half < 0 ? -root : root));
      let [sine, cosine, carried] = [1, 1, 0];
      let i = end - 1;
      for (; i >= start; i--) {
        const f = sine * off[i];
        const b = cosine * off[i];
        const r = Math.sqrt(f * f + bulge * bulge);
        off[i + 1] = r;
        if (r === 0) {
          diagonal[i + 1] -= carried;
          off[end] = 0;
          break;
        }
        sine = f / r;
        cosine = bulge / r;
        const g = diagonal[i + 1] - carried;
        const t = (diagonal[i] - g) * sine + 2 * cosine * b;
        carried = sine * t;
        diagonal[i + 1] = g + carried;
        bulge = cosine * t - b;
        rotate(vectors, i * width, width, cosine, sine);
      }
      if (i >= start) continue;
      diagonal[start] -= carried;
      off[start] = bulge;
      off[end] = 0;
    }
  }
};

/** Turns two rows next to each other. */
const rotate = (rows: Float64Array, at: number, width: number, cosine: number, sine: number): void => {
  for (let k = at; k < at + width; k++) {
    const upper = rows[k];
    const lower = rows[k + width];
    rows[k + width] = sine * upper + cosine * lower;
    rows[k] = cosine * upper - sine * lower;
  }
};
