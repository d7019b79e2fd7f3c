import { describe, expect, it } from 'vitest';
import type { Edit } from '../../../../src/model/commands/edit.ts';
import {
  insertPlanCorner,
  movePlanCorner,
  movePlanEdge,
  moveRoomWall,
  removePlanCorner,
  setRectangle,
  toPolygon,
} from '../../../../src/model/commands/plan.ts';
import type { Project } from '../../../../src/model/project.ts';
import { frameOf, pointOn } from '../../../../src/model/room/places.ts';
import { roomShape } from '../../../../src/model/room/shape.ts';
import { projectSchema } from '../../../../src/model/schema/project.ts';
import { sampleProject } from '../sample.ts';

const done = (edit: Edit): Project => {
  if (!edit.ok) throw new Error(JSON.stringify(edit.reason));
  return edit.project;
};

const refused = (edit: Edit) => {
  if (edit.ok) throw new Error('accepted');
  return edit.reason;
};

/** One seat, a door in the right wall, a window in the back wall, 5 m wide and 6 m long. */
const plain = (over: object = {}): Project =>
  projectSchema.parse({
    format: 'parterre/project',
    version: 1,
    room: {
      plan: { shape: 'rectangle', widthM: 5, lengthM: 6 },
      ceiling: { shape: 'flat', heightM: 2.5 },
      surfaces: { right: { finish: 'brick' }, walls: { '2': { finish: 'glass-window' } } },
      openings: [
        { id: 'door', kind: 'door', surface: 'right', fromM: 4.5, widthM: 0.8, heightM: 2 },
        { id: 'window', kind: 'window', surface: 'back', fromM: 3, widthM: 1, bottomM: 0.9, heightM: 1 },
      ],
      ...over,
    },
    picture: { kind: 'panel', widthM: 1.2 },
    rows: [{ id: 'r', eyeZM: 3, seats: [{ id: 's', xM: 0 }] }],
    subwoofers: [{ id: 'S1', atM: [2.2, 0.2, 0.3] }],
  });

const middleOf = (project: Project, id: string): readonly number[] => {
  const item = project.room.openings.find((one) => one.id === id)!;
  return pointOn(frameOf(project, item)!, item.fromM + item.widthM / 2, item.bottomM).map((v) => Number(v.toFixed(6)));
};

describe('a plan shaped by hand', () => {
  it('a rectangle becomes a polygon of the same walls, and is one again', () => {
    const polygon = done(toPolygon(plain()));
    expect(polygon.room.plan).toEqual({
      shape: 'polygon',
      cornersM: [
        [-2.5, 0],
        [2.5, 0],
        [2.5, 6],
        [-2.5, 6],
      ],
    });
    // Finishes by edge mean nothing in a rectangle, so they do not wake up.
    expect(polygon.room.surfaces).toEqual({ right: { finish: 'brick' } });
    expect(polygon.room.openings.map(({ surface, wall, fromM }) => [surface, wall, fromM])).toEqual([
      ['right', 1, 4.5],
      ['back', 2, 3],
    ]);
    const back = done(setRectangle(polygon, 5, 6));
    expect(back.room.openings).toEqual(plain().room.openings);
    expect(roomShape(back).volumeM3).toBeCloseTo(75, 9);
  });

  it('a corner is put on a wall, pulled, and taken away; what hangs there keeps its place', () => {
    const polygon = done(toPolygon(plain()));
    const split = done(insertPlanCorner(polygon, 1, [2.5, 4]));
    expect(split.room.openings.map(({ wall }) => wall)).toEqual([2, 3]);
    expect(middleOf(split, 'door')).toEqual([2.5, 0, 4.9]);
    expect(split.room.openings[0].fromM).toBe(0.5);
    const pulled = done(movePlanCorner(split, 2, [3, 4]));
    expect(roomShape(pulled).floorAreaM2).toBeCloseTo(30 + 0.5 * 6 * 0.5, 9);
    const merged = done(removePlanCorner(split, 2));
    expect(merged.room.openings.map(({ wall, fromM }) => [wall, fromM])).toEqual([
      [1, 4.5],
      [2, 3],
    ]);
  });

  it('an edge moves parallel to itself, its neighbours keeping their directions', () => {
    const polygon = done(toPolygon(plain()));
    const wider = done(movePlanEdge(polygon, 1, 0.5));
    expect(wider.room.plan).toMatchObject({
      cornersM: [
        [-2.5, 0],
        [3, 0],
        [3, 6],
        [-2.5, 6],
      ],
    });
    expect(middleOf(wider, 'window')).toEqual(middleOf(polygon, 'window'));
  });

  it('an edge between walls in its own line leaves them with a step: an alcove', () => {
    const polygon = done(toPolygon(plain()));
    const once = done(insertPlanCorner(polygon, 3, [-2.5, 4]));
    const twice = done(insertPlanCorner(once, 4, [-2.5, 2]));
    const alcove = done(movePlanEdge(twice, 4, 0.6));
    expect(alcove.room.plan).toMatchObject({
      cornersM: [
        [-2.5, 0],
        [2.5, 0],
        [2.5, 6],
        [-2.5, 6],
        [-2.5, 4],
        [-3.1, 4],
        [-3.1, 2],
        [-2.5, 2],
      ],
    });
    expect(roomShape(alcove).floorAreaM2).toBeCloseTo(30 + 0.6 * 2, 9);
    expect(alcove.room.openings.map(({ wall }) => wall)).toEqual([1, 2]);
    // The last edge of a file, which runs to its first corner, moves as any other.
    const last = done(movePlanEdge(alcove, 7, 0.2));
    expect(roomShape(last).floorAreaM2).toBeCloseTo(31.2 + 0.2 * 2, 9);
    const first = done(movePlanEdge(alcove, 0, 0.4));
    expect(roomShape(first).floorAreaM2).toBeCloseTo(31.2 + 0.4 * 5, 9);
  });

  it('finishes by edge go where their edges go', () => {
    const { room } = done(toPolygon(plain()));
    const finished = projectSchema.parse({
      ...plain(),
      room: { ...room, surfaces: { walls: { '1': { finish: 'brick' }, '3': { finish: 'glass-window' } } } },
    });
    const split = done(insertPlanCorner(finished, 1, [2.5, 4]));
    expect(split.room.surfaces.walls).toEqual({
      '1': { finish: 'brick' },
      '2': { finish: 'brick' },
      '4': { finish: 'glass-window' },
    });
  });

  it('is refused where it would cross itself, leave something outside, or run out of corners', () => {
    const polygon = done(toPolygon(plain()));
    expect(refused(movePlanCorner(polygon, 1, [-4, 5])).aside).toMatch(/cross/);
    expect(refused(movePlanEdge(polygon, 1, -0.5))).toMatchObject({ field: 'subwoofers[0].atM' });
    expect(refused(movePlanEdge(polygon, 1, -0.2))).toMatchObject({ holds: 'S1', aside: 'stands in the way' });
    const cornersM = [
      [-2.5, 0],
      [2.5, 0],
      [0, 8],
    ];
    const triangle = plain({ plan: { shape: 'polygon', cornersM }, openings: [] });
    expect(refused(removePlanCorner(triangle, 0)).holds).toBe(2);
    // The door would stand on both halves of its wall.
    expect(refused(insertPlanCorner(polygon, 1, [2.5, 5])).field).toBe('room.openings[0].widthM');
    expect(refused(insertPlanCorner(polygon, 1, [2.5, 4.8]))).toMatchObject({ lead: 'the opening', holds: 'door' });
    expect(refused(movePlanCorner(plain(), 0, [0, 0])).field).toBe('room.plan.shape');
    expect(refused(insertPlanCorner(polygon, 9, [0, 0])).holds).toBe(9);
    expect(refused(movePlanCorner(polygon, 4, [0, 0])).holds).toBe(4);
  });
});

