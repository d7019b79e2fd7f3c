import { describe, expect, it } from 'vitest';
import { targetFacing, uprightTarget } from '../../../../src/engines/sight/flat-target.ts';
import { pictureGeometry } from '../../../../src/engines/sight/picture-geometry.ts';

// Expected values: the plane triangles of the report's definitions, worked by hand (derived); 1e-9 is rounding.
const deg = 180 / Math.PI;

describe('picture geometry', () => {
  it('square on from the centre line', () => {
    const g = pictureGeometry([0, 1.2, 3.06], uprightTarget([0, 1.2, 0.06], 2, 1.125), 3840);
    expect(g.distanceM).toBeCloseTo(3, 9);
    expect(g.distanceHeights).toBeCloseTo(3 / 1.125, 9);
    expect(g.horizontalDeg).toBeCloseTo(2 * Math.atan(1 / 3) * deg, 9);
    expect(g.verticalDeg).toBeCloseTo(2 * Math.atan(0.5625 / 3) * deg, 9);
    expect(g.offAxisDeg).toBeCloseTo(0, 9);
    expect(g.topElevationDeg).toBeCloseTo(Math.atan(0.5625 / 3) * deg, 9);
    expect(g.centreElevationDeg).toBeCloseTo(0, 9);
    expect(g.pixelsPerDegree).toBeCloseTo((3840 / 2) * 3 * (Math.PI / 180), 9);
  });

  it('from the side and below: each quantity by its own triangle', () => {
    const g = pictureGeometry([1.5, 1, 4], uprightTarget([0, 1.4, 0], 2.4, 1.35), 1920);
    expect(g.distanceM).toBeCloseTo(Math.sqrt(1.5 ** 2 + 0.4 ** 2 + 16), 9);
    expect(g.distanceHeights).toBeCloseTo(4 / 1.35, 9);
    // Law of cosines between the two edges, 2.4 m apart.
    const a = Math.hypot(2.7, 0.4, 4);
    const b = Math.hypot(0.3, 0.4, 4);
    expect(g.horizontalDeg).toBeCloseTo(Math.acos((a * a + b * b - 2.4 ** 2) / (2 * a * b)) * deg, 9);
    const top = Math.hypot(1.5, 1.075, 4);
    const bottom = Math.hypot(1.5, 0.275, 4);
    expect(g.verticalDeg).toBeCloseTo(Math.acos((top ** 2 + bottom ** 2 - 1.35 ** 2) / (2 * top * bottom)) * deg, 9);
    expect(g.offAxisDeg).toBeCloseTo(Math.acos(4 / Math.hypot(1.5, 0.4, 4)) * deg, 9);
    expect(g.topElevationDeg).toBeCloseTo(Math.asin(1.075 / top) * deg, 9);
    expect(g.centreElevationDeg).toBeCloseTo(Math.asin(0.4 / Math.hypot(1.5, 0.4, 4)) * deg, 9);
    expect(g.pixelsPerDegree).toBeCloseTo((1920 / 2.4) * 4 * (Math.PI / 180), 9);
  });

  it('has no pixel figure without a pixel count', () => {
    expect(pictureGeometry([0, 1, 3], uprightTarget([0, 1, 0], 2, 1)).pixelsPerDegree).toBeNull();
  });

  it('is the same for a picture turned about the eye', () => {
    const turn = 0.6;
    const straight = pictureGeometry([0, 1.1, 3], uprightTarget([0.3, 1.3, 0], 2, 1.1), 1920);
    // The same picture on another wall: the eye at the origin of the turn.
    const rotate = (x: number, z: number): [number, number] => [
      x * Math.cos(turn) + z * Math.sin(turn),
      -x * Math.sin(turn) + z * Math.cos(turn),
    ];
    const [cx, cz] = rotate(0.3, -3);
    const [nx, nz] = rotate(0, 1);
    const turned = pictureGeometry([0, 1.1, 3], targetFacing([cx, 1.3, 3 + cz], [nx, 0, nz], 2, 1.1), 1920);
    for (const key of Object.keys(straight) as (keyof typeof straight)[]) {
      expect(turned[key], key).toBeCloseTo(straight[key] ?? Number.NaN, 9);
    }
  });

  it('counts the distance in heights as negative behind the picture', () => {
    expect(pictureGeometry([0, 1, -2], uprightTarget([0, 1, 0], 2, 1)).distanceHeights).toBeCloseTo(-2, 9);
  });
});
