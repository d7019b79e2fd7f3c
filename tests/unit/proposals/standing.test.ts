import { describe, expect, it } from 'vitest';
import { roomShape } from '../../../src/model/room/shape.ts';
import { projectSchema } from '../../../src/model/schema/project.ts';
import { arrangedPlaces, TRADE_ARRANGEMENTS } from '../../../src/proposals/subwoofers/arrangements.ts';
import { finePlaces, nearestFree, placesAlongWalls } from '../../../src/proposals/subwoofers/places.ts';
import { standingRoom } from '../../../src/proposals/subwoofers/standing.ts';
import { boxRoom } from './rooms.ts';

const CUBE = [0.4, 0.4, 0.4] as const;
const NONE = new Set<string>();
const door = {
  id: 'd',
  kind: 'door',
  surface: 'right',
  fromM: 2,
  widthM: 0.9,
  heightM: 2,
  leaf: 'closed',
  swing: 'in',
};
const withRoom = (room: Record<string, unknown>) =>
  boxRoom({
    room: {
      plan: { shape: 'rectangle', widthM: 5.2, lengthM: 6.8 },
      ceiling: { shape: 'flat', heightM: 2.6 },
      ...room,
    },
  });

/** An L of 8 x 6 m less its back right quarter, built past the reader: only places are asked for here. */
const lRoom = () => {
  const project = boxRoom();
  return projectSchema.parse({
    ...project,
    room: {
      ...project.room,
      plan: {
        shape: 'polygon',
        cornersM: [
          [-2.6, 0],
          [3.4, 0],
          [3.4, 4],
          [0.8, 4],
          [0.8, 7.4],
          [-2.6, 7.4],
        ],
      },
    },
  });
};

describe('where a subwoofer may stand', () => {
  it('off the walls by the width of its plugs, on the floor, inside the room', () => {
    const room = standingRoom(boxRoom(), [...CUBE], NONE);
    expect(room.at(-2.35, 0.25)).toEqual([-2.35, 0.2, 0.25]);
    expect(room.at(-2.4, 0.25)).toBeNull();
    expect(room.inside(-9, -9).map((value) => Math.round(value * 100) / 100)).toEqual([-2.35, 0.25]);
  });

  it('not before a door, not in a chair, not in furniture, not where a locked one stands', () => {
    const table = { id: 't', kind: 'table', minM: [-2.5, 0, 5], maxM: [-1.9, 0.5, 5.6] };
    const project = withRoom({ openings: [door], objects: [table] });
    const room = standingRoom(project, [...CUBE], new Set(['S1']));
    expect(room.at(2.35, 2.4)).toBeNull();
    expect(room.at(2.35, 1.5)).not.toBeNull();
    expect(room.at(0, 3.4)).toBeNull();
    expect(room.at(-2.2, 5.3)).toBeNull();
    expect(room.at(-1.1, 0.25)).toBeNull();
    expect(standingRoom(project, [...CUBE], NONE).at(-1.1, 0.25)).not.toBeNull();
  });

  it('on a riser at its height, never across its edge, never under a low slope', () => {
    const rows = [
      { id: 'front', eyeZM: 2.6, seats: [{ id: 'a', xM: 0 }] },
      {
        id: 'back',
        eyeZM: 4.4,
        floorM: 0.3,
        seats: [{ id: 'b', xM: 0 }],
        riser: { fromXM: -2.6, toXM: 2.6, fromZM: 3.6, toZM: 6.8 },
      },
    ];
    const room = standingRoom(boxRoom({ rows }), [...CUBE], NONE);
    expect(room.at(2.3, 6.5)?.[1]).toBeCloseTo(0.5, 12);
    expect(room.at(2.3, 3.6)).toBeNull();
    const attic = projectSchema.parse({
      ...boxRoom(),
      room: {
        plan: { shape: 'rectangle', widthM: 5.2, lengthM: 6.8 },
        ceiling: {
          shape: 'profile',
          across: 'x',
          pointsM: [
            [-2.6, 0.3],
            [0, 2.9],
            [2.6, 1.2],
          ],
        },
      },
    });
    const low = standingRoom(attic, [...CUBE], NONE);
    expect(low.at(-2.35, 5)).toBeNull();
    expect(low.at(2.35, 5)).not.toBeNull();
  });
});

