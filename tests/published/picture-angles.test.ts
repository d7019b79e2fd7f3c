// Picture angles and distances: ITU-R BS.775-3 figure 1 (read), distances attributed to SMPTE (read in a second source) and
// an encyclopedia's figure for 30 degrees (read), each beside its exact value (derived). Tolerances are those of the print
// or of the rounding of the derived figure as typed here.
import { describe, expect, it } from 'vitest';
import { uprightTarget } from '../../src/engines/sight/flat-target.ts';
import { pictureGeometry } from '../../src/engines/sight/picture-geometry.ts';
import {
  diagonalM,
  distanceForAngleM,
  heightsForAngle,
  horizontalDegAtHeights,
  widthForAngleM,
  widthOfDiagonalM,
} from '../../src/engines/sight/picture-size.ts';

const wide = 16 / 9;

/** The same angle from the full three-dimensional geometry: eye on the axis, picture one metre high. */
const measuredDeg = (heights: number, aspect: number): number =>
  pictureGeometry([0, 1.5, heights], uprightTarget([0, 1.5, 0], aspect, 1)).horizontalDeg;

const near = (actual: number, expected: number, tolerance: number, what: string): void => {
  expect(Math.abs(actual - expected), `${what}: ${actual} against ${expected}`).toBeLessThanOrEqual(tolerance);
};

describe('horizontal angle at a distance in picture heights', () => {
  it.each([
    ['BS.775 reference, printed 33', 3, wide, 33, 0.1],
    ['BS.775 at 2 H, printed 48', 2, wide, 48, 0.1],
    ['the same, exact', 3, wide, 33.01, 0.005],
    ['the same, exact', 2, wide, 47.92, 0.005],
    ['scope near, printed 61.8', 2, 2.39, 61.8, 0.1],
    ['scope reference, printed 43.4', 3, 2.39, 43.4, 0.1],
    ['scope far, printed 33.3', 4, 2.39, 33.3, 0.1],
    ['exact scope near', 2, 2.39, 61.72, 0.005],
    ['exact scope reference', 3, 2.39, 43.44, 0.005],
    ['exact scope far', 4, 2.39, 33.27, 0.005],
    ['derived', 3.1, wide, 32.0, 0.02],
    ['derived', 3.2, wide, 31.05, 0.02],
    ['derived', 1.6, wide, 58.11, 0.02],
    ['derived', 1.5, wide, 61.3, 0.02],
    ['derived', 0.8, wide, 96.03, 0.02],
    ['read as "28 degrees at 3.3 H", which is wrong; exact', 3.3, wide, 30.15, 0.005],
  ])('%s: %d H at %d', (what, heights, aspect, expected, tolerance) => {
    near(horizontalDegAtHeights(heights, aspect), expected, tolerance, what);
    near(measuredDeg(heights, aspect), expected, tolerance, `${what}, from the geometry`);
  });
});

describe('widths and diagonals (derived)', () => {
  it.each([
    [26, 0.4617],
    [30, 0.5359],
    [36, 0.6498],
    [40, 0.7279],
    [45, 0.8284],
    [60, 1.1547],
  ])('W / D at %d degrees', (angle, expected) => {
    near(widthForAngleM(angle, 1), expected, 0.0001, 'W/D');
  });

  it('30 degrees on 16:9 is 1.6264 diagonals (read in a quotation, and derived)', () => {
    near(distanceForAngleM(30, widthOfDiagonalM(1, wide)), 1.6264, 0.0005, 'D/diagonal');
  });

  it.each([
    [36, 0.7456],
    [33.3, 0.6863],
    [43.4, 0.9132],
    [48, 1.0217],
    [60, 1.3248],
  ])('diagonal / D at %d degrees on 16:9', (angle, expected) => {
    near(diagonalM(widthForAngleM(angle, 1), wide), expected, 0.0005, 'diagonal/D');
  });

  it.each([
    [30, 1.778, 3.317],
    [30, 1.85, 3.452],
    [30, 2.35, 4.385],
    [30, 2.39, 4.46],
    [30, 2.4, 4.478],
    [40, 1.778, 2.442],
    [40, 1.85, 2.541],
    [40, 2.35, 3.228],
    [40, 2.39, 3.283],
    [40, 2.4, 3.297],
  ])('D / H for %d degrees at %d', (angle, aspect, expected) => {
    near(heightsForAngle(angle, aspect), expected, 0.002, 'D/H');
  });

  it('a 40 degree picture on 16:9 has a diagonal of 0.84 times the distance (common practice, no source)', () => {
    near(diagonalM(widthForAngleM(40, 1), wide), 0.84, 0.005, 'diagonal/D');
  });
});
