import { band } from '../../math/polygon.ts';
import type { Point2 } from '../../math/polyline.ts';
import type { Vec3 } from '../../math/vec3.ts';
import type { Project } from '../../model/project.ts';
import type { CeilingPiece } from '../../model/room/pieces.ts';
import { frameOf } from '../../model/room/places.ts';
import type { RoomShape } from '../../model/room/shape.ts';
import { partsOf } from '../geometries.ts';
import { joined, type RawMesh } from '../mesh/raw.ts';
import { asDrawn } from '../placement.ts';
import type { Solid } from '../solid.ts';
import type { Cut } from './cells.ts';
import { type SheetPlaces, sheet } from './sheet.ts';
import { grownPlan, onSurface, WALL_M } from './surfaces.ts';

/** The holes of the ceiling's openings in the plan: [x, z] ranges. */
const planHoles = (project: Project, { minM }: RoomShape): Cut[] =>
  project.room.openings
    .filter(({ surface, wall }) => wall === undefined && surface === 'ceiling')
    .flatMap((opening) => {
      const frame = frameOf(project, opening);
      const cut = frame && onSurface(frame, opening);
      return cut ? [{ u0: cut.u0 + minM[0], u1: cut.u1 + minM[0], v0: cut.v0 + minM[2], v1: cut.v1 + minM[2] }] : [];
    });

interface Slope {
  readonly outline: readonly Point2[];
  readonly holes: readonly Cut[];
  readonly places: SheetPlaces;
}

/** A slope over the grown plan, the first and the last going on over the walls. u runs along the ceiling's axis. */
const slopeOf = (shape: RoomShape, grown: readonly Point2[], holes: readonly Cut[], index: number): Slope | null => {
  const { pieces, ceiling } = shape;
  const { places, heightsM } = pieces[index];
  const slopes = pieces.map((piece, i) => (piece.kind === 'slope' ? i : -1)).filter((i) => i >= 0);
  const from = index === slopes[0] ? Number.NEGATIVE_INFINITY : places[0];
  const to = index === slopes[slopes.length - 1] ? Number.POSITIVE_INFINITY : places[1];
  const alongX = ceiling.axis === 0;
  const turned = alongX ? grown : grown.map(([x, z]): Point2 => [z, x]);
  const least = Math.min(...turned.map(([u]) => u));
  const most = Math.max(...turned.map(([u]) => u));
  const outline = band(turned, 0, Math.max(from, least), Math.min(to, most));
  if (outline.length < 3) return null;
  const rise = (heightsM[1] - heightsM[0]) / (places[1] - places[0]);
  const at =
    (above: number) =>
    ([u, v]: Point2): Vec3 => {
      const height = Math.max(0, heightsM[0] + (u - places[0]) * rise) + above;
      return alongX ? [u, height, v] : [v, height, u];
    };
  const cuts = alongX ? holes : holes.map(({ u0, u1, v0, v1 }) => ({ u0: v0, u1: v1, v0: u0, v1: u1 }));
  return { outline, holes: cuts, places: { front: at(0), back: at(WALL_M), mirrored: !alongX } };
};

/** The upright face of a step: each stretch of it a board of its own. */
const stepMesh = ({ axis }: RoomShape['ceiling'], piece: CeilingPiece, stepM: number): RawMesh => {
  const k = axis === 0 ? 2 : 0;
  const [place] = piece.places;
  const out = piece.outward[axis];
  const at =
    (behind: number) =>
    ([u, v]: Point2): Vec3 =>
      axis === 0 ? [place + out * behind, v, u] : [u, v, place + out * behind];
  // u x v is z x y = -x where the ceiling changes along x, and x x y = z else; the front looks against `out`.
  const mirrored = axis === 0 ? out < 0 : out > 0;
  const boards = piece.polygonsM.map((polygon) => {
    const us = polygon.map((point) => point[k]);
    const vs = polygon.map((point) => point[1]);
    const [u0, u1, v0, v1] = [Math.min(...us), Math.max(...us), Math.min(...vs), Math.max(...vs)];
    const outline: Point2[] = [
      [u0, v0],
      [u1, v0],
      [u1, v1],
      [u0, v1],
    ];
    return sheet({ outline, holes: [] }, { front: at(0), back: at(WALL_M), mirrored }, stepM, { u: [], v: [] });
  });
  return joined(...boards);
};

/** The planes of the ceiling, kind 'shell' with id 'ceiling': one part 'wall', or 'wall-0', 'wall-1' ... of several. */
export const ceilingSolids = (project: Project, shape: RoomShape, stepM: number): Solid[] => {
  const holes = planHoles(project, shape);
  const grown = grownPlan(shape);
  const { pieces, ceiling, corners } = shape;
  const name = (index: number) => (pieces.length === 1 ? 'wall' : `wall-${index}`);
  const wanted = {
    u: corners.map((corner) => corner[ceiling.axis === 0 ? 0 : 1]),
    v: corners.map((corner) => corner[ceiling.axis === 0 ? 1 : 0]),
  };
  return pieces.flatMap((piece, index) => {
    const slope = piece.kind === 'slope' ? slopeOf(shape, grown, holes, index) : null;
    if (piece.kind === 'slope' && !slope) return [];
    const key = [
      index,
      pieces.length,
      ceiling.axis,
      ...piece.places,
      ...piece.heightsM,
      ...(slope ? slope.outline.flat() : piece.polygonsM.flat(2)),
      ...holes.flatMap((h) => [h.u0, h.u1, h.v0, h.v1]),
    ];
    return partsOf('ceiling', key, () => [
      {
        part: name(index),
        material: 'ceiling',
        mesh: slope
          ? sheet({ outline: slope.outline, holes: slope.holes }, slope.places, stepM, wanted)
          : stepMesh(ceiling, piece, stepM),
      },
    ]).map((part): Solid => ({ kind: 'shell', id: 'ceiling', ...part, placement: asDrawn }));
  });
};
