import { corners } from '../../engines/movement/framing.ts';
import type { Vec3 } from '../../math/vec3.ts';
import type { ItemRef, Project } from '../../model/project.ts';
import { roomShape } from '../../model/room/shape.ts';
import { seatPoses } from '../../model/seating.ts';
import { pictureFace } from '../../shapes/picture.ts';
import { pictureCorners } from './surroundings.ts';

/** A view that holds a finding's causes: the points to be seen and the direction to see them from. */
export interface Showing {
  readonly points: readonly Vec3[];
  readonly yawDeg: number;
  readonly pitchDeg: number;
}

/** Room left round each thing, so that what is beside it is seen as well. */
const AROUND_M = 0.35;
const PITCH_DEG = -24;
const SIDE_YAW_DEG = 38;

const box = (atM: Vec3, half: number): Vec3[] =>
  corners([atM[0] - half, Math.max(0, atM[1] - half), atM[2] - half], [atM[0] + half, atM[1] + half, atM[2] + half]);

const pointsOf = (project: Project, { kind, id }: ItemRef): readonly Vec3[] => {
  const poses = seatPoses(project);
  switch (kind) {
    case 'seat':
      return poses.filter(({ seat }) => seat.id === id).flatMap(({ eyeM }) => box(eyeM, AROUND_M));
    case 'row':
      return poses.filter(({ row }) => row.id === id).flatMap(({ eyeM }) => box(eyeM, AROUND_M));
    case 'loudspeaker':
      return project.loudspeakers.filter((item) => item.id === id).flatMap(({ atM }) => box(atM, AROUND_M));
    case 'subwoofer':
      return project.subwoofers.filter((item) => item.id === id).flatMap(({ atM }) => box(atM, AROUND_M));
    case 'object':
      return project.room.objects.filter((item) => item.id === id).flatMap(({ minM, maxM }) => corners(minM, maxM));
    case 'picture':
      return [...pictureCorners(project), pictureFace(project).centreM];
    default: {
      const { minM, maxM } = roomShape(project);
      return corners(minM, maxM);
    }
  }
};

const middle = (points: readonly Vec3[], axis: 0 | 1 | 2): number =>
  points.reduce((sum, point) => sum + point[axis], 0) / points.length;

/**
 * Where to look from: over the back, from the side on which the things do not stand, so that the wall behind them is the
 * far one; null when none of them is there.
 */
export const showMe = (project: Project, items: readonly ItemRef[]): Showing | null => {
  const points = items.flatMap((item) => pointsOf(project, item));
  if (points.length === 0) return null;
  const { minM, maxM } = roomShape(project);
  const side = middle(points, 0) > (minM[0] + maxM[0]) / 2 + 0.05 ? 1 : -1;
  const alone = middle(points, 2) > minM[2] + 0.75 * (maxM[2] - minM[2]) && items.length === 1;
  return { points, yawDeg: side * (alone ? 2 : 1) * SIDE_YAW_DEG, pitchDeg: PITCH_DEG };
};
