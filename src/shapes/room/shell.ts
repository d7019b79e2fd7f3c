import type { Project } from '../../model/project.ts';
import { partsOf } from '../geometries.ts';
import { asDrawn } from '../placement.ts';
import type { MaterialName, Solid } from '../solid.ts';
import { openingSolids } from './openings.ts';
import { type Cut, slab } from './slab.ts';
import { flipped, onSurface, type Surface, slabFrame, surfacesOf, WALL_M } from './surfaces.ts';
import { patchSolids, skirtingSolids } from './trim.ts';

/** How far apart the points are at which light is computed. */
const LIGHT_STEP_M = 0.32;

const materialOf = (surface: Surface): MaterialName =>
  surface.name === 'floor' ? 'oak' : surface.name === 'ceiling' ? 'ceiling' : 'plaster';

/** The holes of a surface in its own u and v. */
const holesOf = (project: Project, surface: Surface): Cut[] =>
  project.room.openings
    .filter((opening) => opening.surface === surface.name)
    .map((opening) => onSurface(surface, opening))
    .filter((cut) => cut !== null);

/** Front and back wall, floor and ceiling reach over the corners; side walls stand between them. */
const reachOf = ({ name }: Surface): { along: number; up: number } => ({
  along: name === 'left' || name === 'right' ? 0 : WALL_M,
  up: name === 'floor' || name === 'ceiling' ? WALL_M : 0,
});

const surfaceSolid = (project: Project, surface: Surface): Solid[] => {
  const { frame, flip } = slabFrame(surface);
  const { along, up } = reachOf(surface);
  const { lengthM, riseM, name } = surface;
  const holes = holesOf(project, surface).map((cut) => (flip ? flipped(cut, lengthM) : cut));
  const extent = { u0: -along, u1: lengthM + along, v0: -up, v1: riseM + up };
  const lines = { u: [0, lengthM], v: [0, riseM], stepM: LIGHT_STEP_M };
  const key = [name, ...frame.origin, lengthM, riseM, ...holes.flatMap((h) => [h.u0, h.u1, h.v0, h.v1])];
  const parts = partsOf('surface', key, () => [
    { part: 'wall', material: materialOf(surface), mesh: slab(frame, extent, WALL_M, holes, lines) },
  ]);
  return parts.map((part) => ({ kind: 'shell', id: name, ...part, placement: asDrawn }));
};

/**
 * The room's walls, floor and ceiling, each a solid of its own (kind 'shell', the surface's name as id), 0.12 m thick to
 * the outside, in document axes, cut through at every opening.
 */
const surfaceSolids = (project: Project): Solid[] =>
  surfacesOf(project).flatMap((surface) => surfaceSolid(project, surface));

/** The shell and all that is built into it: skirting, door and window joinery (kind 'opening'), patches (kind 'patch'). */
export const shellSolids = (project: Project): Solid[] => [
  ...surfaceSolids(project),
  ...skirtingSolids(project),
  ...openingSolids(project),
  ...patchSolids(project),
];
