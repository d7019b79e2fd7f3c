import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../../../src/math/vec3.ts';
import type { ItemRef } from '../../../../src/model/project.ts';
import { snapPlace } from '../../../../src/model/snap/place.ts';
import { sampleProject } from '../sample.ts';

// Expected places are worked out by hand from the sample's numbers: a room of 4.3 x 6.1 x 2.7 m about x = 0, reference
// seat front-2 at x = 0 with its ear at z = 3.30 + 0.10 and y = 0.43 + 0.68 = 1.11.
const project = sampleProject();
const REACH = 0.04;
const loudspeaker = (id: string): ItemRef => ({ kind: 'loudspeaker', id });
const halfM: Vec3 = [0.12, 0.3, 0.15];

const snap = (ref: ItemRef, wantedM: Vec3, axes: readonly (0 | 1 | 2)[], startM: Vec3 = wantedM, half = halfM) =>
  snapPlace(project, { ref, wantedM, startM, halfM: half, axes, reachM: REACH });

describe('snapping a place', () => {
  it('holds a thing of the middle on the middle line, and three times as firmly as one that comes by', () => {
    const centred = snap(loudspeaker('C'), [0.1, 1.15, 0.22], [0], [0, 1.15, 0.22]);
    expect(centred.atM[0]).toBe(0);
    expect(centred.reasons[0]).toEqual({ kind: 'roomCentre' });
    const passing = snap(loudspeaker('C'), [0.1, 1.15, 0.22], [0], [0.5, 1.15, 0.22]);
    expect(passing.atM[0]).not.toBe(0);
    const near = snap(loudspeaker('C'), [0.03, 1.15, 0.22], [0], [0.5, 1.15, 0.22]);
    expect(near.atM[0]).toBe(0);
  });

  it('finds the mirror of the partner and the line it stands on', () => {
    const { atM, reasons } = snap(loudspeaker('L'), [-1.34, 1.15, 0.24], [0, 2]);
    expect(atM).toEqual([-1.36, 1.15, 0.22]);
    expect(reasons).toEqual([
      { kind: 'mirror', of: loudspeaker('R') },
      { kind: 'inLine', of: loudspeaker('R') },
    ]);
  });

  it('finds the height of the ears of the reference seat', () => {
    const { atM, reasons } = snap(loudspeaker('Ls'), [-2.06, 1.09, 3.95], [1]);
    expect(atM[1]).toBeCloseTo(1.11, 9);
    expect(reasons).toEqual([{ kind: 'earHeight' }]);
  });

  it('finds the quarter points of the walls for subwoofers only', () => {
    const half: Vec3 = [0.21, 0.22, 0.21];
    // A quarter in from the left wall: -2.15 + 4.3 / 4.
    const sub = snap({ kind: 'subwoofer', id: 'S1' }, [-1.06, 0.22, 0.9], [0, 2], [-1.88, 0.22, 0.27], half);
    expect(sub.atM[0]).toBeCloseTo(-1.075, 9);
    expect(sub.reasons[0]).toEqual({ kind: 'quarter', along: 'width' });
    const other = snap(loudspeaker('C'), [-1.06, 0.22, 0.9], [0, 2], [-1.88, 0.22, 0.27], half);
    expect(other.reasons).not.toContainEqual({ kind: 'quarter', along: 'width' });
  });

  it('finds the partner’s angle at the reference ear where it stands at another distance', () => {
    // R at (1.36, 0.22), ear at (0, 3.40): the mirrored ray runs through (-0.68, 1.81), half way.
    const { atM, reasons } = snap(loudspeaker('L'), [-0.685, 1.15, 1.8], [0, 2], [-1.36, 1.15, 0.22]);
    expect(reasons[0]).toMatchObject({ kind: 'sameAngle', of: loudspeaker('R') });
    const angle = (x: number, z: number) => (Math.atan2(x, 3.4 - z) * 180) / Math.PI;
    expect(Math.abs(angle(atM[0], atM[2]) + angle(1.36, 0.22))).toBeLessThan(0.02);
  });

  it('takes round distances from the nearer wall when they are all but reached, else whole centimetres', () => {
    // The near side 0.507 m from the left wall: -2.15 + 0.507 + 0.12.
    const near = snap(loudspeaker('Ls'), [-1.523, 1.62, 2.9], [0]);
    expect(near.atM[0]).toBeCloseTo(-2.15 + 0.5 + 0.12, 9);
    expect(near.reasons).toEqual([{ kind: 'wallStep', wall: 'left', distanceM: 0.5 }]);
    // 0.527 m is nearer to nothing: the middle goes to whole centimetres.
    const free = snap(loudspeaker('Ls'), [-1.503, 1.62, 2.9], [0]);
    expect(free.atM[0]).toBe(-1.5);
    expect(free.reasons).toEqual([]);
  });

  it('lets go of everything when nothing is in reach, and never touches an axis the hand does not move', () => {
    const wish = { ref: loudspeaker('L'), wantedM: [-1.4213, 9, 0.4217] as Vec3, startM: [-1, 1, 1] as Vec3, halfM };
    const { atM, reasons } = snapPlace(project, { ...wish, axes: [0, 2], reachM: 0 });
    expect(atM).toEqual([-1.4213, 1, 0.4217]);
    expect(reasons).toEqual([]);
  });
});
