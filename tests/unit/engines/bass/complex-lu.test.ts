import { describe, expect, it } from 'vitest';
import { factoriseComplex, solveComplex } from '../../../../src/engines/bass/complex-lu.ts';
import { seededRandom } from '../../../../src/math/random.ts';

const SEED = 20_418;

const randomNumbers = (count: number, random: () => number): Float64Array =>
  Float64Array.from({ length: count }, () => 2 * random() - 1);

/** Largest |A x - b| against the largest |b|, computed from the untouched matrix. */
const residual = (n: number, a: Float64Array, x: Float64Array, b: Float64Array): number => {
  let worst = 0;
  let size = 0;
  for (let i = 0; i < n; i++) {
    let re = -b[2 * i];
    let im = -b[2 * i + 1];
    for (let j = 0; j < n; j++) {
      const o = 2 * (i * n + j);
      re += a[o] * x[2 * j] - a[o + 1] * x[2 * j + 1];
      im += a[o] * x[2 * j + 1] + a[o + 1] * x[2 * j];
    }
    worst = Math.max(worst, Math.hypot(re, im));
    size = Math.max(size, Math.hypot(b[2 * i], b[2 * i + 1]));
  }
  return worst / size;
};

const solved = (n: number, a: Float64Array, b: Float64Array): Float64Array => {
  const lu = Float64Array.from(a);
  const rows = new Int32Array(n);
  expect(factoriseComplex(n, lu, rows)).toBe(true);
  const x = new Float64Array(2 * n + 6).fill(7);
  x.set(b, 4);
  solveComplex(n, lu, rows, x, 4);
  expect([...x.subarray(0, 4), ...x.subarray(2 * n + 4)]).toEqual([7, 7, 7, 7, 7, 7]);
  return x.slice(4, 2 * n + 4);
};

describe('dense complex systems', () => {
  it('two equations done by hand: x + j y = 1, (1 + j) x + 2 y = 0', () => {
    // the determinant is 2 - j (1 + j) = 3 - j, so x = 2 / (3 - j) = (3 + j) / 5 and y = -(1 + j) / (3 - j) = (-1 - 2 j) / 5
    const x = solved(2, Float64Array.of(1, 0, 0, 1, 1, 1, 2, 0), Float64Array.of(1, 0, 0, 0));
    for (const [i, expected] of [0.6, 0.2, -0.2, -0.4].entries()) expect(Math.abs(x[i] - expected)).toBeLessThan(1e-15);
  });

  it.each([1, 2, 7, 40, 120])(`random systems of %i, seed ${SEED}: residual at rounding level`, (n) => {
    const random = seededRandom(SEED + n);
    const a = randomNumbers(2 * n * n, random);
    const b = randomNumbers(2 * n, random);
    expect(residual(n, a, solved(n, a, b), b)).toBeLessThan(1e-11);
  });

  it('needs its pivots: zeros on the diagonal, and rows twenty decades apart', () => {
    const swap = Float64Array.of(0, 0, 1, 0, 1, 0, 0, 0);
    expect([...solved(2, swap, Float64Array.of(3, 0, 0, 5))]).toEqual([0, 5, 3, 0]);
    const steep = Float64Array.of(1e-20, 0, 1, 0, 1, 0, 1, 0);
    const x = solved(2, steep, Float64Array.of(1, 0, 2, 0));
    // x + y = 2 and y = 1 - 1e-20 x
    expect(Math.abs(x[0] - 1)).toBeLessThan(1e-12);
    expect(Math.abs(x[2] - 1)).toBeLessThan(1e-12);
  });

  it('very large and very small numbers neither overflow nor vanish', () => {
    const x = solved(1, Float64Array.of(3e-200, 4e-200), Float64Array.of(5e-200, 0));
    expect(Math.abs(x[0] - 0.6)).toBeLessThan(1e-12);
    expect(Math.abs(x[1] + 0.8)).toBeLessThan(1e-12);
    const y = solved(1, Float64Array.of(3e200, 4e200), Float64Array.of(5e200, 0));
    expect(Math.abs(y[0] - 0.6)).toBeLessThan(1e-12);
    expect(Math.abs(y[1] + 0.8)).toBeLessThan(1e-12);
  });

  it('says so when the matrix is singular or not finite', () => {
    const rows = new Int32Array(2);
    expect(factoriseComplex(2, Float64Array.of(1, 0, 2, 0, 2, 0, 4, 0), rows)).toBe(false);
    expect(factoriseComplex(2, Float64Array.of(Number.NaN, 0, 2, 0, 2, 0, 4, 0), rows)).toBe(false);
  });
});
