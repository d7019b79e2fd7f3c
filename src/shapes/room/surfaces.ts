import { crossingEdges, type Point2 } from '../../math/polyline.ts';
import { cross, dot, length, type Vec3 } from '../../math/vec3.ts';
import type { Opening, Project } from '../../model/project.ts';
import { lowestTop, type SurfaceFrame, wallFrame, wallId } from '../../model/room/places.ts';
import { type RoomShape, roomShape } from '../../model/room/shape.ts';
import type { RoomWall, WallName } from '../../model/room/walls.ts';
import type { Cut } from './cells.ts';

export const WALL_M = 0.12;

/** A wall to be drawn, with its axes as openings are measured on it. */
export interface DrawnWall {
  /** What it is called as a thing of its own. */
  readonly id: string;
  readonly wall: RoomWall;
  readonly frame: SurfaceFrame;
}

const DRAWN_FIRST: readonly WallName[] = ['front', 'back', 'left', 'right'];

/** Walls lower than this are none: a slope that comes down to the floor. */
const LEAST_WALL_M = 0.005;

/** The walls, front and back before the sides, then round the room. */
export const drawnWalls = (project: Project): DrawnWall[] => {
  const { walls } = roomShape(project);
  return DRAWN_FIRST.flatMap((name) => walls.filter(({ surface }) => surface === name))
    .filter((wall) => Math.max(...wall.top.map(([, height]) => height)) > LEAST_WALL_M)
    .map((wall) => ({ id: wallId(project, wall), wall, frame: wallFrame(wall) }));
};

/** Whether a surface's own axes and its normal into the room are left-handed. */
export const isMirrored = ({ u, v, n }: SurfaceFrame): boolean => dot(cross(u, v), n) < 0;

/** The part of a rectangle in the file's terms that lies on the surface, or null where none does. */
export const onSurface = (
  { alongM, upM, wall }: SurfaceFrame,
  { fromM, widthM, bottomM, heightM }: Pick<Opening, 'fromM' | 'widthM' | 'bottomM' | 'heightM'>,
): Cut | null => {
  const u0 = Math.max(0, fromM);
  const u1 = Math.min(alongM, fromM + widthM);
  if (u1 - u0 <= 0.02) return null;
  const top = wall ? lowestTop(wall, u0, u1) : upM;
  const cut = { u0, u1, v0: Math.max(0, bottomM), v1: Math.min(top, bottomM + heightM) };
  return cut.v1 - cut.v0 > 0.02 ? cut : null;
};

/** How a wall's end meets the next wall: how far its inner face and its outer face go on past the corner. */
export interface WallEnd {
  readonly frontM: number;
  readonly backM: number;
}

/** The sharpest corner is drawn blunt: no wall goes on farther than this times its thickness. */
const MOST_MITRE = 4;
const SQUARE = 1e-3;

/**
 * At a square outward corner front and back walls reach over and side walls stand between them; everywhere else both are
 * mitred: longer outside at an outward corner, shorter at an inward one.
 */
const endOf = (wall: RoomWall, next: RoomWall, corner: number): WallEnd => {
  if (corner === 0) return { frontM: 0, backM: 0 };
  const across = (name: WallName) => name === 'front' || name === 'back';
  const square = Math.abs(corner - Math.PI / 2) < SQUARE && across(wall.surface) !== across(next.surface);
  if (square) {
    const reach = across(wall.surface) ? WALL_M : 0;
    return { frontM: reach, backM: reach };
  }
  const mitre = WALL_M * Math.tan(Math.min(Math.abs(corner), Math.PI - 0.01) / 2);
  return { frontM: 0, backM: Math.sign(corner) * Math.min(mitre, MOST_MITRE * WALL_M) };
};

/** The turn from one wall to the next, radians: positive at an outward corner of the room. */
const cornerBetween = (wall: RoomWall, next: RoomWall): number => {
  const [ax, az] = wall.outward;
  const [bx, bz] = next.outward;
  return Math.atan2(ax * bz - az * bx, ax * bx + az * bz);
};

/** Both ends of a wall, at its `from` and at its `to`. */
export const wallEnds = ({ walls }: RoomShape, wall: RoomWall): { readonly from: WallEnd; readonly to: WallEnd } => {
  const i = walls.indexOf(wall);
  const before = walls[(i + walls.length - 1) % walls.length];
  const after = walls[(i + 1) % walls.length];
  const from = endOf(wall, before, cornerBetween(before, wall));
  const to = endOf(wall, after, cornerBetween(wall, after));
  // A short wall between two inward corners keeps a back of some length.
  const shrink = Math.max(0, -from.backM) + Math.max(0, -to.backM);
  const share = shrink > 0.8 * wall.lengthM ? (0.8 * wall.lengthM) / shrink : 1;
  const held = (end: WallEnd): WallEnd => (end.backM < 0 ? { ...end, backM: end.backM * share } : end);
  return { from: held(from), to: held(to) };
};

/** The plan grown by the walls' thickness; the plan itself where a grown one would cross itself. */
export const grownPlan = ({ walls, corners }: RoomShape): readonly Point2[] => {
  const grown = walls.map((wall, i): Point2 => {
    const before = walls[(i + walls.length - 1) % walls.length];
    const [ax, az] = before.outward;
    const [bx, bz] = wall.outward;
    const by = WALL_M / Math.max(1 / MOST_MITRE, 1 + ax * bx + az * bz);
    return [wall.from[0] + (ax + bx) * by, wall.from[1] + (az + bz) * by];
  });
  return crossingEdges(grown) ? corners : grown;
};

/** Metres a surface's own unit takes: more than one along a slope whose plan is measured. */
export const stretch = (axis: Vec3): number => length(axis);
