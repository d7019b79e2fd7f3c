import { degreesOf } from '../../math/angles.ts';
import { cross, dot, length, subtract, type Vec3 } from '../../math/vec3.ts';
import { type FlatTarget, frontOf, perpendicularM, pointOn } from './flat-target.ts';

/** What one eye point sees of a picture, each as the report defines it. Metres and degrees. */
export interface PictureGeometry {
  /** Eye to the picture's centre. */
  readonly distanceM: number;
  /** Perpendicular distance in picture heights; negative behind the picture. */
  readonly distanceHeights: number;
  /** Angle between the rays to the middles of the left and right edges. */
  readonly horizontalDeg: number;
  /** Angle between the rays to the middles of the lower and upper edges. */
  readonly verticalDeg: number;
  /** Angle in space between the ray from the centre to the eye and the picture's normal. */
  readonly offAxisDeg: number;
  /** Elevation of the ray to the middle of the upper edge; positive is up. */
  readonly topElevationDeg: number;
  readonly centreElevationDeg: number;
  /** Pixels a degree of view at the centre, as if seen square on; null when the pixel count is not given. */
  readonly pixelsPerDegree: number | null;
}

/** The angle between two directions of any length, in degrees, accurate near 0 and 180 (atan2 of cross and dot). */
export const angleBetweenDeg = (a: Vec3, b: Vec3): number => degreesOf(Math.atan2(length(cross(a, b)), dot(a, b)));

/** Elevation of the ray from `eye` to `point` over the horizontal, degrees, positive up. */
export const elevationDegOf = (eye: Vec3, point: Vec3): number => {
  const [x, y, z] = subtract(point, eye);
  return degreesOf(Math.atan2(y, Math.hypot(x, z)));
};

/** The widest angle across the picture: between the rays to the middles of two opposite edges. */
const spanDeg = (eye: Vec3, from: Vec3, to: Vec3): number => angleBetweenDeg(subtract(from, eye), subtract(to, eye));

/**
 * The angles and distances of a picture from one eye point; derived, plane geometry.
 * @param pixelsAcross the picture's horizontal pixel count, or null
 */
export const pictureGeometry = (
  eye: Vec3,
  picture: FlatTarget,
  pixelsAcross: number | null = null,
): PictureGeometry => {
  const square = perpendicularM(eye, picture);
  const toEye = subtract(eye, picture.centreM);
  return {
    distanceM: length(toEye),
    distanceHeights: square / picture.heightM,
    horizontalDeg: spanDeg(eye, pointOn(picture, -1, 0), pointOn(picture, 1, 0)),
    verticalDeg: spanDeg(eye, pointOn(picture, 0, -1), pointOn(picture, 0, 1)),
    offAxisDeg: angleBetweenDeg(toEye, frontOf(picture)),
    topElevationDeg: elevationDegOf(eye, pointOn(picture, 0, 1)),
    centreElevationDeg: elevationDegOf(eye, picture.centreM),
    pixelsPerDegree: pixelsAcross === null ? null : (pixelsAcross / picture.widthM) * square * (Math.PI / 180),
  };
};
