import { describe, expect, it } from 'vitest';
import type { Project } from '../../../../src/model/project.ts';
import { roomShape } from '../../../../src/model/room/shape.ts';
import { faceCells } from '../../../../src/scene/light/faces.ts';
import { inwardWalls, seesPast } from '../../../../src/scene/light/plan-sight.ts';
import { isOutside, openness, roomSkin } from '../../../../src/scene/light/skin.ts';

const shapeOf = (plan: unknown, ceiling: unknown) =>
  roomShape({ room: { plan, ceiling } as unknown as Project['room'] });

const box = shapeOf({ shape: 'rectangle', widthM: 4, lengthM: 5 }, { shape: 'flat', heightM: 2.5 });
const ell = shapeOf(
  {
    shape: 'polygon',
    cornersM: [
      [-2.5, 0],
      [2.5, 0],
      [2.5, 4],
      [0.5, 4],
      [0.5, 6.5],
      [-2.5, 6.5],
    ],
  },
  { shape: 'flat', heightM: 2.5 },
);
const attic = shapeOf(
  { shape: 'rectangle', widthM: 4, lengthM: 5 },
  {
    shape: 'profile',
    across: 'x',
    pointsM: [
      [-2, 1],
      [0, 3],
      [2, 1],
    ],
  },
);

const at = (...values: number[]) => Float64Array.from(values);

describe('how open a place is', () => {
  const skin = roomSkin(box);

  it('is most in the middle, least in a corner, and the same in mirrored places', () => {
    const up = at(0, 1, 0);
    const middle = openness(skin, at(0, 0, 2.5), up);
    const wall = openness(skin, at(-1.95, 0, 2.5), up);
    const corner = openness(skin, at(-1.95, 0, 0.05), up);
    expect(middle).toBeGreaterThan(wall);
    expect(wall).toBeGreaterThan(corner);
    expect(openness(skin, at(1.95, 0, 4.95), up)).toBeCloseTo(corner, 12);
    // The floor itself takes nothing from a face turned straight up: derived, 1 - 0.36 (1 - 1).
    expect(middle).toBeGreaterThan(0.98);
    expect(wall).toBeCloseTo(middle * (1 - 0.36 * Math.exp(-0.05 / 0.38)), 2);
  });

  it('at an inward corner both walls count no more than they are near', () => {
    const near = openness(roomSkin(ell), at(0.3, 0, 3.8), at(0, 1, 0));
    const corner = openness(roomSkin(ell), at(-2.3, 0, 0.2), at(0, 1, 0));
    expect(near).toBeGreaterThan(corner);
  });
});

describe('what is outside', () => {
  const cases: [string, Parameters<typeof isOutside>[0], number[], number[], boolean][] = [
    ['an inner face', roomSkin(box), [-2, 1, 2], [1, 0, 0], false],
    ['an outer face', roomSkin(box), [-2.12, 1, 2], [-1, 0, 0], true],
    ['a reveal', roomSkin(box), [-2.06, 1, 2], [0, 0, 1], false],
    ['the top of a wall', roomSkin(box), [-2.06, 2.5, 2], [0, 1, 0], true],
    ['a front wall past the corner', roomSkin(box), [-2.06, 1, 0], [0, 0, 1], true],
    ['the floor in the room', roomSkin(box), [0, 0, 2], [0, 1, 0], false],
    ['the floor under a wall', roomSkin(box), [-2.06, 0, 2], [0, 1, 0], true],
    ['an open leaf far outside', roomSkin(box), [-2.6, 1, 2], [0, 0, 1], false],
    ['an inner face beside an inward corner', roomSkin(ell), [0.55, 1, 4], [0, 0, -1], false],
    ['the other face there', roomSkin(ell), [0.5, 1, 4.05], [-1, 0, 0], false],
    ['the back of that wall', roomSkin(ell), [1.5, 1, 4.12], [0, 0, 1], true],
    ['the underside of a slope', roomSkin(attic), [-1, 2, 2], [Math.SQRT1_2, -Math.SQRT1_2, 0], false],
    ['the roof over it', roomSkin(attic), [-1, 2.12, 2], [-Math.SQRT1_2, Math.SQRT1_2, 0], true],
  ];
  it.each(cases)('%s', (_, skin, place, normal, outside) => {
    expect(isOutside(skin, Float64Array.from(place), Float64Array.from(normal))).toBe(outside);
  });
});

describe('sight in plan', () => {
  it('has nothing between two places of a convex room', () => {
    expect(inwardWalls(box)).toHaveLength(0);
    expect(seesPast(inwardWalls(box), -1.9, 0.1, 1.9, 4.9)).toBe(true);
  });

  it('does not go round an inward corner, from a wall no more than from the middle', () => {
    const walls = inwardWalls(ell);
    expect(walls).toHaveLength(8);
    expect(seesPast(walls, 2.2, 3.8, 0.2, 6.2)).toBe(false);
    expect(seesPast(walls, 2.5, 2, 0.5, 6)).toBe(false);
    expect(seesPast(walls, -2, 1, -2, 6)).toBe(true);
    expect(seesPast(walls, 0, 0.1, 0.5, 6)).toBe(true);
    expect(seesPast(walls, 1.5, 4, 0, 0.1)).toBe(true);
  });
});

it('the cells of the inner faces add up to the room’s surface, steps apart', () => {
  for (const shape of [box, ell, attic]) {
    const cells = faceCells(shape);
    expect(cells.reduce((sum, { areaM2 }) => sum + areaM2, 0)).toBeCloseTo(shape.surfaceM2, 6);
    for (const { atM } of cells) expect(shape.contains(atM, 0)).toBe(true);
  }
});
