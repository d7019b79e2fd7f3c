import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { projectSchema } from '../../src/model/schema/project.ts';
import { placed, roomSolids, type Solid } from '../../src/shapes/index.ts';
import { boundsOf, openEdges } from '../unit/shapes/support.ts';

const SEED = 20261124;
const milli = (min: number, max: number) =>
  fc.integer({ min: Math.round(min * 1000), max: Math.round(max * 1000) }).map((mm) => mm / 1000);

const WIDTH_M = 4.4;

/** Rooms of one size with one row, a loudspeaker, an opening and a subwoofer anywhere sensible. */
const rooms = fc
  .record({
    furniture: fc.constantFrom('single', 'sofa', 'recliner', 'chaise', 'stool'),
    widthM: milli(0.4, 1),
    panHeightM: milli(0.3, 0.7),
    backHeightM: milli(0, 1.3),
    floorM: milli(0, 0.5),
    xs: fc.uniqueArray(milli(-1.5, 1.5), { minLength: 1, maxLength: 3 }),
    facingDeg: fc.integer({ min: -40, max: 40 }),
    reclineDeg: fc.integer({ min: 0, max: 50 }),
    eyeAbovePanM: milli(0.55, 0.86),
    at: fc.tuple(milli(-1.7, 1.7), milli(0.4, 1.9), milli(0.5, 5)),
    size: fc.tuple(milli(0.1, 0.5), milli(0.1, 0.6), milli(0.08, 0.4)),
    pattern: fc.constantFrom('box', 'omni', 'dipole', 'bipole'),
    mount: fc.constantFrom('stand', 'wall', 'in-wall', 'in-ceiling', 'shelf'),
    opening: fc.record({
      kind: fc.constantFrom('door', 'window', 'opening'),
      surface: fc.constantFrom('front', 'back', 'left', 'right'),
      fromM: milli(0.1, 3),
      widthM: milli(0.4, 1.2),
      bottomM: milli(0, 0.9),
      heightM: milli(0.5, 1.6),
      leaf: fc.constantFrom('open', 'closed'),
      hinge: fc.constantFrom('left', 'right'),
      swing: fc.constantFrom('in', 'out'),
    }),
  })
  .map(
    ({ at, size, pattern, mount, opening, xs, facingDeg, reclineDeg, eyeAbovePanM, furniture, floorM, ...seat }) => ({
      format: 'parterre/project',
      version: 1,
      room: {
        plan: { shape: 'rectangle', widthM: WIDTH_M, lengthM: 5.6 },
        ceiling: { shape: 'flat', heightM: 2.6 },
        openings: [{ id: 'o', ...opening }],
      },
      picture: { centreXM: 0.2 },
      rows: [
        {
          id: 'r',
          eyeZM: 3,
          floorM,
          furniture,
          seat,
          seats: xs.map((xM, i) => ({ id: `s${i}`, xM, facingDeg, reclineDeg, people: { eyeAbovePanM } })),
        },
      ],
      referenceSeat: 's0',
      loudspeakers: [{ id: 'l', channel: 'M+030', atM: at, sizeM: size, pattern, mount }],
      subwoofers: [{ id: 'w', atM: [at[0], 0.2, at[2]], sizeM: [0.4, 0.38, 0.36] }],
    }),
  );

type Room = Parameters<Parameters<typeof rooms.map>[0]>[0];

const swap = { left: 'right', right: 'left' } as const;

/** The same room seen in a mirror that stands along its middle. */
const mirrorOf = (room: Room): Room => ({
  ...room,
  picture: { centreXM: -room.picture.centreXM },
  room: {
    ...room.room,
    openings: room.room.openings.map((opening) => {
      const hinge = swap[opening.hinge as 'left'];
      if (opening.surface === 'left' || opening.surface === 'right') {
        return { ...opening, hinge, surface: swap[opening.surface as 'left'] };
      }
      return { ...opening, hinge, fromM: WIDTH_M - opening.fromM - opening.widthM };
    }),
  },
  rows: room.rows.map((row) => ({
    ...row,
    seats: row.seats.map((seat) => ({ ...seat, xM: -seat.xM, facingDeg: -seat.facingDeg })),
  })),
  loudspeakers: room.loudspeakers.map((l) => ({ ...l, atM: [-l.atM[0], l.atM[1], l.atM[2]] as typeof l.atM })),
  subwoofers: room.subwoofers.map((w) => ({ ...w, atM: [-w.atM[0], w.atM[1], w.atM[2]] })),
});

const itemsOf = (solids: readonly Solid[]): Map<string, Solid[]> => {
  const items = new Map<string, Solid[]>();
  for (const solid of solids) {
    const key = `${solid.kind} ${solid.id}`;
    items.set(key, [...(items.get(key) ?? []), solid]);
  }
  return items;
};

const GRID_M = 1e-3;

