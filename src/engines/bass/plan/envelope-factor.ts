import type { PlanMatrices } from './plan-matrices.ts';
import type { PlanSpace } from './plan-space.ts';

/** L D L^T of K + shift M, rows of L kept from their first entry on (envelope storage, Jennings, 1966). */
export interface EnvelopeFactor {
  /** Number of negative pivots: by Sylvester's law the number of eigenvalues of K x = lambda M x below -shift. */
  readonly negative: number;
  /** Least over largest pivot in size: close to 0 where the shift meets an eigenvalue of a leading part. */
  readonly steadiness: number;
  /** Solves in place. */
  solve(x: Float64Array): void;
  readonly bytes: number;
}

const dot = (a: Float64Array, aAt: number, b: Float64Array, bAt: number, count: number): number => {
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  let s3 = 0;
  let k = 0;
  for (; k + 3 < count; k += 4) {
    s0 += a[aAt + k] * b[bAt + k];
    s1 += a[aAt + k + 1] * b[bAt + k + 1];
    s2 += a[aAt + k + 2] * b[bAt + k + 2];
    s3 += a[aAt + k + 3] * b[bAt + k + 3];
  }
  for (; k < count; k++) s0 += a[aAt + k] * b[bAt + k];
  return s0 + s1 + (s2 + s3);
};

export const factorShifted = (space: PlanSpace, matrices: PlanMatrices, shift: number): EnvelopeFactor => {
  const { size, rowStart, column } = space;
  const first = new Uint32Array(size);
  const start = new Uint32Array(size + 1);
  for (let i = 0; i < size; i++) {
    first[i] = Math.min(i, column[rowStart[i]]);
    start[i + 1] = start[i] + i - first[i];
  }
  const lower = new Float64Array(start[size]);
  const pivot = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    const base = start[i] - first[i];
    for (let k = rowStart[i]; k < rowStart[i + 1]; k++) {
      const value = matrices.stiffness[k] + shift * matrices.mass[k];
      if (column[k] < i) lower[base + column[k]] = value;
      else if (column[k] === i) pivot[i] = value;
    }
    for (let j = first[i]; j < i; j++) {
      const from = Math.max(first[i], first[j]);
      lower[base + j] -= dot(lower, start[j] + from - first[j], lower, base + from, j - from);
    }
    let left = pivot[i];
    for (let j = first[i]; j < i; j++) {
      const value = lower[base + j];
      const scaled = value / pivot[j];
      left -= value * scaled;
      lower[base + j] = scaled;
    }
    pivot[i] = left;
  }
  let [negative, least, largest] = [0, Number.POSITIVE_INFINITY, 0];
  for (const value of pivot) {
    if (value < 0) negative++;
    least = Math.min(least, Math.abs(value));
    largest = Math.max(largest, Math.abs(value));
  }
  return {
    negative,
    steadiness: least / largest,
    solve: (x) => {
      for (let i = 0; i < size; i++) x[i] -= dot(lower, start[i], x, first[i], i - first[i]);
      for (let i = 0; i < size; i++) x[i] /= pivot[i];
      for (let i = size - 1; i > 0; i--) {
        const value = x[i];
        const base = start[i] - first[i];
        for (let j = first[i]; j < i; j++) x[j] -= value * lower[base + j];
      }
    },
    bytes: 8 * (lower.length + pivot.length) + 4 * (start.length + first.length),
  };
};
