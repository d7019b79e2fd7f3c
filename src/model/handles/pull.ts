import type { Vec3 } from '../../math/vec3.ts';
import type { Edit } from '../commands/edit.ts';
import { shiftItems } from '../commands/group.ts';
import { shiftProjector, shiftRow } from '../commands/shift.ts';
import { moveRiserEdge, raiseRow, resizePicture, stretchObject } from '../commands/stretch.ts';
import { extentOf, middleOf } from '../extents.ts';
import type { ItemRef, Project, Row } from '../project.ts';
import { platformOf, riserOf } from '../riser.ts';
import { roomShape } from '../room/shape.ts';
import { type Axis, fineM } from '../snap/lines.ts';
import { type Snapped, snapPlace } from '../snap/place.ts';
import { pullBend, pullCeiling } from './ceiling.ts';
import { type Handle, handle, LEVEL, type Pulled, type PullOptions } from './handle.ts';
import { pullAim, pullFacing, pullRecline, pullSeat } from './pull-seats.ts';
import { pullCorner, pullEdge, pullSlide, pullWall } from './pull-surfaces.ts';
import { sofaOf } from './things.ts';

const sub = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const add = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
const halfOf = ({ minM, maxM }: { minM: Vec3; maxM: Vec3 }): Vec3 => [
  (maxM[0] - minM[0]) / 2,
  (maxM[1] - minM[1]) / 2,
  (maxM[2] - minM[2]) / 2,
];
const NO_SIZE: Vec3 = [0, 0, 0];

/** Reasons hold only for what came to stand where they led it: a wall may have stopped it before. */
const withReasons = (edit: Edit, ref: ItemRef, snapped: Snapped): Pulled => {
  if (!edit.ok) return { edit, reasons: [] };
  const extent = extentOf(edit.project, ref);
  const there = extent ? middleOf(extent) : snapped.atM;
  const arrived = there.every((value, axis) => Math.abs(value - snapped.atM[axis]) < 1e-3);
  return { edit, reasons: arrived ? snapped.reasons : [] };
};

const pullThing = (start: Project, ref: ItemRef, byM: Vec3, axes: readonly Axis[], options: PullOptions): Pulled => {
  const extent = extentOf(start, ref);
  if (!extent) return { edit: { ok: true, project: start }, reasons: [] };
  const startM = middleOf(extent);
  const wish = { ref, wantedM: add(startM, byM), startM, halfM: halfOf(extent), axes, reachM: options.reachM };
  const snapped = snapPlace(start, wish);
  return withReasons(shiftItems(start, [ref], sub(snapped.atM, startM), options.pairs), ref, snapped);
};

/** Something that has a place but no size: the projector's lens, a row's line of eyes, a riser's edge. */
const pointSnap = (start: Project, ref: ItemRef, startM: Vec3, byM: Vec3, axes: readonly Axis[], reachM: number) =>
  snapPlace(start, { ref, wantedM: add(startM, byM), startM, halfM: NO_SIZE, axes, reachM });

/** Reasons for where a point came to stand; none where something stopped it before. */
const whereArrived = (edit: Edit, { atM, reasons }: Snapped, pointOf: (project: Project) => Vec3 | undefined) => {
  const there = edit.ok ? pointOf(edit.project) : undefined;
  return there?.every((value, axis) => Math.abs(value - atM[axis]) < 1e-3) ? reasons : [];
};

const pullProjector = (start: Project, { ref }: Handle, byM: Vec3, axes: readonly Axis[], reachM: number): Pulled => {
  const at = start.picture.projector?.atM;
  if (!at) return { edit: { ok: true, project: start }, reasons: [] };
  const snapped = pointSnap(start, ref, at, byM, axes, reachM);
  const edit = shiftProjector(start, sub(snapped.atM, at));
  return { edit, reasons: whereArrived(edit, snapped, ({ picture }) => picture.projector?.atM) };
};

