import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../src/math/vec3.ts';
import { duplicateItems, removeItems, shiftItems } from '../../src/model/commands/group.ts';
import { extentOf, middleOf } from '../../src/model/extents.ts';
import { handlesFor } from '../../src/model/handles/handles.ts';
import { pullHandle } from '../../src/model/handles/pull.ts';
import { mirrorChannel, partnerOf } from '../../src/model/pairs.ts';
import { aimNext, crossing, type PlanDraft, setWallLength, withCorner } from '../../src/model/plan-draft.ts';
import type { ItemRef, Project } from '../../src/model/project.ts';
import { roomShape } from '../../src/model/room/shape.ts';
import { FARTHEST_REACHES, snapPlace } from '../../src/model/snap/place.ts';
import { HANDLE_TARGET_PX, layHandles } from '../../src/scene/interaction/handle-layout.ts';
import { pulledBy } from '../../src/scene/interaction/handle-motion.ts';
import { demos, everyItem } from '../handles/every-handle.ts';
import { sampleProject } from '../unit/model/sample.ts';

const SEED = 20260307;
const runs = (numRuns: number) => ({ numRuns, seed: SEED });
const project = sampleProject();

const things: readonly ItemRef[] = [
  ...project.loudspeakers.map(({ id }): ItemRef => ({ kind: 'loudspeaker', id })),
  ...project.subwoofers.map(({ id }): ItemRef => ({ kind: 'subwoofer', id })),
  ...project.rows.flatMap(({ seats }) => seats.map(({ id }): ItemRef => ({ kind: 'seat', id }))),
  ...project.room.objects.map(({ id }): ItemRef => ({ kind: 'object', id })),
];

/** The room seen in a mirror: left is right, and nothing else has changed. */
const mirrored = (from: Project): Project => {
  const point = ([x, y, z]: Vec3): [number, number, number] => [-x, y, z];
  return {
    ...from,
    picture: { ...from.picture, centreXM: -from.picture.centreXM },
    loudspeakers: from.loudspeakers.map((one) => ({
      ...one,
      channel: mirrorChannel(one.channel) ?? one.channel,
      atM: point(one.atM),
    })),
    subwoofers: from.subwoofers.map((one) => ({ ...one, atM: point(one.atM) })),
    rows: from.rows.map((row) => ({ ...row, seats: row.seats.map((seat) => ({ ...seat, xM: -seat.xM })) })),
    room: {
      ...from.room,
      objects: from.room.objects.map((one) => ({
        ...one,
        minM: [-one.maxM[0], one.minM[1], one.minM[2]] as [number, number, number],
        maxM: [-one.minM[0], one.maxM[1], one.maxM[2]] as [number, number, number],
      })),
    },
  };
};

// Not whole centimetres: a tie between two lines could go either way in a mirror.
const awkward = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map((value) => value + 0.000_317);

