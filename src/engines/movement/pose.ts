import { degreesOf, radiansOf, wrapDegrees } from '../../math/angles.ts';
import { mix, type Vec3 } from '../../math/vec3.ts';

/** Where a camera stands and looks. The horizon is always level. */
export interface Pose {
  readonly atM: Vec3;
  /** From -z, positive to the right. */
  readonly yawDeg: number;
  /** Positive up. */
  readonly pitchDeg: number;
  /** Vertical angle of view over the whole canvas. */
  readonly fovYDeg: number;
}

/** The unit direction of a yaw and pitch. */
export const directionOf = (yawDeg: number, pitchDeg: number): Vec3 => {
  const yaw = radiansOf(yawDeg);
  const pitch = radiansOf(pitchDeg);
  return [Math.sin(yaw) * Math.cos(pitch), Math.sin(pitch), -Math.cos(yaw) * Math.cos(pitch)];
};

/** Yaw and pitch of the direction from one point to another; straight up and down keep yaw 0. */
export const anglesTo = (from: Vec3, to: Vec3): { readonly yawDeg: number; readonly pitchDeg: number } => {
  const x = to[0] - from[0];
  const y = to[1] - from[1];
  const z = to[2] - from[2];
  const level = Math.hypot(x, z);
  return { yawDeg: level > 0 ? degreesOf(Math.atan2(x, -z)) : 0, pitchDeg: degreesOf(Math.atan2(y, level)) };
};

/**
 * The pose at share `t` between two: places in a straight line, the view turned the short way with a level horizon
 * (yaw and pitch apart, so that the picture never rolls on the way), the angle of view in proportion to what it shows
 * (the tangent of its half).
 */
export const mixPoses = (a: Pose, b: Pose, t: number): Pose => {
  if (t <= 0) return a;
  if (t >= 1) return b;
  const tanA = Math.tan(radiansOf(a.fovYDeg / 2));
  const tanB = Math.tan(radiansOf(b.fovYDeg / 2));
  return {
    atM: mix(a.atM, b.atM, t),
    yawDeg: a.yawDeg + wrapDegrees(b.yawDeg - a.yawDeg) * t,
    pitchDeg: a.pitchDeg + (b.pitchDeg - a.pitchDeg) * t,
    fovYDeg: degreesOf(2 * Math.atan(tanA + (tanB - tanA) * t)),
  };
};
