import { degreesOf, wrapDegrees } from '../../math/angles.ts';
import { cross, dot, length, subtract, type Vec3 } from '../../math/vec3.ts';

/** Where a source lies from an ear point. Degrees and metres. */
export interface Direction {
  /** From -z (towards the front wall) whatever way the chair faces, positive to the right, in (-180, 180]. */
  readonly azimuthDeg: number;
  /** Over the horizontal, positive up. */
  readonly elevationDeg: number;
  readonly distanceM: number;
}

/** The direction and distance of `source` from `ear`, document axes. Straight above or below, the azimuth is 0. */
export const directionFrom = (ear: Vec3, source: Vec3): Direction => {
  const [x, y, z] = subtract(source, ear);
  const level = Math.hypot(x, z);
  return {
    azimuthDeg: level === 0 ? 0 : wrapDegrees(degreesOf(Math.atan2(x, -z))),
    elevationDeg: level === 0 && y === 0 ? 0 : degreesOf(Math.atan2(y, level)),
    distanceM: Math.hypot(level, y),
  };
};

/** The time sound takes over a distance at `speedMS` (metres a second), in milliseconds. */
export const arrivalMs = (distanceM: number, speedMS: number): number => (distanceM / speedMS) * 1000;

/** The angle between the way a loudspeaker at `source` faces and the ray from it to `ear`, 0 to 180 degrees. */
export const offAxisDeg = (source: Vec3, facing: Vec3, ear: Vec3): number => {
  const ray = subtract(ear, source);
  return degreesOf(Math.atan2(length(cross(facing, ray)), dot(facing, ray)));
};