describe(`hands, seed ${SEED}`, () => {
  it('snapping never moves a thing farther than its reach, along its axes only', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...things),
        awkward(-2, 2),
        awkward(0.2, 2.5),
        awkward(0.3, 5.8),
        fc.double({ min: 0.002, max: 0.06, noNaN: true }),
        fc.constantFrom<readonly (0 | 1 | 2)[]>([0, 2], [1], [0], [2]),
        (ref, x, y, z, reachM, axes) => {
          const extent = extentOf(project, ref)!;
          const startM = middleOf(extent);
          const halfM = startM.map((value, axis) => value - extent.minM[axis]) as unknown as Vec3;
          const { atM } = snapPlace(project, { ref, wantedM: [x, y, z], startM, halfM, axes, reachM });
          // Half a centimetre of rounding, or the reach of the line that drew it.
          const most = Math.max(0.005, FARTHEST_REACHES * reachM) + 1e-4;
          [x, y, z].forEach((wanted, axis) => {
            if (axes.includes(axis as 0 | 1 | 2)) expect(Math.abs(atM[axis] - wanted)).toBeLessThanOrEqual(most);
            else expect(atM[axis]).toBe(startM[axis]);
          });
        },
      ),
      runs(600),
    );
  });

  it('a mirrored room snaps to the mirrored place', () => {
    const glass = mirrored(project);
    fc.assert(
      fc.property(fc.constantFrom(...things), awkward(-2, 2), awkward(0.3, 5.8), (ref, x, z) => {
        const extent = extentOf(project, ref)!;
        const startM = middleOf(extent);
        const halfM = startM.map((value, axis) => value - extent.minM[axis]) as unknown as Vec3;
        const wish = { ref, halfM, axes: [0, 2] as const, reachM: 0.03 };
        const here = snapPlace(project, { ...wish, wantedM: [x, 1, z], startM });
        const there = snapPlace(glass, { ...wish, wantedM: [-x, 1, z], startM: [-startM[0], startM[1], startM[2]] });
        expect(there.atM[0]).toBeCloseTo(-here.atM[0], 9);
        expect(there.atM[2]).toBeCloseTo(here.atM[2], 9);
        const kinds = (snapped: typeof here) => snapped.reasons.map(({ kind }) => kind);
        expect(kinds(there)).toEqual(kinds(here));
      }),
      runs(600),
    );
  });

  it('a pull on any handle by anything leaves the thing in the room or is refused in words', () => {
    const refs: readonly ItemRef[] = [
      ...things,
      ...project.rows.map(({ id }): ItemRef => ({ kind: 'row', id })),
      ...project.room.openings.map(({ id }): ItemRef => ({ kind: 'opening', id })),
      ...project.room.patches.map(({ id }): ItemRef => ({ kind: 'patch', id })),
      { kind: 'picture', id: 'picture' },
      { kind: 'surface', id: 'left' },
      { kind: 'surface', id: 'back' },
      { kind: 'surface', id: 'ceiling' },
    ];
    const by = fc.double({ min: -4, max: 4, noNaN: true });
    fc.assert(
      fc.property(fc.constantFrom(...refs), fc.nat(20), by, by, by, fc.boolean(), (ref, pick, x, y, z, pairs) => {
        const handles = handlesFor(project, [ref]);
        const handle = handles[pick % handles.length];
        const { edit } = pullHandle(project, handle, [x, y, z], { reachM: 0.03, pairs, chosen: [ref] });
        if (!edit.ok) {
          expect(edit.reason.field.length).toBeGreaterThan(0);
          return;
        }
        const room = roomShape(edit.project);
        for (const { atM } of [...edit.project.loudspeakers, ...edit.project.subwoofers])
          expect(room.contains(atM)).toBe(true);
      }),
      runs(500),
    );
  });

  it('several things keep their places to one another', () => {
    const by = fc.integer({ min: -80, max: 80 }).map((cm) => cm / 100);
    fc.assert(
      fc.property(fc.uniqueArray(fc.constantFrom(...things), { minLength: 2, maxLength: 5 }), by, by, (refs, x, z) => {
        const edit = shiftItems(project, refs, [x, 0, z], false);
        if (!edit.ok) return;
        const moves = refs.map((ref) => {
          const [a, b] = [middleOf(extentOf(project, ref)!), middleOf(extentOf(edit.project, ref)!)];
          return [b[0] - a[0], b[2] - a[2]];
        });
        for (const [dx, dz] of moves) {
          expect(dx).toBeCloseTo(moves[0][0], 5);
          expect(dz).toBeCloseTo(moves[0][1], 5);
        }
      }),
      runs(200),
    );
  });

  it('several things keep their places to one another in an L and under a roof too', () => {
    const rooms = demos().filter(([file]) => /corner|attic/.test(file));
    expect(rooms).toHaveLength(2);
    let stoppedTogether = 0;
    for (const [file, room] of rooms) {
      const free = everyItem(room).filter(
        ({ kind, id }) => (kind === 'subwoofer' || kind === 'object' || kind === 'loudspeaker') && id !== 'collar',
      );
      for (const [i, first] of free.entries())
        for (const by of [
          [-3, 0, 0],
          [0, 0, 3],
          [2.5, 0, -1.5],
        ] as const) {
          const refs = [first, free[(i + 1) % free.length]];
          const edit = shiftItems(room, refs, by, false);
          if (!edit.ok) throw new Error(file);
          const moves = refs.map((ref) => {
            const [a, b] = [middleOf(extentOf(room, ref)!), middleOf(extentOf(edit.project, ref)!)];
            return [b[0] - a[0], b[2] - a[2]];
          });
          expect(Math.abs(moves[0][0] - moves[1][0]), `${file} ${refs[0].id} ${refs[1].id}`).toBeLessThan(1e-3);
          expect(Math.abs(moves[0][1] - moves[1][1]), `${file} ${refs[0].id} ${refs[1].id}`).toBeLessThan(1e-3);
          if (Math.hypot(...moves[0]) < Math.hypot(...by) - 0.01) stoppedTogether += 1;
        }
    }
    expect(stoppedTogether).toBeGreaterThan(10);
  });

  it('copies are as many as what was copied, and taking them away gives equal documents', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.constantFrom(...things), { minLength: 1, maxLength: 4 }), (refs) => {
        const { edit, copies } = duplicateItems(project, refs);
        if (!edit.ok) return;
        expect(copies.length).toBe(refs.length);
        const back = removeItems(edit.project, copies);
        expect(back.ok && back.project).toEqual(project);
      }),
      runs(100),
    );
  });

  it('partners are mutual', () => {
    for (const ref of things) {
      const partner = partnerOf(project, ref);
      if (partner) expect(partnerOf(project, partner)).toEqual(ref);
    }
    expect(things.filter((ref) => partnerOf(project, ref)).length).toBeGreaterThanOrEqual(12);
  });

  it('handles never stand nearer than a finger needs', () => {
    const free = { left: 0, top: 0, width: 900, height: 600 };
    const wish = fc.record({
      x: fc.integer({ min: 0, max: 900 }),
      y: fc.integer({ min: 0, max: 600 }),
      turn: fc.double({ min: 0, max: 6.28, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(wish, { minLength: 1, maxLength: 10 }), (wishes) => {
        const handles = wishes.map(({ x, y, turn }) => ({
          anchorX: x,
          anchorY: y,
          axisX: Math.cos(turn),
          axisY: Math.sin(turn),
          x: 0,
          y: 0,
          shown: true,
        }));
        layHandles(handles, free);
        const shown = handles.filter((handle) => handle.shown);
        expect(shown.length).toBeGreaterThan(0);
        shown.forEach((a, i) => {
          for (const b of shown.slice(i + 1))
            expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThanOrEqual(HANDLE_TARGET_PX - 1e-6);
        });
      }),
      runs(300),
    );
  });

  it('a handle pulled under a ray through another place of its axis goes just there', () => {
    const unit = (v: Vec3): Vec3 => {
      const l = Math.hypot(...v);
      return [v[0] / l, v[1] / l, v[2] / l];
    };
    const number = fc.double({ min: -3, max: 3, noNaN: true });
    fc.assert(
      fc.property(number, number, number, number, number, (x, z, byX, byZ, byY) => {
        const eye: Vec3 = [x, 6, z + 9];
        const from: Vec3 = [0.3, 0.4, 2];
        const rayTo = (to: Vec3) => ({
          originM: eye,
          direction: unit([to[0] - eye[0], to[1] - eye[1], to[2] - eye[2]]),
        });
        const level = pulledBy(rayTo([from[0] + byX, from[1], from[2] + byZ]), from, { kind: 'level' });
        expect(level?.[0]).toBeCloseTo(byX, 6);
        expect(level?.[2]).toBeCloseTo(byZ, 6);
        const up = pulledBy(rayTo([from[0], from[1] + byY, from[2]]), from, { kind: 'line', direction: [0, 1, 0] });
        expect(up?.[1]).toBeCloseTo(byY, 6);
        expect(up?.[0]).toBe(0);
      }),
      runs(200),
    );
  });

  it('a plan drawn square from typed or pointed corners closes without crossing, and its walls take typed lengths', () => {
    const size = fc.integer({ min: 160, max: 900 }).map((cm) => cm / 100);
    fc.assert(
      fc.property(size, size, size, (width, length, wanted) => {
        let draft: PlanDraft = { corners: [], closed: false };
        for (const corner of [
          [0, 0],
          [width, 0.02],
          [width + 0.01, length],
          [0.02, length - 0.01],
        ] as const)
          draft = withCorner(draft, aimNext(draft, corner, 0.05));
        draft = withCorner(draft, aimNext(draft, [0.01, 0.02], 0.05));
        expect(draft.closed).toBe(true);
        expect(crossing(draft)).toBeNull();
        const square = draft.corners.every(([x, z], i) => {
          const [nextX, nextZ] = draft.corners[(i + 1) % draft.corners.length];
          return x === nextX || z === nextZ;
        });
        expect(square).toBe(true);
        const next = setWallLength(draft, 0, wanted);
        const [a, b] = next.corners;
        expect(Math.hypot(b[0] - a[0], b[1] - a[1])).toBeCloseTo(wanted, 6);
        expect(next.corners[2][0]).toBeCloseTo(b[0], 6);
      }),
      runs(200),
    );
  });
});
