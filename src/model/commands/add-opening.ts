import { isEdge } from '../items.ts';
import type { Opening, Patch, Project, SurfaceName } from '../project.ts';
import { wallOfItem } from '../room/places.ts';
import { roomShape } from '../room/shape.ts';
import { SURFACES } from '../schema/room.ts';
import { type Added, nowhere } from './add-place.ts';
import { addOnSurface, type SurfaceRect, surfaceFrame, usualRect } from './on-surface.ts';

export type OnSurfaceKind = 'door' | 'window' | 'opening' | 'panel';

const PANEL_FINISH = 'fibre-panel-50';
const STEP_M = 0.05;

/** A surface as a selection names it: one of the six, or an edge of a polygon plan by its number. */
export const surfaceOf = (
  project: Project,
  id: string,
): { readonly surface: SurfaceName; readonly wall: number | null } | null => {
  const named = SURFACES.find((surface) => surface === id);
  if (named) return { surface: named, wall: null };
  if (!isEdge(id)) return null;
  const wall = roomShape(project).walls.find(({ edge }) => edge === Number(id));
  return wall ? { surface: wall.surface, wall: wall.edge } : null;
};

/** What is cut into a surface or lies on it: by its name, or by the edge where the plan has several walls of one name. */
export const partsOf = (
  project: Project,
  id: string,
): { readonly openings: readonly Opening[]; readonly patches: readonly Patch[] } => {
  const edge = isEdge(id) ? Number(id) : null;
  const mine = (item: Opening | Patch): boolean =>
    edge === null
      ? (wallOfItem(project, item)?.surface ?? item.surface) === id
      : wallOfItem(project, item)?.edge === edge;
  return { openings: project.room.openings.filter(mine), patches: project.room.patches.filter(mine) };
};

const meet = (a: SurfaceRect, b: SurfaceRect): boolean =>
  a.fromM < b.fromM + b.widthM - 1e-6 &&
  b.fromM < a.fromM + a.widthM - 1e-6 &&
  a.bottomM < b.bottomM + b.heightM - 1e-6 &&
  b.bottomM < a.bottomM + a.heightM - 1e-6;

/** The place along a surface nearest to its middle where nothing is in the way; the middle where there is none. */
const freeAlong = (rect: SurfaceRect, alongM: number, others: readonly SurfaceRect[]): SurfaceRect => {
  for (let off = 0; off <= alongM; off += STEP_M)
    for (const sign of [1, -1]) {
      const fromM = Math.round((rect.fromM + sign * off) * 1000) / 1000 + 0;
      const there = { ...rect, fromM };
      const on = fromM >= 0 && fromM + rect.widthM <= alongM + 1e-9;
      if (on && !others.some((other) => meet(there, other))) return there;
    }
  return rect;
};

/** A door, window, opening or absorber of a usual size, where the surface is free. */
export const addToSurface = (project: Project, kind: OnSurfaceKind, surfaceId: string): Added => {
  const place = surfaceOf(project, surfaceId);
  const frame = place && surfaceFrame(project, place.surface, place.wall);
  if (!place || !frame) return nowhere('room.surfaces', 'a wall, the floor or the ceiling');
  const drawn = kind === 'panel' ? 'patch' : 'opening';
  const what = kind === 'panel' ? PANEL_FINISH : kind;
  const usual = usualRect(project, drawn, what, place.surface, place.wall);
  if (!usual) return nowhere('room.surfaces', 'a surface of at least 5 cm');
  const { openings, patches } = partsOf(project, surfaceId);
  const { edit, ref } = addOnSurface(
    project,
    drawn,
    what,
    place.surface,
    place.wall,
    freeAlong(usual, frame.alongM, [...openings, ...patches]),
  );
  return { edit, item: ref };
};