/** How far the worst vertex of `solids`, seen in the mirror along the room's middle, lies from any vertex of `twins`, metres. */
const farthestFromTwin = (solids: readonly Solid[], twins: readonly Solid[]): number => {
  const near = new Map<string, number[][]>();
  const cellOf = (v: number) => Math.round(v / GRID_M);
  for (const { geometry, placement } of twins) {
    const world = placed(geometry.positions, placement);
    for (let i = 0; i < world.length; i += 3) {
      const point = [world[i], world[i + 1], world[i + 2]];
      const key = point.map(cellOf).join(' ');
      near.set(key, [...(near.get(key) ?? []), point]);
    }
  }
  const around = [-1, 0, 1];
  let worst = 0;
  for (const { geometry, placement } of solids) {
    const world = placed(geometry.positions, placement);
    for (let i = 0; i < world.length; i += 3) {
      const [x, y, z] = [-world[i], world[i + 1], world[i + 2]];
      const cells = around.flatMap((a) =>
        around.flatMap((b) => around.map((c) => `${cellOf(x) + a} ${cellOf(y) + b} ${cellOf(z) + c}`)),
      );
      const gaps = cells.flatMap((key) => (near.get(key) ?? []).map((p) => Math.hypot(p[0] - x, p[1] - y, p[2] - z)));
      worst = Math.max(worst, Math.min(GRID_M, ...gaps));
    }
  }
  return worst;
};

describe(`shapes, seed ${SEED}`, () => {
  it('mirror with the room: every item’s bounds are the mirrored ones', () => {
    fc.assert(
      fc.property(rooms, (room) => {
        const straight = itemsOf(roomSolids(projectSchema.parse(room)));
        const mirrored = itemsOf(roomSolids(projectSchema.parse(mirrorOf(room))));
        expect(mirrored.size).toBe(straight.size);
        for (const [key, solids] of straight) {
          const [kind, id] = key.split(' ');
          const twin = kind === 'shell' && (id === 'left' || id === 'right') ? `shell ${swap[id]}` : key;
          // A shared arm of a sofa belongs to the seat on its left, so a mirrored sofa is compared as a whole.
          if (kind === 'seat') continue;
          const a = boundsOf(solids);
          const b = boundsOf(mirrored.get(twin)!);
          // Single precision at 5 m, after a turn: 0.01 mm.
          expect(b.min[0], key).toBeCloseTo(-a.max[0], 5);
          expect(b.max[0], key).toBeCloseTo(-a.min[0], 5);
          for (const axis of [1, 2]) {
            expect(b.min[axis], key).toBeCloseTo(a.min[axis], 5);
            expect(b.max[axis], key).toBeCloseTo(a.max[axis], 5);
          }
        }
        const chairs = (items: Map<string, Solid[]>) =>
          boundsOf([...items].filter(([key]) => key.startsWith('seat ')).flatMap(([, solids]) => solids));
        const [a, b] = [chairs(straight), chairs(mirrored)];
        expect(b.min[0]).toBeCloseTo(-a.max[0], 5);
        expect(b.max[0]).toBeCloseTo(-a.min[0], 5);
      }),
      { seed: SEED, numRuns: 30 },
    );
  });

  it('mirror vertex by vertex: every figure, and the chairs of a row, however they are turned', () => {
    fc.assert(
      fc.property(rooms, (room) => {
        const straight = roomSolids(projectSchema.parse(room));
        const mirrored = roomSolids(projectSchema.parse(mirrorOf(room)));
        const ofKind = (solids: readonly Solid[], kind: string, id?: string) =>
          solids.filter((solid) => solid.kind === kind && (id === undefined || solid.id === id));
        // A figure is made of one side and its mirror image; a few roundings in single precision at 5 m: 0.01 mm.
        for (const { id } of room.rows[0].seats) {
          const [a, b] = [ofKind(straight, 'person', id), ofKind(mirrored, 'person', id)];
          expect(a.length).toBe(2);
          expect(farthestFromTwin(a, b), id).toBeLessThan(1e-5);
          expect(farthestFromTwin(b, a), id).toBeLessThan(1e-5);
        }
        const [a, b] = [ofKind(straight, 'seat'), ofKind(mirrored, 'seat')];
        expect(farthestFromTwin(a, b)).toBeLessThan(1e-5);
        expect(farthestFromTwin(b, a)).toBeLessThan(1e-5);
      }),
      { seed: SEED, numRuns: 12 },
    );
  });

  it('stay finite and closed whatever the measures', () => {
    fc.assert(
      fc.property(rooms, (room) => {
        for (const solid of roomSolids(projectSchema.parse(room))) {
          const where = `${solid.kind} ${solid.id} ${solid.part}`;
          const { positions, normals } = solid.geometry;
          expect(positions.every(Number.isFinite) && normals.every(Number.isFinite), where).toBe(true);
          if (solid.part !== 'face') expect(openEdges(solid.geometry), where).toBe(0);
        }
      }),
      { seed: SEED, numRuns: 20 },
    );
  });
});
