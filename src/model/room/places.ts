import type { Point2 } from '../../math/polyline.ts';
import { normalise, type Vec3 } from '../../math/vec3.ts';
import type { Opening, Project, SurfaceName, SurfaceTreatment } from '../project.ts';
import { heightAt } from './ceiling.ts';
import { type RoomShape, roomShape } from './shape.ts';
import type { RoomWall } from './walls.ts';

/** A surface as openings and patches are measured on it. */
export interface SurfaceFrame {
  readonly surface: SurfaceName;
  /** The wall meant; null on floor and ceiling. */
  readonly wall: RoomWall | null;
  /** Where `fromM` and `bottomM` are 0; on a ceiling over the left front corner of the room's bounds. */
  readonly originM: Vec3;
  /** One metre of `fromM` and of `bottomM`. Unit vectors but on a slope, whose plan is measured: there longer along it. */
  readonly u: Vec3;
  readonly v: Vec3;
  /** Unit vector into the room. */
  readonly n: Vec3;
  /** How far the surface reaches along `fromM` and along `bottomM`: a wall to its highest point. */
  readonly alongM: number;
  readonly upM: number;
}

/** A rectangle on a surface, as an opening or a patch says it. */
export type OnSurface = Pick<Opening, 'surface' | 'fromM' | 'widthM' | 'bottomM' | 'heightM'> & {
  readonly wall?: number;
};

/** The wall a surface's name means: the longest edge of that name, of equal ones the first in the room's turning sense. */
export const wallNamed = ({ walls }: RoomShape, surface: SurfaceName): RoomWall | undefined => {
  const named = walls.filter((wall) => wall.surface === surface);
  return named.reduce<RoomWall | undefined>(
    (best, wall) => (best && best.lengthM >= wall.lengthM - 1e-9 ? best : wall),
    undefined,
  );
};

/** The wall an opening or patch is in: the edge it names, else the one its surface means. Undefined for floor and ceiling. */
export const wallOfItem = (project: Project, item: Pick<OnSurface, 'surface' | 'wall'>): RoomWall | undefined => {
  const shape = roomShape(project);
  if (item.wall !== undefined) return shape.walls.find(({ edge }) => edge === item.wall);
  return wallNamed(shape, item.surface);
};

export const isLying = (surface: SurfaceName): surface is 'floor' | 'ceiling' =>
  surface === 'floor' || surface === 'ceiling';

/** The greatest height of a wall's top over all of it. */
export const wallHeightM = ({ top }: RoomWall): number => Math.max(...top.map(([, height]) => height));

/** The height of a wall's top at a place along it; at a step the lower one. */
export const topAt = ({ top }: RoomWall, alongM: number): number => {
  const at = Math.min(Math.max(alongM, 0), top[top.length - 1][0]);
  let lowest = Number.POSITIVE_INFINITY;
  for (let i = 0; i + 1 < top.length; i += 1) {
    const [[s0, h0], [s1, h1]] = [top[i], top[i + 1]];
    if (at < s0 - 1e-9 || at > s1 + 1e-9 || s1 - s0 < 1e-12) continue;
    lowest = Math.min(lowest, h0 + ((h1 - h0) * Math.min(Math.max(at - s0, 0), s1 - s0)) / (s1 - s0));
  }
  return lowest;
};

/** The lowest height of a wall's top over a stretch of it: what stands there may not be higher. */
export const lowestTop = (wall: RoomWall, fromM: number, toM: number): number => {
  const inner = wall.top.filter(([s]) => s > fromM && s < toM).map(([, height]) => height);
  return Math.min(topAt(wall, fromM), topAt(wall, toM), ...inner);
};

/** A wall as openings are measured on it. */
export const wallFrame = (wall: RoomWall): SurfaceFrame => ({
  surface: wall.surface,
  wall,
  originM: [wall.start[0], 0, wall.start[1]],
  u: [wall.along[0], 0, wall.along[1]],
  v: [0, 1, 0],
  n: [0 - wall.outward[0], 0, 0 - wall.outward[1]],
  alongM: wall.lengthM,
  upM: wallHeightM(wall),
});

/** The ceiling's plane over a plan point, as seen on the greater side where two meet. */
const ceilingFrame = ({ ceiling, minM, maxM }: RoomShape, middle: Point2): SurfaceFrame => {
  const k = ceiling.axis === 0 ? 0 : 1;
  const { knots } = ceiling;
  const last = knots[knots.length - 1][0];
  const at = Math.min(Math.max(middle[k], knots[0][0]), last);
  const i = knots.findIndex(([s], index) => index + 1 < knots.length && s <= at && knots[index + 1][0] > at);
  const [a, b] = i >= 0 ? [knots[i], knots[i + 1]] : [knots[knots.length - 2], knots[knots.length - 1]];
  const rise = b[0] > a[0] ? (b[1] - a[1]) / (b[0] - a[0]) : 0;
  const height = a[1] + ((k === 0 ? minM[0] : minM[2]) - a[0]) * rise;
  return {
    surface: 'ceiling',
    wall: null,
    originM: [minM[0], height, minM[2]],
    u: [1, k === 0 ? rise : 0, 0],
    v: [0, k === 1 ? rise : 0, 1],
    n: normalise(k === 0 ? [rise, -1, 0] : [0, -1, rise]),
    alongM: maxM[0] - minM[0],
    upM: maxM[2] - minM[2],
  };
};

