/**
 * A complex symmetric system in the plainest way: L D L^T of the full matrix column by column, then substitution for one right
 * side after the other. Shares nothing with the engine. `a` row by row, `b` right side by right side; re, im each.
 */
export const solvePlainly = (n: number, a: Float64Array, b: Float64Array, count: number): Float64Array => {
  const l = a.slice();
  for (let k = 0; k < n; k++) {
    const pivot = 2 * (k * n + k);
    const square = l[pivot] ** 2 + l[pivot + 1] ** 2;
    for (let i = k + 1; i < n; i++) {
      const at = 2 * (i * n + k);
      const re = (l[at] * l[pivot] + l[at + 1] * l[pivot + 1]) / square;
      const im = (l[at + 1] * l[pivot] - l[at] * l[pivot + 1]) / square;
      for (let j = k + 1; j <= i; j++) {
        const from = 2 * (j * n + k);
        const to = 2 * (i * n + j);
        // rows above i hold multipliers already
        const [uRe, uIm] = j === i ? [l[at], l[at + 1]] : scaled(l, from, pivot);
        l[to] -= re * uRe - im * uIm;
        l[to + 1] -= re * uIm + im * uRe;
      }
      l[at] = re;
      l[at + 1] = im;
    }
  }
  const x = b.slice();
  for (let r = 0; r < count; r++) {
    const own = x.subarray(2 * r * n, 2 * (r + 1) * n);
    for (let i = 0; i < n; i++) for (let j = 0; j < i; j++) take(own, i, own, j, l, i * n + j);
    for (let i = 0; i < n; i++) {
      const pivot = 2 * (i * n + i);
      const square = l[pivot] ** 2 + l[pivot + 1] ** 2;
      const [re, im] = [own[2 * i], own[2 * i + 1]];
      own[2 * i] = (re * l[pivot] + im * l[pivot + 1]) / square;
      own[2 * i + 1] = (im * l[pivot] - re * l[pivot + 1]) / square;
    }
    for (let i = n - 1; i >= 0; i--) for (let j = i + 1; j < n; j++) take(own, i, own, j, l, j * n + i);
  }
  return x;
};

const scaled = (l: Float64Array, at: number, pivot: number): readonly [number, number] => [
  l[at] * l[pivot] - l[at + 1] * l[pivot + 1],
  l[at] * l[pivot + 1] + l[at + 1] * l[pivot],
];

/** x[i] -= l[at] y[j]. */
const take = (x: Float64Array, i: number, y: Float64Array, j: number, l: Float64Array, at: number): void => {
  x[2 * i] -= l[2 * at] * y[2 * j] - l[2 * at + 1] * y[2 * j + 1];
  x[2 * i + 1] -= l[2 * at] * y[2 * j + 1] + l[2 * at + 1] * y[2 * j];
};
