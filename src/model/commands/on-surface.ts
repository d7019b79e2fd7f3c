import { freeId, isLocked, keysOf } from '../items.ts';
import { valueAt } from '../paths.ts';
import type { ItemRef, Opening, Patch, Project, SurfaceName } from '../project.ts';
import { frameOf, isLying, pointOn, reachUpM, type SurfaceFrame, wallFrame, wallOfItem } from '../room/places.ts';
import { roomShape } from '../room/shape.ts';
import { type Edit, refuseWords, setValue } from './edit.ts';
import { addItem } from './items.ts';
import { lockedEdit, noSuch } from './move.ts';

/** A rectangle on a surface, metres: along and up as openings and patches are measured. */
export interface SurfaceRect {
  readonly fromM: number;
  readonly widthM: number;
  readonly bottomM: number;
  readonly heightM: number;
}

/** What can be drawn on a surface. `what` is an opening's kind, a patch's finish or an object's kind. */
export type DrawnKind = 'opening' | 'patch' | 'object';

const LEAST_M = 0.05;
const tidy = (valueM: number): number => Number(valueM.toFixed(4));

/** A named surface as things are measured on it; a wall by its edge's number where the plan has several of one name. */
export const surfaceFrame = (project: Project, surface: SurfaceName, wall: number | null): SurfaceFrame | undefined => {
  if (isLying(surface)) return frameOf(project, { surface, fromM: 0, widthM: 0, bottomM: 0, heightM: 0 });
  const found = wallOfItem(project, { surface, ...(wall === null ? {} : { wall }) });
  return found && wallFrame(found);
};

/** The rectangle cut down to what lies on its surface; undefined where less than 5 cm is left. */
export const rectOn = (frame: SurfaceFrame, rect: SurfaceRect): SurfaceRect | undefined => {
  const fromM = Math.max(0, Math.min(rect.fromM, rect.fromM + rect.widthM));
  const toM = Math.min(frame.alongM, Math.max(rect.fromM, rect.fromM + rect.widthM));
  const bottomM = Math.max(0, Math.min(rect.bottomM, rect.bottomM + rect.heightM));
  const widthM = toM - fromM;
  const reach = reachUpM(frame, { surface: frame.surface, fromM, widthM, bottomM, heightM: 0 });
  const topM = Math.min(reach, Math.max(rect.bottomM, rect.bottomM + rect.heightM));
  if (widthM < LEAST_M - 1e-9 || topM - bottomM < LEAST_M - 1e-9) return undefined;
  return { fromM: tidy(fromM), widthM: tidy(widthM), bottomM: tidy(bottomM), heightM: tidy(topM - bottomM) };
};

/** How far an object drawn on a surface stands out of it before it is changed. */
const OBJECT_DEPTH_M: Readonly<Record<string, number>> = {
  beam: 0.25,
  soffit: 0.25,
  column: 0.3,
  lamp: 0.25,
  table: 0.45,
};
const DEPTH_M = 0.4;

const objectBox = (project: Project, frame: SurfaceFrame, what: string, rect: SurfaceRect) => {
  const depthM = OBJECT_DEPTH_M[what] ?? DEPTH_M;
  const a = pointOn(frame, rect.fromM, rect.bottomM);
  const b = pointOn(frame, rect.fromM + rect.widthM, rect.bottomM + rect.heightM);
  const ends = [a, b, ...[a, b].map((point) => point.map((value, axis) => value + frame.n[axis] * depthM))];
  const { minM, maxM } = roomShape(project);
  const span = (axis: number, pick: (...values: number[]) => number): number =>
    tidy(Math.min(maxM[axis], Math.max(minM[axis], pick(...ends.map((point) => point[axis])))));
  return {
    minM: [0, 1, 2].map((axis) => span(axis, Math.min)),
    maxM: [0, 1, 2].map((axis) => span(axis, Math.max)),
  };
};

/** Ids read as what they name: door, door-2; panel for a patch. */
const baseId = (kind: DrawnKind, what: string): string => (kind === 'patch' ? 'panel' : what);

/**
 * A new opening, patch or object on a rectangle of a surface, cut down to it. Answers its name with the edit; refused with
 * a sentence where the rectangle is too small or the surface is not there.
 */
