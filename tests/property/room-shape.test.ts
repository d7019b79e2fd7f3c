import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { signedArea, triangulated } from '../../src/math/polygon.ts';
import type { Point2 } from '../../src/math/polyline.ts';
import type { Vec3 } from '../../src/math/vec3.ts';
import type { Project } from '../../src/model/project.ts';
import { topAt } from '../../src/model/room/places.ts';
import { roomShape } from '../../src/model/room/shape.ts';
import { ceilings, milli, rooms, stars } from './any-rooms.ts';

/** Checks of the room's description against code of this file alone: winding numbers and sums over fine grids. */
const SEED = 20261125;
const RUNS = 120;

type Room = Project['room'];

const cornersOf = ({ room: { plan } }: { room: Room }): Point2[] =>
  plan.shape === 'polygon'
    ? plan.cornersM.map(([x, z]) => [x, z])
    : [
        [-plan.widthM / 2, 0],
        [plan.widthM / 2, 0],
        [plan.widthM / 2, plan.lengthM],
        [-plan.widthM / 2, plan.lengthM],
      ];

/** Turns of the polygon round a point: not 0 inside, either sense. */
const winding = (corners: readonly Point2[], [x, y]: Point2): number => {
  let sum = 0;
  corners.forEach(([ax, ay], i) => {
    const [bx, by] = corners[(i + 1) % corners.length];
    const cross = (ax - x) * (by - y) - (ay - y) * (bx - x);
    const along = (ax - x) * (bx - x) + (ay - y) * (by - y);
    sum += Math.atan2(cross, along);
  });
  return Math.round(sum / (2 * Math.PI));
};

/** The ceiling from the file alone: a straight line between the two points round a place, level beyond the ends. */
const heightOver = (
  { room: { ceiling } }: { room: Room },
  corners: readonly Point2[],
  x: number,
  z: number,
): number => {
  if (ceiling.shape === 'flat') return ceiling.heightM;
  const k = ceiling.across === 'x' ? 0 : 1;
  const s = k === 0 ? x : z;
  const places = corners.map((corner) => corner[k]);
  const points =
    ceiling.shape === 'slope'
      ? [
          [Math.min(...places), ceiling.startHeightM],
          [Math.max(...places), ceiling.endHeightM],
        ]
      : ceiling.pointsM;
  if (s <= points[0][0]) return points[0][1];
  for (let i = 1; i < points.length; i += 1) {
    const [[s0, h0], [s1, h1]] = [points[i - 1], points[i]];
    if (s <= s1) return h0 + ((h1 - h0) * (s - s0)) / (s1 - s0);
  }
  return points[points.length - 1][1];
};

const GRID = 160;

/** Sums over a grid of GRID x GRID cells: area, volume, and how far the cells on the rim may be off. */
const summed = (project: { room: Room }) => {
  const corners = cornersOf(project);
  const xs = corners.map(([x]) => x);
  const zs = corners.map(([, z]) => z);
  const [x0, z0] = [Math.min(...xs), Math.min(...zs)];
  const [dx, dz] = [(Math.max(...xs) - x0) / GRID, (Math.max(...zs) - z0) / GRID];
  let area = 0;
  let volume = 0;
  for (let j = 0; j < GRID; j += 1)
    for (let i = 0; i < GRID; i += 1) {
      const at: Point2 = [x0 + (i + 0.5) * dx, z0 + (j + 0.5) * dz];
      if (winding(corners, at) === 0) continue;
      area += dx * dz;
      volume += dx * dz * heightOver(project, corners, at[0], at[1]);
    }
  const perimeter = corners.reduce((sum, [x, z], i) => {
    const [nx, nz] = corners[(i + 1) % corners.length];
    return sum + Math.hypot(nx - x, nz - z);
  }, 0);
  return { area, volume, rim: (perimeter * Math.max(dx, dz)) / 2 };
};

