/** L D L^T of symmetric matrices, rows of L kept from their first entry on (envelope storage, Jennings, 1966). */

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

/** Rows of a symmetric matrix below its diagonal, from the first entry of each on; a row of L takes their place. */
export interface Envelope {
  readonly size: number;
  readonly first: Uint32Array;
  readonly start: Uint32Array;
  readonly lower: Float64Array;
  readonly pivot: Float64Array;
}

/** An empty envelope: `first` holds the first column of every row. */
export const emptyEnvelope = (first: Uint32Array): Envelope => {
  const size = first.length;
  const start = new Uint32Array(size + 1);
  for (let i = 0; i < size; i++) start[i + 1] = start[i] + i - first[i];
  return { size, first, start, lower: new Float64Array(start[size]), pivot: new Float64Array(size) };
};

/** L D L^T in place. */
export const factoriseEnvelope = ({ size, first, start, lower, pivot }: Envelope): void => {
  for (let i = 0; i < size; i++) {
    const base = start[i] - first[i];
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
};

/** Solves in place after `factoriseEnvelope`. */
export const solveEnvelope = ({ size, first, start, lower, pivot }: Envelope, x: Float64Array): void => {
  for (let i = 0; i < size; i++) x[i] -= dot(lower, start[i], x, first[i], i - first[i]);
  for (let i = 0; i < size; i++) x[i] /= pivot[i];
  for (let i = size - 1; i > 0; i--) {
    const value = x[i];
    const base = start[i] - first[i];
    for (let j = first[i]; j < i; j++) x[j] -= value * lower[base + j];
  }
};
