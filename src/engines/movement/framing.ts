import { radiansOf } from '../../math/angles.ts';
import { add, cross, dot, scale, type Vec3 } from '../../math/vec3.ts';
import { clamp } from './easing.ts';
import { directionOf } from './pose.ts';

/** A camera that goes round a point. */
export interface Orbit {
  readonly targetM: Vec3;
  readonly yawDeg: number;
  readonly pitchDeg: number;
  readonly distanceM: number;
}

/** The part of the canvas nothing covers, CSS pixels from its upper left corner, and the canvas. */
export interface FreeArea {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  readonly canvasWidth: number;
  readonly canvasHeight: number;
}

export const orbitEye = ({ targetM, yawDeg, pitchDeg, distanceM }: Orbit): Vec3 =>
  add(targetM, scale(directionOf(yawDeg, pitchDeg), -distanceM));

export const corners = (minM: Vec3, maxM: Vec3): Vec3[] =>
  Array.from(
    { length: 8 },
    (_, i): Vec3 => [(i & 1 ? maxM : minM)[0], (i & 2 ? maxM : minM)[1], (i & 4 ? maxM : minM)[2]],
  );

/** CSS pixels a unit of tangent takes on the canvas. */
export const focalPx = (fovYDeg: number, canvasHeight: number): number =>
  canvasHeight / (2 * Math.tan(radiansOf(fovYDeg / 2)));

/**
 * The nearest camera with the given direction that keeps every point within the free area, whose middle is taken as the
 * camera's axis (derived: each side of the area is a plane through the eye; the tightest pair across and the tightest
 * pair upwards fix where the eye is to the sides, the tighter of the two how far back).
 * @param share how much of the free area may be filled
 */
export const fitPoints = (
  points: readonly Vec3[],
  yawDeg: number,
  pitchDeg: number,
  fovYDeg: number,
  free: FreeArea,
  share: number,
): Orbit => {
  const ahead = directionOf(yawDeg, pitchDeg);
  const right: Vec3 = [Math.cos(radiansOf(yawDeg)), 0, Math.sin(radiansOf(yawDeg))];
  const up = cross(right, ahead);
  const focal = focalPx(fovYDeg, free.canvasHeight);
  const tanX = (share * free.width) / (2 * focal);
  const tanY = (share * free.height) / (2 * focal);
  let a = -Infinity;
  let b = -Infinity;
  let c = -Infinity;
  let d = -Infinity;
  let meanDepth = 0;
  for (const point of points) {
    const depth = dot(point, ahead);
    const x = dot(point, right);
    const y = dot(point, up);
    a = Math.max(a, x - tanX * depth);
    b = Math.max(b, -x - tanX * depth);
    c = Math.max(c, y - tanY * depth);
    d = Math.max(d, -y - tanY * depth);
    meanDepth += depth / points.length;
  }
  const eyeDepth = Math.min(-(a + b) / (2 * tanX), -(c + d) / (2 * tanY));
  const distanceM = Math.max(0.1, meanDepth - eyeDepth);
  const eye = add(add(scale(right, (a - b) / 2), scale(up, (c - d) / 2)), scale(ahead, eyeDepth));
  return { targetM: add(eye, scale(ahead, distanceM)), yawDeg, pitchDeg, distanceM };
};

/** The angle of view in which a picture seen under these two angles fills `share` of the free area, within limits. */
export const naturalFovDeg = (
  horizontalDeg: number,
  verticalDeg: number,
  free: FreeArea,
  share: number,
  lowDeg: number,
  highDeg: number,
): number => {
  const needed = (angleDeg: number, px: number) => (2 * Math.tan(radiansOf(angleDeg / 2))) / (share * px);
  const tangentPerPx = Math.max(needed(horizontalDeg, free.width), needed(verticalDeg, free.height));
  const fov = (2 * Math.atan((tangentPerPx * free.canvasHeight) / 2) * 180) / Math.PI;
  return clamp(fov, lowDeg, highDeg);
};

/** A CSS pixel is a ninety-sixth of an inch seen from 28 inches (CSS Values and Units, reference pixel). */
const REFERENCE_DISTANCE_PX = 28 * 96;

/** How many times smaller than life a view is shown on an ordinary display at an ordinary distance. */
export const timesSmaller = (fovYDeg: number, canvasHeight: number): number =>
  Math.tan(radiansOf(fovYDeg / 2)) / (canvasHeight / 2 / REFERENCE_DISTANCE_PX);
