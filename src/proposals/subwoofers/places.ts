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

const placesAt = (room: StandingRoom, spacingM: number, sameM = SAME_M): Vec3[] => {
  const found: Vec3[] = [];
  for (const wall of room.shape.walls) {
    for (const [wallX, wallZ] of alongWall(wall, spacingM)) {
      const [x, z] = room.inside(wallX, wallZ);
      const at = room.at(toCentimetres(x), toCentimetres(z)) ?? room.at(x, z);
      if (at && !found.some((other) => Math.hypot(other[0] - at[0], other[2] - at[2]) < sameM)) found.push(at);
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

/** Steps in which a place that is taken is moved along the walls. */
const FINE_M = 0.05;

/** Every place along the walls where a subwoofer may stand, five centimetres apart. */
export const finePlaces = (room: StandingRoom): Vec3[] => placesAt(room, FINE_M, FINE_M / 2);

/** The free place nearest to a plan point: there, or along the walls within `reachM`; null where nothing is free. */
export const nearestFree = (
  room: StandingRoom,
  fine: readonly Vec3[],
  xM: number,
  zM: number,
  reachM: number,
): Vec3 | null => {
  const [x0, z0] = room.inside(xM, zM);
  const there = room.at(x0, z0);
  if (there) return there;
  let best: Vec3 | null = null;
  let least = reachM;
  for (const at of fine) {
    const gap = Math.hypot(at[0] - x0, at[2] - z0);
    if (gap > least) continue;
    least = gap;
    best = at;
  }
  return best;
};
