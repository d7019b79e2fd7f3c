import { describe, expect, it } from 'vitest';
import type { Project } from '../../../../src/model/project.ts';
import { frameOf, lowestTop, nearestWallTo, pointOn, wallNamed } from '../../../../src/model/room/places.ts';
import { roomShape } from '../../../../src/model/room/shape.ts';

type Room = Project['room'];

const roomOf = (plan: unknown, ceiling: unknown): { room: Room } => ({
  room: { plan, ceiling, surfaces: {}, patches: [], openings: [], objects: [] } as unknown as Room,
});

/** An L: 5 m wide in front to 4 m back, then 3 m wide on the left to 6.5 m. Worked by hand. */
const ELL = [
  [-2.5, 0],
  [2.5, 0],
  [2.5, 4],
  [0.5, 4],
  [0.5, 6.5],
  [-2.5, 6.5],
];
const ell = roomOf({ shape: 'polygon', cornersM: ELL }, { shape: 'flat', heightM: 2.5 });

/** 4.4 m wide under a ridge: knee walls of 1.2 m, slopes to 2.6 m at 0.9 m from the middle. */
const attic = roomOf(
  { shape: 'rectangle', widthM: 4.4, lengthM: 6 },
  {
    shape: 'profile',
    across: 'x',
    pointsM: [
      [-2.2, 1.2],
      [-0.9, 2.6],
      [0.9, 2.6],
      [2.2, 1.2],
    ],
  },
);
const as = (project: { room: Room }): Project => project as unknown as Project;

describe('an L-shaped room', () => {
  const shape = roomShape(ell);

  it('has its walls by number, name, length and outward side', () => {
    expect(shape.walls.map(({ edge, surface, lengthM }) => [edge, surface, lengthM])).toEqual([
      [0, 'front', 5],
      [1, 'right', 4],
      [2, 'back', 2],
      [3, 'right', 2.5],
      [4, 'back', 3],
      [5, 'left', 6.5],
    ]);
    expect(shape.walls[2].outward).toEqual([0, 1]);
    expect(shape.walls[5].outward).toEqual([-1, 0]);
  });

  it('has the area and volume of its two rectangles', () => {
    expect(shape.floorAreaM2).toBeCloseTo(5 * 4 + 3 * 2.5, 12);
    expect(shape.volumeM3).toBeCloseTo(27.5 * 2.5, 12);
    expect(shape.areasM2.right).toBeCloseTo(6.5 * 2.5, 12);
    expect(shape.surfaceM2).toBeCloseTo(2 * 27.5 + 23 * 2.5, 12);
    expect([shape.minM, shape.maxM]).toEqual([
      [-2.5, 0, 0],
      [2.5, 2.5, 6.5],
    ]);
  });

  it('holds what lies in its corner and not what lies in the corner it lacks', () => {
    expect(shape.contains([-2, 1, 6])).toBe(true);
    expect(shape.contains([2, 1, 6])).toBe(false);
    expect(shape.contains([2.5, 2.5, 4])).toBe(true);
    expect(shape.contains([0.5, 0, 5])).toBe(true);
    expect(shape.contains([0.3, 1, 5], 0.25)).toBe(false);
    expect(shape.contains([0.3, 1, 5], [0.15, 0.25, 0.25])).toBe(true);
  });

  it('brings a box back round its inward corner', () => {
    expect(shape.nearestInside([2, 0.2, 4.3], [0.2, 0.2, 0.2])).toEqual([2, 0.2, 3.8]);
    expect(shape.nearestInside([0.9, 0.2, 6], [0.2, 0.2, 0.2])).toEqual([0.3, 0.2, 6]);
    // Beside the inward corner a box may stand with its side past the corner of one wall.
    expect(shape.nearestInside([0.6, 0.2, 3.9], [0.2, 0.2, 0.2])).toEqual([0.6, 0.2, 3.8]);
  });

  it('means the longest wall of a name, or the edge that is named', () => {
    expect(wallNamed(shape, 'right')?.edge).toBe(1);
    expect(wallNamed(shape, 'back')?.edge).toBe(4);
    const window = { surface: 'right' as const, wall: 3, fromM: 0.5, widthM: 1, bottomM: 0.9, heightM: 1 };
    const frame = frameOf(as(ell), window);
    // From the end nearest the front: the inward corner.
    expect(frame && pointOn(frame, 0.5, 0.9)).toEqual([0.5, 0.9, 4.5]);
    expect(frame?.n).toEqual([-1, 0, 0]);
    const back = frameOf(as(ell), { ...window, surface: 'back', wall: undefined });
    expect(back && pointOn(back, 0.5, 0)).toEqual([-2, 0, 6.5]);
  });

  it('knows the wall a thing hangs on', () => {
    expect(nearestWallTo(as(ell), [0.4, 1.5, 5])).toMatchObject({ wall: { edge: 3 }, atM: [0.5, 5] });
    expect(nearestWallTo(as(ell), [1.5, 1.5, 3.9]).wall.edge).toBe(2);
  });
});

