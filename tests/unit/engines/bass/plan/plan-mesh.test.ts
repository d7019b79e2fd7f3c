import { describe, expect, it } from 'vitest';
import { meshPlan, type PlanMesh } from '../../../../../src/engines/bass/plan/plan-mesh.ts';
import { areaOf, PLANS, perimeterOf } from './plans.ts';

const GRADING = { meshM: 0.9, cornerShare: 0.01, slope: 0.9 };

const meshed = (corners: readonly (readonly [number, number])[]): PlanMesh => {
  const mesh = meshPlan(corners, GRADING);
  if (typeof mesh === 'string') throw new Error(mesh);
  return mesh;
};

const place = ({ coords }: PlanMesh, point: number): [number, number] => [coords[2 * point], coords[2 * point + 1]];

describe.each(Object.entries(PLANS))('triangles over a plan: %s', (_, corners) => {
  const mesh = meshed(corners);
  const triangles = Array.from({ length: mesh.triangles.length / 3 }, (_, t) =>
    Array.from(mesh.triangles.subarray(3 * t, 3 * t + 3), (point) => place(mesh, point)),
  );

  it('turn left and fill the plan', () => {
    let area = 0;
    for (const [[au, av], [bu, bv], [cu, cv]] of triangles) {
      const twice = (bu - au) * (cv - av) - (bv - av) * (cu - au);
      expect(twice).toBeGreaterThan(0);
      area += twice / 2;
    }
    // rounding only
    expect(Math.abs(area / areaOf(corners) - 1)).toBeLessThanOrEqual(1e-9);
  });

  it('share whole sides with each other, or lie on the outline: no side is crossed', () => {
    const uses = new Map<string, number>();
    for (let half = 0; half < mesh.triangles.length; half++) {
      const a = mesh.triangles[half];
      const b = mesh.triangles[half % 3 === 2 ? half - 2 : half + 1];
      uses.set(`${a}-${b}`, (uses.get(`${a}-${b}`) ?? 0) + 1);
      if (mesh.sides[half] >= 0) {
        expect(mesh.stretches[mesh.sides[half]].a).toBe(a);
        expect(mesh.stretches[mesh.sides[half]].b).toBe(b);
      }
    }
    for (const [side, count] of uses) {
      const [a, b] = side.split('-').map(Number);
      const outer = mesh.stretches.some((stretch) => stretch.a === a && stretch.b === b);
      expect(count).toBe(1);
      expect(uses.has(`${b}-${a}`)).toBe(!outer);
    }
  });

  it('cut the outline into stretches that follow each other along every edge', () => {
    const length = mesh.stretches.reduce((sum, { fromM, toM }) => sum + toM - fromM, 0);
    expect(Math.abs(length / perimeterOf(corners) - 1)).toBeLessThanOrEqual(1e-12);
    for (const { a, b, fromM, toM } of mesh.stretches) {
      const [[au, av], [bu, bv]] = [place(mesh, a), place(mesh, b)];
      expect(Math.abs(Math.hypot(bu - au, bv - av) - (toM - fromM))).toBeLessThanOrEqual(1e-9);
    }
  });

  it('are no larger than asked', () => {
    for (const [a, b, c] of triangles) {
      for (const [p, q] of [
        [a, b],
        [b, c],
        [c, a],
      ]) {
        // twice the largest circumradius that refinement leaves, 0.72 of a side, and what smoothing moves
        expect(Math.hypot(p[0] - q[0], p[1] - q[1])).toBeLessThanOrEqual(1.6 * GRADING.meshM);
      }
    }
  });
});

describe('a plan that cannot be cut into triangles', () => {
  it.each([
    [
      'too few corners',
      [
        [0, 0],
        [1, 0],
      ],
      /3 to 64 corners/,
    ],
    [
      'crossed walls',
      [
        [0, 0],
        [2, 2],
        [2, 0],
        [0, 2],
      ],
      /cross or touch/,
    ],
    [
      'a corner on another wall',
      [
        [0, 0],
        [4, 0],
        [4, 3],
        [2, 0],
        [0, 3],
      ],
      /cross or touch/,
    ],
    [
      'a corner twice',
      [
        [0, 0],
        [4, 0],
        [4, 0],
        [4, 3],
      ],
      /same place/,
    ],
    [
      'a wall that comes back on itself',
      [
        [0, 0],
        [4, 0],
        [2, 0],
        [4, 3],
      ],
      /fold back|cross or touch/,
    ],
    [
      'no place',
      [
        [0, 0],
        [Number.NaN, 0],
        [4, 3],
      ],
      /no place/,
    ],
    ['65 corners', Array.from({ length: 65 }, (_, i) => [Math.cos(i / 11), Math.sin(i / 11)]), /3 to 64/],
  ] as [string, [number, number][], RegExp][])('%s: says why', (_, corners, words) => {
    const answer = meshPlan(corners, GRADING);
    expect(answer).toMatch(words);
  });
});

describe('grading', () => {
  it('shrinks towards a re-entrant corner and nowhere else', () => {
    const mesh = meshed(PLANS['L of 40 m2']);
    const shortestAt = (u: number, v: number): number =>
      Math.min(
        ...Array.from(mesh.triangles, (point, half) => {
          const [pu, pv] = place(mesh, point);
          const [qu, qv] = place(mesh, mesh.triangles[half % 3 === 2 ? half - 2 : half + 1]);
          return Math.hypot(pu - u, pv - v) < 1e-9 ? Math.hypot(qu - pu, qv - pv) : Number.POSITIVE_INFINITY;
        }),
      );
    // h = 0.9 m x 0.01^(3/4) = 0.028 m at the corner; where h grows by 0.9 r the first piece is h (e^0.9 - 1) / 0.9 = 0.046 m,
    // the number of pieces rounded; refinement may halve it
    expect(shortestAt(4, 4)).toBeGreaterThan(0.02);
    expect(shortestAt(4, 4)).toBeLessThan(0.05);
    expect(shortestAt(0, 0)).toBeGreaterThan(0.3);
  });
});