describe('places along the walls', () => {
  it('about forty, all standing free, evenly spaced, corners among them', () => {
    const room = standingRoom(withRoom({ openings: [door] }), [...CUBE], NONE);
    const { placesM, spacingM } = placesAlongWalls(room);
    expect(placesM.length).toBeGreaterThan(32);
    expect(placesM.length).toBeLessThanOrEqual(40);
    expect(spacingM).toBeGreaterThan(0.25);
    for (const [x, , z] of placesM) expect(room.at(x, z)).not.toBeNull();
    for (const [x, z] of [
      [-2.35, 0.25],
      [2.35, 0.25],
      [-2.35, 6.55],
      [2.35, 6.55],
    ])
      expect(placesM.some((at) => Math.hypot(at[0] - x, at[2] - z) < 0.02)).toBe(true);
  });

  it('run along every wall of an L, its inner ones too, and stay inside', () => {
    const project = lRoom();
    const room = standingRoom(project, [...CUBE], NONE);
    const { placesM } = placesAlongWalls(room);
    expect(placesM.length).toBeGreaterThan(30);
    for (const at of placesM) expect(roomShape(project).contains(at, 0.2)).toBe(true);
    expect(placesM.some(([x, , z]) => Math.abs(z - 3.75) < 0.02 && x > 1.2)).toBe(true);
  });

  it('a place that is taken gives way to the nearest free one along the wall', () => {
    const room = standingRoom(withRoom({ openings: [door] }), [...CUBE], NONE);
    const at = nearestFree(room, finePlaces(room), 2.6, 2.3, 0.8);
    if (!at) throw new Error('there is room beside the door');
    expect(room.at(at[0], at[2])).not.toBeNull();
    expect(Math.abs(at[0] - 2.35)).toBeLessThan(0.06);
    expect(nearestFree(room, finePlaces(room), 2.6, 2.3, 0.1)).toBeNull();
  });
});

describe('arrangements of the trade', () => {
  const placesOf = (id: string) => TRADE_ARRANGEMENTS.find((one) => one.id === id)?.places ?? [];

  it('stand where their names say in a plain box', () => {
    const room = standingRoom(boxRoom(), [...CUBE], NONE);
    const flat = (id: string) =>
      arrangedPlaces(room, finePlaces(room), placesOf(id))?.map(({ atM }) =>
        [atM[0], atM[2]].map((v) => Math.round(v * 100) / 100),
      );
    expect(flat('four-corners')).toEqual([
      [-2.35, 0.25],
      [2.35, 0.25],
      [-2.35, 6.55],
      [2.35, 6.55],
    ]);
    expect(flat('four-middles')).toEqual([
      [0, 0.25],
      [0, 6.55],
      [-2.35, 3.4],
      [2.35, 3.4],
    ]);
    expect(flat('four-quarters')).toEqual([
      [-1.3, 0.25],
      [1.3, 0.25],
      [-1.3, 6.55],
      [1.3, 6.55],
    ]);
    expect(flat('front-quarter')).toEqual([[-1.3, 0.25]]);
  });

  it('in an L stand at the ends and middles of the walls it has', () => {
    const project = lRoom();
    const room = standingRoom(project, [...CUBE], NONE);
    const corners = arrangedPlaces(room, finePlaces(room), placesOf('four-corners'))?.map(({ atM }) => [
      atM[0],
      atM[2],
    ]);
    // the back wall is the longer of the two that look to the back: from -2.6 to 0.8 m, at 7.4 m
    const expected = [
      [-2.35, 0.25],
      [3.15, 0.25],
      [-2.35, 7.15],
      [0.55, 7.15],
    ];
    for (const [i, [x, z]] of expected.entries()) {
      expect(corners?.[i][0]).toBeCloseTo(x, 6);
      expect(corners?.[i][1]).toBeCloseTo(z, 6);
    }
    for (const { id, places } of TRADE_ARRANGEMENTS)
      for (const { atM } of arrangedPlaces(room, finePlaces(room), places) ?? [])
        expect(roomShape(project).contains(atM, 0.2), id).toBe(true);
  });

  it('is none where nothing near one of its places is free', () => {
    const wide = { id: 'w', kind: 'opening', surface: 'back', fromM: 0.1, widthM: 5, heightM: 2, leaf: 'none' };
    const room = standingRoom(withRoom({ openings: [wide] }), [...CUBE], NONE);
    expect(arrangedPlaces(room, finePlaces(room), placesOf('front-back-middles'))).toBeNull();
    expect(arrangedPlaces(room, finePlaces(room), placesOf('side-middles'))).toHaveLength(2);
  });
});
