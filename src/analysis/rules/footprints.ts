import { radiansOf } from '../../math/angles.ts';
import type { Project } from '../../model/project.ts';
import { type SeatPose, seatPoses } from '../../model/seating.ts';

/** A chair seen from above: a rectangle about `centre` (x, z), turned by `facingDeg`; metres. */
export interface Footprint {
  readonly pose: SeatPose;
  readonly centre: readonly [number, number];
  readonly halfWidthM: number;
  readonly halfDepthM: number;
  readonly facingDeg: number;
}

/** How far a chair reaches before and behind the eye of an upright sitter. Common practice, no source: the drawn chairs. */
const AHEAD_M = 0.33;
const BEHIND_M = 0.4;

export const footprintOf = (pose: SeatPose): Footprint => {
  const facing = radiansOf(pose.facingDeg);
  const back = (BEHIND_M - AHEAD_M) / 2;
  const eyeZM = pose.seat.eyeZM ?? pose.row.eyeZM;
  return {
    pose,
    centre: [pose.seat.xM - back * Math.sin(facing), eyeZM + back * Math.cos(facing)],
    halfWidthM: pose.row.seat.widthM / 2,
    halfDepthM: (AHEAD_M + BEHIND_M) / 2,
    facingDeg: pose.facingDeg,
  };
};

export const footprints = (project: Project): Footprint[] => seatPoses(project).map(footprintOf);

type Axes = readonly (readonly [number, number])[];

const axesOf = ({ facingDeg }: Footprint): Axes => {
  const a = radiansOf(facingDeg);
  return [
    [Math.cos(a), Math.sin(a)],
    [-Math.sin(a), Math.cos(a)],
  ];
};

/** Half the length of a footprint's shadow on a direction. */
const reach = (footprint: Footprint, [x, z]: readonly [number, number]): number => {
  const [across, along] = axesOf(footprint);
  return (
    footprint.halfWidthM * Math.abs(across[0] * x + across[1] * z) +
    footprint.halfDepthM * Math.abs(along[0] * x + along[1] * z)
  );
};

/** How deep two footprints lie in one another, by separating axes; 0 or less when they are apart. Metres. */
export const footprintDepth = (a: Footprint, b: Footprint): number => {
  const dx = b.centre[0] - a.centre[0];
  const dz = b.centre[1] - a.centre[1];
  return Math.min(
    ...[...axesOf(a), ...axesOf(b)].map(
      (axis) => reach(a, axis) + reach(b, axis) - Math.abs(dx * axis[0] + dz * axis[1]),
    ),
  );
};

/** The least and greatest x and z a footprint reaches. */
export const footprintBounds = (footprint: Footprint) => {
  const x = reach(footprint, [1, 0]);
  const z = reach(footprint, [0, 1]);
  const [cx, cz] = footprint.centre;
  return { minX: cx - x, maxX: cx + x, minZ: cz - z, maxZ: cz + z };
};
