import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leastClearance } from '../../src/engines/sight/c-value.ts';
import { type FlatTarget, targetFacing, uprightTarget } from '../../src/engines/sight/flat-target.ts';
import { visibleFraction } from '../../src/engines/sight/occlusion.ts';
import { pictureGeometry } from '../../src/engines/sight/picture-geometry.ts';
import { type Occluder, occluderOf } from '../../src/engines/sight/sight-pyramid.ts';
import type { Vec3 } from '../../src/math/vec3.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const point = (z0: number, z1: number): fc.Arbitrary<Vec3> => fc.tuple(real(-3, 3), real(0, 3), real(z0, z1));

/** A loose bundle of triangles anywhere in the room, behind the eye and through the picture's plane included. */
const bundle = fc
  .array(point(-1, 7), { minLength: 3, maxLength: 18 })
  .map((corners) =>
    occluderOf(
      'b',
      new Float64Array(corners.flat()),
      new Uint32Array(corners.slice(2).flatMap((_, i) => [i, i + 1, i + 2])),
    ),
  );
/** Whole millimetres, so that no shrunk case is smaller than rounding; eyes stand between them, off every such plane. */
const milli = (min: number, max: number) => fc.integer({ min: 1000 * min, max: 1000 * max }).map((mm) => mm / 1000);
const coarseBundle = fc
  .array(fc.tuple(milli(-3, 3), milli(0, 3), milli(-1, 7)), { minLength: 3, maxLength: 18 })
  .map((corners) =>
    occluderOf(
      'b',
      new Float64Array(corners.flat()),
      new Uint32Array(corners.slice(2).flatMap((_, i) => [i, i + 1, i + 2])),
    ),
  );
const offGridEye = fc
  .tuple(milli(-3, 3), milli(0, 3), milli(1, 6))
  .map(([x, y, z]): Vec3 => [x + 0.000414, y + 0.000236, z + 0.000718]);
const picture = fc
  .tuple(real(-1, 1), real(0.6, 1.8), real(0.5, 4), real(0.4, 2))
  .map(([x, y, w, h]) => uprightTarget([x, y, 0.06], w, h));
const size = { columns: 64, rows: 36 };

const mirrorPoint = ([x, y, z]: Vec3): Vec3 => [-x, y, z];
const mirrorOccluder = (o: Occluder): Occluder =>
  occluderOf(
    o.id,
    o.positions.map((v, i) => (i % 3 === 0 ? -v : v)),
    o.indices,
  );
const mirrorTarget = (t: FlatTarget): FlatTarget => ({ ...t, centreM: mirrorPoint(t.centreM) });
const scaled = ([x, y, z]: Vec3, s: number): Vec3 => [s * x, s * y, s * z];

describe('visible fraction', () => {
  it('lies in [0, 1] and never grows when an occluder is added', () => {
    fc.assert(
      fc.property(point(0.2, 6), picture, fc.array(bundle, { maxLength: 4 }), bundle, (eye, target, some, more) => {
        const before = visibleFraction(eye, target, some, size);
        const after = visibleFraction(eye, target, [...some, more], size);
        expect(before).toBeGreaterThanOrEqual(0);
        expect(before).toBeLessThanOrEqual(1);
        expect(after).toBeLessThanOrEqual(before);
        expect(after).toBeGreaterThanOrEqual(before + visibleFraction(eye, target, [more], size) - 1 - 1e-12);
      }),
    );
  });

  it('is the same in the mirror', () => {
    fc.assert(
      fc.property(point(0.2, 6), picture, fc.array(bundle, { maxLength: 3 }), (eye, target, occluders) => {
        const plain = visibleFraction(eye, target, occluders, size);
        const mirrored = visibleFraction(mirrorPoint(eye), mirrorTarget(target), occluders.map(mirrorOccluder), size);
        // A cell centre that lies on an outline to the last bit may fall either way.
        expect(Math.abs(plain - mirrored)).toBeLessThanOrEqual(2 / (size.columns * size.rows));
      }),
    );
  });

  it('does not depend on the order of the occluders', () => {
    fc.assert(
      fc.property(
        point(0.2, 6),
        picture,
        fc.array(bundle, { minLength: 2, maxLength: 4 }),
        (eye, target, occluders) => {
          const forward = visibleFraction(eye, target, occluders, size);
          expect(visibleFraction(eye, target, [...occluders].reverse(), size)).toBe(forward);
        },
      ),
    );
  });

  it('is for one long mesh, looked through in runs of triangles, what it is for its triangles one by one', () => {
    const long = fc.array(fc.tuple(point(-1, 7), real(-0.2, 0.2), real(-0.2, 0.2)), { minLength: 60, maxLength: 150 });
    fc.assert(
      fc.property(point(0.2, 6), picture, long, (eye, target, slivers) => {
        const corners = slivers.flatMap(([[x, y, z], a, b]) => [
          [x, y, z],
          [x + a, y + b, z],
          [x, y + a, z + b],
        ]);
        const whole = occluderOf(
          'w',
          new Float64Array(corners.flat()),
          Uint32Array.from(corners, (_, i) => i),
        );
        const single = slivers.map((_, i) =>
          occluderOf('s', whole.positions.slice(9 * i, 9 * i + 9), new Uint32Array([0, 1, 2])),
        );
        expect(visibleFraction(eye, target, [whole], size)).toBe(visibleFraction(eye, target, single, size));
      }),
    );
  });

  it('agrees with rays from the eye to the cell centres, triangle by triangle', () => {
    fc.assert(
      fc.property(offGridEye, picture, coarseBundle, (eye, target, occluder) => {
        const columns = 24;
        const rows = 14;
        let seen = 0;
        for (let j = 0; j < rows; j += 1) {
          for (let i = 0; i < columns; i += 1) {
            const aim: Vec3 = [
              target.centreM[0] + target.widthM * ((i + 0.5) / columns - 0.5),
              target.centreM[1] + target.heightM * ((j + 0.5) / rows - 0.5),
              target.centreM[2],
            ];
            if (!rayMeets(eye, aim, occluder)) seen += 1;
          }
        }
        const share = visibleFraction(eye, target, [occluder], { columns, rows });
        // Cells whose ray grazes an edge or the target's plane within rounding: two at most.
        expect(Math.abs(share - seen / (columns * rows))).toBeLessThanOrEqual(2 / (columns * rows));
      }),
      { numRuns: 200 },
    );
  });
});

