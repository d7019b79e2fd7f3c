import type { Vec3 } from '../../math/vec3.ts';
import { surfaceFrame } from '../../model/commands/on-surface.ts';
import { isEdge } from '../../model/items.ts';
import type { ItemRef, Project, SurfaceName } from '../../model/project.ts';
import { frameOf, pointOn, type SurfaceFrame } from '../../model/room/places.ts';
import { roomShape } from '../../model/room/shape.ts';

/** Lines on a surface are drawn this much before it. */
const BEFORE_M = 0.012;

const before = ({ n }: SurfaceFrame, [x, y, z]: Vec3): Vec3 => [
  x + n[0] * BEFORE_M,
  y + n[1] * BEFORE_M,
  z + n[2] * BEFORE_M,
];

const closed = (loop: readonly Vec3[]): Vec3[] => [...loop, loop[0]];

const wallLoop = (frame: SurfaceFrame): Vec3[] => {
  const { wall, alongM } = frame;
  const tops = wall ? [...wall.top].reverse() : [];
  const points = [[0, 0], [alongM, 0], ...tops] as readonly (readonly [number, number])[];
  return closed(points.map(([along, up]) => before(frame, pointOn(frame, along, up))));
};

/** The outline of a chosen surface, opening or patch; null for anything that has a body of its own. */
export const surfaceLoop = (project: Project, { kind, id }: ItemRef): Vec3[] | null => {
  const { corners, ceilingAtM } = roomShape(project);
  if (kind === 'surface' && id === 'floor') return closed(corners.map(([x, z]): Vec3 => [x, BEFORE_M, z]));
  if (kind === 'surface' && id === 'ceiling')
    return closed(corners.map(([x, z]): Vec3 => [x, ceilingAtM(x, z) - BEFORE_M, z]));
  if (kind === 'surface') {
    const frame = surfaceFrame(project, id as SurfaceName, isEdge(id) ? Number(id) : null);
    return frame ? wallLoop(frame) : null;
  }
  if (kind !== 'opening' && kind !== 'patch') return null;
  const list = kind === 'opening' ? project.room.openings : project.room.patches;
  const item = list.find((one) => one.id === id);
  const frame = item && frameOf(project, item);
  if (!item || !frame) return null;
  const at = (along: number, up: number): Vec3 =>
    before(frame, pointOn(frame, item.fromM + along * item.widthM, item.bottomM + up * item.heightM));
  return closed([at(0, 0), at(1, 0), at(1, 1), at(0, 1)]);
};
