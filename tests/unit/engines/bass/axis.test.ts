import { describe, expect, it } from 'vitest';
import { shapeAxis, valuesAt } from '../../../../src/engines/bass/axis-modes.ts';
import { solveAxis } from '../../../../src/engines/bass/axis-solver.ts';
import { BOTH, emptyTerms, fillTerm, growTerms, pointFactors } from '../../../../src/engines/bass/closed-axis.ts';
import { seededRandom } from '../../../../src/math/random.ts';
import { faultIn, randomWalls } from './axis-count.ts';

type Complex = readonly [number, number];
const times = (a: Complex, b: Complex): [number, number] => [a[0] * b[0] - a[1] * b[1], a[0] * b[1] + a[1] * b[0]];
const over = (a: Complex, b: Complex): [number, number] => {
  const scale = b[0] ** 2 + b[1] ** 2;
  return [(a[0] * b[0] + a[1] * b[1]) / scale, (a[1] * b[0] - a[0] * b[1]) / scale];
};

const C = 343.2;
const A = 6.1;
/** j k beta */
const wall = (k: number, beta: Complex): [number, number] => [-k * beta[1], k * beta[0]];

/** g of the closed form for real K2. */
const closedForm = (k: number, b0: Complex, b1: Complex, k2: Complex, x: number, x0: number): [number, number] => {
  const walls = Float64Array.of(...wall(k, b0), ...wall(k, b1));
  const terms = emptyTerms();
  growTerms(terms, 1);
  fillTerm(terms, 0, k2[0], k2[1], walls, A);
  const low = new Float64Array(4);
  const high = new Float64Array(4);
  pointFactors(terms, 0, 1, Math.min(x, x0), walls, A, false, BOTH, low);
  pointFactors(terms, 0, 1, Math.max(x, x0), walls, A, true, BOTH, high);
  return times([low[0], low[1]], [high[2], high[3]]);
};

/** The same as a sum over the axis' own modes: sum of X X0 / (q^2 - K2). */
const modalSum = (k: number, b0: Complex, b1: Complex, k2: Complex, x: number, x0: number, count: number): Complex => {
  const b = Float64Array.of(...wall(k * A, b0), ...wall(k * A, b1));
  const modes = shapeAxis(A, solveAxis(count, b));
  const at = new Float64Array(2 * count);
  const from = new Float64Array(2 * count);
  valuesAt(modes, x, count, at, 0);
  valuesAt(modes, x0, count, from, 0);
  let re = 0;
  let im = 0;
  for (let n = 0; n < count; n++) {
    const product = times([at[2 * n], at[2 * n + 1]], [from[2 * n], from[2 * n + 1]]);
    const { w } = modes.roots;
    const term = over(product, [w[2 * n] / A ** 2 - k2[0], w[2 * n + 1] / A ** 2 - k2[1]]);
    re += term[0];
    im += term[1];
  }
  return [re, im];
};

const WALLS: [string, Complex, Complex][] = [
  ['light', [0.01, 0], [0.02, 0]],
  ['equal', [0.05, 0], [0.05, 0]],
  ['mixed', [0.3, -0.5], [0.1, 0.4]],
  ['reactive', [0.02, 0.6], [0.05, 0]],
  ['equal and stiff', [0.02, 0.6], [0.02, 0.6]],
  ['nearly equal and stiff', [0.02, 0.6], [0.02, 0.6001]],
  ['equal and mass-like', [0.1, -0.7], [0.1, -0.7]],
  ['black', [1, 0], [1, 0]],
  ['black and rigid', [1, 0], [0, 0]],
  ['very stiff', [0.5, 4], [0.1, 3]],
];

describe('completeness: the modal sum of an axis is its closed form', () => {
  it.each(WALLS)('%s walls', (_, b0, b1) => {
    for (const hz of [20, 63, 180, 400]) {
      const k = (2 * Math.PI * hz) / C;
      for (const [x, x0] of [
        [1.1, 4.3],
        [0, 6.1],
        [0.02, 0.3],
        [3, 3.4],
      ]) {
        const k2: Complex = [k * k - 1.7, 0];
        const exact = closedForm(k, b0, b1, k2, x, x0);
        const sum = modalSum(k, b0, b1, k2, x, x0, 400);
        // the tail of 400 modes falls as 1 / (pi^2 N); a lost mode would cost 100 times that
        const error = Math.hypot(sum[0] - exact[0], sum[1] - exact[1]);
        expect(error, `${hz} Hz, ${x} to ${x0}`).toBeLessThanOrEqual(1e-3 * Math.hypot(...exact) + 1e-3);
      }
    }
  });

  it('and converges as the number of modes grows', () => {
    const k = (2 * Math.PI * 80) / C;
    const exact = closedForm(k, [0.3, -0.5], [0.1, 0.4], [k * k - 1.7, 0], 1.1, 4.3);
    const error = (count: number): number => {
      const sum = modalSum(k, [0.3, -0.5], [0.1, 0.4], [k * k - 1.7, 0], 1.1, 4.3, count);
      return Math.hypot(sum[0] - exact[0], sum[1] - exact[1]);
    };
    expect(error(1600)).toBeLessThan(error(100) / 8);
  });
});

