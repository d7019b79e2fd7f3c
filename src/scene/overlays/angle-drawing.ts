import { radiansOf } from '../../math/angles.ts';
import type { Vec3 } from '../../math/vec3.ts';
import { type Group, groupOf } from './tones.ts';

/** One loudspeaker's direction as it is drawn round a seat. */
export interface Direction {
  readonly id: string;
  /** ITU-R channel label. */
  readonly channel: string;
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
}

export interface PlacedDirection extends Direction {
  readonly group: Group;
  /** Its arc's distance from the head; the height group has no level arcs and stays on the ring. */
  readonly radiusM: number;
}

/** The ring of ticks, and how far its first arc and each next one lie from the head. */
export const RING_M = 0.48;
const FIRST_ARC_M = 0.62;
const NEXT_ARC_M = 0.14;
const STEP_DEG = 6;
/** What lies this near straight ahead needs no arc of its own. */
export const AHEAD_DEG = 1;

/** A point round the head at azimuth and elevation, as azimuths are counted: from -z, positive to the right. */
export const around = (centre: Vec3, radiusM: number, azimuthDeg: number, elevationDeg = 0): Vec3 => {
  const azimuth = radiansOf(azimuthDeg);
  const elevation = radiansOf(elevationDeg);
  const level = radiusM * Math.cos(elevation);
  return [
    centre[0] + level * Math.sin(azimuth),
    centre[1] + radiusM * Math.sin(elevation),
    centre[2] - level * Math.cos(azimuth),
  ];
};

/** Gives each direction an arc of its own: on either side, the wider the angle the farther out. */
export const placeDirections = (directions: readonly Direction[]): PlacedDirection[] => {
  const counts = { left: 0, right: 0 };
  return [...directions]
    .sort((a, b) => Math.abs(a.azimuthDeg) - Math.abs(b.azimuthDeg))
    .map((direction) => {
      const group = groupOf(direction.channel, direction.azimuthDeg);
      if (group === 'height') return { ...direction, group, radiusM: RING_M };
      const radiusM = FIRST_ARC_M + NEXT_ARC_M * counts[group];
      if (Math.abs(direction.azimuthDeg) > AHEAD_DEG) counts[group] += 1;
      return { ...direction, group, radiusM };
    });
};

const steps = (fromDeg: number, toDeg: number): number[] => {
  const count = Math.max(1, Math.ceil(Math.abs(toDeg - fromDeg) / STEP_DEG));
  return Array.from({ length: count + 1 }, (_, i) => fromDeg + ((toDeg - fromDeg) * i) / count);
};

/** A level arc between two azimuths. */
export const levelArc = (centre: Vec3, radiusM: number, fromDeg: number, toDeg: number): Vec3[] =>
  steps(fromDeg, toDeg).map((azimuthDeg) => around(centre, radiusM, azimuthDeg));

/** An upright arc at one azimuth, from the level to an elevation. */
export const uprightArc = (centre: Vec3, radiusM: number, azimuthDeg: number, elevationDeg: number): Vec3[] =>
  steps(0, elevationDeg).map((elevation) => around(centre, radiusM, azimuthDeg, elevation));

const HATCH_DEG = 3;
const BAND_M = 0.07;

/** The outline of an allowed range of azimuths astride an arc, closed. */
export const rangeOutline = (centre: Vec3, radiusM: number, fromDeg: number, toDeg: number): Vec3[] => {
  const inner = levelArc(centre, radiusM - BAND_M / 2, fromDeg, toDeg);
  const outer = levelArc(centre, radiusM + BAND_M / 2, toDeg, fromDeg);
  return [...inner, ...outer, inner[0]];
};

/** Its hatching: pairs of ends of slanting strokes. */
export const rangeHatch = (centre: Vec3, radiusM: number, fromDeg: number, toDeg: number): Vec3[] => {
  const ends: Vec3[] = [];
  for (let at = fromDeg; at < toDeg - 0.01; at += HATCH_DEG) {
    const share = Math.min(1, (toDeg - at) / HATCH_DEG);
    const inner = radiusM - BAND_M / 2;
    ends.push(around(centre, inner, at), around(centre, inner + BAND_M * share, at + HATCH_DEG * share));
  }
  return ends;
};
