import { isWithin } from '../../math/polygon.ts';
import { dot, type Vec3 } from '../../math/vec3.ts';
import type { Project, SurfaceName } from '../../model/project.ts';
import { frameOf, type SurfaceFrame, topAt, wallFrame } from '../../model/room/places.ts';
import { roomShape } from '../../model/room/shape.ts';
import { onPlane, type Ray } from './handle-motion.ts';

/** A point of the room's own surfaces, as openings and patches are measured there. */
export interface SurfacePoint {
  readonly surface: SurfaceName;
  /** The plan's edge of a wall; null on floor and ceiling. */
  readonly edge: number | null;
  readonly frame: SurfaceFrame;
  readonly alongM: number;
  readonly upM: number;
  readonly atM: Vec3;
}

const SLACK_M = 1e-6;

/** A point as metres along and up a surface. */
export const onFrame = ({ originM, u, v }: SurfaceFrame, atM: Vec3): readonly [number, number] => {
  const away: Vec3 = [atM[0] - originM[0], atM[1] - originM[1], atM[2] - originM[2]];
  return [dot(away, u) / dot(u, u), dot(away, v) / dot(v, v)];
};

/** Where a ray meets a surface's plane, looking into the room's face of it: inside its edges or, with `anywhere`, beyond. */
export const onSurface = (ray: Ray, frame: SurfaceFrame): SurfacePoint | null => {
  const atM = onPlane(ray, frame.originM, frame.n);
  if (!atM) return null;
  const [alongM, upM] = onFrame(frame, atM);
  return { surface: frame.surface, edge: frame.wall?.edge ?? null, frame, alongM, upM, atM };
};

const framesOf = (project: Project): SurfaceFrame[] => {
  const level = (['floor', 'ceiling'] as const).flatMap(
    (surface) => frameOf(project, { surface, fromM: 0, widthM: 0, bottomM: 0, heightM: 0 }) ?? [],
  );
  return [...roomShape(project).walls.map(wallFrame), ...level];
};

/** The surface of the room a ray meets first from inside: walls that face away are cut away and not in its way. */
export const surfaceUnder = (project: Project, ray: Ray): SurfacePoint | null => {
  const shape = roomShape(project);
  let best: SurfacePoint | null = null;
  let nearest = Number.POSITIVE_INFINITY;
  for (const frame of framesOf(project)) {
    if (dot(ray.direction, frame.n) >= 0) continue;
    const point = onSurface(ray, frame);
    if (!point) continue;
    const { alongM, upM, atM } = point;
    const on = frame.wall
      ? alongM >= -SLACK_M &&
        alongM <= frame.alongM + SLACK_M &&
        upM >= -SLACK_M &&
        upM <= topAt(frame.wall, alongM) + SLACK_M
      : isWithin(shape.corners, [atM[0], atM[2]]);
    const away = Math.hypot(atM[0] - ray.originM[0], atM[1] - ray.originM[1], atM[2] - ray.originM[2]);
    if (!on || away >= nearest) continue;
    nearest = away;
    best = point;
  }
  return best;
};
