import { dot, type Vec3 } from '../../math/vec3.ts';
import { type Side, stretchOnSurface } from '../commands/on-surface.ts';
import { slideOnSurface } from '../commands/shift.ts';
import type { ItemRef, Opening, Patch, Project } from '../project.ts';
import { frameOf, type SurfaceFrame } from '../room/places.ts';
import { snapEdge, snapRect } from '../snap/surface.ts';
import type { Handle, Pulled } from './handle.ts';

type OnSurfaceRef = ItemRef & { kind: 'opening' | 'patch' };

const isOnSurface = (ref: ItemRef): ref is OnSurfaceRef => ref.kind === 'opening' || ref.kind === 'patch';

const itemOf = (project: Project, ref: OnSurfaceRef): Opening | Patch | undefined =>
  ref.kind === 'opening'
    ? project.room.openings.find(({ id }) => id === ref.id)
    : project.room.patches.find(({ id }) => id === ref.id);

/** A move in the room as metres along and up a surface. */
const onFrame = ({ u, v }: SurfaceFrame, byM: Vec3): readonly [number, number] => [
  dot(byM, u) / dot(u, u),
  dot(byM, v) / dot(v, v),
];

const still = (project: Project): Pulled => ({ edit: { ok: true, project }, reasons: [] });

export const pullSlide = (start: Project, { ref }: Handle, byM: Vec3, reachM: number): Pulled => {
  const item = isOnSurface(ref) ? itemOf(start, ref) : undefined;
  const frame = item && frameOf(start, item);
  if (!isOnSurface(ref) || !item || !frame) return still(start);
  const [along, up] = onFrame(frame, byM);
  const wanted = [item.fromM + along, item.bottomM + up] as const;
  const { atM, reasons } = snapRect(start, frame, wanted, [item.widthM, item.heightM], reachM, ref);
  return { edit: slideOnSurface(start, ref, atM[0] - item.fromM, atM[1] - item.bottomM), reasons };
};

export const pullEdge = (start: Project, { ref, part }: Handle, byM: Vec3, reachM: number): Pulled => {
  const item = isOnSurface(ref) ? itemOf(start, ref) : undefined;
  const frame = item && frameOf(start, item);
  if (!isOnSurface(ref) || !item || !frame) return still(start);
  const side = part as Side;
  const [along, up] = onFrame(frame, byM);
  const level = side === 'left' || side === 'right';
  const from = {
    left: item.fromM,
    right: item.fromM + item.widthM,
    bottom: item.bottomM,
    top: item.bottomM + item.heightM,
  }[side];
  const { atM, reasons } = snapEdge(start, frame, level ? 'along' : 'up', from + (level ? along : up), reachM, ref);
  return { edit: stretchOnSurface(start, ref, side, atM - from), reasons };
};

export const pullWall = (start: Project, _handle: Handle, _byM: Vec3, _reachM: number): Pulled => still(start);
export const pullCorner = pullWall;
