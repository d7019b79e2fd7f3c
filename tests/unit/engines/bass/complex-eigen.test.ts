import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { eigenpairsOf } from '../../../../src/engines/bass/complex-eigen.ts';

/** The largest |A x - lambda x|, over the largest entry of A. */
const residual = (n: number, a: Float64Array): number => {
  const found = eigenpairsOf(n, a.slice());
  if (found === null) throw new Error('the steps do not end');
  const scale = Math.max(...a.map(Math.abs), 1e-300);
  let worst = 0;
  for (let k = 0; k < n; k++) {
    const [lRe, lIm] = [found.values[2 * k], found.values[2 * k + 1]];
    const x = found.vectors.subarray(2 * k * n, 2 * (k + 1) * n);
    expect(x.reduce((sum, part) => sum + part * part, 0)).toBeCloseTo(1, 9);
    for (let i = 0; i < n; i++) {
      let re = -(lRe * x[2 * i] - lIm * x[2 * i + 1]);
      let im = -(lRe * x[2 * i + 1] + lIm * x[2 * i]);
      for (let j = 0; j < n; j++) {
        const at = 2 * (i * n + j);
        re += a[at] * x[2 * j] - a[at + 1] * x[2 * j + 1];
        im += a[at] * x[2 * j + 1] + a[at + 1] * x[2 * j];
      }
      worst = Math.max(worst, Math.hypot(re, im));
    }
  }
  return worst / scale;
};

// squares of numbers far smaller than any of the engine's are nothing to a computer
const entry = fc.double({ min: -1, max: 1, noNaN: true }).map((value) => (Math.abs(value) < 1e-30 ? 0 : value));
const matrix = fc
  .integer({ min: 1, max: 12 })
  .chain((n) => fc.tuple(fc.constant(n), fc.array(entry, { minLength: 2 * n * n, maxLength: 2 * n * n })));

describe('eigenpairs of complex matrices', () => {
  it('solve A x = lambda x, any matrix', () => {
    fc.assert(
      fc.property(matrix, ([n, list]) => {
        expect(residual(n, Float64Array.from(list))).toBeLessThan(1e-12);
      }),
    );
  });

  it('have the trace and its square', () => {
    fc.assert(
      fc.property(matrix, ([n, list]) => {
        const a = Float64Array.from(list);
        const values = eigenpairsOf(n, a.slice())?.values ?? new Float64Array(0);
        const sums = [0, 0, 0, 0];
        for (let i = 0; i < n; i++) {
          const [re, im] = [values[2 * i], values[2 * i + 1]];
          sums[0] += re - a[2 * (i * n + i)];
          sums[1] += im - a[2 * (i * n + i) + 1];
          sums[2] += re * re - im * im;
          sums[3] += 2 * re * im;
          for (let j = 0; j < n; j++) {
            const [p, q] = [2 * (i * n + j), 2 * (j * n + i)];
            sums[2] -= a[p] * a[q] - a[p + 1] * a[q + 1];
            sums[3] -= a[p] * a[q + 1] + a[p + 1] * a[q];
          }
        }
        for (const sum of sums) expect(Math.abs(sum)).toBeLessThan(1e-11);
      }),
    );
  });

  it.each([
    // a rotation, which real shifts go round
    [3, [0, 0, 1, 0, 0, 0, 0, 0, 0, 0, 1, 0, 1, 0, 0, 0, 0, 0]],
    // one eigenvalue, one vector: symmetric and defective
    [2, [1, 0, 0, 1, 0, 1, -1, 0]],
    [3, [2, 0, 1, 0, 0, 0, 0, 0, 2, 0, 1, 0, 0, 0, 0, 0, 2, 0]],
    [2, [0, 0, 0, 0, 0, 0, 0, 0]],
  ] as const)('of size %i, where others fail', (n, list) => {
    expect(residual(n, Float64Array.from(list))).toBeLessThan(1e-7);
  });

  it('of a symmetric matrix far from diagonal and from normal', () => {
    const n = 60;
    const a = new Float64Array(2 * n * n);
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++) {
        a[2 * (i * n + j)] = i === j ? 0.1 * i : Math.cos(1 + i * j);
        a[2 * (i * n + j) + 1] = Math.sin(3 + i * j + i + j);
      }
    expect(residual(n, a)).toBeLessThan(1e-11);
  });
});
