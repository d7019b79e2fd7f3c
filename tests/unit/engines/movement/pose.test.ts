import { describe, expect, it } from 'vitest';
import { dampedShare, smoothstep } from '../../../../src/engines/movement/easing.ts';
import { anglesTo, directionOf, mixPoses, type Pose } from '../../../../src/engines/movement/pose.ts';

const A: Pose = { atM: [3, 4, 9], yawDeg: 170, pitchDeg: -30, fovYDeg: 36 };
const B: Pose = { atM: [0, 1, 3], yawDeg: -170, pitchDeg: 6, fovYDeg: 60 };

describe('poses', () => {
  it('looks along -z at yaw 0, to +x at yaw 90, up at pitch 90', () => {
    expect(directionOf(0, 0).map((value) => Math.round(value * 1e9) / 1e9)).toEqual([0, 0, -1]);
    expect(directionOf(90, 0)[0]).toBeCloseTo(1, 12);
    expect(directionOf(0, 90)[1]).toBeCloseTo(1, 12);
  });

  it('finds the angles of a direction it made', () => {
    const [x, y, z] = directionOf(-123, 41);
    const { yawDeg, pitchDeg } = anglesTo([1, 2, 3], [1 + 5 * x, 2 + 5 * y, 3 + 5 * z]);
    expect(yawDeg).toBeCloseTo(-123, 9);
    expect(pitchDeg).toBeCloseTo(41, 9);
  });

  it('starts and ends exactly where it was told', () => {
    expect(mixPoses(A, B, 0)).toBe(A);
    expect(mixPoses(A, B, 1)).toBe(B);
  });

  it('turns the short way over the back', () => {
    expect(mixPoses(A, B, 0.5).yawDeg).toBeCloseTo(180, 9);
  });

  it('grows the angle of view in proportion to what it shows', () => {
    const tangent = (Math.tan((18 * Math.PI) / 180) + Math.tan((30 * Math.PI) / 180)) / 2;
    expect(mixPoses(A, B, 0.5).fovYDeg).toBeCloseTo((2 * Math.atan(tangent) * 180) / Math.PI, 9);
  });
});

describe('easing', () => {
  it('begins and ends still, passes the middle at the half', () => {
    expect([smoothstep(-1), smoothstep(0), smoothstep(0.5), smoothstep(1), smoothstep(2)]).toEqual([0, 0, 0.5, 1, 1]);
    expect(smoothstep(0.001)).toBeLessThan(1e-5);
  });

  it('damps alike in one step and in many, and at once without a time', () => {
    const rest = (1 - dampedShare(0.02, 0.1)) ** 5;
    expect(1 - dampedShare(0.1, 0.1)).toBeCloseTo(rest, 12);
    expect(dampedShare(0.016, 0)).toBe(1);
  });
});
