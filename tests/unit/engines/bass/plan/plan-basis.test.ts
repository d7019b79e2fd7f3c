import { describe, expect, it } from 'vitest';
import { createPlanBasis } from '../../../../../src/engines/bass/plan/create-plan-basis.ts';
import type { PlanBasis } from '../../../../../src/engines/bass/plan/plan-basis.ts';
import { areaOf, PLANS, perimeterOf } from './plans.ts';
import { createRectangleBasis } from './rectangle-basis.ts';

const C = 343.2;
const [WIDTH, HEIGHT] = [6, 4];
/** (2 pi 160 / c)^2: how quickly the functions of loads die away. */
const TOP_HZ = 160;
const S = ((2 * Math.PI * TOP_HZ) / C) ** 2;
const OPTIONS = { maxHz: TOP_HZ, soundSpeed: C, wallFunctions: 0 };
const SOURCE = Float64Array.of(1.1, 0.6);
const POINTS = Float64Array.of(4.9, 3.1, 0.4, 2.2, 3, 3.9, 6, 4, 5.5, 1.9, 1.6, 0, 0.2, 1, 4, 0.4, 2.1, 3.6, 4.2, 4);
/** Elements whose own error is far below what is compared. */
const SHARP = { ...OPTIONS, order: 7, meshM: 1.2 };

/** sum_i phi_i(p) load_i / (lambda_i + shift) at every point: the same for any orthonormal basis of a space. */
const answer = (basis: PlanBasis, load: Float64Array, shift: number): Float64Array => {
  const values = basis.valuesAt(POINTS);
  return Float64Array.from({ length: POINTS.length / 2 }, (_, p) => {
    let sum = 0;
    for (let i = 0; i < basis.size; i++) sum += (values[p * basis.size + i] * load[i]) / (basis.lambda[i] + shift);
    return sum;
  });
};

/** Worst difference over the largest value. */
const apart = (found: Float64Array, expected: ArrayLike<number>): number => {
  let [difference, largest] = [0, 0];
  for (let i = 0; i < found.length; i++) {
    difference = Math.max(difference, Math.abs(found[i] - expected[i]));
    largest = Math.max(largest, Math.abs(expected[i]));
  }
  return difference / largest;
};

describe.each(['rectangle', 'the other sense'])('basis over a 6 x 4 m %s', (name) => {
  const closed = createRectangleBasis(WIDTH, HEIGHT, OPTIONS);
  const basis = createPlanBasis(PLANS[name], OPTIONS);
  /** Edge of the closed form, which starts at (0, 0) and goes along u; the other sense runs every edge backwards. */
  const same = name === 'rectangle';
  const edgeOf = (edge: number): number => (same ? edge : [2, 1, 0, 3][edge]);
  const partOf = (edge: number, fromM: number, toM: number): [number, number] => {
    const length = edge % 2 === 0 ? WIDTH : HEIGHT;
    return same ? [fromM, toM] : [length - toM, length - fromM];
  };

  it('has the modes of the closed form, none missing', () => {
    expect(basis.size).toBe(closed.size);
    expect(basis.areaM2).toBeCloseTo(24, 9);
    // the elements at the top of the range: 5e-3 in frequency, see element-choice.ts
    for (let i = 0; i < basis.size; i++)
      expect(Math.abs(basis.lambda[i] - closed.lambda[i])).toBeLessThanOrEqual(1e-2 * closed.lambda[i] + 1e-9);
  });

  it('has its values, signs aside: what two points share, mode by mode weighted', () => {
    const at = createPlanBasis(PLANS[name], SHARP);
    const load = at.valuesAt(SOURCE);
    expect(apart(answer(at, load, S), answer(closed, closed.valuesAt(SOURCE), S))).toBeLessThanOrEqual(1e-4);
  });

  it('has its integrals over parts of edges', () => {
    const at = createPlanBasis(PLANS[name], SHARP);
    for (let edge = 0; edge < 4; edge++) {
      const [fromM, toM] = partOf(edge, 0.7, 2.9);
      // traces are what keeps its value whatever the sign and mixture of modes; all of them to the same weight in lambda
      const found = at.edgeMatrix(edge, 0.7, 2.9);
      const expected = closed.edgeMatrix(edgeOf(edge), fromM, toM);
      let [a, b] = [0, 0];
      for (let i = 0; i < at.size; i++) {
        a += found[i * at.size + i] / (at.lambda[i] + S);
        b += expected[i * at.size + i] / (closed.lambda[i] + S);
      }
      expect(Math.abs(a / b - 1)).toBeLessThanOrEqual(1e-4);
      for (const order of [0, 1, 4]) {
        const load = at.edgeVector(edge, 0.7, 2.9, order);
        const sign = !same && order % 2 === 1 ? -1 : 1;
        const other = closed.edgeVector(edgeOf(edge), fromM, toM, order).map((value) => sign * value);
        expect(apart(answer(at, load, S), answer(closed, other, S))).toBeLessThanOrEqual(2e-4);
      }
    }
  });

  it('brings points outside to the nearest place inside', () => {
    const outside = basis.valuesAt(Float64Array.of(-1, 2, 3, 9, 7, 7, 6 + 1e-12, 1));
    const inside = basis.valuesAt(Float64Array.of(0, 2, 3, 4, 6, 4, 6, 1));
    for (let i = 0; i < inside.length; i++) expect(Math.abs(outside[i] - inside[i])).toBeLessThanOrEqual(1e-9);
  });
});

