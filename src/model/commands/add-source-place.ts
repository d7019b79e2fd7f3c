import { degreesOf, radiansOf } from '../../math/angles.ts';
import type { Vec3 } from '../../math/vec3.ts';
import { mirrorChannel } from '../pairs.ts';
import type { Project } from '../project.ts';
import { roomShape } from '../room/shape.ts';
import { referenceSeatId, seatPoses } from '../seating.ts';
import { centimetres } from './add-place.ts';

/** A cabinet stands off the wall behind it by this much. */
const OFF_WALL_M = 0.08;

const LABEL = /^(M|U|UH|T|B)([+-])(\d{3})$/;

interface Wish {
  /** Degrees from straight ahead, positive to the RIGHT as in the document. */
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
  /** Carried by the ceiling: found along its own line of sight, not at a height on the wall. */
  readonly overhead: boolean;
}

const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));

const referenceEar = (project: Project): Vec3 => {
  const id = referenceSeatId(project);
  const { minM, maxM } = roomShape(project);
  return (
    seatPoses(project).find(({ seat }) => seat.id === id)?.earM ?? [
      (minM[0] + maxM[0]) / 2,
      1.1,
      minM[2] + 0.6 * (maxM[2] - minM[2]),
    ]
  );
};

/**
 * Left and right of the picture, degrees: 27, the middle of 22 to 32 (common practice), drawn towards the picture's edges
 * and never more than 9 degrees outside them; by the standard 30 (ITU-R BS.2051).
 */
const frontAzimuth = (project: Project, [x, , z]: Vec3): number => {
  if (project.targets.set === 'standard') return 30;
  const { widthM, centreXM, offFrontWallM } = project.picture;
  const away = z - roomShape(project).minM[2] - offFrontWallM;
  if (away <= 0) return 27;
  const edge = degreesOf(Math.atan2(widthM / 2 + Math.abs(centreXM - x), away));
  return clamp(clamp(27, edge - 1, edge + 9), 22.5, 31);
};

/**
 * The direction a label is given at home, seen from the reference seat: the middle of its range where practice states one
 * (sides 90 to 110, rears 135 to 157, ear layer 15 to 35 degrees up without heights and 0 to 20 under them, heights 30 to
 * 55), else the label's own figure. A five-channel surround pair goes to 110 degrees, which ITU-R BS.2051 asks for too.
 */
const wishOf = (project: Project, channel: string, ear: Vec3): Wish => {
  const found = LABEL.exec(channel);
  const layer = found?.[1] ?? 'M';
  const side = found?.[2] === '+' ? -1 : 1;
  const figure = Number(found?.[3] ?? 0);
  if (layer !== 'M') {
    const elevationDeg = layer === 'T' ? 90 : layer === 'B' ? -20 : 40;
    return { azimuthDeg: side * figure, elevationDeg, overhead: true };
  }
  const sizes: Readonly<Record<number, number>> = { 30: frontAzimuth(project, ear), 90: 100, 135: 145 };
  const heights = project.loudspeakers.some((one) => one.channel.startsWith('U'));
  const standard = project.targets.set === 'standard';
  const around = standard || (heights && project.targets.set === 'living') ? 10 : 25;
  return { azimuthDeg: side * (sizes[figure] ?? figure), elevationDeg: figure > 75 ? around : 0, overhead: false };
};

const half = ([width, height, depth]: Vec3, offM = 0): Vec3 => [width / 2 + offM, height / 2 + offM, depth / 2 + offM];

/** As far along a direction as a box of this size stays in the room. */
const farthest = (project: Project, from: Vec3, direction: Vec3, sizeM: Vec3): Vec3 => {
  const shape = roomShape(project);
  const box = half(sizeM, OFF_WALL_M);
  const at = (far: number): Vec3 => [
    from[0] + far * direction[0],
    from[1] + far * direction[1],
    from[2] + far * direction[2],
  ];
  let near = 0;
  let beyond = Math.hypot(...shape.maxM.map((max, axis) => max - shape.minM[axis]));
  for (let halving = 0; halving < 24; halving += 1) {
    const middle = (near + beyond) / 2;
    if (shape.contains(at(middle), box)) near = middle;
    else beyond = middle;
  }
  return shape.nearestInside(at(near), box);
};

const AZIMUTHS = [0, 2, -2, 4, -4, 6, -6, 9, -9, 12, -12, 15, -15, 18, -18] as const;
const ELEVATIONS = [0, -4, 4, -8, 8, -12, -16] as const;

/** Where a label's direction meets wall or ceiling, then directions ever farther from it. */
const inDirections = (project: Project, ear: Vec3, { azimuthDeg, elevationDeg, overhead }: Wish, sizeM: Vec3): Vec3[] =>
  AZIMUTHS.flatMap((off) => {
    const azimuth = radiansOf(azimuthDeg + off);
    const level: Vec3 = [Math.sin(azimuth), 0, -Math.cos(azimuth)];
    const onWall = overhead ? null : farthest(project, ear, level, sizeM);
    return ELEVATIONS.map((tilt) => {
      const elevation = radiansOf(elevationDeg + tilt);
      const cos = Math.cos(elevation);
      const place = onWall
        ? ([
            onWall[0],
            ear[1] + Math.hypot(onWall[0] - ear[0], onWall[2] - ear[2]) * Math.tan(elevation),
            onWall[2],
          ] as const)
        : farthest(project, ear, [cos * level[0], Math.sin(elevation), cos * level[2]], sizeM);
      return { place, off: Math.abs(off) + Math.abs(tilt) };
    });
  })
    .sort((a, b) => a.off - b.off)
    .map(({ place }) => place.map(centimetres) as unknown as Vec3);

/** The same place, then others ever farther beside, above and below it. */
export const nearby = ([x, y, z]: Vec3): Vec3[] => {
  const steps = [0, 0.15, -0.15, 0.3, -0.3, 0.45, -0.45, 0.6, -0.6];
  const places: Vec3[] = [];
  for (const dy of steps)
    for (const dx of steps)
      for (const dz of [0, 0.25, -0.25, 0.5, -0.5])
        places.push([centimetres(x + dx), centimetres(y + dy), centimetres(z + dz)]);
  return places.sort((a, b) => Math.hypot(a[0] - x, a[1] - y, a[2] - z) - Math.hypot(b[0] - x, b[1] - y, b[2] - z));
};

/** Farther than this from where its own direction leads a mirrored place is no longer this loudspeaker's. */
const MIRROR_M = 0.6;

/** The mirror image of the other half of a pair, about the reference seat. */
const mirrored = (project: Project, channel: string, ear: Vec3, own: Vec3): Vec3[] => {
  const other = mirrorChannel(channel);
  const partner = project.loudspeakers.find((one) => one.channel === other)?.atM;
  if (!partner) return [];
  const place: Vec3 = [centimetres(2 * ear[0] - partner[0]), partner[1], partner[2]];
  return Math.hypot(...place.map((value, axis) => value - own[axis])) <= MIRROR_M ? [place] : [];
};

/**
 * Places for a loudspeaker by its ITU-R BS.2051 label, the best first: the mirror of its other half, then where its home
 * direction from the reference seat meets the wall or ceiling, then others ever farther from there.
 */
export const loudspeakerPlaces = (project: Project, channel: string, sizeM: Vec3): Vec3[] => {
  const ear = referenceEar(project);
  const shape = roomShape(project);
  const along = inDirections(project, ear, wishOf(project, channel, ear), sizeM);
  const own = along.find((place) => shape.contains(place, half(sizeM))) ?? along[0];
  return [...mirrored(project, channel, ear, own), ...along, ...nearby(own)];
};
