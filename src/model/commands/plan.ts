import type { Point2 } from '../../math/polyline.ts';
import type { Vec3 } from '../../math/vec3.ts';
import { checkProject } from '../checks/project.ts';
import { extentOf } from '../extents.ts';
import type { ItemRef, Opening, Patch, Project } from '../project.ts';
import { isLying } from '../room/places.ts';
import { roomShape } from '../room/shape.ts';
import { planOf, type WallName } from '../room/walls.ts';
import { type EdgeMap, shiftedInside, tidy, withPlan } from './carry.ts';
import { accept, type Edit, refuse, refuseWords } from './edit.ts';

const same: EdgeMap = (edge) => [edge];

/** What takes room of its own; a loudspeaker turns to its aim and hangs on walls, so its centre alone is minded. */
const things = (project: Project): ItemRef[] => [
  ...project.room.objects.map(({ id }): ItemRef => ({ kind: 'object', id })),
  ...project.rows.flatMap(({ seats }) => seats.map(({ id }): ItemRef => ({ kind: 'seat', id }))),
  ...project.subwoofers.map(({ id }): ItemRef => ({ kind: 'subwoofer', id })),
  { kind: 'picture', id: 'picture' },
];

/** Whether a thing stands within the walls; its height is another matter. */
const stands = (project: Project, ref: ItemRef): boolean => {
  const extent = extentOf(project, ref);
  if (!extent) return true;
  const { minM, maxM } = extent;
  const half = (axis: 0 | 2) => Math.max(0, (maxM[axis] - minM[axis]) / 2 - 1e-6);
  const middle: Vec3 = [(minM[0] + maxM[0]) / 2, 0, (minM[2] + maxM[2]) / 2];
  return roomShape(project).contains(middle, [half(0), 0, half(2)]);
};

/** An opening or patch that begins before its wall does. */
const cutOff = ({ room }: Project): ItemRef | undefined => {
  const opening = room.openings.find(({ fromM }) => fromM < 0);
  if (opening) return { kind: 'opening', id: opening.id };
  const patch = room.patches.find(({ fromM }) => fromM < 0);
  return patch && { kind: 'patch', id: patch.id };
};

/** What is said of a thing that a moved wall would leave outside. */
export const IN_THE_WAY = 'stands in the way';

/** Accepted when the document still agrees with itself and nothing that stood in the room is now in a wall's way. */
const settled = (before: Project, after: Project): Edit =>
  accept(after, (project) => {
    const refusals = checkProject(project);
    if (refusals.length > 0) return refusals;
    const stranded = cutOff(project) ?? things(project).find((ref) => stands(before, ref) && !stands(project, ref));
    if (!stranded) return [];
    const allowed = { kind: 'words', words: 'a wall that leaves it in the room' } as const;
    return [{ field: 'room.plan', holds: stranded.id, lead: `the ${stranded.kind}`, aside: IN_THE_WAY, allowed }];
  });

const notPolygon = (project: Project): Edit =>
  refuseWords('room.plan.shape', project.room.plan.shape, 'a plan with corners of its own');

const noEdge = (edge: number, count: number): Edit =>
  refuse({
    field: 'room.plan.cornersM',
    holds: edge,
    lead: 'the number',
    allowed: { kind: 'range', min: 0, max: count - 1, whole: true },
  });

const tidied = ([x, z]: Point2): [number, number] => [tidy(x), tidy(z)];

type Polygon = Extract<Project['room']['plan'], { shape: 'polygon' }>;

/** The plan as a polygon, a rectangle's corners told from the front left one. */
const polygonOf = ({ room }: Project): Polygon =>
  room.plan.shape === 'polygon' ? room.plan : { shape: 'polygon', cornersM: planOf(room.plan).corners.map(tidied) };

