import { dot, type Vec3 } from '../../math/vec3.ts';
import type { HandleAxis } from '../../model/handles/handle.ts';

/** A ray through a point of the canvas, document axes. The direction is a unit vector. */
export interface Ray {
  readonly originM: Vec3;
  readonly direction: Vec3;
}

/** Rays flatter to a plane or straighter along a line than this say nothing about where the hand is on it. */
const FLATTEST = 0.03;

const minus = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const along = (a: Vec3, b: Vec3, t: number): Vec3 => [a[0] + b[0] * t, a[1] + b[1] * t, a[2] + b[2] * t];
const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** The ray that a camera sends which has not gone along by so much. */
export const shifted = ({ originM, direction }: Ray, byM: Vec3): Ray => ({ originM: minus(originM, byM), direction });

/** Where a ray meets the plane through a point; null where it runs along it or away from it. */
export const onPlane = ({ originM, direction }: Ray, throughM: Vec3, normal: Vec3): Vec3 | null => {
  const across = dot(direction, normal);
  if (Math.abs(across) < FLATTEST) return null;
  const t = dot(minus(throughM, originM), normal) / across;
  return t > 0 ? along(originM, direction, t) : null;
};

/** How far along a line, from `throughM`, it comes nearest to a ray; null where both run the same way. */
export const alongLine = ({ originM, direction }: Ray, throughM: Vec3, line: Vec3): number | null => {
  const b = dot(direction, line);
  const w = minus(originM, throughM);
  const across = 1 - b * b;
  if (across < FLATTEST * FLATTEST) return null;
  return (dot(w, line) - b * dot(w, direction)) / across;
};

/**
 * How far a handle that stood at `fromM` has been moved when the hand holds it under this ray, along what it can be moved
 * along; null where the view does not say.
 */
export const pulledBy = (ray: Ray, fromM: Vec3, axis: HandleAxis): Vec3 | null => {
  if (axis.kind === 'line') {
    const t = alongLine(ray, fromM, axis.direction);
    return t === null ? null : along([0, 0, 0], axis.direction, t);
  }
  const normal: Vec3 = axis.kind === 'level' ? [0, 1, 0] : cross(axis.right, axis.up);
  const met = onPlane(ray, fromM, normal);
  return met && minus(met, fromM);
};
