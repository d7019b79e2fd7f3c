/**
 * Eigenvalues (ascending) and orthonormal eigenvectors (rows) of a small symmetric matrix by Jacobi's rotations in cyclic
 * order (Golub and Van Loan, Matrix Computations, 8.5). The matrix is overwritten.
 */
export const smallEigen = (matrix: Float64Array, size: number): { values: Float64Array; vectors: Float64Array } => {
  const vectors = new Float64Array(size * size);
  for (let i = 0; i < size; i++) vectors[i * size + i] = 1;
  for (let sweep = 0; sweep < 30; sweep++) {
    let largest = 0;
    for (let p = 0; p < size; p++) {
      for (let q = p + 1; q < size; q++) {
        const off = matrix[p * size + q];
        const scale = Math.sqrt(Math.abs(matrix[p * size + p] * matrix[q * size + q]));
        if (Math.abs(off) <= 1e-15 * scale) continue;
        largest = Math.max(largest, Math.abs(off) / (scale || 1));
        turn(matrix, vectors, size, p, q, off);
      }
    }
    if (largest < 1e-13) break;
  }
  const order = Array.from({ length: size }, (_, i) => i).sort((a, b) => matrix[a * size + a] - matrix[b * size + b]);
  const values = Float64Array.from(order, (i) => matrix[i * size + i]);
  const sorted = new Float64Array(size * size);
  for (const [row, i] of order.entries()) sorted.set(vectors.subarray(i * size, (i + 1) * size), row * size);
  return { values, vectors: sorted };
};

const turn = (matrix: Float64Array, vectors: Float64Array, size: number, p: number, q: number, off: number): void => {
  const theta = (matrix[q * size + q] - matrix[p * size + p]) / (2 * off);
  const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.hypot(theta, 1));
  const c = 1 / Math.hypot(t, 1);
  const s = t * c;
  for (let k = 0; k < size; k++) {
    const kp = matrix[k * size + p];
    const kq = matrix[k * size + q];
    matrix[k * size + p] = c * kp - s * kq;
    matrix[k * size + q] = s * kp + c * kq;
  }
  for (let k = 0; k < size; k++) {
    const pk = matrix[p * size + k];
    const qk = matrix[q * size + k];
    matrix[p * size + k] = c * pk - s * qk;
    matrix[q * size + k] = s * pk + c * qk;
    const vp = vectors[p * size + k];
    const vq = vectors[q * size + k];
    vectors[p * size + k] = c * vp - s * vq;
    vectors[q * size + k] = s * vp + c * vq;
  }
};
