import { describe, expect, it } from 'vitest';
import { floorHeightAt, riserBoxes, riserSolids, roomSolids, shellSolids } from '../../../src/shapes/index.ts';
import { bare, boundsOf, byId, byPart, demo, facesOf, full } from './support.ts';

const WALL_M = 0.12;

/** The area of a surface's inner face: triangles in that plane, corners counted only within the room. */
const innerArea = (project: ReturnType<typeof demo>, id: string, axis: 0 | 1 | 2, at: number): number => {
  const [wall] = byPart(byId(shellSolids(project), id), 'wall');
  const { widthM, lengthM } = { widthM: 4.3, lengthM: 6.1 };
  let area = 0;
  for (const { vector, corners } of facesOf(wall.geometry)) {
    const points = corners.map((k) => [0, 1, 2].map((c) => wall.geometry.positions[3 * k + c]));
    const within = points.every(
      (p) =>
        Math.abs(p[axis] - at) < 1e-5 && Math.abs(p[0]) < widthM / 2 + 1e-5 && p[2] > -1e-5 && p[2] < lengthM + 1e-5,
    );
    if (within) area += Math.hypot(...vector) / 2;
  }
  return area;
};

describe('the shell', () => {
  it('has six surfaces by name, plaster, oak and ceiling', () => {
    const walls = byPart(shellSolids(bare()), 'wall');
    expect(walls.map(({ id, material }) => `${id} ${material}`)).toEqual([
      'front plaster',
      'back plaster',
      'left plaster',
      'right plaster',
      'floor oak',
      'ceiling ceiling',
    ]);
  });

  it('has inner faces on the room’s box and is one wall thick to the outside', () => {
    const { min, max } = boundsOf(byPart(shellSolids(bare()), 'wall'));
    expect([...min, ...max].map((v) => Math.round(v * 1e5) / 1e5)).toEqual([
      -2 - WALL_M,
      -WALL_M,
      -WALL_M,
      2 + WALL_M,
      2.5 + WALL_M,
      5 + WALL_M,
    ]);
  });

  it('is cut through: each inner face is its rectangle less its openings', () => {
    const project = full();
    const [w, l, h] = [4.3, 6.1, 2.7];
    const door = 0.85 * 2;
    const window = 1.2 * 1.15;
    // Sums of some hundred single-precision triangles: 1e-4 m2.
    expect(innerArea(project, 'right', 0, w / 2)).toBeCloseTo(l * h - door, 4);
    expect(innerArea(project, 'left', 0, -w / 2)).toBeCloseTo(l * h - window, 4);
    expect(innerArea(project, 'front', 2, 0)).toBeCloseTo(w * h, 4);
    expect(innerArea(project, 'back', 2, l)).toBeCloseTo(w * h - 0.8, 4);
    expect(innerArea(project, 'ceiling', 1, h)).toBeCloseTo(w * l - 0.36, 4);
    expect(innerArea(project, 'floor', 1, 0)).toBeCloseTo(w * l, 4);
  });

  it('leaves the openings free where the file puts them', () => {
    const [wall] = byPart(byId(shellSolids(full()), 'back'), 'wall');
    // fromM runs from the left wall, which lies at x = -2.15: the pass is at x -1.15 to -0.35, y 0.8 to 1.8.
    for (const { corners } of facesOf(wall.geometry)) {
      const centre = [0, 1, 2].map((c) => corners.reduce((sum, k) => sum + wall.geometry.positions[3 * k + c], 0) / 3);
      const inHole = centre[0] > -1.149 && centre[0] < -0.351 && centre[1] > 0.801 && centre[1] < 1.799;
      expect(inHole).toBe(false);
    }
  });

  it('has no triangle side on an inner face longer than the light’s step', () => {
    const [wall] = byPart(byId(shellSolids(bare()), 'left'), 'wall');
    const { positions } = wall.geometry;
    for (const { vector, corners } of facesOf(wall.geometry)) {
      // The left wall's inner face looks to +x; the outside is cut no finer than its holes.
      if (vector[0] < 1e-9) continue;
      const spread = (c: number) => {
        const values = corners.map((k) => positions[3 * k + c]);
        return Math.max(...values) - Math.min(...values);
      };
      expect(spread(1)).toBeLessThan(0.3201);
      expect(spread(2)).toBeLessThan(0.3201);
    }
  });

  it('stops its skirting at a door', () => {
    const [skirting] = byPart(byId(shellSolids(demo()), 'right'), 'skirting');
    const { positions } = skirting.geometry;
    // The door runs from z = 0.75 to 1.6.
    for (let i = 2; i < positions.length; i += 3) expect(positions[i] > 0.76 && positions[i] < 1.59).toBe(false);
    const { min, max } = boundsOf([skirting]);
    expect(min[2]).toBeCloseTo(0, 5);
    expect(max[2]).toBeCloseTo(6.1, 5);
  });

  it('keeps a closed leaf in its frame and swings an open one the way it opens', () => {
    const leaf = (changes: object) => {
      const [door] = demo().room.openings;
      const project = demo({ room: { ...demo().room, openings: [{ ...door, ...changes }] } });
      return boundsOf(byPart(byId(shellSolids(project), 'door'), 'leaf'));
    };
    const closed = leaf({ leaf: 'closed' });
    expect(closed.min[0]).toBeGreaterThan(2.15 - 1e-6);
    expect(closed.max[0]).toBeLessThan(2.15 + WALL_M + 1e-6);
    const inward = leaf({ leaf: 'open', swing: 'in' });
    expect(inward.min[0]).toBeLessThan(1.5);
    const outward = leaf({ leaf: 'open', swing: 'out' });
    expect(outward.max[0]).toBeGreaterThan(2.9);
    // Facing the right wall from within the room, the front wall is on the left: a left hinge is at the least z.
    expect(inward.min[2]).toBeGreaterThan(0.7);
    expect(leaf({ leaf: 'open', swing: 'in', hinge: 'right' }).max[2]).toBeLessThan(1.65);
    expect(inward.max[2]).toBeLessThan(1.2);
  });
});

