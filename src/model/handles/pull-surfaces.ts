import { dot, type Vec3 } from '../../math/vec3.ts';
import type { Edit } from '../commands/edit.ts';
import { type Side, stretchOnSurface } from '../commands/on-surface.ts';
import { movePlanCorner, movePlanEdge, moveRoomWall } from '../commands/plan.ts';
import { slideOnSurface } from '../commands/shift.ts';
import type { ItemRef, Opening, Patch, Project } from '../project.ts';
import { frameOf, type SurfaceFrame } from '../room/places.ts';
import { roomShape } from '../room/shape.ts';
import { fineM } from '../snap/lines.ts';
import type { SnapReason } from '../snap/reason.ts';
import { snapEdge, snapRect } from '../snap/surface.ts';
import type { Handle, Pulled } from './handle.ts';

type OnSurfaceRef = ItemRef & { kind: 'opening' | 'patch' };

type OnSurfaceItem = Opening | Patch;

const isOnSurface = (ref: ItemRef): ref is OnSurfaceRef => ref.kind === 'opening' || ref.kind === 'patch';

const itemOf = (project: Project, ref: OnSurfaceRef): OnSurfaceItem | undefined =>
  ref.kind === 'opening'
    ? project.room.openings.find(({ id }) => id === ref.id)
    : project.room.patches.find(({ id }) => id === ref.id);

/** A move in the room as metres along and up a surface. */
const onFrame = ({ u, v }: SurfaceFrame, byM: Vec3): readonly [number, number] => [
  dot(byM, u) / dot(u, u),
  dot(byM, v) / dot(v, v),
];

const still = (project: Project): Pulled => ({ edit: { ok: true, project }, reasons: [] });

/** Why it stopped there holds only where it came to stand: the surface's edge may have stopped it before. */
const whereArrived = (
  edit: Edit,
  ref: OnSurfaceRef,
  reasons: readonly SnapReason[],
  there: (item: OnSurfaceItem) => boolean,
): Pulled => {
  const item = edit.ok ? itemOf(edit.project, ref) : undefined;
  return { edit, reasons: item && there(item) ? reasons : [] };
};

const ARRIVED_M = 1e-3;
const near = (a: number, b: number): boolean => Math.abs(a - b) < ARRIVED_M;

export const pullSlide = (start: Project, { ref }: Handle, byM: Vec3, reachM: number): Pulled => {
  const item = isOnSurface(ref) ? itemOf(start, ref) : undefined;
  const frame = item && frameOf(start, item);
  if (!isOnSurface(ref) || !item || !frame) return still(start);
  const [along, up] = onFrame(frame, byM);
  const wanted = [item.fromM + along, item.bottomM + up] as const;
  const { atM, reasons } = snapRect(start, frame, wanted, [item.widthM, item.heightM], reachM, ref);
  const edit = slideOnSurface(start, ref, atM[0] - item.fromM, atM[1] - item.bottomM);
  return whereArrived(edit, ref, reasons, ({ fromM, bottomM }) => near(fromM, atM[0]) && near(bottomM, atM[1]));
};

/** How far along or up its surface one edge lies. */
const edgeM = ({ fromM, widthM, bottomM, heightM }: OnSurfaceItem, side: Side): number =>
  ({ left: fromM, right: fromM + widthM, bottom: bottomM, top: bottomM + heightM })[side];

export const pullEdge = (start: Project, { ref, part }: Handle, byM: Vec3, reachM: number): Pulled => {
  const item = isOnSurface(ref) ? itemOf(start, ref) : undefined;
  const frame = item && frameOf(start, item);
  if (!isOnSurface(ref) || !item || !frame) return still(start);
  const side = part as Side;
  const [along, up] = onFrame(frame, byM);
  const level = side === 'left' || side === 'right';
  const from = edgeM(item, side);
  const stretch = [item.fromM, item.widthM] as const;
  const wantedM = from + (level ? along : up);
  const { atM, reasons } = snapEdge(start, frame, level ? 'along' : 'up', stretch, wantedM, reachM, ref);
  const edit = stretchOnSurface(start, ref, side, atM - from);
  return whereArrived(edit, ref, reasons, (there) => near(edgeM(there, side), atM));
};

/** A wall pushed out or pulled in: the room's width or length comes out in whole centimetres. */
export const pullWall = (start: Project, { part, axis }: Handle, byM: Vec3, reachM: number): Pulled => {
  const wall = roomShape(start).walls.find(({ edge }) => String(edge) === part);
  if (!wall || axis.kind !== 'line') return still(start);
  const by = dot(byM, axis.direction);
  const { plan } = start.room;
  if (plan.shape === 'polygon') return { edit: movePlanEdge(start, wall.edge, fineM(by, reachM)), reasons: [] };
  const across = wall.surface === 'left' || wall.surface === 'right' ? plan.widthM : plan.lengthM;
  const to = Math.min(30, Math.max(1.5, fineM(across + by, reachM)));
  return { edit: moveRoomWall(start, wall.surface, to - across), reasons: [] };
};

/**
 * How far the document's axes have gone under what stands still in the room, once a rectangle's wall was pulled: a view of
 * the room goes along with it. Metres; nothing for other handles.
 */
export const axesCarriedM = (start: Project, now: Project, { kind, part }: Handle): Vec3 => {
  const [was, is] = [start.room.plan, now.room.plan];
  if (kind !== 'wall' || was.shape !== 'rectangle' || is.shape !== 'rectangle') return [0, 0, 0];
  const half = (is.widthM - was.widthM) / 2;
  switch (roomShape(start).walls.find(({ edge }) => String(edge) === part)?.surface) {
    case 'left':
      return [half, 0, 0];
    case 'right':
      return [0 - half, 0, 0];
    case 'front':
      return [0, 0, is.lengthM - was.lengthM];
    default:
      return [0, 0, 0];
  }
};

/** A corner of the plan, drawn to where it stands square with the corners beside it. */
export const pullCorner = (start: Project, { part }: Handle, byM: Vec3, reachM: number): Pulled => {
  const { plan } = start.room;
  const index = Number(part);
  if (plan.shape !== 'polygon' || !plan.cornersM[index]) return still(start);
  const count = plan.cornersM.length;
  const beside = [plan.cornersM[(index + count - 1) % count], plan.cornersM[(index + 1) % count]];
  const square = (axis: 0 | 1, wanted: number): number | undefined =>
    beside.map((corner) => corner[axis]).find((value) => Math.abs(value - wanted) <= reachM);
  const wanted = [plan.cornersM[index][0] + byM[0], plan.cornersM[index][1] + byM[2]] as const;
  const x = square(0, wanted[0]);
  const z = square(1, wanted[1]);
  const to = [x ?? fineM(wanted[0], reachM), z ?? fineM(wanted[1], reachM)] as const;
  const reasons = x !== undefined || z !== undefined ? [{ kind: 'square' } as const] : [];
  return { edit: movePlanCorner(start, index, to), reasons };
};
