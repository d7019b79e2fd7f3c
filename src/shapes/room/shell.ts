import type { Point2 } from '../../math/polyline.ts';
import { add, scale, type Vec3 } from '../../math/vec3.ts';
import type { Opening, Project } from '../../model/project.ts';
import { frameOf, pointOn, type SurfaceFrame, wallOfItem } from '../../model/room/places.ts';
import { type RoomShape, roomShape } from '../../model/room/shape.ts';
import { partsOf } from '../geometries.ts';
import { asDrawn } from '../placement.ts';
import type { MaterialName, Solid } from '../solid.ts';
import { ceilingSolids } from './ceiling.ts';
import type { Cut, Region } from './cells.ts';
import { openingSolids } from './openings.ts';
import { type SheetPlaces, sheet } from './sheet.ts';
import { type DrawnWall, drawnWalls, grownPlan, isMirrored, onSurface, WALL_M, wallEnds } from './surfaces.ts';
import { patchSolids, skirtingSolids } from './trim.ts';

/** How far apart the points are at which light is computed. */
export const LIGHT_STEP_M = 0.32;

/** The holes a surface's openings leave in it, in its own u and v. */
const holesOf = (openings: readonly Opening[], frame: SurfaceFrame): Cut[] =>
  openings.map((opening) => onSurface(frame, opening)).filter((cut) => cut !== null);

/** A wall's inner face, carried on past its corners by `less` and `more`; its top goes on as it rises. */
const wallOutline = ({ wall }: DrawnWall, less: number, more: number): Point2[] => {
  const { top, lengthM } = wall;
  const onward = (end: Point2, next: Point2, by: number): Point2 => {
    const rise = next[0] === end[0] ? 0 : (end[1] - next[1]) / Math.abs(next[0] - end[0]);
    return [end[0] < next[0] ? -by : lengthM + by, Math.max(0, end[1] + rise * by)];
  };
  const first = top[0];
  const last = top[top.length - 1];
  const reached = [
    ...(less > 0 ? [onward(first, top[1], less)] : []),
    ...top,
    ...(more > 0 ? [onward(last, top[top.length - 2], more)] : []),
  ];
  return [[-less, 0], [lengthM + more, 0], ...reached.reverse()];
};

const wallSolid = (project: Project, shape: RoomShape, drawn: DrawnWall): Solid[] => {
  const { wall, frame, id } = drawn;
  const ends = wallEnds(shape, wall);
  const fromFirst = wall.start === wall.from;
  const [near, far] = fromFirst ? [ends.from, ends.to] : [ends.to, ends.from];
  const openings = project.room.openings.filter((opening) => wallOfItem(project, opening) === wall);
  const region: Region = {
    outline: wallOutline(drawn, near.frontM, far.frontM),
    holes: holesOf(openings, frame),
  };
  const places: SheetPlaces = {
    front: ([u, v]) => pointOn(frame, u, v),
    back: ([u, v]) => {
      const by =
        u <= 1e-9 - near.frontM
          ? near.frontM - near.backM
          : u >= wall.lengthM + far.frontM - 1e-9
            ? far.backM - far.frontM
            : 0;
      return add(pointOn(frame, u + by, v), scale(frame.n, -WALL_M));
    },
    mirrored: isMirrored(frame),
  };
  const key = [
    ...frame.originM,
    ...frame.u,
    near.backM,
    far.backM,
    ...region.outline.flat(),
    ...region.holes.flatMap((h) => [h.u0, h.u1, h.v0, h.v1]),
  ];
  const lines = { u: [0, wall.lengthM], v: [] };
  return partsOf('wall', key, () => [
    { part: 'wall', material: 'plaster', mesh: sheet(region, places, LIGHT_STEP_M, lines) },
  ]).map((part): Solid => ({ kind: 'shell', id, ...part, placement: asDrawn }));
};

const floorSolid = (project: Project, shape: RoomShape): Solid[] => {
  const { minM, corners } = shape;
  const holes = project.room.openings.filter(({ surface, wall }) => wall === undefined && surface === 'floor');
  const cuts = holes.flatMap((opening) => {
    const frame = frameOf(project, opening);
    return frame ? holesOf([opening], frame) : [];
  });
  const region: Region = {
    outline: grownPlan(shape),
    holes: cuts.map(({ u0, u1, v0, v1 }) => ({
      u0: u0 + minM[0],
      u1: u1 + minM[0],
      v0: v0 + minM[2],
      v1: v1 + minM[2],
    })),
  };
  const at =
    (y: number) =>
    ([x, z]: Point2): Vec3 => [x, y, z];
  const places: SheetPlaces = { front: at(0), back: at(-WALL_M), mirrored: true };
  const lines = { u: corners.map(([x]) => x), v: corners.map(([, z]) => z) };
  const key = [...region.outline.flat(), ...region.holes.flatMap((h) => [h.u0, h.u1, h.v0, h.v1])];
  const material: MaterialName = 'oak';
  return partsOf('floor', key, () => [
    { part: 'wall', material, mesh: sheet(region, places, LIGHT_STEP_M, lines) },
  ]).map((part): Solid => ({ kind: 'shell', id: 'floor', ...part, placement: asDrawn }));
};

/**
 * The room's walls, floor and ceiling, each a solid of its own (kind 'shell', the surface's name as id or, in a polygon
 * plan, the edge's number), 0.12 m thick to the outside, in document axes, cut through at every opening.
 */
const surfaceSolids = (project: Project): Solid[] => {
  const shape = roomShape(project);
  return [
    ...drawnWalls(project).flatMap((drawn) => wallSolid(project, shape, drawn)),
    ...floorSolid(project, shape),
    ...ceilingSolids(project, shape, LIGHT_STEP_M),
  ];
};

/** The shell and all that is built into it: skirting, door and window joinery (kind 'opening'), patches (kind 'patch'). */
export const shellSolids = (project: Project): Solid[] => [
  ...surfaceSolids(project),
  ...skirtingSolids(project),
  ...openingSolids(project),
  ...patchSolids(project),
];