describe('an attic', () => {
  const shape = roomShape(attic);

  it('has the volume and surfaces of its section', () => {
    const section = 1.8 * 2.6 + 2 * 1.3 * ((1.2 + 2.6) / 2);
    expect(shape.volumeM3).toBeCloseTo(section * 6, 12);
    expect(shape.areasM2.front).toBeCloseTo(section, 12);
    expect(shape.areasM2.left).toBeCloseTo(1.2 * 6, 12);
    expect(shape.areasM2.ceiling).toBeCloseTo(6 * (1.8 + 2 * Math.hypot(1.3, 1.4)), 12);
    expect([shape.lowestM, shape.highestM]).toEqual([1.2, 2.6]);
  });

  it('keeps what stands under a slope below it', () => {
    expect(shape.contains([-2.1, 1.5, 3])).toBe(false);
    expect(shape.contains([-2.1, 1.2, 3])).toBe(true);
    const [x, y, z] = shape.nearestInside([-2, 0.75, 3], [0.2, 0.75, 0.2]);
    expect([y, z]).toEqual([0.75, 3]);
    // The box's upper left corner touches the slope: 1.5 m high where the ceiling is.
    expect(shape.ceilingAtM(x - 0.2, z)).toBeCloseTo(1.5, 9);
  });

  it('has gables as high as the ridge, and a door there no higher than the slope over its whole width', () => {
    const [front] = shape.walls;
    expect(front.top.map(([s, h]) => [Number(s.toFixed(9)), h])).toEqual([
      [0, 1.2],
      [1.3, 2.6],
      [3.1, 2.6],
      [4.4, 1.2],
    ]);
    expect(lowestTop(front, 0.65, 1.65)).toBeCloseTo(1.9, 9);
    expect(lowestTop(front, 1.4, 3)).toBeCloseTo(2.6, 9);
  });

  it('hangs a ceiling patch on the slope over its middle', () => {
    const frame = frameOf(as(attic), { surface: 'ceiling', fromM: 0.2, widthM: 0.8, bottomM: 2, heightM: 1 });
    const at = frame && pointOn(frame, 0.6, 2.5);
    expect(at?.[0]).toBeCloseTo(-1.6, 12);
    expect(at?.[1]).toBeCloseTo(1.2 + (0.6 * 1.4) / 1.3, 12);
    expect(frame?.n[1]).toBeLessThan(-0.6);
    expect(frame?.n[0]).toBeGreaterThan(0.6);
  });
});

describe('odd ceilings', () => {
  const plan = { shape: 'rectangle', widthM: 4, lengthM: 5 };
  const profile = (pointsM: number[][], across = 'x') => roomShape(roomOf(plan, { shape: 'profile', across, pointsM }));

  it('go on level past the last point, and are cut at the walls', () => {
    const short = profile([
      [-1, 2],
      [0, 3],
    ]);
    expect(short.ceilingAtM(-2, 1)).toBe(2);
    expect(short.ceilingAtM(2, 1)).toBe(3);
    expect(short.volumeM3).toBeCloseTo(5 * (2 + 2.5 + 6), 12);
    const long = profile([
      [-4, 0],
      [4, 4],
    ]);
    expect([long.lowestM, long.highestM]).toEqual([1, 3]);
  });

  it('may be told from right to left, come down to the floor, and step', () => {
    const tent = profile([
      [2, 0],
      [0, 3],
      [-2, 0],
    ]);
    expect(tent.areasM2.left).toBe(0);
    expect(tent.volumeM3).toBeCloseTo((4 * 3 * 5) / 2, 12);
    expect(tent.contains([-1.9, 0.1, 2])).toBe(true);
    expect(tent.contains([-1.9, 0.2, 2])).toBe(false);
    const step = profile(
      [
        [0, 2.6],
        [2, 2.6],
        [2, 2.1],
        [5, 2.1],
      ],
      'z',
    );
    expect(step.volumeM3).toBeCloseTo(4 * (2 * 2.6 + 3 * 2.1), 12);
    expect(step.areasM2.ceiling).toBeCloseTo(4 * (5 + 0.5), 9);
    expect(step.pieces.map(({ kind }) => kind)).toEqual(['slope', 'step', 'slope']);
    // Out of the room lies the lower side's loft.
    expect(step.pieces[1].outward).toEqual([0, 0, 1]);
    expect(step.ceilingAtM(0, 2)).toBe(2.1);
  });
});

it('a triangle has three walls, and a wall at 45 degrees belongs to front or back', () => {
  const shape = roomShape(
    roomOf(
      {
        shape: 'polygon',
        cornersM: [
          [0, 3],
          [3, 3],
          [0, 0],
        ],
      },
      { shape: 'flat', heightM: 2.4 },
    ),
  );
  expect(shape.walls.map(({ edge, surface }) => [edge, surface])).toEqual([
    [1, 'front'],
    [0, 'back'],
    [2, 'left'],
  ]);
  expect(shape.floorAreaM2).toBeCloseTo(4.5, 12);
});
