import { describe, expect, it } from 'vitest';
import { eigenvectorsOf } from '../../../../../src/engines/bass/prism/symmetric-eigen.ts';
import {
  factoriseSymmetric,
  packedLength,
  solveSymmetric,
} from '../../../../../src/engines/bass/prism/symmetric-solve.ts';
import { seededRandom } from '../../../../../src/math/random.ts';

/** lambda on the diagonal, j times a positive semi-definite matrix, as walls make it; row-major, re, im. */
const wallMatrix = (n: number, seed: number, shift: number): Float64Array => {
  const random = seededRandom(seed);
  const a = new Float64Array(2 * n * n);
  for (let rank = 0; rank < n; rank++) {
    const v = Float64Array.from({ length: n }, () => random() - 0.5);
    for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) a[2 * (i * n + j) + 1] += 0.4 * v[i] * v[j];
  }
  for (let i = 0; i < n; i++) a[2 * (i * n + i)] = 30 - (30 * i) / n - shift;
  return a;
};

const product = (n: number, a: Float64Array, x: Float64Array): Float64Array => {
  const out = new Float64Array(2 * n);
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) {
      const [re, im] = [a[2 * (i * n + j)], a[2 * (i * n + j) + 1]];
      out[2 * i] += re * x[2 * j] - im * x[2 * j + 1];
      out[2 * i + 1] += re * x[2 * j + 1] + im * x[2 * j];
    }
  return out;
};

const packed = (n: number, a: Float64Array): Float64Array => {
  const out = new Float64Array(packedLength(n));
  let at = 0;
  for (let k = 0; k < n; k++)
    for (let j = k; j < n; j++, at += 2) {
      out[at] = a[2 * (k * n + j)];
      out[at + 1] = a[2 * (k * n + j) + 1];
    }
  return out;
};

describe('complex symmetric systems', () => {
  it('give back the right sides they were solved for, several at once', () => {
    for (const n of [1, 2, 7, 40]) {
      const a = wallMatrix(n, 7 + n, 11.3);
      const factor = packed(n, a);
      expect(factoriseSymmetric(n, factor)).toBe(true);
      const count = 3;
      const random = seededRandom(n);
      const b = Float64Array.from({ length: 2 * n * count }, () => random() - 0.5);
      const x = b.slice();
      solveSymmetric(n, factor, x, count);
      for (let r = 0; r < count; r++) {
        const one = new Float64Array(2 * n);
        for (let i = 0; i < n; i++) {
          one[2 * i] = x[2 * (i * count + r)];
          one[2 * i + 1] = x[2 * (i * count + r) + 1];
        }
        product(n, a, one).forEach((value, k) => {
          expect(Math.abs(value - b[2 * ((k >> 1) * count + r) + (k & 1)])).toBeLessThan(1e-10);
        });
      }
    }
  });

  it('say so where a pivot vanishes: the exchange matrix has none on its diagonal', () => {
    expect(factoriseSymmetric(2, Float64Array.of(0, 0, 1, 0, 0, 0))).toBe(false);
    expect(factoriseSymmetric(2, Float64Array.of(1e-9, 0, 1, 0, 0, 0))).toBe(false);
  });
});

describe('eigenvectors of a complex symmetric matrix', () => {
  it('A v = mu v, bilinearly orthonormal, close neighbours included', () => {
    const n = 24;
    const a = wallMatrix(n, 3, 0);
    // three neighbours that only the walls tell apart
    for (const i of [10, 11, 12]) a[2 * (i * n + i)] = 12;
    const work = a.slice();
    const vectors = eigenvectorsOf(n, work);
    for (let i = 0; i < n; i++) {
      const v = vectors.slice(2 * i * n, 2 * (i + 1) * n);
      const [re, im] = [work[2 * (i * n + i)], work[2 * (i * n + i) + 1]];
      product(n, a, v).forEach((value, k) => {
        const j = k & ~1;
        const expected = k & 1 ? re * v[j + 1] + im * v[j] : re * v[j] - im * v[j + 1];
        expect(Math.abs(value - expected)).toBeLessThan(1e-7);
      });
      for (let other = 0; other <= i; other++) {
        let dotRe = 0;
        let dotIm = 0;
        for (let k = 0; k < 2 * n; k += 2) {
          const [p, q] = [2 * i * n + k, 2 * other * n + k];
          dotRe += vectors[p] * vectors[q] - vectors[p + 1] * vectors[q + 1];
          dotIm += vectors[p] * vectors[q + 1] + vectors[p + 1] * vectors[q];
        }
        expect(Math.abs(dotRe - (i === other ? 1 : 0))).toBeLessThan(1e-9);
        expect(Math.abs(dotIm)).toBeLessThan(1e-9);
      }
    }
  });
});
