import type { Axis, BoxSpec, PrismSpec, WallPatch } from '../../engines/bass/room-field.ts';
import type { Vec3 } from '../../math/vec3.ts';

type Place = Pick<WallPatch, 'wall' | 'fromM' | 'toM'>;

/** A corner this far from a wall still lies on it. */
const ON_M = 1e-6;
const LEAST_M = 1e-3;

const across = (axis: Axis): [Axis, Axis] => (axis === 0 ? [1, 2] : axis === 1 ? [0, 2] : [0, 1]);

const span = (values: readonly number[]): [number, number] => [Math.min(...values), Math.max(...values)];

/** The rectangle over two coordinates of its corners; null when it is a line. */
const placeOn = (wall: number, first: readonly number[], second: readonly number[]): Place | null => {
  const [from0, to0] = span(first);
  const [from1, to1] = span(second);
  if (to0 - from0 < LEAST_M || to1 - from1 < LEAST_M) return null;
  return { wall, fromM: [from0, from1], toM: [to0, to1] };
};

const allNear = (corners: readonly Vec3[], axis: Axis, at: number): boolean =>
  corners.every((corner) => Math.abs(corner[axis] - at) < ON_M);

/** The wall of a box on which the corners of a rectangle (engine axes) lie, and where on it. */
export const wallOfBox = (spec: BoxSpec, corners: readonly Vec3[]): Place | null => {
  if (corners.length === 0) return null;
  for (const axis of [0, 1, 2] as const) {
    const [u, v] = across(axis);
    for (const side of [0, 1]) {
      if (!allNear(corners, axis, side * spec.sizeM[axis])) continue;
      return placeOn(
        2 * axis + side,
        corners.map((corner) => corner[u]),
        corners.map((corner) => corner[v]),
      );
    }
  }
  return null;
};

/** The same for a prism: an edge of its cross-section, or one of its ends. */
export const wallOfPrism = (spec: PrismSpec, corners: readonly Vec3[]): Place | null => {
  if (corners.length === 0) return null;
  const [u, v] = across(spec.axis);
  const count = spec.cornersM.length;
  for (const [end, at] of [0, spec.lengthM].entries()) {
    if (!allNear(corners, spec.axis, at)) continue;
    return placeOn(
      count + end,
      corners.map((corner) => corner[u]),
      corners.map((corner) => corner[v]),
    );
  }
  for (let edge = 0; edge < count; edge += 1) {
    const from = spec.cornersM[edge];
    const to = spec.cornersM[(edge + 1) % count];
    const lengthM = Math.hypot(to[0] - from[0], to[1] - from[1]);
    const [du, dv] = [(to[0] - from[0]) / lengthM, (to[1] - from[1]) / lengthM];
    const along = corners.map((corner) => (corner[u] - from[0]) * du + (corner[v] - from[1]) * dv);
    const off = corners.map((corner) => (corner[v] - from[1]) * du - (corner[u] - from[0]) * dv);
    if (off.some((distance) => Math.abs(distance) > ON_M)) continue;
    if (along.some((place) => place < -ON_M || place > lengthM + ON_M)) continue;
    return placeOn(
      edge,
      along,
      corners.map((corner) => corner[spec.axis]),
    );
  }
  return null;
};
