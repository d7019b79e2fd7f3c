import type { Vec3 } from '../../math/vec3.ts';
import type { RoomWall } from '../../model/room/walls.ts';
import type { StandingRoom } from './standing.ts';
import { toCentimetres } from './standing.ts';

/** As many places as an exhaustive search of four gets through in a tenth of a second. */
export const MOST_PLACES = 40;
/** No nearer to one another than this: half the width of a usual cabinet. */
const LEAST_SPACING_M = 0.25;
/** Two places nearer than this are one. */
const SAME_M = 0.12;

export interface WallPlaces {
  readonly placesM: readonly Vec3[];
  /** Distance between neighbours along a wall, metres. */
  readonly spacingM: number;
}

const alongWall = ({ from, to, lengthM }: RoomWall, spacingM: number): [number, number][] => {
  const steps = Math.max(1, Math.round(lengthM / spacingM));
  return Array.from({ length: steps + 1 }, (_, i) => [
    from[0] + ((to[0] - from[0]) * i) / steps,
    from[1] + ((to[1] - from[1]) * i) / steps,
  ]);
};

const placesAt = (room: StandingRoom, spacingM: number): Vec3[] => {
  const found: Vec3[] = [];
  for (const wall of room.shape.walls) {
    for (const [wallX, wallZ] of alongWall(wall, spacingM)) {
      const [x, z] = room.inside(wallX, wallZ);
      const at = room.at(toCentimetres(x), toCentimetres(z)) ?? room.at(x, z);
      if (at && !found.some((other) => Math.hypot(other[0] - at[0], other[2] - at[2]) < SAME_M)) found.push(at);
    }
  }
  return found;
};

/** Places along all walls where a subwoofer may stand, evenly spaced, as close as `most` of them allow. */
export const placesAlongWalls = (room: StandingRoom, most = MOST_PLACES): WallPlaces => {
  const roundM = room.shape.walls.reduce((sum, { lengthM }) => sum + lengthM, 0);
  let spacingM = Math.max(LEAST_SPACING_M, roundM / most);
  let placesM = placesAt(room, spacingM);
  // What is blocked leaves room for closer ones; what came out too many, for wider ones.
  for (let round = 0; round < 12; round += 1) {
    const closer = Math.max(LEAST_SPACING_M, spacingM * 0.93);
    if (closer === spacingM) break;
    const next = placesAt(room, closer);
    if (next.length > most) break;
    placesM = next;
    spacingM = closer;
  }
  while (placesM.length > most) {
    spacingM *= 1.05;
    placesM = placesAt(room, spacingM);
  }
  return { placesM, spacingM };
};

/** The free place nearest to a plan point, searched in rings along the walls' insides; null within `reachM` of nothing. */
export const nearestFree = (room: StandingRoom, xM: number, zM: number, reachM: number): Vec3 | null => {
  const [x0, z0] = room.inside(xM, zM);
  const first = room.at(x0, z0);
  if (first) return first;
  for (let r = 0.05; r <= reachM + 1e-9; r += 0.05) {
    let best: Vec3 | null = null;
    let least = Number.POSITIVE_INFINITY;
    const steps = Math.max(8, Math.round((2 * Math.PI * r) / 0.05));
    for (let i = 0; i < steps; i += 1) {
      const turn = (2 * Math.PI * i) / steps;
      const x = x0 + r * Math.cos(turn);
      const z = z0 + r * Math.sin(turn);
      const at = room.at(toCentimetres(x), toCentimetres(z));
      if (!at) continue;
      // Among places equally far the one that stays nearest to a wall: a subwoofer in mid-floor is in the way.
      const [wx, wz] = nearestOnWalls(room.shape.walls, x, z);
      const off = Math.hypot(x - wx, z - wz);
      if (off < least - 1e-9) {
        least = off;
        best = at;
      }
    }
    if (best) return best;
  }
  return null;
};

/** The point of the walls nearest to a plan point. */
const nearestOnWalls = (walls: readonly RoomWall[], x: number, z: number): readonly [number, number] => {
  let best: readonly [number, number] = [x, z];
  let least = Number.POSITIVE_INFINITY;
  for (const { from, to, lengthM } of walls) {
    const along = ((x - from[0]) * (to[0] - from[0]) + (z - from[1]) * (to[1] - from[1])) / (lengthM * lengthM);
    const held = Math.min(1, Math.max(0, along));
    const point = [from[0] + held * (to[0] - from[0]), from[1] + held * (to[1] - from[1])] as const;
    const gap = Math.hypot(x - point[0], z - point[1]);
    if (gap < least) {
      least = gap;
      best = point;
    }
  }
  return best;
};