/** A row over the floor as one piece, its middle drawn to the middles of room and picture. */
const pullRowPlace = (start: Project, row: Row, byM: Vec3, reachM: number): Pulled => {
  const ref: ItemRef = { kind: 'row', id: row.id };
  const extent = extentOf(start, ref);
  if (!extent) return { edit: { ok: true, project: start }, reasons: [] };
  const xs = row.seats.map(({ xM }) => xM);
  const startM: Vec3 = [(Math.min(...xs) + Math.max(...xs)) / 2, 0, row.eyeZM];
  const halfM: Vec3 = [(Math.max(...xs) - Math.min(...xs) + row.seat.widthM) / 2, 0, 0];
  const wantedM = add(startM, byM);
  const { atM, reasons } = snapPlace(start, { ref, wantedM, startM, halfM, axes: [0, 2], reachM });
  const edit = shiftRow(start, row.id, atM[0] - startM[0], atM[2] - startM[2]);
  if (!edit.ok) return { edit, reasons: [] };
  const there = edit.project.rows.find(({ id }) => id === row.id);
  const movedM = (there?.seats[0].xM ?? 0) - row.seats[0].xM;
  const arrived = Math.abs(movedM - (atM[0] - startM[0])) < 1e-3 && Math.abs((there?.eyeZM ?? 0) - atM[2]) < 1e-3;
  return { edit, reasons: arrived ? reasons : [] };
};

const pullRow = (start: Project, { kind, ref, part }: Handle, byM: Vec3, reachM: number): Pulled => {
  const row = start.rows.find(({ id }) => id === ref.id);
  if (!row) return { edit: { ok: true, project: start }, reasons: [] };
  if (kind === 'riserHeight') return { edit: raiseRow(start, row.id, fineM(row.floorM + byM[1], reachM)), reasons: [] };
  if (kind === 'rowPlace') return pullRowPlace(start, row, byM, reachM);
  if (kind === 'rowDistance') {
    const snapped = pointSnap(start, ref, [0, 0, row.eyeZM], byM, [2], reachM);
    const edit = shiftRow(start, row.id, 0, snapped.atM[2] - row.eyeZM);
    const eyes = ({ rows }: Project): Vec3 => [0, 0, rows.find(({ id }) => id === row.id)?.eyeZM ?? row.eyeZM];
    return { edit, reasons: whereArrived(edit, snapped, eyes) };
  }
  const edge = part === 'toZM' ? 'toZM' : 'fromZM';
  const snapped = pointSnap(start, ref, [0, 0, platformOf(start, row)[edge]], byM, [2], reachM);
  const edit = moveRiserEdge(start, row.id, edge, snapped.atM[2], riserOf(start, row));
  const edgeOf = ({ rows }: Project): Vec3 => [0, 0, rows.find(({ id }) => id === row.id)?.riser?.[edge] ?? 0];
  return { edit, reasons: whereArrived(edit, snapped, edgeOf) };
};

const pullPictureCorner = (start: Project, { part = '' }: Handle, byM: Vec3, reachM: number): Pulled => {
  const { widthM, aspect } = start.picture;
  const right = part.endsWith('right') ? 1 : -1;
  const up = part.startsWith('upper') ? 1 : -1;
  // Along its diagonal a corner moves half of what the width grows by, and all of what the height grows by.
  const wanted = widthM + (2 * right * byM[0] + up * byM[1] * aspect) / 2;
  return { edit: resizePicture(start, fineM(wanted, reachM), up > 0 ? 'bottom' : 'top'), reasons: [] };
};

const pullObjectSide = (start: Project, { ref, part }: Handle, byM: Vec3, reachM: number): Pulled => {
  const object = start.room.objects.find(({ id }) => id === ref.id);
  if (!object) return { edit: { ok: true, project: start }, reasons: [] };
  const axis = part === 'x' ? 0 : part === 'y' ? 1 : 2;
  const wanted = object.maxM[axis] + byM[axis];
  const limit = roomShape(start).maxM[axis];
  const to = reachM > 0 && Math.abs(wanted - limit) <= reachM ? limit : fineM(wanted, reachM);
  return { edit: stretchObject(start, ref.id, axis, 'max', to), reasons: [] };
};