/** Whether the open segment from `eye` to `aim` meets a triangle (Cramer's rule on eye + t ray = a + u ab + v ac). */
const rayMeets = (eye: Vec3, aim: Vec3, { positions, indices }: Occluder): boolean => {
  const det = (p: number[], q: number[], r: number[]): number =>
    p[0] * (q[1] * r[2] - q[2] * r[1]) - p[1] * (q[0] * r[2] - q[2] * r[0]) + p[2] * (q[0] * r[1] - q[1] * r[0]);
  const minus = (p: ArrayLike<number>, q: ArrayLike<number>): number[] => [p[0] - q[0], p[1] - q[1], p[2] - q[2]];
  const corner = (i: number): number[] => [...positions.subarray(3 * i, 3 * i + 3)];
  const ray = minus(aim, eye);
  for (let i = 0; i < indices.length; i += 3) {
    const a = corner(indices[i]);
    const ab = minus(corner(indices[i + 1]), a);
    const ac = minus(corner(indices[i + 2]), a);
    const back = [-ray[0], -ray[1], -ray[2]];
    const whole = det(ab, ac, back);
    if (whole === 0) continue;
    const from = minus(eye, a);
    const u = det(from, ac, back) / whole;
    const v = det(ab, from, back) / whole;
    const t = det(ab, ac, from) / whole;
    if (u >= 0 && v >= 0 && u + v <= 1 && t > 0 && t < 1 - 1e-5) return true;
  }
  return false;
};

describe('picture geometry', () => {
  it('is the same in the mirror and, but for lengths, at any scale', () => {
    fc.assert(
      fc.property(point(0.2, 6), picture, real(0.1, 20), (eye, target, s) => {
        const g = pictureGeometry(eye, target, 3840);
        const mirrored = pictureGeometry(mirrorPoint(eye), mirrorTarget(target), 3840);
        const big = pictureGeometry(
          scaled(eye, s),
          { ...target, centreM: scaled(target.centreM, s), widthM: target.widthM * s, heightM: target.heightM * s },
          3840,
        );
        for (const key of Object.keys(g) as (keyof typeof g)[]) {
          const value = g[key] ?? Number.NaN;
          expect(mirrored[key], `mirror ${key}`).toBeCloseTo(value, 9);
          expect((big[key] ?? Number.NaN) / (key === 'distanceM' ? s : 1), `scale ${key}`).toBeCloseTo(value, 6);
        }
      }),
    );
  });

  it('keeps a rectangle turned towards a direction square and of unit axes', () => {
    fc.assert(
      fc.property(point(-3, 3), (facing) => {
        fc.pre(Math.hypot(...facing) > 1e-3);
        const { right, up } = targetFacing([0, 0, 0], facing, 1, 1);
        expect(Math.hypot(...right)).toBeCloseTo(1, 9);
        expect(Math.hypot(...up)).toBeCloseTo(1, 9);
        expect(right[0] * up[0] + right[1] * up[1] + right[2] * up[2]).toBeCloseTo(0, 9);
        expect(right[1]).toBeCloseTo(0, 9);
      }),
    );
  });
});

describe('clearance', () => {
  it('grows with a raised eye by the share of the way at which the row in front stands', () => {
    fc.assert(
      fc.property(real(2, 5), real(0.5, 1.5), real(0.9, 1.3), real(0, 0.6), (z, pitch, eyeY, rise) => {
        const rows = [{ id: 'front', eyeHeightM: eyeY, eyeZM: z }];
        const low = leastClearance([0, eyeY, z + pitch], [0, 0.7, 0], rows);
        const high = leastClearance([0, eyeY + rise, z + pitch], [0, 0.7, 0], rows);
        // Raising the eye behind by h raises the line over the row in front by h z / (z + pitch).
        const gain = ((high?.clearanceMm ?? Number.NaN) - (low?.clearanceMm ?? Number.NaN)) / 1000;
        expect(gain).toBeCloseTo((rise * z) / (z + pitch), 9);
      }),
    );
  });
});