describe('a wall of a rectangle', () => {
  it('moves, and what stands in the room stays where it is', () => {
    const wider = done(moveRoomWall(plain(), 'right', 1));
    expect(wider.room.plan).toMatchObject({ widthM: 6, lengthM: 6 });
    // The left wall is where it was: 2.5 m from the seat.
    expect(wider.rows[0].seats[0].xM - roomShape(wider).minM[0]).toBeCloseTo(2.5, 9);
    expect(wider.room.openings[1].fromM).toBe(3);
    const left = done(moveRoomWall(plain(), 'left', 1));
    expect(roomShape(left).maxM[0] - left.rows[0].seats[0].xM).toBeCloseTo(2.5, 9);
    expect(left.room.openings[1].fromM).toBe(4);
    expect(roomShape(left).maxM[0] - left.subwoofers[0].atM[0]).toBeCloseTo(0.3, 9);
  });

  it('of which the back one changes no number of what stands in the room', () => {
    const longer = done(moveRoomWall(plain(), 'back', 0.5));
    expect(longer.room.plan).toMatchObject({ lengthM: 6.5 });
    expect(longer.rows).toEqual(plain().rows);
    expect(longer.room.openings).toEqual(plain().room.openings);
  });

  it('of which the front one takes the picture with it and leaves the rest at its distance from the back', () => {
    const longer = done(moveRoomWall(plain(), 'front', 0.5));
    expect(longer.room.plan).toMatchObject({ widthM: 5, lengthM: 6.5 });
    expect(longer.picture).toEqual(plain().picture);
    const fromBack = (project: Project, zM: number) => roomShape(project).maxM[2] - zM;
    expect(fromBack(longer, longer.rows[0].eyeZM)).toBeCloseTo(fromBack(plain(), plain().rows[0].eyeZM), 9);
    expect(fromBack(longer, longer.subwoofers[0].atM[2])).toBeCloseTo(
      fromBack(plain(), plain().subwoofers[0].atM[2]),
      9,
    );
    const sides = (project: Project) =>
      project.room.openings.map(({ surface, fromM }) => (surface === 'left' || surface === 'right' ? fromM : 0));
    expect(sides(longer)).toEqual(sides(plain()).map((fromM) => (fromM === 0 ? 0 : fromM + 0.5)));
  });

  it('is refused with the name of what stands in the way, and beyond a room’s sizes', () => {
    const object = { id: 'shelf', kind: 'box', minM: [-2.45, 0, 1], maxM: [-2.1, 1.8, 2] };
    const reason = refused(moveRoomWall(plain({ objects: [object] }), 'left', -0.3));
    expect(reason).toMatchObject({ lead: 'the object', holds: 'shelf', aside: 'stands in the way' });
    expect(refused(moveRoomWall(plain(), 'back', 30)).allowed).toMatchObject({ kind: 'range', max: 30 });
    expect(refused(moveRoomWall(plain(), 'back', -1)).field).toBe('room.openings[0].widthM');
    expect(refused(moveRoomWall(done(toPolygon(plain())), 'back', 1)).field).toBe('room.plan.shape');
  });

  it('there and back again is the same room', () => {
    const project = sampleProject();
    for (const wall of ['left', 'right', 'front', 'back'] as const) {
      const there = done(moveRoomWall(project, wall, 0.37));
      expect(done(moveRoomWall(there, wall, -0.37))).toEqual(project);
    }
  });
});
