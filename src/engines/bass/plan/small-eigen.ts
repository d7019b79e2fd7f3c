import { tridiagonalEigen } from './tridiagonal.ts';

/**
 * Eigenvalues (ascending) and orthonormal eigenvectors (rows) of a small symmetric matrix: Householder's reflections to
 * tridiagonal form (Golub and Van Loan, Matrix Computations, 8.3), then QL. The matrix is overwritten.
 */
export const smallEigen = (matrix: Float64Array, size: number): { values: Float64Array; vectors: Float64Array } => {
  const diagonal = new Float64Array(size);
  const off = new Float64Array(size);
  const mirrors = new Float64Array(size * size);
  const product = new Float64Array(size);
  for (let k = 0; k < size; k++) {
    diagonal[k] = matrix[k * size + k];
    if (k + 1 < size) off[k] = reflect(matrix, size, k, mirrors.subarray(k * size, (k + 1) * size), product);
  }
  const parts = new Float64Array(size * size);
  for (let i = 0; i < size; i++) parts[i * size + i] = 1;
  tridiagonalEigen(diagonal, off, parts, size);
  const order = Array.from({ length: size }, (_, i) => i).sort((a, b) => diagonal[a] - diagonal[b]);
  const vectors = new Float64Array(size * size);
  for (const [row, i] of order.entries()) {
    const vector = vectors.subarray(row * size, (row + 1) * size);
    vector.set(parts.subarray(i * size, (i + 1) * size));
    for (let k = size - 2; k >= 0; k--) mirror(mirrors, k * size, k + 1, vector);
  }
  return { values: Float64Array.from(order, (i) => diagonal[i]), vectors };
};

/** x -= v (v . x) over entries `from` on; v has length sqrt 2, or 0 for no reflection. */
const mirror = (mirrors: Float64Array, at: number, from: number, x: Float64Array): void => {
  let along = 0;
  for (let j = from; j < x.length; j++) along += mirrors[at + j] * x[j];
  for (let j = from; j < x.length; j++) x[j] -= along * mirrors[at + j];
};

/** Clears column k below its second entry, from both sides; returns the entry beside the diagonal. */
const reflect = (matrix: Float64Array, size: number, k: number, v: Float64Array, product: Float64Array): number => {
  let below = 0;
  for (let i = k + 1; i < size; i++) {
    v[i] = matrix[i * size + k];
    if (i > k + 1) below += v[i] * v[i];
  }
  const first = v[k + 1];
  if (below === 0) {
    v.fill(0);
    return first;
  }
  const length = Math.sqrt(first * first + below);
  const kept = first > 0 ? -length : length;
  v[k + 1] = first - kept;
  const scale = Math.sqrt(2 / (v[k + 1] * v[k + 1] + below));
  for (let i = k + 1; i < size; i++) v[i] *= scale;
  let along = 0;
  for (let i = k + 1; i < size; i++) {
    let sum = 0;
    for (let j = k + 1; j < size; j++) sum += matrix[i * size + j] * v[j];
    product[i] = sum;
    along += sum * v[i];
  }
  for (let i = k + 1; i < size; i++) product[i] -= (along / 2) * v[i];
  for (let i = k + 1; i < size; i++)
    for (let j = k + 1; j < size; j++) matrix[i * size + j] -= v[i] * product[j] + product[i] * v[j];
  return kept;
};
