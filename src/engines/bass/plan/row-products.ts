/** out[i] = row i of `rows` (each `width` long) times x, for the first `count` rows; four rows at a time. */
export const dotRows = (rows: Float64Array, count: number, width: number, x: Float64Array, out: Float64Array): void => {
  let i = 0;
  for (; i + 3 < count; i += 4) {
    const a = i * width;
    const b = a + width;
    const c = b + width;
    const d = c + width;
    let s0 = 0;
    let s1 = 0;
    let s2 = 0;
    let s3 = 0;
    for (let k = 0; k < width; k++) {
      const value = x[k];
      s0 += rows[a + k] * value;
      s1 += rows[b + k] * value;
      s2 += rows[c + k] * value;
      s3 += rows[d + k] * value;
    }
    out[i] = s0;
    out[i + 1] = s1;
    out[i + 2] = s2;
    out[i + 3] = s3;
  }
  for (; i < count; i++) {
    let sum = 0;
    for (let k = 0; k < width; k++) sum += rows[i * width + k] * x[k];
    out[i] = sum;
  }
};

/** out[outAt + k] += scale * sum over i of weights[at + i] * rows[i][k], four rows at a time. */
export const addRows = (
  rows: Float64Array,
  count: number,
  width: number,
  weights: Float64Array,
  at: number,
  scale: number,
  out: Float64Array,
  outAt: number,
): void => {
  let i = 0;
  for (; i + 3 < count; i += 4) {
    const a = i * width;
    const b = a + width;
    const c = b + width;
    const d = c + width;
    const w0 = scale * weights[at + i];
    const w1 = scale * weights[at + i + 1];
    const w2 = scale * weights[at + i + 2];
    const w3 = scale * weights[at + i + 3];
    for (let k = 0; k < width; k++)
      out[outAt + k] += w0 * rows[a + k] + w1 * rows[b + k] + (w2 * rows[c + k] + w3 * rows[d + k]);
  }
  for (; i < count; i++) {
    const w = scale * weights[at + i];
    for (let k = 0; k < width; k++) out[outAt + k] += w * rows[i * width + k];
  }
};

export const dotOf = (a: Float64Array, b: Float64Array): number => {
  let s0 = 0;
  let s1 = 0;
  let k = 0;
  for (; k + 1 < a.length; k += 2) {
    s0 += a[k] * b[k];
    s1 += a[k + 1] * b[k + 1];
  }
  if (k < a.length) s0 += a[k] * b[k];
  return s0 + s1;
};
