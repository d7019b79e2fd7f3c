import { describe, expect, it } from 'vitest';
import { toEngine } from '../../../../src/analysis/inputs/engine-axes.ts';
import { bassApproximation, roomSpec } from '../../../../src/analysis/inputs/room-spec.ts';
import { isPrism, type PrismSpec, type RoomSpec } from '../../../../src/engines/bass/room-field.ts';
import { signedArea } from '../../../../src/math/polygon.ts';
import type { Project } from '../../../../src/model/project.ts';
import { plain } from '../rooms.ts';

/** A room whose surfaces all have different admittances, so that each can be told in what the engine gets. */
const room = (plan: unknown, ceiling: unknown, walls: Record<string, unknown> = {}): Project =>
  plain({
    room: {
      plan,
      ceiling,
      surfaces: {
        front: { admittance: [0.01, 0] },
        back: { admittance: [0.02, 0] },
        left: { admittance: [0.03, 0] },
        right: { admittance: [0.04, 0] },
        floor: { admittance: [0.05, 0] },
        ceiling: { admittance: [0.06, 0] },
        walls,
      },
    },
  });

const RECTANGLE = { shape: 'rectangle', widthM: 4, lengthM: 6 };
const FLAT = { shape: 'flat', heightM: 2.5 };
// an L: 5 m wide in front, the right part behind 4 m missing
const L_PLAN = {
  shape: 'polygon',
  cornersM: [
    [-2, 0],
    [3, 0],
    [3, 4],
    [1, 4],
    [1, 6],
    [-2, 6],
  ],
};

const prism = (spec: RoomSpec): PrismSpec => {
  if (!isPrism(spec)) throw new TypeError('a box');
  return spec;
};
const reals = (list: readonly (readonly [number, number])[]): number[] => list.map(([re]) => re);

describe('the room as the bass engine takes it', () => {
  it('a rectangle under a flat ceiling is a box, also when given as a polygon or as a level profile', () => {
    const expected = {
      sizeM: [4, 2.5, 6],
      soundSpeed: expect.closeTo(343.2, 9),
      admittance: [
        [0.03, 0],
        [0.04, 0],
        [0.05, 0],
        [0.06, 0],
        [0.01, 0],
        [0.02, 0],
      ],
    };
    expect(roomSpec(room(RECTANGLE, FLAT))).toEqual(expected);
    const polygon = {
      shape: 'polygon',
      cornersM: [
        [-2, 0],
        [-2, 6],
        [2, 6],
        [2, 0],
      ],
    };
    expect(roomSpec(room(polygon, FLAT))).toEqual(expected);
    const slope = { shape: 'slope', across: 'z', startHeightM: 2.5, endHeightM: 2.5 };
    expect(roomSpec(room(RECTANGLE, slope))).toEqual(expected);
  });

  it('a plan of corners is an upright prism, its walls by surface or by their own edge', () => {
    const project = room(L_PLAN, FLAT, { '2': { admittance: [0.07, 0.01] } });
    const spec = prism(roomSpec(project));
    expect(spec.axis).toBe(1);
    expect(spec.lengthM).toBe(2.5);
    expect(spec.cornersM).toEqual([
      [0, 0],
      [5, 0],
      [5, 4],
      [3, 4],
      [3, 6],
      [0, 6],
    ]);
    // front, right, the edge with its own treatment, right, back, left
    expect(spec.edges).toEqual([
      [0.01, 0],
      [0.04, 0],
      [0.07, 0.01],
      [0.04, 0],
      [0.02, 0],
      [0.03, 0],
    ]);
    expect(spec.ends).toEqual([
      [0.05, 0],
      [0.06, 0],
    ]);
    expect(toEngine(project, [-2, 0, 0])).toEqual([0, 0, 0]);
    expect(bassApproximation(project)).toBeNull();
  });

  it('a slope across x lies along z, its section in x and y', () => {
    const spec = prism(roomSpec(room(RECTANGLE, { shape: 'slope', across: 'x', startHeightM: 2, endHeightM: 3 })));
    expect([spec.axis, spec.lengthM]).toEqual([2, 6]);
    expect(spec.cornersM).toEqual([
      [0, 0],
      [4, 0],
      [4, 3],
      [0, 2],
    ]);
    expect(reals(spec.edges)).toEqual([0.05, 0.04, 0.06, 0.03]);
    expect(reals(spec.ends)).toEqual([0.01, 0.02]);
  });

  it('a profile across z lies along x, its section in y and z', () => {
    const pointsM = [
      [0, 1.2],
      [3, 3],
      [6, 1.2],
    ];
    const spec = prism(roomSpec(room(RECTANGLE, { shape: 'profile', across: 'z', pointsM })));
    expect([spec.axis, spec.lengthM]).toEqual([0, 4]);
    expect(spec.cornersM).toEqual([
      [0, 0],
      [0, 6],
      [1.2, 6],
      [3, 3],
      [1.2, 0],
    ]);
    expect(reals(spec.edges)).toEqual([0.05, 0.02, 0.06, 0.06, 0.01]);
    expect(reals(spec.ends)).toEqual([0.03, 0.04]);
  });

  it('a plan of corners under a slope keeps its volume and says so', () => {
    const project = room(L_PLAN, { shape: 'slope', across: 'z', startHeightM: 2, endHeightM: 3.2 });
    const spec = prism(roomSpec(project));
    // 5 x 4 m at a mean of 2.4 m and 3 x 2 m at a mean of 3.0 m, over 26 m2 (by hand)
    expect(spec.lengthM).toBeCloseTo((20 * 2.4 + 6 * 3) / 26, 12);
    expect(Math.abs(signedArea(spec.cornersM)) * spec.lengthM).toBeCloseTo(66, 10);
    expect(bassApproximation(project)).toContain('2.54 m');
  });

  it('a patch on a sloping room lies on the right edge, at the right place', () => {
    const project = room(RECTANGLE, { shape: 'slope', across: 'x', startHeightM: 2, endHeightM: 3 });
    const patched: Project = {
      ...project,
      room: {
        ...project.room,
        patches: [
          { id: 'p', surface: 'right', fromM: 1, widthM: 2, bottomM: 0.5, heightM: 1, admittance: [0.3, 0] } as const,
        ],
      },
    };
    const { patches } = roomSpec(patched);
    expect(patches).toHaveLength(1);
    const [patch] = patches ?? [];
    // edge 1 runs up the right wall from the floor; then metres along z
    expect(patch.wall).toBe(1);
    expect([...patch.fromM, ...patch.toM].map((x) => Number(x.toFixed(9)))).toEqual([0.5, 1, 1.5, 3]);
    expect(patch.admittance).toEqual([0.3, 0]);
  });
});
