import type { Project } from '../../model/project.ts';
import { lowestTop, pointOn, wallFrame, wallId, wallNamed, wallOfItem } from '../../model/room/places.ts';
import { roomShape } from '../../model/room/shape.ts';
import type { RoomWall } from '../../model/room/walls.ts';
import type { Lamp } from './lamps.ts';

export const SCONCE_HEIGHT_M = 1.72;
export const SCONCE_STAND_OFF_M = 0.09;
/** How much clear wall a sconce wants around its body, and half of that body along the wall and up it. */
const CLEAR_M = 0.32;
const HALF_WIDE_M = 0.06;
const HALF_TALL_M = 0.13;
/** What a wall has to be to carry one. */
const LEAST_WALL_M = 2.05;
const UNDER_CEILING_M = 0.45;

/** A rectangle on a wall: along it and up. */
interface Taken {
  readonly from: number;
  readonly to: number;
  readonly bottom: number;
  readonly top: number;
}

/** What already hangs on a wall or stands close before it. */
const takenOn = (project: Project, wall: RoomWall): Taken[] => {
  const { room, loudspeakers } = project;
  const hung = [...room.openings, ...room.patches]
    .filter((item) => wallOfItem(project, item) === wall)
    .map(({ fromM, widthM, bottomM, heightM }) => ({
      from: fromM,
      to: fromM + widthM,
      bottom: bottomM,
      top: bottomM + heightM,
    }));
  const near = loudspeakers.flatMap(({ atM, sizeM }): Taken[] => {
    const [dx, dz] = [atM[0] - wall.start[0], atM[2] - wall.start[1]];
    const along = dx * wall.along[0] + dz * wall.along[1];
    if (Math.abs(dx * wall.outward[0] + dz * wall.outward[1]) >= 0.5) return [];
    return [
      {
        from: along - sizeM[0] / 2,
        to: along + sizeM[0] / 2,
        bottom: atM[1] - sizeM[1] / 2,
        top: atM[1] + sizeM[1] / 2,
      },
    ];
  });
  return [...hung, ...near];
};

/** How far a sconce's body stays from a rectangle; negative where they overlap. */
const clearOf = ({ from, to, bottom, top }: Taken, along: number, y: number): number =>
  Math.max(Math.max(from - along, along - to) - HALF_WIDE_M, Math.max(bottom - y, y - top) - HALF_TALL_M);

/** Where a sconce would like to be and where it may be along the walls of one pair, each by its own share of length. */
interface Wish {
  readonly walls: readonly RoomWall[];
  readonly taken: readonly (readonly Taken[])[];
  /** The share of the wall's length wished for. */
  readonly share: number;
  readonly shares: readonly [number, number];
}

/** The place that leaves most room on all its walls, as near the wish as may be; higher only where it must be. */
const placeFor = ({ walls, taken, share, shares: [least, most] }: Wish): { share: number; y: number } => {
  const lowest = Math.min(...walls.map((wall) => lowestTop(wall, least * wall.lengthM, most * wall.lengthM)));
  const highest = lowest - UNDER_CEILING_M;
  const long = walls[0].lengthM;
  let best = { share, y: Math.min(SCONCE_HEIGHT_M, highest) };
  let bestCost = Number.POSITIVE_INFINITY;
  for (const wanted of [SCONCE_HEIGHT_M, 1.95, 2.2])
    for (let step = 0; step <= 60; step++) {
      const y = Math.min(wanted, highest);
      const at = least + ((most - least) * step) / 60;
      let clear = CLEAR_M;
      walls.forEach((wall, i) => {
        for (const rectangle of taken[i]) clear = Math.min(clear, clearOf(rectangle, at * wall.lengthM, y));
      });
      const cost = (CLEAR_M - clear) * 8 + Math.abs(at - share) * long + (y - SCONCE_HEIGHT_M) * 0.6;
      if (cost >= bestCost) continue;
      bestCost = cost;
      best = { share: at, y };
    }
  return best;
};

const sconceOn = (project: Project, wall: RoomWall, share: number, y: number): Lamp => {
  const frame = wallFrame(wall);
  const [x, , z] = pointOn(frame, share * wall.lengthM, 0);
  return {
    kind: 'sconce',
    atM: [x + frame.n[0] * SCONCE_STAND_OFF_M, y, z + frame.n[2] * SCONCE_STAND_OFF_M],
    outward: frame.n,
    strength: 1,
    wallId: wallId(project, wall),
    reachM: [share * wall.lengthM, (1 - share) * wall.lengthM],
    topM: lowestTop(wall, Math.max(0, share * wall.lengthM - 0.6), Math.min(wall.lengthM, share * wall.lengthM + 0.6)),
  };
};

const isTall = (wall: RoomWall): boolean => lowestTop(wall, 0.25 * wall.lengthM, 0.95 * wall.lengthM) >= LEAST_WALL_M;

/**
 * Two wall lights: facing each other on side walls of one length, else each where its own wall is clear; on the wall
 * behind, either side of its middle, where the side walls are too low.
 */
export const sconcesOf = (project: Project): Lamp[] => {
  const shape = roomShape(project);
  const sides = (['left', 'right'] as const).flatMap((name) => wallNamed(shape, name) ?? []).filter(isTall);
  if (sides.length === 2) {
    const taken = sides.map((wall) => takenOn(project, wall));
    const shares = [0.25, 0.95] as const;
    const [a, b] = sides;
    const facing = a.start[1] === b.start[1] && Math.abs(a.lengthM - b.lengthM) < 1e-9;
    const places = facing
      ? Array(2).fill(placeFor({ walls: sides, taken, share: 0.78, shares }))
      : sides.map((wall, i) => placeFor({ walls: [wall], taken: [taken[i]], share: 0.78, shares }));
    return sides.map((wall, i) => sconceOn(project, wall, places[i].share, places[i].y));
  }
  const back = wallNamed(shape, 'back');
  if (!back) return [];
  const taken = takenOn(project, back);
  const half = [
    [0.12, 0.42],
    [0.58, 0.88],
  ] as const;
  return half.map((shares) => {
    const place = placeFor({ walls: [back], taken: [taken], share: (shares[0] + shares[1]) / 2, shares });
    return sconceOn(project, back, place.share, place.y);
  });
};
