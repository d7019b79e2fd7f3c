import { describe, expect, it } from 'vitest';
import {
  createSymmetricKernel,
  type SymmetricKernel,
} from '../../../../../src/engines/bass/kernels/symmetric-kernel.ts';
import { plainSymmetricKernel } from '../../../../../src/engines/bass/kernels/symmetric-plain.ts';
import { seededRandom } from '../../../../../src/math/random.ts';

const SIZES = [1, 2, 3, 15, 16, 17, 18, 31, 32, 33, 47, 64, 97, 160];

/** Packed as rooms make them: rigid eigenvalues in descending order, walls that absorb; resonances on both sides of k. */
const system = (n: number, seed: number): Float64Array => {
  const random = seededRandom(seed);
  const vectors = Array.from({ length: n }, () => Float64Array.from({ length: n }, () => random() - 0.5));
  const a = new Float64Array(n * (n + 1));
  let at = 0;
  for (let k = 0; k < n; k++) {
    for (let j = k; j < n; j++, at += 2) {
      a[at] = k === j ? 60 - (60 * k) / n - 11.3 : 0;
      for (const v of vectors) a[at + 1] += (0.4 * v[k] * v[j]) / Math.sqrt(n);
    }
  }
  return a;
};

const numbers = (count: number, seed: number): Float64Array => {
  const random = seededRandom(seed);
  return Float64Array.from({ length: count }, () => random() - 0.5);
};

const worst = (a: Float64Array, b: Float64Array): number =>
  a.reduce((most, value, i) => Math.max(most, Math.abs(value - b[i]) / (1 + Math.abs(value))), 0);

/** A x of a packed symmetric matrix, for one of `count` right sides, less b. */
const residual = (n: number, a: Float64Array, x: Float64Array, b: Float64Array, count: number, r: number): number => {
  let most = 0;
  for (let i = 0; i < n; i++) {
    let re = -b[2 * (i * count + r)];
    let im = -b[2 * (i * count + r) + 1];
    for (let j = 0; j < n; j++) {
      const [k, l] = [Math.min(i, j), Math.max(i, j)];
      const at = 2 * (k * n - (k * (k - 1)) / 2 + l - k);
      const [xRe, xIm] = [x[2 * (j * count + r)], x[2 * (j * count + r) + 1]];
      re += a[at] * xRe - a[at + 1] * xIm;
      im += a[at] * xIm + a[at + 1] * xRe;
    }
    most = Math.max(most, Math.hypot(re, im));
  }
  return most;
};

const kernels: readonly SymmetricKernel[] = [createSymmetricKernel(), plainSymmetricKernel];

describe('complex symmetric systems, compiled and plain', () => {
  it('are compiled here', () => {
    expect(kernels.map(({ place }) => place)).toEqual(['wasm', 'plain']);
  });

  it.each(SIZES)('%d unknowns: both solve what they were given, and have the same factors', (n) => {
    const a = system(n, 5 + n);
    for (const count of [1, 2, 3, 4, 7]) {
      const b = numbers(2 * n * count, 11 * n + count);
      const [ours, plain] = kernels.map((kernel) => {
        const factor = a.slice();
        expect(kernel.factorise(n, factor)).toBe(true);
        const x = b.slice();
        kernel.solve(n, factor, x, count);
        for (let r = 0; r < count; r++) expect(residual(n, a, x, b, count, r)).toBeLessThan(1e-11);
        return { factor, x };
      });
      // rounding alone: sums are taken in another order
      expect(worst(plain.factor, ours.factor)).toBeLessThan(1e-12);
      expect(worst(plain.x, ours.x)).toBeLessThan(1e-12);
    }
  });

  it.each(kernels)('say so where a pivot vanishes or nearly does ($place)', (kernel) => {
    expect(kernel.factorise(2, Float64Array.of(0, 0, 1, 0, 0, 0))).toBe(false);
    expect(kernel.factorise(2, Float64Array.of(1e-9, 0, 1, 0, 0, 0))).toBe(false);
    expect(kernel.factorise(1, Float64Array.of(Number.NaN, 0))).toBe(false);
    expect(kernel.factorise(1, Float64Array.of(Number.POSITIVE_INFINITY, 0))).toBe(false);
    // the last pivot of many, past the first block of rows
    const n = 20;
    const a = system(n, 3);
    a.fill(0, a.length - 2);
    for (let k = 0, at = 0; k < n - 1; at += 2 * (n - k), k++) a.fill(0, at + 2 * (n - 1 - k), at + 2 * (n - k));
    expect(kernel.factorise(n, a)).toBe(false);
  });

  it.each(kernels)('right sides beyond the ones asked for stay as they are ($place)', (kernel) => {
    const n = 5;
    const factor = system(n, 1);
    kernel.factorise(n, factor);
    const x = numbers(2 * n * 2 + 6, 8);
    const tail = x.slice(2 * n * 2);
    kernel.solve(n, factor, x, 2);
    expect(x.slice(2 * n * 2)).toEqual(tail);
  });

  it.each([
    [1, 1, 1],
    [7, 1, 5],
    [33, 6, 4],
    [20, 9, 11],
  ])('products of %d rows, %d by %d', (rows, left, right) => {
    const p = numbers(rows * left, 2);
    const x = numbers(2 * rows * right, 3);
    for (const kernel of kernels) {
      const out = new Float64Array(2 * left * right).fill(9);
      kernel.products(rows, p, left, x, right, out);
      for (let m = 0; m < left; m++) {
        for (let l = 0; l < right; l++) {
          for (const part of [0, 1]) {
            let sum = 0;
            for (let i = 0; i < rows; i++) sum += p[i * left + m] * x[2 * (i * right + l) + part];
            expect(Math.abs(out[2 * (m * right + l) + part] - sum)).toBeLessThan(1e-13);
          }
        }
      }
    }
  });
});
