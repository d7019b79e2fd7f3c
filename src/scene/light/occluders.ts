import type { Solid } from '../../shapes/solid.ts';
import { toWorld, worldMatrix } from './placing.ts';
import { seesPast } from './plan-sight.ts';

/** Upright boxes that stand in the light's way: six numbers a box (least x, y, z, greatest x, y, z), with whose they are. */
export interface Occluders {
  readonly boxes: Float64Array;
  readonly owners: readonly string[];
  /** Walls that may stand between two places of the room (plan-sight). */
  readonly walls: Float64Array;
  /** The owner whose boxes are passed over, so that a thing does not stand in its own light. */
  skip: string;
}

const CASTS: ReadonlySet<Solid['kind']> = new Set(['row', 'seat', 'person', 'object', 'riser']);
/** Boxes are drawn in a little, so that a surface lying on another's box does not black itself out. */
const SHRINK_M = 0.03;

export const ownerOf = (solid: Pick<Solid, 'kind' | 'id'>): string =>
  solid.kind === 'person' ? `seat:${solid.id}` : `${solid.kind}:${solid.id}`;

/** The box of every solid that casts shade. */
export const occludersOf = (solids: readonly Solid[]): Occluders => {
  const casting = solids.filter((solid) => CASTS.has(solid.kind));
  const boxes = new Float64Array(casting.length * 6);
  const at = new Float64Array(3);
  casting.forEach((solid, index) => {
    const box = boxes.subarray(index * 6, index * 6 + 6);
    box.fill(Number.POSITIVE_INFINITY, 0, 3);
    box.fill(Number.NEGATIVE_INFINITY, 3, 6);
    const matrix = worldMatrix(solid.placement);
    const { positions } = solid.geometry;
    for (let i = 0; i < positions.length; i += 3) {
      toWorld(matrix, positions[i], positions[i + 1], positions[i + 2], at);
      for (let axis = 0; axis < 3; axis++) {
        box[axis] = Math.min(box[axis], at[axis] + SHRINK_M);
        box[axis + 3] = Math.max(box[axis + 3], at[axis] - SHRINK_M);
      }
    }
  });
  return { boxes, owners: casting.map(ownerOf), walls: new Float64Array(0), skip: '' };
};

/** Whether nothing stands on the straight line between two points. */
export const seesPoint = (
  { boxes, owners, walls, skip }: Occluders,
  x: number,
  y: number,
  z: number,
  toX: number,
  toY: number,
  toZ: number,
): boolean => {
  if (walls.length > 0 && !seesPast(walls, x, z, toX, toZ)) return false;
  const dx = toX - x;
  const dy = toY - y;
  const dz = toZ - z;
  for (let k = 0; k < owners.length; k++) {
    if (owners[k] === skip) continue;
    const b = k * 6;
    let enter = 0.02;
    let leave = 0.98;
    const ax = (boxes[b] - x) / dx;
    const bx = (boxes[b + 3] - x) / dx;
    enter = Math.max(enter, Math.min(ax, bx));
    leave = Math.min(leave, Math.max(ax, bx));
    if (enter > leave) continue;
    const ay = (boxes[b + 1] - y) / dy;
    const by = (boxes[b + 4] - y) / dy;
    enter = Math.max(enter, Math.min(ay, by));
    leave = Math.min(leave, Math.max(ay, by));
    if (enter > leave) continue;
    const az = (boxes[b + 2] - z) / dz;
    const bz = (boxes[b + 5] - z) / dz;
    if (Math.max(enter, Math.min(az, bz)) <= Math.min(leave, Math.max(az, bz))) return false;
  }
  return true;
};
