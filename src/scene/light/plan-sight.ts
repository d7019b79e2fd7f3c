import type { RoomShape } from '../../model/room/shape.ts';

/** Four numbers a wall that may stand between two places of the room: those that end at an inward corner. None in a convex plan. */
export const inwardWalls = ({ walls }: RoomShape): Float64Array => {
  const inward = walls.map((wall, i) => {
    const after = walls[(i + 1) % walls.length];
    return wall.outward[0] * after.outward[1] - wall.outward[1] * after.outward[0] < -1e-9;
  });
  const between = walls.filter((_, i) => inward[i] || inward[(i + walls.length - 1) % walls.length]);
  return Float64Array.from(between.flatMap(({ from, to }) => [...from, ...to]));
};

const HELD = 1e-6;

/** Whether no wall stands between two places, seen from above. Standing on a wall is not behind it. */
export const seesPast = (walls: Float64Array, x: number, z: number, toX: number, toZ: number): boolean => {
  const dx = toX - x;
  const dz = toZ - z;
  for (let w = 0; w < walls.length; w += 4) {
    const ex = walls[w + 2] - walls[w];
    const ez = walls[w + 3] - walls[w + 1];
    const across = dx * ez - dz * ex;
    if (Math.abs(across) < 1e-12) continue;
    const fx = walls[w] - x;
    const fz = walls[w + 1] - z;
    const t = (fx * ez - fz * ex) / across;
    const u = (fx * dz - fz * dx) / across;
    if (t > 0.005 && t < 0.995 && u > HELD && u < 1 - HELD) return false;
  }
  return true;
};
