import type { Vec3 } from '../math/vec3.ts';
import { seatIndices } from './items.ts';
import type { ItemRef, Project } from './project.ts';
import { roomShape } from './room/shape.ts';
import { seatPose } from './seating.ts';

/** The room a thing takes, along the document's axes, metres. */
export interface Extent {
  readonly minM: Vec3;
  readonly maxM: Vec3;
}

/** A chair reaches this far before and behind its upright sitter's eye. */
const SEAT_AHEAD_M = 0.5;
const SEAT_BEHIND_M = 0.32;

const around = ([x, y, z]: Vec3, [width, height, depth]: Vec3): Extent => ({
  minM: [x - width / 2, y - height / 2, z - depth / 2],
  maxM: [x + width / 2, y + height / 2, z + depth / 2],
});

export const joined = (extents: readonly Extent[]): Extent | null =>
  extents.length === 0
    ? null
    : extents.reduce((a, b) => ({
        minM: a.minM.map((value, axis) => Math.min(value, b.minM[axis])) as unknown as Vec3,
        maxM: a.maxM.map((value, axis) => Math.max(value, b.maxM[axis])) as unknown as Vec3,
      }));

export const middleOf = ({ minM, maxM }: Extent): Vec3 => [
  (minM[0] + maxM[0]) / 2,
  (minM[1] + maxM[1]) / 2,
  (minM[2] + maxM[2]) / 2,
];

export const seatExtent = (project: Project, id: string): Extent | null => {
  const indices = seatIndices(project, id);
  if (!indices) return null;
  const { row, seat } = seatPose(project, ...indices);
  const z = seat.eyeZM ?? row.eyeZM;
  const half = row.seat.widthM / 2;
  const topM = row.floorM + Math.max(row.seat.backHeightM, row.seat.panHeightM);
  return {
    minM: [seat.xM - half, row.floorM, z - SEAT_AHEAD_M],
    maxM: [seat.xM + half, topM, z + SEAT_BEHIND_M],
  };
};

/** The front wall is at the plan's least z. */
export const pictureExtent = (project: Project): Extent => {
  const { centreXM, widthM, bottomM, aspect, offFrontWallM } = project.picture;
  const zM = roomShape(project).minM[2] + offFrontWallM;
  return {
    minM: [centreXM - widthM / 2, bottomM, zM],
    maxM: [centreXM + widthM / 2, bottomM + widthM / aspect, zM],
  };
};

/**
 * The room a thing takes: a cabinet as its box stands unturned, a seat as its chair, a row as its chairs. Null for what is
 * part of a surface, and for what is not in the document.
 */
export const extentOf = (project: Project, { kind, id }: ItemRef): Extent | null => {
  switch (kind) {
    case 'loudspeaker':
    case 'subwoofer': {
      const list = kind === 'loudspeaker' ? project.loudspeakers : project.subwoofers;
      const found = list.find((item) => item.id === id);
      return found ? around(found.atM, found.sizeM) : null;
    }
    case 'object': {
      const found = project.room.objects.find((item) => item.id === id);
      return found ? { minM: found.minM, maxM: found.maxM } : null;
    }
    case 'seat':
      return seatExtent(project, id);
    case 'row': {
      const row = project.rows.find((item) => item.id === id);
      return joined((row?.seats ?? []).flatMap((seat) => seatExtent(project, seat.id) ?? []));
    }
    case 'picture':
      return pictureExtent(project);
    default:
      return null;
  }
};