const withCorners = (project: Project, plan: Polygon, corners: readonly Point2[], map: EdgeMap): Edit => {
  const candidate = { ...plan, cornersM: corners.map(tidied) };
  if (corners.length > 64 || corners.length < 3) {
    const allowed = { kind: 'count', of: 'corners', min: 3, max: 64 } as const;
    return refuse({ field: 'room.plan.cornersM', holds: corners.length, lead: 'corners:', allowed });
  }
  const [broken] = checkProject({ ...project, room: { ...project.room, plan: candidate } }).filter(
    ({ field }) => field === 'room.plan.cornersM',
  );
  return broken ? refuse(broken) : settled(project, withPlan(project, candidate, map));
};

/** A rectangle as a polygon of the same walls, surfaces and openings; a polygon stays as it is. */
export const toPolygon = (project: Project): Edit =>
  project.room.plan.shape === 'polygon'
    ? { ok: true, project }
    : settled(project, withPlan(without(project), polygonOf(project), same));

/** A rectangle's file may carry finishes by edge that mean nothing there: they must not wake up in a polygon. */
const without = (project: Project): Project => {
  const { walls: _idle, ...surfaces } = project.room.surfaces;
  return { ...project, room: { ...project.room, surfaces } };
};

/** Moves one corner of a polygon plan to a point [x, z]; both walls that meet there follow. */
export const movePlanCorner = (project: Project, index: number, toM: Point2): Edit => {
  const { plan } = project.room;
  if (plan.shape !== 'polygon') return notPolygon(project);
  const corner = plan.cornersM[index];
  if (!corner) return noEdge(index, plan.cornersM.length);
  const to = tidied(toM);
  if (to[0] === corner[0] && to[1] === corner[1]) return { ok: true, project };
  return withCorners(project, plan, plan.cornersM.with(index, to), same);
};

/** A new corner on an edge, at a point [x, z]; the edge becomes two. */
export const insertPlanCorner = (project: Project, edge: number, atM: Point2): Edit => {
  const { plan } = project.room;
  if (plan.shape !== 'polygon') return notPolygon(project);
  if (!plan.cornersM[edge]) return noEdge(edge, plan.cornersM.length);
  const corners = plan.cornersM.toSpliced(edge + 1, 0, tidied(atM));
  return withCorners(project, plan, corners, (old) => {
    if (old === edge) return [edge, edge + 1];
    return [old > edge ? old + 1 : old];
  });
};

/** Takes a corner away; the two walls that met there become one. */
export const removePlanCorner = (project: Project, index: number): Edit => {
  const { plan } = project.room;
  if (plan.shape !== 'polygon') return notPolygon(project);
  const count = plan.cornersM.length;
  if (!plan.cornersM[index]) return noEdge(index, count);
  const merged = index === 0 ? count - 2 : index - 1;
  return withCorners(project, plan, plan.cornersM.toSpliced(index, 1), (old) => {
    if (old === index || old === (index + count - 1) % count) return [merged];
    return [old > index ? old - 1 : old];
  });
};

/** Where the line through p along d meets the line through q along e; null where they run alongside. */
const meeting = (p: Point2, d: Point2, q: Point2, e: Point2): Point2 | null => {
  const across = d[0] * e[1] - d[1] * e[0];
  if (Math.abs(across) < 1e-9 * Math.hypot(...d) * Math.hypot(...e)) return null;
  const t = ((q[0] - p[0]) * e[1] - (q[1] - p[1]) * e[0]) / across;
  return [p[0] + d[0] * t, p[1] + d[1] * t];
};

const towards = (a: Point2, b: Point2): Point2 => [b[0] - a[0], b[1] - a[1]];

/**
 * Moves an edge of a polygon plan parallel to itself, outwards by so much (inwards where negative). Its neighbours keep
 * their directions and grow or shrink; where one runs on in the same line the edge leaves it with a step, a new short wall.
 */
