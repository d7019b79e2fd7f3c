import { describe, expect, it } from 'vitest';
import { sliceOutline } from '../../../../src/analysis/slice/outline.ts';
import { signedArea } from '../../../../src/math/polygon.ts';
import type { Project } from '../../../../src/model/project.ts';
import { demo } from '../rooms.ts';

const project = demo();
const withRoom = (room: Partial<Project['room']>): Project => ({ ...project, room: { ...project.room, ...room } });
const areas = (of: Project, cut: Parameters<typeof sliceOutline>[1]) =>
  sliceOutline(of, cut).map((corners) => Math.abs(signedArea(corners)));

describe('the outline of a slice', () => {
  it('is the plan, and walls times height where it stands, in a box of 4.3 by 6.1 by its height', () => {
    const { ceiling } = project.room;
    const heightM = ceiling.shape === 'flat' ? ceiling.heightM : Number.NaN;
    expect(areas(project, { normal: 'y', atM: 1 })[0]).toBeCloseTo(4.3 * 6.1, 9);
    expect(areas(project, { normal: 'z', atM: 2 })[0]).toBeCloseTo(4.3 * heightM, 9);
    expect(areas(project, { normal: 'x', atM: 0 })[0]).toBeCloseTo(6.1 * heightM, 9);
  });

  it('falls into two where a U-shaped plan is cut across its arms', () => {
    const u = withRoom({
      plan: {
        shape: 'polygon',
        cornersM: [
          [-3, 0],
          [3, 0],
          [3, 5],
          [1, 5],
          [1, 2],
          [-1, 2],
          [-1, 5],
          [-3, 5],
        ],
      },
      ceiling: { shape: 'flat', heightM: 2.5 },
    });
    expect(areas(u, { normal: 'z', atM: 4 })).toEqual([5, 5]);
    expect(areas(u, { normal: 'z', atM: 1 })).toEqual([15]);
    expect(areas(u, { normal: 'y', atM: 1 })[0]).toBeCloseTo(6 * 5 - 2 * 3, 9);
  });

  it('keeps under a ridge: 5 m wide, knee walls of 1.2 m, ridge at 3.2 m', () => {
    const attic = withRoom({
      plan: { shape: 'rectangle', widthM: 5, lengthM: 6 },
      ceiling: {
        shape: 'profile',
        across: 'x',
        pointsM: [
          [-2.5, 1.2],
          [0, 3.2],
          [2.5, 1.2],
        ],
      },
    });
    // By hand: at 2.2 m half of either slope is left (2.5 m wide); the gable is 5 x 1.2 + 5 x 2 / 2; along at x = 1.25 it is 2.2 m high.
    expect(areas(attic, { normal: 'y', atM: 2.2 })[0]).toBeCloseTo(2.5 * 6, 9);
    expect(areas(attic, { normal: 'y', atM: 1 })[0]).toBeCloseTo(5 * 6, 9);
    expect(areas(attic, { normal: 'z', atM: 3 })[0]).toBeCloseTo(5 * 1.2 + 5, 9);
    expect(areas(attic, { normal: 'x', atM: 1.25 })[0]).toBeCloseTo(6 * 2.2, 9);
    expect(areas(attic, { normal: 'y', atM: 3.5 })).toEqual([]);
  });
});
