import { describe, expect, it } from 'vitest';
import { arrivalMs, directionFrom, offAxisDeg } from '../../../../src/engines/loudspeakers/angles.ts';
import type { Vec3 } from '../../../../src/math/vec3.ts';

const ear: Vec3 = [0.5, 1.1, 3];

describe('direction from an ear', () => {
  // The compass of the report: 0 towards the front wall, positive right, 180 straight behind.
  it.each<[string, Vec3, number, number, number]>([
    ['ahead', [0.5, 1.1, 1], 0, 0, 2],
    ['right', [2.5, 1.1, 3], 90, 0, 2],
    ['left', [-1.5, 1.1, 3], -90, 0, 2],
    ['behind', [0.5, 1.1, 5], 180, 0, 2],
    ['ahead right', [1.5, 1.1, 2], 45, 0, Math.SQRT2],
    ['behind left', [-0.5, 1.1, 4], -135, 0, Math.SQRT2],
    ['ahead and up', [0.5, 2.1, 2], 0, 45, Math.SQRT2],
    ['ahead and down', [0.5, 0.1, 2], 0, -45, Math.SQRT2],
    ['overhead', [0.5, 3.1, 3], 0, 90, 2],
    ['the same point', [0.5, 1.1, 3], 0, 0, 0],
  ])('%s', (_name, source, azimuth, elevation, distance) => {
    const found = directionFrom(ear, source);
    expect(found.azimuthDeg).toBeCloseTo(azimuth, 9);
    expect(found.elevationDeg).toBeCloseTo(elevation, 9);
    expect(found.distanceM).toBeCloseTo(distance, 9);
  });

  it('calls straight behind 180, never -180, whichever zero the sideways step is', () => {
    expect(directionFrom([0, 1, 1], [-0, 1, 3]).azimuthDeg).toBe(180);
    expect(directionFrom([0, 1, 1], [0, 1, 3]).azimuthDeg).toBe(180);
  });
});

it('counts the time of flight in milliseconds', () => {
  expect(arrivalMs(3.432, 343.2)).toBeCloseTo(10, 12);
});

describe('off axis', () => {
  it.each<[Vec3, number]>([
    [[0, 0, 1], 0],
    [[1, 0, 0], 90],
    [[0, 0, -3], 180],
    [[0, 2, 2], 45],
  ])('facing %j', (facing, expected) => {
    expect(offAxisDeg([0, 1, 0], facing, [0, 1, 4])).toBeCloseTo(expected, 9);
  });
});
