import { describe, expect, it } from 'vitest';
import { smallEigen } from '../../../../../src/engines/bass/plan/small-eigen.ts';
import { tridiagonalEigen } from '../../../../../src/engines/bass/plan/tridiagonal.ts';
import { seededRandom } from '../../../../../src/math/random.ts';

describe('tridiagonal eigenvalues', () => {
  // second differences on a line of n points held at both ends: 2 - 2 cos(k pi / (n + 1)), sines as vectors (handbook)
  it.each([1, 2, 3, 30, 150])('second differences on %i points', (size) => {
    const diagonal = new Float64Array(size).fill(2);
    const off = new Float64Array(size).fill(-1);
    const vectors = new Float64Array(size * size);
    for (let i = 0; i < size; i++) vectors[i * size + i] = 1;
    tridiagonalEigen(diagonal, off, vectors, size);
    const order = Array.from({ length: size }, (_, i) => i).sort((a, b) => diagonal[a] - diagonal[b]);
    for (const [k, i] of order.entries()) {
      const angle = ((k + 1) * Math.PI) / (size + 1);
      expect(Math.abs(diagonal[i] - (2 - 2 * Math.cos(angle)))).toBeLessThanOrEqual(1e-12);
      const sign = Math.sign(vectors[i * size]);
      for (let j = 0; j < size; j++) {
        const sine = Math.sqrt(2 / (size + 1)) * Math.sin((j + 1) * angle);
        expect(Math.abs(sign * vectors[i * size + j] - sine)).toBeLessThanOrEqual(1e-9);
      }
    }
  });

  it('a matrix that falls in two, with equal eigenvalues', () => {
    const diagonal = Float64Array.of(1, 1, 1, 1);
    const vectors = new Float64Array(16);
    for (let i = 0; i < 4; i++) vectors[5 * i] = 1;
    tridiagonalEigen(diagonal, Float64Array.of(0.5, 0, 0.5, 0), vectors, 4);
    expect(Array.from(diagonal).sort()).toEqual([0.5, 0.5, 1.5, 1.5].map((value) => expect.closeTo(value, 14)));
  });
});

describe('small symmetric eigenproblem', () => {
  it.each([1, 2, 3, 12, 60])('%i rows: A v = lambda v, v orthonormal, ascending', (size) => {
    const random = seededRandom(size);
    const matrix = new Float64Array(size * size);
    for (let i = 0; i < size; i++) {
      for (let j = 0; j <= i; j++) {
        matrix[i * size + j] = random() - 0.5 + (i === j ? 10 ** (3 * random()) : 0);
        matrix[j * size + i] = matrix[i * size + j];
      }
    }
    const { values, vectors } = smallEigen(matrix.slice(), size);
    for (let a = 0; a < size; a++) {
      if (a > 0) expect(values[a]).toBeGreaterThanOrEqual(values[a - 1]);
      for (let b = 0; b < size; b++) {
        let [dot, form] = [0, 0];
        for (let i = 0; i < size; i++) {
          dot += vectors[a * size + i] * vectors[b * size + i];
          for (let j = 0; j < size; j++) form += vectors[a * size + i] * matrix[i * size + j] * vectors[b * size + j];
        }
        expect(Math.abs(dot - (a === b ? 1 : 0))).toBeLessThanOrEqual(1e-12);
        expect(Math.abs(form - (a === b ? values[a] : 0))).toBeLessThanOrEqual(1e-10);
      }
    }
  });

  it('a diagonal matrix and a zero one', () => {
    expect(Array.from(smallEigen(Float64Array.of(3, 0, 0, 0, 1, 0, 0, 0, 2), 3).values)).toEqual([1, 2, 3]);
    expect(Array.from(smallEigen(new Float64Array(9), 3).values)).toEqual([0, 0, 0]);
  });
});
