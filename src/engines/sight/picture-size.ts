import { degreesOf, radiansOf } from '../../math/angles.ts';

// Plan geometry of a flat picture seen square on from its centre line: angle = 2 atan(W / 2D). Derived.

/** The horizontal angle of a picture `widthM` wide at `distanceM`. Degrees. */
export const horizontalDegOf = (widthM: number, distanceM: number): number =>
  degreesOf(2 * Math.atan2(widthM / 2, distanceM));

/** The width that fills `horizontalDeg` at `distanceM`. */
export const widthForAngleM = (horizontalDeg: number, distanceM: number): number =>
  2 * distanceM * Math.tan(radiansOf(horizontalDeg) / 2);

/** The distance at which a width fills `horizontalDeg`. */
export const distanceForAngleM = (horizontalDeg: number, widthM: number): number =>
  widthM / (2 * Math.tan(radiansOf(horizontalDeg) / 2));

/** The diagonal of a picture of this width and aspect (width over height). */
export const diagonalM = (widthM: number, aspect: number): number => widthM * Math.hypot(1, 1 / aspect);

/** The width of a picture of this diagonal and aspect. */
export const widthOfDiagonalM = (diagonal: number, aspect: number): number => diagonal / Math.hypot(1, 1 / aspect);

/** Horizontal angle at a distance given in picture heights. Degrees. */
export const horizontalDegAtHeights = (heights: number, aspect: number): number => horizontalDegOf(aspect, heights);

/** The distance in picture heights at which the picture fills `horizontalDeg`. */
export const heightsForAngle = (horizontalDeg: number, aspect: number): number =>
  distanceForAngleM(horizontalDeg, aspect);
