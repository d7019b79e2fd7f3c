import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createPlanBasis } from '../../src/engines/bass/plan/create-plan-basis.ts';
import { PLAN_DETAIL } from '../../src/engines/bass/plan/element-choice.ts';
import type { PlanBasis } from '../../src/engines/bass/plan/plan-basis.ts';

// Random plans of 10 to 120 m2. fast-check prints seed and counterexample of a failure.
const C = 343.2;
const RUNS = { numRuns: 15, endOnFailure: true };
const share = fc.double({ min: 0, max: 1, noNaN: true });
const between = (share: number, from: number, to: number): number => from + share * (to - from);

type Corners = readonly (readonly [number, number])[];

/** Corners at equal turns, jittered by less than half a turn, at 2 to 6 m from a middle that sees them all. */
const star = fc.array(fc.tuple(share, share), { minLength: 5, maxLength: 12 }).map(
  (list): Corners =>
    list.map(([turn, away], i) => {
      const angle = (2 * Math.PI * (i + 0.8 * (turn - 0.5))) / list.length;
      const radius = between(away, 2, 6);
      return [radius * Math.cos(angle), radius * Math.sin(angle)];
    }),
);
/** A rectangle with another on its far wall (T, alcove, bay) or at the end of it (L). */
const joined = fc
  .tuple(share, share, share, share, share, fc.boolean())
  .map(([w, h, width, depth, at, atEnd]): Corners => {
    const [W, H] = [between(w, 3, 9), between(h, 2.5, 6)];
    const reach = between(width, 0.15, 0.6) * W;
    const from = atEnd ? 0 : between(at, 0.05, 0.95) * (W - reach);
    const D = between(depth, 0.2, 4);
    const corners: [number, number][] = [
      [0, 0],
      [W, 0],
      [W, H],
      [from + reach, H],
      [from + reach, H + D],
      [from, H + D],
    ];
    if (from > 0) corners.push([from, H], [0, H]);
    return corners;
  });
const plan = fc.oneof(star, joined);

const basisOf = (corners: Corners, maxHz = 130, wallFunctions = 0): PlanBasis =>
  createPlanBasis(corners, { maxHz, soundSpeed: C, wallFunctions, ...PLAN_DETAIL.fine });

const perimeterOf = (corners: Corners): number =>
  corners.reduce((sum, [u, v], i) => {
    const [nextU, nextV] = corners[(i + 1) % corners.length];
    return sum + Math.hypot(nextU - u, nextV - v);
  }, 0);

/** Eigenvalues agree as far as two meshes of the plan do: the elements' own error at the top of the range and at corners. */
const expectSame = (a: ArrayLike<number>, b: ArrayLike<number>): void => {
  const common = Math.min(a.length, b.length);
  // a value at the bound itself may fall to either side
  expect(Math.abs(a.length - b.length)).toBeLessThanOrEqual(1);
  for (let i = 0; i < common; i++) expect(Math.abs(a[i] - b[i])).toBeLessThanOrEqual(8e-3 * a[i] + 1e-8);
};

describe('plan modes of random plans', () => {
  it('frequencies go as 1 over the size', () => {
    fc.assert(
      fc.property(plan, share, (corners, s) => {
        const factor = between(s, 0.4, 3);
        const small = basisOf(corners).rigid;
        const large = basisOf(
          corners.map(([u, v]) => [factor * u, factor * v]),
          130 / factor,
        ).rigid;
        expect(Math.abs(small.length - large.length)).toBeLessThanOrEqual(1);
        for (let i = 0; i < Math.min(small.length, large.length); i++)
          expect(Math.abs(large[i] * factor * factor - small[i])).toBeLessThanOrEqual(2e-3 * small[i] + 1e-7);
      }),
      RUNS,
    );
  });

  it('stay when the plan is turned, shifted, mirrored or begun at another corner', () => {
    fc.assert(
      fc.property(plan, share, fc.nat(11), (corners, turn, start) => {
        const [cos, sin] = [Math.cos(2 * Math.PI * turn), Math.sin(2 * Math.PI * turn)];
        const first = basisOf(corners).rigid;
        const turned = corners.map(([u, v]): [number, number] => [cos * u - sin * v + 3, sin * u + cos * v - 7]);
        const begun = corners.map((_, i) => turned[(i + start) % corners.length]);
        expectSame(first, basisOf(begun).rigid);
        expectSame(first, basisOf(corners.map(([u, v]) => [-u, v])).rigid);
      }),
      RUNS,
    );
  });

  it('are as many as Weyl says: A k2 / 4 pi + P k / 4 pi, both terms', () => {
    fc.assert(
      fc.property(plan, (corners) => {
        const basis = basisOf(corners, 200);
        const k = (2 * Math.PI * 200) / C;
        const expected = (basis.areaM2 * k * k + perimeterOf(corners) * k) / (4 * Math.PI);
        // the staircase strays from its mean by a few steps: sqrt of the count covers what these shapes do
        expect(Math.abs(basis.rigid.length - expected)).toBeLessThanOrEqual(2 + 0.6 * Math.sqrt(expected));
      }),
      RUNS,
    );
  });

  it('are orthonormal over the plan, functions of walls and points included', () => {
    fc.assert(
      fc.property(star, (corners) => {
        const basis = basisOf(corners, 90, 2).withPoints(Float64Array.of(0.3, 0.4));
        const { points, weights } = fanRule(corners, 56);
        const values = basis.valuesAt(points);
        const { size } = basis;
        for (let i = 0; i < size; i++) {
          for (let j = 0; j <= i; j++) {
            let sum = 0;
            for (let p = 0; p < weights.length; p++) sum += weights[p] * values[p * size + i] * values[p * size + j];
            // the quadrature's own error: elements have kinks inside its pieces
            expect(Math.abs(sum - (i === j ? 1 : 0))).toBeLessThanOrEqual(2e-3);
          }
        }
      }),
      { ...RUNS, numRuns: 8 },
    );
  });

  it('carry the outline: the constant integrated over all edges', () => {
    fc.assert(
      fc.property(plan, (corners) => {
        const basis = basisOf(corners, 80, 2);
        const outline = corners.reduce((sum, _, edge) => sum + basis.edgeMatrix(edge)[0], 0) * basis.areaM2;
        expect(Math.abs(outline / perimeterOf(corners) - 1)).toBeLessThanOrEqual(1e-7);
      }),
      RUNS,
    );
  });
});

/** Two Gauss points each way (degree 3) in steps^2 pieces of the triangles from the middle to every edge. */
const fanRule = (corners: Corners, steps: number): { points: Float64Array; weights: Float64Array } => {
  const points: number[] = [];
  const weights: number[] = [];
  const shares = Array.from(
    { length: 2 * steps },
    (_, i) => (Math.floor(i / 2) + 0.5 + ((i % 2) - 0.5) / Math.sqrt(3)) / steps,
  );
  for (const [i, [au, av]] of corners.entries()) {
    const [bu, bv] = corners[(i + 1) % corners.length];
    const twice = au * bv - av * bu;
    for (const out of shares) {
      for (const along of shares) {
        points.push(out * (au + along * (bu - au)), out * (av + along * (bv - av)));
        weights.push((twice * out) / shares.length ** 2);
      }
    }
  }
  return { points: Float64Array.from(points), weights: Float64Array.from(weights) };
};