describe(`the shape of any room (seed ${SEED})`, () => {
  it('has the area of its triangles, and area and volume of a sum over a fine grid', () => {
    fc.assert(
      fc.property(rooms, (project) => {
        const shape = roomShape(project);
        const { corners } = shape;
        const triangles = triangulated(corners);
        const sum = triangles.reduce((total, [a, b, c]) => total + signedArea([corners[a], corners[b], corners[c]]), 0);
        // Rounding only.
        expect(sum).toBeCloseTo(shape.floorAreaM2, 9);
        const { area, volume, rim } = summed(project);
        // Half a cell along the rim may fall on either side; a kink in the ceiling within a cell weighs far less.
        expect(Math.abs(area - shape.floorAreaM2)).toBeLessThan(rim);
        expect(Math.abs(volume - shape.volumeM3)).toBeLessThan(rim * shape.highestM + 1e-3);
      }),
      { seed: SEED, numRuns: RUNS },
    );
  });

  it('has the surface of its walls and ceiling summed over short strips', () => {
    fc.assert(
      fc.property(rooms, (project) => {
        const shape = roomShape(project);
        const corners = cornersOf(project);
        const STRIPS = 4000;
        for (const wall of shape.walls) {
          let area = 0;
          for (let i = 0; i < STRIPS; i += 1) {
            const t = (i + 0.5) / STRIPS;
            const x = wall.from[0] + (wall.to[0] - wall.from[0]) * t - wall.outward[0] * 1e-9;
            const z = wall.from[1] + (wall.to[1] - wall.from[1]) * t - wall.outward[1] * 1e-9;
            area += (heightOver(project, corners, x, z) * wall.lengthM) / STRIPS;
          }
          // The strip a kink falls in is off by less than half its width times a few metres.
          expect(Math.abs(area - wall.areaM2)).toBeLessThan(4e-3);
        }
        const pieces = shape.pieces.reduce((sum, { areaM2 }) => sum + areaM2, 0);
        expect(pieces).toBeCloseTo(shape.areasM2.ceiling, 9);
        for (const { polygonsM, areaM2 } of shape.pieces) {
          const fans = polygonsM.reduce((sum, [a, ...rest]) => {
            const fan = rest.slice(1).map((c, i) => {
              const b = rest[i];
              const p = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
              const q = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
              return Math.hypot(p[1] * q[2] - p[2] * q[1], p[2] * q[0] - p[0] * q[2], p[0] * q[1] - p[1] * q[0]) / 2;
            });
            return sum + fan.reduce((total, part) => total + part, 0);
          }, 0);
          // Slivers under a square micrometre are left out of the drawing.
          expect(fans).toBeCloseTo(areaM2, 6);
        }
      }),
      { seed: SEED, numRuns: 40 },
    );
  });

  it('contains what its plan winds round below its ceiling, and nothing else', () => {
    fc.assert(
      fc.property(rooms, fc.tuple(milli(-8, 8), milli(0, 5), milli(-2, 12)), (project, at) => {
        const shape = roomShape(project);
        const corners = cornersOf(project);
        const [x, y, z] = at as Vec3;
        const inside = winding(corners, [x, z]) !== 0 && y < heightOver(project, corners, x, z);
        const edge = corners.some(([ax, az], i) => {
          const [bx, bz] = corners[(i + 1) % corners.length];
          const long = Math.hypot(bx - ax, bz - az);
          return Math.abs((x - ax) * (bz - az) - (z - az) * (bx - ax)) / long < 1e-6;
        });
        fc.pre(!edge && Math.abs(y - heightOver(project, corners, x, z)) > 1e-6);
        expect(shape.contains([x, y, z])).toBe(inside);
      }),
      { seed: SEED, numRuns: 600 },
    );
  });

  it('brings any point to a place inside, with the box asked for round it, and moves none that is there', () => {
    const places = fc.tuple(milli(-8, 8), milli(-1, 5), milli(-2, 12));
    fc.assert(
      fc.property(rooms, places, fc.tuple(milli(0, 0.3), milli(0, 0.3), milli(0, 0.3)), (project, at, around) => {
        const shape = roomShape(project);
        fc.pre(shape.lowestM > 0.7);
        const to = shape.nearestInside(at as Vec3, around as Vec3);
        expect(shape.contains(to)).toBe(true);
        const again = shape.nearestInside(to, around as Vec3);
        if (shape.contains(to, around as Vec3)) expect(again).toEqual(to);
        if (shape.contains(at as Vec3, around as Vec3)) expect(to).toEqual(at);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  it('finds no nearer place by trying', () => {
    fc.assert(
      fc.property(stars, fc.tuple(milli(-8, 8), milli(-2, 12)), milli(0, 0.3), (plan, [x, z], clear) => {
        const room = { plan, ceiling: { shape: 'flat', heightM: 2.5 } } as Room;
        const shape = roomShape({ room });
        const to = shape.nearestInside([x, 1, z], [clear, 0, clear]);
        fc.pre(shape.contains(to, [clear, 0, clear]));
        const far = Math.hypot(to[0] - x, to[2] - z);
        for (let j = 0; j <= 40; j += 1)
          for (let i = 0; i <= 40; i += 1) {
            const tried: Vec3 = [
              shape.minM[0] + ((shape.maxM[0] - shape.minM[0]) * i) / 40,
              1,
              shape.minM[2] + ((shape.maxM[2] - shape.minM[2]) * j) / 40,
            ];
            if (!shape.contains(tried, [clear, 0, clear])) continue;
            expect(Math.hypot(tried[0] - x, tried[2] - z)).toBeGreaterThan(far - 1e-6);
          }
      }),
      { seed: SEED, numRuns: 60 },
    );
  });

  it('is the same room when its corners are told the other way round', () => {
    fc.assert(
      fc.property(stars, ceilings, (plan, ceiling) => {
        const one = roomShape({ room: { plan, ceiling } as Room });
        const cornersM = [...plan.cornersM].reverse();
        const two = roomShape({ room: { plan: { ...plan, cornersM }, ceiling } as Room });
        expect(two.volumeM3).toBeCloseTo(one.volumeM3, 9);
        expect(two.surfaceM2).toBeCloseTo(one.surfaceM2, 9);
        const count = cornersM.length;
        for (const wall of one.walls) {
          const edge = (2 * count - 2 - wall.edge) % count;
          const same = two.walls.find((other) => other.edge === edge);
          expect(same).toMatchObject({ surface: wall.surface, from: wall.from, to: wall.to, start: wall.start });
          // The file's own two corners of that edge are this wall's.
          const ends = [cornersM[edge], cornersM[(edge + 1) % count]];
          expect(ends.map(String).sort()).toEqual([wall.from, wall.to].map(String).sort());
        }
      }),
      { seed: SEED, numRuns: RUNS },
    );
  });

  it('in a mirror has left for right and all else alike', () => {
    fc.assert(
      fc.property(rooms, (project) => {
        const { room } = project;
        const one = roomShape(project);
        const mirrored = (x: number, y: number): [number, number] => [0 - x, y];
        const plan =
          room.plan.shape === 'polygon'
            ? { ...room.plan, cornersM: room.plan.cornersM.map(([x, z]) => mirrored(x, z)) }
            : room.plan;
        const { ceiling } = room;
        const turned =
          ceiling.shape === 'flat' || ceiling.across === 'z'
            ? ceiling
            : ceiling.shape === 'slope'
              ? { ...ceiling, startHeightM: ceiling.endHeightM, endHeightM: ceiling.startHeightM }
              : { ...ceiling, pointsM: ceiling.pointsM.map(([x, y]) => mirrored(x, y)) };
        const two = roomShape({ room: { ...room, plan, ceiling: turned } as Room });
        expect(two.volumeM3).toBeCloseTo(one.volumeM3, 9);
        expect(two.areasM2.left).toBeCloseTo(one.areasM2.right, 9);
        expect(two.areasM2.front).toBeCloseTo(one.areasM2.front, 9);
        expect(two.areasM2.ceiling).toBeCloseTo(one.areasM2.ceiling, 9);
      }),
      { seed: SEED, numRuns: RUNS },
    );
  });

  it('tells every wall as high as its ceiling just inside it', () => {
    fc.assert(
      fc.property(rooms, milli(0.01, 0.99), (project, share) => {
        const shape = roomShape(project);
        for (const wall of shape.walls) {
          const along = share * wall.lengthM;
          const x = wall.start[0] + wall.along[0] * along - wall.outward[0] * 1e-7;
          const z = wall.start[1] + wall.along[1] * along - wall.outward[1] * 1e-7;
          // A ten-millionth of a metre inside, under a slope of at most 4 in 0.2.
          expect(topAt(wall, along)).toBeCloseTo(shape.ceilingAtM(x, z), 5);
        }
      }),
      { seed: SEED, numRuns: RUNS },
    );
  });
});