describe('closed form', () => {
  it('is the textbook cosine form between rigid walls', () => {
    for (const kappa of [0.3, 1.9, 7.7]) {
      const [re, im] = closedForm(1, [0, 0], [0, 0], [kappa * kappa, 0], 1.2, 4.4);
      const exact = -(Math.cos(kappa * 1.2) * Math.cos(kappa * (A - 4.4))) / (kappa * Math.sin(kappa * A));
      expect(Math.abs(re / exact - 1)).toBeLessThanOrEqual(1e-12);
      expect(Math.abs(im)).toBeLessThanOrEqual(1e-12 * Math.abs(exact));
    }
  });

  it('passes without a step from the entire form to the exponential one', () => {
    const edge = 0.25 / A ** 2;
    const value = (k2: number): Complex => closedForm(1, [0.1, 0.2], [0.3, -0.1], [k2, 0], 1.2, 4.4);
    for (const sign of [1, -1]) {
      const inside = value(sign * edge * (1 - 1e-9));
      const outside = value(sign * edge * (1 + 1e-9));
      expect(Math.hypot(inside[0] - outside[0], inside[1] - outside[1])).toBeLessThanOrEqual(
        1e-7 * Math.hypot(...inside),
      );
    }
  });

  it('is the free wave e^(-j k d) / 2jk between black walls', () => {
    const k = 1.3;
    const [re, im] = closedForm(k, [1, 0], [1, 0], [k * k, 0], 1, 4);
    // nothing comes back: e^(-j k d) / (2 j k)
    expect(re).toBeCloseTo(-Math.sin(3 * k) / (2 * k), 12);
    expect(im).toBeCloseTo(-Math.cos(3 * k) / (2 * k), 12);
  });
});

describe('eigenvalues', () => {
  it('are (n pi)^2 for rigid walls', () => {
    const { w } = solveAxis(30, new Float64Array(4));
    for (let n = 0; n < 30; n++) {
      expect(Math.abs(w[2 * n] - (n * Math.PI) ** 2)).toBeLessThanOrEqual(1e-9 * (1 + n * n));
      expect(w[2 * n + 1]).toBe(0);
    }
  });

  it('shift by b0 + b1 (n = 0) and 2 (b0 + b1) to first order (Morse and Ingard; derived)', () => {
    const b = Float64Array.of(0, 2e-4, 0, 3e-4);
    const { w } = solveAxis(6, b);
    for (let n = 0; n < 6; n++) {
      const shift = (n === 0 ? 1 : 2) * 5e-4;
      expect(Math.abs(w[2 * n + 1] / shift - 1)).toBeLessThanOrEqual(1e-3);
      expect(Math.abs(w[2 * n] - (n * Math.PI) ** 2)).toBeLessThanOrEqual(1e-6);
    }
  });

  it('warm from a neighbour equal cold ones', () => {
    const b = Float64Array.of(-1.5, 4, 0.7, 2);
    const near = solveAxis(20, b);
    const ratio = 1.06;
    const scaled = b.map((part) => part * ratio);
    const warm = solveAxis(20, scaled, near, [ratio, 0]);
    const cold = solveAxis(20, scaled);
    for (let i = 0; i < 40; i++)
      expect(Math.abs(warm.w[i] - cold.w[i])).toBeLessThanOrEqual(1e-9 * (1 + Math.abs(cold.w[i])));
  });

  it('none lost, none doubled on 150 random axes (4,000 in the long suite)', () => {
    const seed = 7;
    const random = seededRandom(seed);
    for (let i = 0; i < 150; i++) {
      const { b0, b1, ka } = randomWalls(random);
      const { w } = solveAxis(Math.ceil((1.2 * ka) / Math.PI) + 16, Float64Array.of(...b0, ...b1));
      expect(faultIn({ b0, b1 }, w), `axis ${i} of seed ${seed}: b0 ${b0}, b1 ${b1}`).toBe('');
    }
  });

  it('and the count would notice a mode that is missing', () => {
    const { w } = solveAxis(30, Float64Array.of(-3, 5, 1, 2));
    const without = Float64Array.from([...w.subarray(0, 8), ...w.subarray(10)]);
    expect(faultIn({ b0: [-3, 5], b1: [1, 2] }, w)).toBe('');
    expect(faultIn({ b0: [-3, 5], b1: [1, 2] }, without)).toMatch(/found/);
  });
});

describe('shapes', () => {
  it.each(WALLS)('are bi-orthonormal by quadrature: %s walls', (_, b0, b1) => {
    const k = (2 * Math.PI * 150) / C;
    const count = 8;
    const modes = shapeAxis(A, solveAxis(count, Float64Array.of(...wall(k * A, b0), ...wall(k * A, b1))));
    const values = new Float64Array(2 * count);
    const product = new Float64Array(2 * count * count);
    const points = 4000;
    for (let i = 0; i <= points; i++) {
      valuesAt(modes, (A * i) / points, count, values, 0);
      // Simpson's rule
      const weight = ((A / points) * (i === 0 || i === points ? 1 : i % 2 === 1 ? 4 : 2)) / 3;
      for (let m = 0; m < count; m++) {
        for (let n = 0; n < count; n++) {
          const [re, im] = times([values[2 * m], values[2 * m + 1]], [values[2 * n], values[2 * n + 1]]);
          product[2 * (count * m + n)] += weight * re;
          product[2 * (count * m + n) + 1] += weight * im;
        }
      }
    }
    for (let m = 0; m < count; m++) {
      for (let n = 0; n < count; n++) {
        const o = 2 * (count * m + n);
        expect(Math.hypot(product[o] - (m === n ? 1 : 0), product[o + 1]), `${m}, ${n}`).toBeLessThanOrEqual(1e-6);
      }
    }
  });
});
