import { add, cross, dot, length, normalise, scale, subtract, type Vec3 } from '../../math/vec3.ts';

/**
 * A flat rectangle to be looked at: a picture, or the front of a loudspeaker. `right` and `up` are unit vectors at right
 * angles in its plane, as a person facing it sees them; the front is the side `right` x `up` points to. Metres.
 */
export interface FlatTarget {
  readonly centreM: Vec3;
  readonly right: Vec3;
  readonly up: Vec3;
  readonly widthM: number;
  readonly heightM: number;
}

/** The unit vector out of the front of the target. */
export const frontOf = (target: FlatTarget): Vec3 => cross(target.right, target.up);

/** The eye's perpendicular distance from the target's plane in metres; negative behind the target. */
export const perpendicularM = (eye: Vec3, target: FlatTarget): number =>
  dot(subtract(eye, target.centreM), frontOf(target));

/** The middle of an edge, `across` and `upward` in half sizes: (0, -1) is the middle of the lower edge. */
export const pointOn = (target: FlatTarget, across: number, upward: number): Vec3 =>
  add(
    target.centreM,
    add(scale(target.right, (across * target.widthM) / 2), scale(target.up, (upward * target.heightM) / 2)),
  );

/** A rectangle on a wall parallel to the front wall, facing the seats (+z). */
export const uprightTarget = (centreM: Vec3, widthM: number, heightM: number): FlatTarget => ({
  centreM,
  right: [1, 0, 0],
  up: [0, 1, 0],
  widthM,
  heightM,
});

/**
 * A rectangle about `centreM` whose front faces along `facing`, its lower edge level. For a loudspeaker pass its aim, or,
 * where the aim says nothing about the sight of it (a dipole seen in its null), the direction to the ear. A front facing
 * straight up or down takes its upper edge towards the front wall.
 */
export const targetFacing = (centreM: Vec3, facing: Vec3, widthM: number, heightM: number): FlatTarget => {
  const front = normalise(facing);
  const level = cross([0, 1, 0], front);
  const right: Vec3 = length(level) > 1e-9 ? normalise(level) : [1, 0, 0];
  return { centreM, right, up: cross(front, right), widthM, heightM };
};
