import type { Vec3 } from '../../math/vec3.ts';
import { surfaceFrame } from '../commands/on-surface.ts';
import { isEdge } from '../items.ts';
import type { ItemRef, Opening, Patch, Project, SurfaceName } from '../project.ts';
import { frameOf, pointOn, topAt } from '../room/places.ts';
import { roomShape } from '../room/shape.ts';
import type { RoomWall } from '../room/walls.ts';
import { ceilingHandles } from './ceiling.ts';
import { type Handle, type HandleAxis, handle, LEVEL } from './handle.ts';

const unit = (direction: Vec3): Vec3 => {
  const length = Math.hypot(...direction);
  return [direction[0] / length, direction[1] / length, direction[2] / length];
};

/** An opening or patch: it slides on its surface, and each of its edges moves by itself. */
export const onSurfaceHandles = (project: Project, ref: ItemRef): Handle[] => {
  const list: readonly (Opening | Patch)[] = ref.kind === 'opening' ? project.room.openings : project.room.patches;
  const item = list.find(({ id }) => id === ref.id);
  const frame = item && frameOf(project, item);
  if (!item || !frame) return [];
  const { fromM, widthM, bottomM, heightM } = item;
  const right = unit(frame.u);
  const up = unit(frame.v);
  const at = (along: number, over: number) => pointOn(frame, fromM + along * widthM, bottomM + over * heightM);
  const edge = (label: string, along: number, over: number, direction: Vec3, part: string) =>
    handle(ref, 'edge', label, at(along, over), { kind: 'line', direction }, 'stretchOnSurface', part);
  // A door stands on the floor; anything else there can be lifted off it again.
  const standing = bottomM === 0 && 'kind' in item && item.kind === 'door';
  return [
    handle(ref, 'slide', 'Place', at(0.5, 0.5), { kind: 'surface', right, up }, 'slideOnSurface'),
    edge('Near edge', 0, 0.5, right, 'left'),
    edge('Far edge', 1, 0.5, right, 'right'),
    edge('Upper edge', 0.5, 1, up, 'top'),
    ...(standing ? [] : [edge('Lower edge', 0.5, 0, up, 'bottom')]),
  ];
};

/** Half of a person's height: where a wall is pushed. */
const PUSH_M = 1.1;

const wallHandle = (project: Project, ref: ItemRef, wall: RoomWall): Handle => {
  const { edge, start, along, outward, lengthM } = wall;
  const y = Math.min(PUSH_M, topAt(wall, lengthM / 2) / 2);
  const atM: Vec3 = [start[0] + along[0] * (lengthM / 2), y, start[1] + along[1] * (lengthM / 2)];
  const axis: HandleAxis = { kind: 'line', direction: [outward[0], 0, outward[1]] };
  const command = project.room.plan.shape === 'polygon' ? 'movePlanEdge' : 'moveRoomWall';
  return handle(ref, 'wall', 'Wall', atM, axis, command, String(edge));
};

/** A wall moves along its normal, the corners of the plan over the floor, the ceiling and its bends over the section. */
export const surfaceHandles = (project: Project, ref: ItemRef): Handle[] => {
  const shape = roomShape(project);
  const name = ref.id as SurfaceName;
  if (name === 'ceiling') return ceilingHandles(project, ref);
  if (name !== 'floor') {
    const wall = surfaceFrame(project, name, isEdge(name) ? Number(name) : null)?.wall;
    return wall ? [wallHandle(project, ref, wall)] : [];
  }
  const walls = shape.walls.map((wall) => wallHandle(project, ref, wall));
  if (project.room.plan.shape !== 'polygon') return walls;
  const corners = project.room.plan.cornersM.map(([x, z], i) =>
    handle(ref, 'corner', 'Corner', [x, 0, z], LEVEL, 'movePlanCorner', String(i)),
  );
  return [...walls, ...corners];
};