const pullGroup = (start: Project, handle: Handle, byM: Vec3, { chosen, pairs, reachM }: PullOptions): Pulled => {
  const by: Vec3 =
    handle.kind === 'groupHeight' ? [0, fineM(byM[1], reachM), 0] : [fineM(byM[0], reachM), 0, fineM(byM[2], reachM)];
  return { edit: shiftItems(start, chosen, by, pairs), reasons: [] };
};

/**
 * The document with a handle pulled from where it stood when the hand took it.
 * @param start the document at the mark: every move of a gesture counts from it
 * @param byM how far the handle was moved, along what it can be moved along
 */
export const pullHandle = (start: Project, handle: Handle, byM: Vec3, options: PullOptions): Pulled => {
  const { ref, kind } = handle;
  const { reachM } = options;
  switch (kind) {
    case 'place':
      return ref.kind === 'seat' ? pullSeat(start, ref, byM, reachM) : pullThing(start, ref, byM, [0, 2], options);
    case 'height':
    case 'pictureHeight':
      return pullThing(start, ref, byM, [1], options);
    case 'pictureAcross':
      return pullThing(start, ref, byM, [0], options);
    case 'pictureOff':
      return pullThing(start, ref, byM, [2], options);
    case 'pictureCorner':
      return pullPictureCorner(start, handle, byM, reachM);
    case 'projectorPlace':
      return pullProjector(start, handle, byM, [0, 2], reachM);
    case 'projectorHeight':
      return pullProjector(start, handle, byM, [1], reachM);
    case 'aim':
      return pullAim(start, handle, byM, options);
    case 'facing':
      return pullFacing(start, handle, byM, reachM);
    case 'recline':
      return pullRecline(start, handle, byM);
    case 'rowPlace':
    case 'rowDistance':
    case 'riserHeight':
    case 'riserFront':
    case 'riserBack':
      return pullRow(start, handle, byM, reachM);
    case 'objectSide':
      return pullObjectSide(start, handle, byM, reachM);
    case 'slide':
      return pullSlide(start, handle, byM, reachM);
    case 'edge':
      return pullEdge(start, handle, byM, reachM);
    case 'wall':
      return pullWall(start, handle, byM, reachM);
    case 'corner':
      return pullCorner(start, handle, byM, reachM);
    case 'ceiling':
      return pullCeiling(start, byM, reachM);
    case 'bend':
      return pullBend(start, handle, byM, reachM);
    case 'groupPlace':
    case 'groupHeight':
      return pullGroup(start, handle, byM, options);
  }
};

/** The way to what is in the way is halved this often: a thousandth of it. */
const HALVINGS = 10;

/**
 * As `pullHandle`, but what is refused goes as far as it may instead of staying where the last accepted move left it, and
 * says in `stopped` what was in the way.
 */
export const pullAsFar = (start: Project, handle: Handle, byM: Vec3, options: PullOptions): Pulled => {
  const whole = pullHandle(start, handle, byM, options);
  if (whole.edit.ok) return whole;
  let edit: Edit = { ok: true, project: start };
  let stopped = whole.edit.reason;
  let [free, barred] = [0, 1];
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const share = (free + barred) / 2;
    const tried = pullHandle(start, handle, [byM[0] * share, byM[1] * share, byM[2] * share], options);
    if (tried.edit.ok) {
      free = share;
      edit = tried.edit;
    } else {
      barred = share;
      stopped = tried.edit.reason;
    }
  }
  return { edit, reasons: [], stopped };
};

/** A thing that has no handle under the finger, moved by its body over the floor; of a sofa the whole. */
export const bodyHandle = (project: Project, ref: ItemRef, atM: Vec3): Handle | null => {
  const extent = extentOf(project, ref);
  if (!extent || ref.kind === 'picture' || ref.kind === 'row') return null;
  const sofa = ref.kind === 'seat' ? sofaOf(project, ref.id) : null;
  if (sofa) return handle({ kind: 'row', id: sofa.id }, 'rowPlace', 'Sofa', atM, LEVEL, 'shiftRow');
  return {
    id: `${ref.kind}:${ref.id}/place`,
    kind: 'place',
    ref,
    label: 'Place',
    atM,
    axis: { kind: 'level' },
    command: 'shiftItem',
  };
};