/**
 * The surface under an opening or a patch, with the axes its numbers are measured along; undefined where the plan has no
 * such wall. One function for shapes, scene and analysis. On a ceiling of several planes it is the one over the
 * rectangle's middle.
 */
export const frameOf = (project: Project, item: OnSurface): SurfaceFrame | undefined => {
  const shape = roomShape(project);
  const { minM, maxM } = shape;
  const upright = item.wall !== undefined || !isLying(item.surface);
  if (upright) {
    const wall = wallOfItem(project, item);
    return wall && wallFrame(wall);
  }
  if (item.surface === 'ceiling')
    return ceilingFrame(shape, [minM[0] + item.fromM + item.widthM / 2, minM[2] + item.bottomM + item.heightM / 2]);
  return {
    surface: 'floor',
    wall: null,
    originM: minM,
    u: [1, 0, 0],
    v: [0, 0, 1],
    n: [0, 1, 0],
    alongM: maxM[0] - minM[0],
    upM: maxM[2] - minM[2],
  };
};

/** A point on a surface by its `fromM` and `bottomM`. */
export const pointOn = ({ originM, u, v }: SurfaceFrame, fromM: number, bottomM: number): Vec3 => [
  originM[0] + u[0] * fromM + v[0] * bottomM,
  originM[1] + u[1] * fromM + v[1] * bottomM,
  originM[2] + u[2] * fromM + v[2] * bottomM,
];

/** How high a rectangle may reach: on a wall the lowest top over its width, elsewhere the surface's own reach. */
export const reachUpM = ({ wall, upM, alongM }: SurfaceFrame, { fromM, widthM }: OnSurface): number =>
  wall ? lowestTop(wall, Math.min(fromM, alongM), Math.min(fromM + widthM, alongM)) : upM;

/** What a wall is finished with: its own edge's treatment in a polygon plan, else its surface's. */
export const wallTreatment = ({ room }: Project, { edge, surface }: RoomWall): SurfaceTreatment | undefined =>
  (room.plan.shape === 'polygon' ? room.surfaces.walls?.[String(edge)] : undefined) ?? room.surfaces[surface];

/** The ceiling over a place: how high it is and which way it looks, a unit vector into the room. */
export const ceilingOver = (project: Project, [x, , z]: Vec3): { readonly heightM: number; readonly inward: Vec3 } => {
  const shape = roomShape(project);
  return { heightM: shape.ceilingAtM(x, z), inward: ceilingFrame(shape, [x, z]).n };
};

/** A wall's name as a thing of its own: in a polygon plan the edge's number, in a rectangle its surface's name. */
export const wallId = ({ room }: Project, { edge, surface }: RoomWall): string =>
  room.plan.shape === 'polygon' ? String(edge) : surface;

/** The wall nearest to a plan point, seen at a height: its distance and the point on it. Knee walls lower than that count not; of two as near a side wall. */
export const nearestWallTo = (project: Project, [x, y, z]: Vec3): { wall: RoomWall; gapM: number; atM: Point2 } => {
  const { walls } = roomShape(project);
  const sides = walls.filter(({ surface }) => surface === 'left' || surface === 'right');
  const others = walls.filter((wall) => !sides.includes(wall));
  const near = [...sides.toReversed(), ...others].map((wall) => {
    const [sx, sz] = wall.start;
    const alongM = (x - sx) * wall.along[0] + (z - sz) * wall.along[1];
    const held = Math.min(Math.max(alongM, 0), wall.lengthM);
    const atM: Point2 = [sx + wall.along[0] * held, sz + wall.along[1] * held];
    return { wall, atM, gapM: Math.hypot(x - atM[0], z - atM[1]), low: topAt(wall, held) < y - 1e-9 };
  });
  const upright = near.filter(({ low }) => !low);
  return (upright.length > 0 ? upright : near).reduce((best, one) => (one.gapM < best.gapM - 1e-9 ? one : best));
};

/** The heights of the ceiling over a rectangle of the plan: its lowest there. */
export const lowestOver = (project: Project, minXM: number, maxXM: number, minZM: number, maxZM: number): number => {
  const { ceiling } = roomShape(project);
  const [from, to] = ceiling.axis === 0 ? [minXM, maxXM] : [minZM, maxZM];
  const inner = ceiling.knots.filter(([s]) => s > from && s < to).map(([, height]) => height);
  return Math.min(heightAt(ceiling, from), heightAt(ceiling, to), ...inner);
};
