import type { Vec3 } from '../../math/vec3.ts';
import type { Opening, Patch, Project, Row, SurfaceTreatment } from '../project.ts';
import type { Riser } from '../riser.ts';
import { isLying, wallOfItem } from '../room/places.ts';
import { roomShape } from '../room/shape.ts';
import type { RoomWall } from '../room/walls.ts';

type Room = Project['room'];
type Plan = Room['plan'];

/** Where each edge of a plan has gone: the new edges it became, none for one that is no more. */
export type EdgeMap = (edge: number) => readonly number[];

/** A sum of decimals without the dust of binary fractions. */
export const tidy = (valueM: number): number => Number(valueM.toFixed(6)) + 0;

const middleOf = ({ start, along }: RoomWall, { fromM, widthM }: Opening | Patch): readonly [number, number] => {
  const at = fromM + widthM / 2;
  return [start[0] + along[0] * at, start[1] + along[1] * at];
};

/** How far a plan point lies from a wall, past its ends included, and where along it. */
const placeOn = ({ start, along, lengthM }: RoomWall, [x, z]: readonly [number, number]) => {
  const at = (x - start[0]) * along[0] + (z - start[1]) * along[1];
  const held = Math.min(Math.max(at, 0), lengthM);
  return { at, away: Math.hypot(x - start[0] - along[0] * held, z - start[1] - along[1] * held) };
};

/** An opening or patch on the wall its own has become, at the place where it was, even where the wall no longer reaches. */
const carriedItem = <Item extends Opening | Patch>(item: Item, was: RoomWall, walls: readonly RoomWall[]): Item => {
  const middle = middleOf(was, item);
  const onto = walls
    .map((wall) => ({ wall, ...placeOn(wall, middle) }))
    .reduce((best, one) => (one.away < best.away - 1e-9 ? one : best));
  const { wall } = onto;
  const same = wall.lengthM === was.lengthM && wall.start[0] === was.start[0] && wall.start[1] === was.start[1];
  const fromM = tidy(onto.at - item.widthM / 2);
  return { ...item, surface: wall.surface, wall: wall.edge, ...(same ? {} : { fromM }) };
};

const carriedWalls = (
  walls: Readonly<Record<string, SurfaceTreatment>> | undefined,
  map: EdgeMap,
): Record<string, SurfaceTreatment> | undefined => {
  const kept: Record<string, SurfaceTreatment> = {};
  for (const [edge, treatment] of Object.entries(walls ?? {}))
    for (const to of map(Number(edge))) kept[String(to)] ??= treatment;
  return Object.keys(kept).length > 0 ? kept : undefined;
};

/**
 * The room with another plan, its openings, patches and edges' own finishes carried along to where their edges have gone.
 * In a polygon every opening and patch then names its edge; a rectangle has one wall of each name.
 */
export const withPlan = (project: Project, plan: Plan, map: EdgeMap): Project => {
  const { room } = project;
  const { walls: treatments, ...surfaces } = room.surfaces;
  const polygons = room.plan.shape === 'polygon' || plan.shape === 'polygon';
  const carried = plan.shape === 'polygon' ? carriedWalls(treatments, map) : undefined;
  const next: Room = {
    ...room,
    plan,
    surfaces: carried ? { ...surfaces, walls: carried } : polygons ? surfaces : room.surfaces,
  };
  const made = { ...project, room: next };
  const { walls } = roomShape(made);
  const moved = <Item extends Opening | Patch>(item: Item): Item => {
    if (item.wall === undefined && isLying(item.surface)) return item;
    const was = wallOfItem(project, item);
    const edges = was ? map(was.edge) : [];
    const candidates = walls.filter(({ edge }) => edges.includes(edge));
    if (!was || candidates.length === 0) return item;
    const onto = carriedItem(item, was, candidates);
    if (plan.shape === 'polygon') return onto;
    const { wall: _edge, ...named } = onto;
    return named as Item;
  };
  return { ...made, room: { ...next, openings: room.openings.map(moved), patches: room.patches.map(moved) } };
};

/** Adds to a coordinate, if there is one. */
type Shift = (valueM: number) => number;

const shiftedStep = (step: Riser['steps'][number], x: Shift, z: Shift): Riser['steps'][number] => {
  const next = { ...step };
  if (step.fromXM !== undefined) next.fromXM = x(step.fromXM);
  if (step.toXM !== undefined) next.toXM = x(step.toXM);
  if (step.fromZM !== undefined) next.fromZM = z(step.fromZM);
  if (step.toZM !== undefined) next.toZM = z(step.toZM);
  return next;
};

const shiftedRiser = (riser: Riser, x: Shift, z: Shift): Riser => ({
  ...riser,
  fromXM: x(riser.fromXM),
  toXM: x(riser.toXM),
  fromZM: z(riser.fromZM),
  toZM: z(riser.toZM),
  steps: riser.steps.map((step) => shiftedStep(step, x, z)),
});

const shiftedRow = (row: Row, x: Shift, z: Shift): Row => ({
  ...row,
  eyeZM: z(row.eyeZM),
  ...(row.riser ? { riser: shiftedRiser(row.riser, x, z) } : {}),
  seats: row.seats.map((seat) => ({
    ...seat,
    xM: x(seat.xM),
    ...(seat.eyeZM === undefined ? {} : { eyeZM: z(seat.eyeZM) }),
  })),
});

/**
 * Every thing moved by so much across and along the room, the ceiling's bends included; the walls stay, and the picture
 * goes along the front wall but keeps its distance from it.
 */
export const shiftedInside = (project: Project, byXM: number, byZM: number): Project => {
  const x: Shift = (valueM) => tidy(valueM + byXM);
  const z: Shift = (valueM) => tidy(valueM + byZM);
  const point = (atM: Vec3): [number, number, number] => [x(atM[0]), atM[1], z(atM[2])];
  const { room, picture } = project;
  const { ceiling } = room;
  const bend = ceiling.shape === 'profile' && ceiling.across === 'x' ? x : z;
  const { projector } = picture;
  return {
    ...project,
    room: {
      ...room,
      ceiling:
        ceiling.shape === 'profile'
          ? { ...ceiling, pointsM: ceiling.pointsM.map(([at, heightM]): [number, number] => [bend(at), heightM]) }
          : ceiling,
      objects: room.objects.map((object) => ({ ...object, minM: point(object.minM), maxM: point(object.maxM) })),
    },
    picture: {
      ...picture,
      centreXM: x(picture.centreXM),
      ...(projector ? { projector: { ...projector, atM: point(projector.atM) } } : {}),
    },
    rows: project.rows.map((row) => shiftedRow(row, x, z)),
    loudspeakers: project.loudspeakers.map((one) => ({
      ...one,
      atM: point(one.atM),
      ...(Array.isArray(one.aim) ? { aim: point(one.aim as unknown as Vec3) } : {}),
    })),
    subwoofers: project.subwoofers.map((one) => ({ ...one, atM: point(one.atM) })),
  };
};