export const addOnSurface = (
  project: Project,
  kind: DrawnKind,
  what: string,
  surface: SurfaceName,
  wall: number | null,
  rect: SurfaceRect,
): { readonly edit: Edit; readonly ref: ItemRef | null } => {
  const frame = surfaceFrame(project, surface, wall);
  if (!frame) return { edit: noSuch({ kind: 'surface', id: surface }), ref: null };
  const cut = rectOn(frame, rect);
  if (!cut) return { edit: refuseWords(surface, undefined, 'at least 5 cm wide and high'), ref: null };
  const id = freeId(project, kind, baseId(kind, what));
  if (kind === 'object') {
    const edit = addItem(project, kind, { id, kind: what, name: '', ...objectBox(project, frame, what, cut) });
    return { edit, ref: edit.ok ? { kind, id } : null };
  }
  const place = { id, surface, ...(wall === null ? {} : { wall }), ...cut };
  const item =
    kind === 'opening'
      ? { ...place, kind: what, leaf: what === 'opening' ? 'none' : 'closed' }
      : { ...place, finish: what };
  const edit = addItem(project, kind, item);
  return { edit, ref: edit.ok ? { kind, id } : null };
};

const USUAL: Readonly<Record<string, SurfaceRect>> = {
  door: { fromM: 0, widthM: 0.83, bottomM: 0, heightM: 2.04 },
  window: { fromM: 0, widthM: 1.2, bottomM: 0.9, heightM: 1.2 },
  opening: { fromM: 0, widthM: 1.4, bottomM: 0, heightM: 2.1 },
  panel: { fromM: 0, widthM: 1.2, bottomM: 0.6, heightM: 1.2 },
  object: { fromM: 0, widthM: 0.6, bottomM: 0, heightM: 0.6 },
};

/** A usual size in the middle of a surface, for hands that do not draw. */
export const usualRect = (
  project: Project,
  kind: DrawnKind,
  what: string,
  surface: SurfaceName,
  wall: number | null,
): SurfaceRect | undefined => {
  const frame = surfaceFrame(project, surface, wall);
  if (!frame) return undefined;
  const usual = USUAL[kind === 'opening' ? what : kind === 'patch' ? 'panel' : 'object'] ?? USUAL.object;
  const widthM = Math.min(usual.widthM, frame.alongM);
  const bottomM = isLying(surface) ? Math.max(0, (frame.upM - usual.heightM) / 2) : usual.bottomM;
  return rectOn(frame, { ...usual, widthM, bottomM, fromM: (frame.alongM - widthM) / 2 });
};

export type Side = 'left' | 'right' | 'top' | 'bottom';

/** Moves one edge of an opening or patch by so much, the others where they are; stopped by the surface and by 5 cm. */
export const stretchOnSurface = (
  project: Project,
  ref: ItemRef & { kind: 'opening' | 'patch' },
  side: Side,
  byM: number,
): Edit => {
  const keys = keysOf(project, ref);
  if (!keys) return noSuch(ref);
  if (isLocked(project, ref)) return lockedEdit(project, ref);
  const item = valueAt(project, keys) as Opening | Patch;
  const frame = frameOf(project, item);
  if (!frame) return noSuch({ kind: 'surface', id: item.surface });
  const endM = item.fromM + item.widthM;
  const topM = item.bottomM + item.heightM;
  const between = (value: number, min: number, max: number) => tidy(Math.min(Math.max(value, min), Math.max(min, max)));
  if (side === 'left' || side === 'right') {
    const fromM = side === 'left' ? between(item.fromM + byM, 0, endM - LEAST_M) : item.fromM;
    const to = side === 'right' ? between(endM + byM, item.fromM + LEAST_M, frame.alongM) : endM;
    return setValue(project, keys, { ...item, fromM, widthM: tidy(to - fromM) });
  }
  const bottomM = side === 'bottom' ? between(item.bottomM + byM, 0, topM - LEAST_M) : item.bottomM;
  const to = side === 'top' ? between(topM + byM, item.bottomM + LEAST_M, reachUpM(frame, item)) : topM;
  return setValue(project, keys, { ...item, bottomM, heightM: tidy(to - bottomM) });
};
