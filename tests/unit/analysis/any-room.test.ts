import { describe, expect, it } from 'vitest';
import { findings } from '../../../src/analysis/findings.ts';
import { geometryReadout } from '../../../src/analysis/geometry.ts';
import { facesOf, treatmentId } from '../../../src/analysis/inputs/boundary.ts';
import { reverberationInput } from '../../../src/analysis/inputs/surfaces.ts';
import type { Finding } from '../../../src/analysis/types.ts';
import type { Project } from '../../../src/model/project.ts';
import { riserBoxes } from '../../../src/shapes/index.ts';
import { plain } from './rooms.ts';

/** An L: 5 m wide to 4 m back, then 3 m wide on the left to 6.5 m. All expected values worked by hand from it. */
const ELL = {
  plan: {
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
  ceiling: { shape: 'flat', heightM: 2.5 },
};

/** Knee walls of 1.2 m, slopes to 2.6 m within 1.3 m. */
const ATTIC = {
  plan: { shape: 'rectangle', widthM: 4.4, lengthM: 6 },
  ceiling: {
    shape: 'profile',
    across: 'x',
    pointsM: [
      [-2.2, 1.2],
      [-0.9, 2.6],
      [0.9, 2.6],
      [2.2, 1.2],
    ],
  },
};

const seats = (...places: readonly (readonly [string, number, number])[]) => ({
  rows: [
    {
      id: 'row',
      eyeZM: places[0][2],
      furniture: 'single',
      seats: places.map(([id, xM, eyeZM]) => ({ id, xM, eyeZM })),
    },
  ],
});

const of = (project: Project): readonly Finding[] => findings(project, geometryReadout(project), null);
const worthOf = (project: Project, rule: string, name: string): number | null | undefined =>
  of(project).find((one) => one.rule === rule && (one.seat === name || one.item === name))?.value;

describe('a seat in an L', () => {
  const project = plain({ room: ELL, ...seats(['arm', -1, 5], ['main', 1.5, 3]) });

  it('has the wall that is straight behind it', () => {
    // Ears a tenth of a metre behind the eyes.
    expect(worthOf(project, 'back-wall', 'arm')).toBeCloseTo(6.5 - 5.1, 9);
    expect(worthOf(project, 'back-wall', 'main')).toBeCloseTo(4 - 3.1, 9);
    expect(worthOf(project, 'seat-half-length', 'main')).toBeCloseTo(3.1 - 2, 9);
  });
});

describe('the picture', () => {
  const past = (room: object, picture: object): number | null | undefined =>
    of(plain({ room, picture, ...seats(['a', 0, 2.5]) })).find(({ rule }) => rule === 'picture-fits')?.value;
  const screen = { kind: 'screen', offFrontWallM: 0.05 };

  it('is found where it reaches through a wall or a slope, by how far its farthest corner is outside', () => {
    const box = { plan: { shape: 'rectangle', widthM: 4.6, lengthM: 5 }, ceiling: { shape: 'flat', heightM: 2.5 } };
    expect(past(box, { ...screen, widthM: 4.6, aspect: 4, bottomM: 0.6 })).toBeUndefined();
    // 6 m in a room of 4.6 m: 0.7 m at either side; moved 0.2 m to the right 0.9 m there.
    expect(past(box, { ...screen, widthM: 6, aspect: 4, bottomM: 0.6 })).toBeCloseTo(0.7, 9);
    expect(past(box, { ...screen, widthM: 6, aspect: 4, bottomM: 0.6, centreXM: 0.2 })).toBeCloseTo(0.9, 9);
    // 2 m high from 0.6 m up: 0.1 m through a ceiling of 2.5 m.
    expect(past(box, { ...screen, widthM: 4, aspect: 2, bottomM: 0.6 })).toBeCloseTo(0.1, 9);
    // Under the slope, which is 2.6 - 0.3 * 1.4 / 1.3 = 2.277 m high at 1.2 m: a corner 2.5 m up is 0.223 m too high, which
    // is 0.223 * 1.3 / hypot(1.3, 1.4) = 0.152 m square to the slope.
    expect(past(ATTIC, { ...screen, widthM: 2.4, aspect: 2, bottomM: 1 })).toBeUndefined();
    const highM = 2.5 - (2.6 - (0.3 * 1.4) / 1.3);
    const squareM = (highM * 1.3) / Math.hypot(1.3, 1.4);
    expect(past(ATTIC, { ...screen, widthM: 2.4, aspect: 2, bottomM: 1.3 })).toBeCloseTo(squareM, 9);
  });

  it('is missed, and told with its size', () => {
    const box = { plan: { shape: 'rectangle', widthM: 4.6, lengthM: 5 }, ceiling: { shape: 'flat', heightM: 4 } };
    const room = plain({ room: box, picture: { ...screen, widthM: 12, aspect: 4, bottomM: 0.6 } });
    const [first] = of(room).filter(({ rule }) => rule === 'picture-fits');
    expect(first.verdict).toBe('missed');
    expect(first.text).toMatch(/^The picture, 12.00 m wide and 3.00 m high, reaches 3.70 m through a wall/);
    expect(first.causes).toEqual([{ kind: 'picture', id: 'picture' }]);
  });
});

describe('things in an L', () => {
  const withObject = (minM: number[], maxM: number[]) =>
    plain({ room: { ...ELL, objects: [{ id: 'chest', kind: 'box', minM, maxM }] }, ...seats(['a', 0, 2.5]) });

  it('reach out of the room by as much as they would have to move', () => {
    expect(worthOf(withObject([1, 0, 3.5], [2, 0.5, 4.2]), 'outside-room', 'chest')).toBeCloseTo(0.2, 9);
    expect(worthOf(withObject([0, 0, 5], [0.8, 0.5, 5.4]), 'outside-room', 'chest')).toBeCloseTo(0.3, 9);
    expect(worthOf(withObject([0, 0, 3.5], [0.5, 0.5, 4.5]), 'outside-room', 'chest')).toBeUndefined();
    // Round the inward corner a box of the bounds would stand inside both parts and still be in the wall.
    expect(worthOf(withObject([0.2, 0, 3.8], [0.7, 0.5, 4.3]), 'outside-room', 'chest')).toBeCloseTo(0.2, 9);
  });

  it('stand in a door’s way on whatever wall it is', () => {
    const door = { id: 'door', kind: 'door', surface: 'right', wall: 3, fromM: 0.5, widthM: 0.9, heightM: 2 };
    const clear = (minM: number[], maxM: number[]) =>
      worthOf(
        plain({
          room: { ...ELL, openings: [door], objects: [{ id: 'chest', kind: 'box', minM, maxM }] },
          ...seats(['a', 0, 2.5]),
        }),
        'door-clear',
        'door',
      );
    // The door is in the wall x = 0.5 from z 4.5 to 5.4.
    expect(clear([-1, 0, 4.6], [-0.3, 0.5, 5])).toBeCloseTo(0.8, 9);
    expect(clear([-1, 0, 5.5], [-0.3, 0.5, 6])).toBe(1.5);
    // Beyond that wall, in the other arm's corner, is nobody's way.
    expect(clear([0.9, 0, 3.2], [1.4, 0.5, 3.9])).toBe(1.5);
  });

  it('and in a slanting wall', () => {
    const cornersM = [
      [-2.5, 0],
      [2.5, 0],
      [2.5, 3],
      [0.5, 5],
      [-2.5, 5],
    ];
    const door = { id: 'door', kind: 'door', surface: 'back', wall: 2, fromM: 0.9, widthM: 0.9, heightM: 2 };
    const room = { plan: { shape: 'polygon', cornersM }, ceiling: { shape: 'flat', heightM: 2.5 } };
    const clear = (at: number) =>
      worthOf(
        plain({
          room: {
            ...room,
            openings: [door],
            // A chest whose corner nearest the wall lies `at` metres from it: its far corner on the diagonal.
            objects: [{ id: 'chest', kind: 'box', minM: [1 - at, 0, 3 - at], maxM: [1.5 - at, 0.5, 3.5 - at] }],
          },
          ...seats(['a', -1.5, 1.5]),
        }),
        'door-clear',
        'door',
      );
    // The wall x + z = 5.5: the corner (1.5 - a, 3.5 - a) is (0.5 + 2 a) / sqrt 2 from it.
    expect(clear(0.1)).toBeCloseTo(0.7 / Math.SQRT2, 9);
    expect(clear(0.4)).toBeCloseTo(1.3 / Math.SQRT2, 9);
  });
});

describe('a raised row', () => {
  it('has its platform as wide as the room is behind it', () => {
    const { rows } = seats(['a', -1, 5]);
    const project = plain({ room: ELL, rows: [{ ...rows[0], floorM: 0.2 }] });
    const [box] = riserBoxes(project);
    // From a metre before the eyes to the back wall, where only the arm is left.
    expect(box).toMatchObject({ fromXM: -2.5, fromZM: 4, toZM: 6.5 });
    expect(box.toXM).toBeCloseTo(0.5, 9);
  });

  it('has the headroom of the lowest ceiling over it', () => {
    const riser = { fromXM: -1.55, toXM: 1.55, fromZM: 4, toZM: 6 };
    const { rows } = seats(['a', 0, 5]);
    const project = plain({ room: ATTIC, rows: [{ ...rows[0], floorM: 0.2, riser }] });
    // 0.65 m in from the knee wall the slope is 1.2 + 0.65 x 1.4 / 1.3 high.
    expect(worthOf(project, 'riser-headroom', 'row')).toBeCloseTo(1.9 - 0.2, 9);
  });
});

describe('the boundary for reverberation', () => {
  it('has a patch on a slope as large as it is made, not as its plan', () => {
    const patch = {
      id: 'p',
      surface: 'ceiling',
      fromM: 0.2,
      widthM: 0.8,
      bottomM: 1,
      heightM: 2,
      finish: 'fibre-panel-50',
    };
    const project = plain({ room: { ...ATTIC, patches: [patch] } });
    const { areas, volumeM3 } = reverberationInput(project);
    const section = 1.8 * 2.6 + 2 * 1.3 * 1.9;
    expect(volumeM3).toBeCloseTo(section * 6, 9);
    const steep = Math.hypot(1.3, 1.4) / 1.3;
    expect(areas.map(({ areaM2 }) => areaM2).some((area) => Math.abs(area - 1.6 * steep) < 1e-9)).toBe(true);
    const total = areas.reduce((sum, { areaM2 }) => sum + areaM2, 0);
    expect(total).toBeCloseTo(2 * section + 2 * 1.2 * 6 + 4.4 * 6 + 6 * (1.8 + 2 * 1.3 * steep), 9);
  });

  it('counts of a rug only what lies in the room', () => {
    const rug = { id: 'rug', surface: 'floor', fromM: 2, widthM: 2, bottomM: 3, heightM: 2, finish: 'carpet-thin' };
    const { areas } = reverberationInput(plain({ room: { ...ELL, patches: [rug] }, ...seats(['a', 0, 2]) }));
    // x from -0.5 to 1.5, z from 3 to 5: all of it to z = 4, beyond only to x = 0.5.
    expect(areas.some(({ areaM2 }) => Math.abs(areaM2 - (2 + 1)) < 1e-9)).toBe(true);
  });

  it('takes an edge’s own finish before its surface’s', () => {
    const surfaces = { right: { finish: 'brick' }, walls: { '3': { finish: 'glass-window' } } };
    const project = plain({ room: { ...ELL, surfaces }, ...seats(['a', 0, 2]) });
    const finishes = facesOf(project).map((face) => [treatmentId(project, face), face.treatment?.finish]);
    expect(finishes).toEqual([
      ['front', undefined],
      ['right', 'brick'],
      ['back', undefined],
      ['3', 'glass-window'],
      ['back', undefined],
      ['left', undefined],
      ['floor', undefined],
      ['ceiling', undefined],
    ]);
  });
});
