import type { RoomShape } from '../../model/room/shape.ts';
import type { RoomWall } from '../../model/room/walls.ts';
import { WALL_M } from '../../shapes/room/surfaces.ts';

/** The room's inner faces as numbers, for questions asked at every lit point. */
export interface RoomSkin {
  /** Twelve numbers a wall: start x z, along x z, outward x z, length, how far it counts past its two ends, spare. */
  readonly walls: Float64Array;
  /** 0: the ceiling changes along x; 2: along z. */
  readonly axis: 0 | 2;
  /** Six numbers a plane of the ceiling: place and height at both ends, outward along the axis and up. */
  readonly ceiling: Float64Array;
}

const WALL_STRIDE = 9;
const PLANE_STRIDE = 6;

/** Just past a wall's thickness: farther out is another thing's business, such as an open door's leaf. */
const BAND_M = WALL_M + 0.01;
/** At an inward corner a wall ends where it ends. */
const SHORT_M = -0.002;

const isOutwardCorner = (a: RoomWall, b: RoomWall): boolean =>
  a.outward[0] * b.outward[1] - a.outward[1] * b.outward[0] > 0;

export const roomSkin = ({ walls, ceiling, pieces }: RoomShape): RoomSkin => {
  const numbers = walls.flatMap((wall, i) => {
    const before = walls[(i + walls.length - 1) % walls.length];
    const after = walls[(i + 1) % walls.length];
    const [dx, dz] = [(wall.to[0] - wall.from[0]) / wall.lengthM, (wall.to[1] - wall.from[1]) / wall.lengthM];
    const past = (outward: boolean) => (outward ? BAND_M : SHORT_M);
    return [
      ...wall.from,
      dx,
      dz,
      ...wall.outward,
      wall.lengthM,
      past(isOutwardCorner(before, wall)),
      past(isOutwardCorner(wall, after)),
    ];
  });
  const planes = pieces.flatMap(({ places, heightsM, outward }) => [
    places[0],
    heightsM[0],
    places[1],
    heightsM[1],
    outward[ceiling.axis],
    outward[1],
  ]);
  return { walls: Float64Array.from(numbers), axis: ceiling.axis, ceiling: Float64Array.from(planes) };
};

const CORNER_REACH_M = 0.38;
const CORNER_DEPTH = 0.36;

/** What a face at a distance takes from the openness of a point whose normal makes this cosine with the face's. */
const taken = (awayM: number, cosine: number): number =>
  1 - CORNER_DEPTH * (1 - cosine * cosine) * Math.exp(-Math.max(0, awayM) / CORNER_REACH_M);

/** How much of its surroundings' light a surface near the room's corners still gets: 1 in the open. */
export const openness = ({ walls, ceiling, axis }: RoomSkin, at: Float64Array, normal: Float64Array): number => {
  const [x, y, z] = at;
  let open = taken(y, normal[1]);
  for (let w = 0; w < walls.length; w += WALL_STRIDE) {
    const dx = x - walls[w];
    const dz = z - walls[w + 1];
    const along = dx * walls[w + 2] + dz * walls[w + 3];
    const past = along < 0 ? -along : along > walls[w + 6] ? along - walls[w + 6] : 0;
    const inside = Math.max(0, -(dx * walls[w + 4] + dz * walls[w + 5]));
    const away = past === 0 ? inside : Math.sqrt(past * past + inside * inside);
    open *= taken(away, normal[0] * walls[w + 4] + normal[2] * walls[w + 5]);
  }
  const s = axis === 0 ? x : z;
  for (let p = 0; p < ceiling.length; p += PLANE_STRIDE) {
    const low = Math.min(ceiling[p], ceiling[p + 2]);
    const high = Math.max(ceiling[p], ceiling[p + 2]);
    const past = s < low ? low - s : s > high ? s - high : 0;
    const below = -((s - ceiling[p]) * ceiling[p + 4] + (y - ceiling[p + 1]) * ceiling[p + 5]);
    const away = past === 0 ? Math.max(0, below) : Math.sqrt(past * past + Math.max(0, below) ** 2);
    open *= taken(away, (axis === 0 ? normal[0] : normal[2]) * ceiling[p + 4] + normal[1] * ceiling[p + 5]);
  }
  return open;
};

const OUTSIDE_M = 0.002;

/** Cosine above which a face is turned out of the room. */
const AWAY = 0.9;

const counts = { beyond: 0, rim: 0, away: false };

/** Counts a point `off` metres past a face, turned from it by `cosine`. */
const count = (off: number, cosine: number): void => {
  if (off < -OUTSIDE_M || off > BAND_M) return;
  if (off > OUTSIDE_M) counts.beyond += 1;
  else counts.rim += 1;
  if (cosine > AWAY) counts.away = true;
};

/** In or behind an inner face and turned out of the room, or on a slab's rim: not so the reveals of openings. */
export const isOutside = ({ walls, ceiling, axis }: RoomSkin, at: Float64Array, turned: Float64Array): boolean => {
  counts.beyond = 0;
  counts.rim = 0;
  counts.away = false;
  const [x, y, z] = at;
  count(-y, -turned[1]);
  for (let w = 0; w < walls.length; w += WALL_STRIDE) {
    const dx = x - walls[w];
    const dz = z - walls[w + 1];
    const along = dx * walls[w + 2] + dz * walls[w + 3];
    if (along < -walls[w + 7] || along > walls[w + 6] + walls[w + 8]) continue;
    count(dx * walls[w + 4] + dz * walls[w + 5], turned[0] * walls[w + 4] + turned[2] * walls[w + 5]);
  }
  const s = axis === 0 ? x : z;
  const last = ceiling.length - PLANE_STRIDE;
  for (let p = 0; p <= last; p += PLANE_STRIDE) {
    const from = p === 0 ? ceiling[p] - BAND_M : ceiling[p];
    const to = p === last ? ceiling[p + 2] + BAND_M : ceiling[p + 2];
    if (s < from || s > to) continue;
    // A step's face counts over its own height only; a slope's thickness is told upright.
    const upright = ceiling[p + 5] < 1e-9;
    if (upright && (y < Math.min(ceiling[p + 1], ceiling[p + 3]) || y > Math.max(ceiling[p + 1], ceiling[p + 3])))
      continue;
    const cosine = (axis === 0 ? turned[0] : turned[2]) * ceiling[p + 4] + turned[1] * ceiling[p + 5];
    const off = (s - ceiling[p]) * ceiling[p + 4] + (y - ceiling[p + 1]) * ceiling[p + 5];
    count(off, cosine);
  }
  return counts.away || (counts.beyond > 0 && counts.beyond + counts.rim > 1);
};