describe('risers', () => {
  it('fills the file’s extent up to the row’s floor', () => {
    const { min, max } = boundsOf(byPart(riserSolids(demo()), 'platform'));
    expect([...min, ...max].map((v) => Math.round(v * 1e5) / 1e5)).toEqual([-2.15, 0, 3.95, 2.15, 0.36, 6.1]);
  });

  it('runs from wall to wall and from behind the row in front by default', () => {
    const rows = demo().rows.map(({ riser: _, ...row }) => row);
    const [riser] = riserBoxes(demo({ rows }));
    expect([riser.fromXM, riser.toXM, riser.toZM, riser.topM]).toEqual([-2.15, 2.15, 6.1, 0.36]);
    // Behind the front row's backs and before the back row's feet.
    expect(riser.fromZM).toBeGreaterThan(3.3 + 0.3);
    expect(riser.fromZM).toBeLessThan(4.95 - 0.6);
  });

  it('needs one step for 360 mm and none for 190 mm: 7 3/4 in (197 mm) is the limit (IRC R311.7.5, read)', () => {
    const [riser] = riserBoxes(demo());
    expect(riser.steps.map(({ topM }) => topM)).toEqual([0.18, 0.18]);
    const low = demo({ rows: demo().rows.map((row) => (row.floorM > 0 ? { ...row, floorM: 0.19 } : row)) });
    expect(riserBoxes(low)[0].steps).toEqual([]);
  });

  it('splits 380 mm into two risers of 190 mm (facts 7.2, derived), 600 mm into four', () => {
    const steps = (floorM: number) => {
      const rows = demo().rows.map((row) => (row.floorM > 0 ? { ...row, floorM } : row));
      return riserBoxes(demo({ rows }))[0].steps.map(({ topM }) => Math.round(topM * 1000));
    };
    expect(steps(0.38)).toEqual([190, 190]);
    expect(steps(0.6)).toEqual([150, 150, 300, 300, 450, 450]);
  });

  it('gives treads of at least 254 mm (IRC R311.7.5, read) at both ends of the platform', () => {
    for (const step of riserBoxes(demo())[0].steps) {
      expect(step.toZM - step.fromZM).toBeGreaterThanOrEqual(0.254);
      expect(step.toZM).toBe(3.95);
    }
  });

  it('builds the steps of the file instead, what they leave out as usual', () => {
    const withSteps = (steps: NonNullable<ReturnType<typeof demo>['rows'][number]['riser']>['steps']) =>
      riserBoxes(
        demo({ rows: demo().rows.map((row) => (row.riser ? { ...row, riser: { ...row.riser, steps } } : row)) }),
      )[0];
    const { steps, flights } = withSteps([{ heightM: 0.1 }, { fromXM: -0.4, toXM: 0.4 }]);
    // The platform begins at 3.95: the upper step one tread of 28 cm before it, the lower one before that.
    expect(steps).toMatchObject([
      { fromXM: -2.15, toXM: 2.15, topM: 0.1, baseM: 0 },
      { fromXM: -0.4, toXM: 0.4, topM: 0.24, baseM: 0 },
    ]);
    expect(steps.map(({ fromZM, toZM }) => [fromZM, toZM].map((z) => Math.round(z * 100)))).toEqual([
      [339, 367],
      [367, 395],
    ]);
    expect(flights).toHaveLength(1);
    const apart = withSteps([
      { fromXM: -2, toXM: -1, heightM: 0.18 },
      { fromXM: 1, toXM: 2, heightM: 0.5 },
    ]);
    expect(apart.flights.map((flight) => flight.length)).toEqual([1, 1]);
    // None is higher than its platform.
    expect(apart.steps.map(({ topM }) => topM)).toEqual([0.18, 0.36]);
  });

  it('tells how high one stands', () => {
    expect(floorHeightAt(demo(), 0, 2)).toBe(0);
    expect(floorHeightAt(demo(), 0, 5)).toBe(0.36);
    expect(floorHeightAt(demo(), -2, 3.8)).toBe(0.18);
  });
});

describe('the whole room', () => {
  it('keeps everything but walls and joinery inside the room', () => {
    const inside = roomSolids(demo()).filter(({ kind, part }) => kind !== 'opening' && part !== 'wall');
    for (const solid of inside) {
      const { min, max } = boundsOf([solid]);
      const where = `${solid.kind} ${solid.id} ${solid.part}`;
      expect(min[0], where).toBeGreaterThan(-2.15 - 1e-5);
      expect(max[0], where).toBeLessThan(2.15 + 1e-5);
      expect(min[1], where).toBeGreaterThan(-1e-5);
      expect(max[1], where).toBeLessThan(2.7 + 1e-5);
      expect(min[2], where).toBeGreaterThan(-1e-5);
      expect(max[2], where).toBeLessThan(6.1 + 1e-5);
    }
  });
});