describe('functions for loads', () => {
  // (-laplace + s) u = 0, slope cos(m pi x / w) at y = 0 and 0 elsewhere: u = cos(m pi x / w) cosh(k (h - y)) / (k sinh(k h)),
  // k^2 = s + (m pi / w)^2. Derived.
  it.each([0, 1, 2])('carry the answer to a wall that moves as cos(%i pi t)', (order) => {
    const kappa = Math.sqrt(S + ((order * Math.PI) / WIDTH) ** 2);
    const expected = Float64Array.from({ length: POINTS.length / 2 }, (_, p) => {
      const [u, v] = [POINTS[2 * p], POINTS[2 * p + 1]];
      const fall = (Math.exp(-kappa * v) + Math.exp(-kappa * (2 * HEIGHT - v))) / (1 - Math.exp(-2 * kappa * HEIGHT));
      return (Math.cos((order * Math.PI * u) / WIDTH) * fall) / kappa;
    });
    const bare = createPlanBasis(PLANS.rectangle, SHARP);
    const rich = createPlanBasis(PLANS.rectangle, { ...SHARP, wallFunctions: 3 });
    const error = apart(answer(rich, rich.edgeVector(0, 0, WIDTH, order), S), expected);
    expect(error).toBeLessThanOrEqual(5e-3);
    expect(error).toBeLessThan(0.1 * apart(answer(bare, bare.edgeVector(0, 0, WIDTH, order), S), expected));
  });

  it('carry the answer to a part of a wall', () => {
    const part = { edge: 2, fromM: 1, toM: 2.5 };
    const rich = createPlanBasis(PLANS.rectangle, { ...SHARP, wallFunctions: 1, parts: [part] });
    // edge 2 runs back along v = 4: the part is u = 3.5..5; cosines along u, closed form along v as above
    const expected = Float64Array.from({ length: POINTS.length / 2 }, (_, p) => {
      const [u, v] = [POINTS[2 * p], POINTS[2 * p + 1]];
      let sum = 0;
      for (let m = 0; m < 4000; m++) {
        const wave = (m * Math.PI) / WIDTH;
        const kappa = Math.sqrt(S + wave * wave);
        const load = m === 0 ? 1.5 : (Math.sin(5 * wave) - Math.sin(3.5 * wave)) / wave;
        const fall =
          (Math.exp(-kappa * (HEIGHT - v)) + Math.exp(-kappa * (HEIGHT + v))) / (1 - Math.exp(-2 * kappa * HEIGHT));
        sum += ((((m === 0 ? 1 : 2) / WIDTH) * load * fall) / kappa) * Math.cos(wave * u);
      }
      return sum;
    });
    expect(apart(answer(rich, rich.edgeVector(2, 1, 2.5, 0), S), expected)).toBeLessThanOrEqual(5e-3);
  });

  it('carry the answer to a point, given at once or later', () => {
    const first = createPlanBasis(PLANS.rectangle, { ...SHARP, meshM: 0.8, wallFunctions: 2, pointsUv: SOURCE });
    const bare = createPlanBasis(PLANS.rectangle, { ...SHARP, meshM: 0.8, wallFunctions: 2 });
    const later = bare.withPoints(SOURCE);
    expect(later.size).toBe(bare.size + 1);
    const many = createRectangleBasis(WIDTH, HEIGHT, { ...OPTIONS, maxHz: 8000 });
    const expected = answer(many, many.valuesAt(SOURCE), S);
    const found = answer(first, first.valuesAt(SOURCE), S);
    expect(apart(found, expected)).toBeLessThanOrEqual(1e-2);
    expect(apart(answer(later, later.valuesAt(SOURCE), S), found)).toBeLessThanOrEqual(1e-9);
    expect(apart(answer(bare, bare.valuesAt(SOURCE), S), expected)).toBeGreaterThan(3e-2);
  });

  it('are left out where they are in the basis already', () => {
    const basis = createPlanBasis(PLANS.rectangle, { ...SHARP, meshM: 0.8, wallFunctions: 1, pointsUv: SOURCE });
    expect(basis.withPoints(SOURCE).size).toBe(basis.size);
  });
});

describe.each(Object.entries(PLANS))('basis over a plan: %s', (_, corners) => {
  const basis = createPlanBasis(corners, { ...OPTIONS, maxHz: 110, wallFunctions: 2 });

  it('starts with the constant, ascends, and has the area and the outline', () => {
    expect(Math.abs(basis.areaM2 / areaOf(corners) - 1)).toBeLessThanOrEqual(1e-9);
    expect(basis.lambda[0]).toBeLessThanOrEqual(1e-8);
    expect(basis.lambda[0]).toBeGreaterThanOrEqual(0);
    for (let i = 1; i < basis.size; i++) expect(basis.lambda[i]).toBeGreaterThanOrEqual(basis.lambda[i - 1]);
    const outline = corners.reduce((sum, __, edge) => sum + basis.edgeMatrix(edge)[0], 0) * basis.areaM2;
    expect(Math.abs(outline / perimeterOf(corners) - 1)).toBeLessThanOrEqual(1e-6);
  });

  it('has edges whose parts add up', () => {
    const whole = basis.edgeMatrix(0);
    const first = basis.edgeMatrix(0, 0, 0.1);
    const rest = basis.edgeMatrix(0, 0.1);
    for (let i = 0; i < whole.length; i++)
      expect(Math.abs(first[i] + rest[i] - whole[i])).toBeLessThanOrEqual(1e-10 * (1 + Math.abs(whole[i])));
  });
});