export const movePlanEdge = (project: Project, edge: number, byM: number): Edit => {
  const { plan } = project.room;
  if (plan.shape !== 'polygon') return notPolygon(project);
  const corners: readonly Point2[] = plan.cornersM;
  const count = corners.length;
  const wall = roomShape(project).walls.find((one) => one.edge === edge);
  if (!wall) return noEdge(edge, count);
  if (byM === 0) return { ok: true, project };
  const at = (index: number) => corners[(index + count) % count];
  const [a, b] = [at(edge), at(edge + 1)];
  const out = ([x, z]: Point2): Point2 => [x + wall.outward[0] * byM, z + wall.outward[1] * byM];
  const along = towards(a, b);
  const before = meeting(out(a), along, at(edge - 1), towards(at(edge - 1), a));
  const after = meeting(out(a), along, b, towards(b, at(edge + 2)));
  const next = (edge + 1) % count;
  const groups = corners.map((corner, index): readonly Point2[] => {
    if (index === edge) return before ? [before] : [a, out(a)];
    if (index === next) return after ? [after] : [out(b), b];
    return [corner];
  });
  // An edge starts at the last of the corners that stand for its own first one.
  let counted = -1;
  const starts = groups.map((group) => {
    counted += group.length;
    return counted;
  });
  return withCorners(project, plan, groups.flat(), (old) => [starts[old]]);
};

const MOST_M = 30;
const LEAST_M = 1.5;

/** A side no rectangle may have, in words; undefined for one that it may. */
const badSide = (field: 'widthM' | 'lengthM', sideM: number): Edit | undefined =>
  sideM >= LEAST_M && sideM <= MOST_M
    ? undefined
    : refuse({ field: `room.plan.${field}`, holds: sideM, allowed: { kind: 'range', min: LEAST_M, max: MOST_M } });

const NAMES: readonly WallName[] = ['front', 'right', 'back', 'left'];

/** A rectangle of this size, about the middle of the width; openings go to the wall of their name. */
export const setRectangle = (project: Project, widthM: number, lengthM: number): Edit => {
  const plan = { shape: 'rectangle' as const, widthM: tidy(widthM), lengthM: tidy(lengthM) };
  const bad = badSide('widthM', plan.widthM) ?? badSide('lengthM', plan.lengthM);
  if (bad) return bad;
  const { walls } = roomShape(project);
  const map: EdgeMap = (edge) => {
    const wall = walls.find((one) => one.edge === edge);
    return wall ? [NAMES.indexOf(wall.surface)] : [];
  };
  return settled(project, withPlan(project, plan, map));
};

/** What is measured from the left or the front wall, when that moves away by so much. */
const aside = (project: Project, wall: 'left' | 'front', byM: number): Project => {
  const moved = <Item extends Opening | Patch>(item: Item): Item => {
    const side = item.surface === 'left' || item.surface === 'right';
    if (wall === 'left') return side ? item : { ...item, fromM: tidy(item.fromM + byM) };
    if (isLying(item.surface)) return { ...item, bottomM: tidy(item.bottomM + byM) };
    return side ? { ...item, fromM: tidy(item.fromM + byM) } : item;
  };
  const { room } = project;
  return { ...project, room: { ...room, openings: room.openings.map(moved), patches: room.patches.map(moved) } };
};

/**
 * Moves one wall of a rectangle outwards by so much (inwards where negative). Everything else stands still: the document's
 * axes go with the room's middle and its front wall, so that numbers change where those move. What hangs on the wall goes
 * with it, the picture with the front wall. Refused where something would be left outside, by its name.
 */
export const moveRoomWall = (project: Project, wall: WallName, byM: number): Edit => {
  const { plan } = project.room;
  if (plan.shape !== 'rectangle') return refuseWords('room.plan.shape', plan.shape, 'a rectangle');
  if (byM === 0) return { ok: true, project };
  const across = wall === 'left' || wall === 'right';
  const widthM = tidy(plan.widthM + (across ? byM : 0));
  const lengthM = tidy(plan.lengthM + (across ? 0 : byM));
  const bad = badSide('widthM', widthM) ?? badSide('lengthM', lengthM);
  if (bad) return bad;
  const [byXM, byZM] = { left: [byM / 2, 0], right: [-byM / 2, 0], front: [0, byM], back: [0, 0] }[wall];
  const shifted = shiftedInside(project, byXM, byZM);
  const made = wall === 'left' || wall === 'front' ? aside(shifted, wall, byM) : shifted;
  return settled(project, { ...made, room: { ...made.room, plan: { ...plan, widthM, lengthM } } });
};
