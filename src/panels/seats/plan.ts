import type { Project } from '../../model/project.ts';
import { roomShape } from '../../model/room/shape.ts';
import { seatPoses } from '../../model/seating.ts';
import { spotsApart } from './apart.ts';

/** Which way the plan lies: the picture at the top, or at the left when the strip is wide and low. */
export type PlanTurn = 'upright' | 'across';

export interface PlanRect {
  /** Pixels from the drawing's left and top edge. */
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export interface PlanSeat extends PlanRect {
  readonly id: string;
  /** Its place in its row, from 1, as its title says. */
  readonly number: number;
  /** Where its back is on the drawing. */
  readonly back: 'left' | 'right' | 'top' | 'bottom';
  /** How far beyond its edges a hand may miss it, pixels to each side and up and down; no two chairs share a place. */
  readonly reachX: number;
  readonly reachY: number;
}

export interface SeatPlanDrawing {
  readonly turn: PlanTurn;
  readonly width: number;
  readonly height: number;
  readonly picture: PlanRect;
  /** The walls' corners, x and y in pixels; null for a rectangle, which fills the drawing. */
  readonly outline: readonly (readonly [number, number])[] | null;
  readonly seats: readonly PlanSeat[];
  readonly subwoofers: readonly (PlanRect & { readonly id: string })[];
  readonly risers: readonly (PlanRect & { readonly id: string })[];
  /** What stands on the floor and may stand in the way; what hangs is left out. */
  readonly objects: readonly (PlanRect & { readonly id: string })[];
}

/** What a plan may take of the page, pixels. */
export interface PlanSpace {
  readonly maxWidth: number;
  readonly maxHeight: number;
  /**
   * Chairs are at least this far apart from middle to middle, one way or the other: nearer ones, for a finger cannot tell
   * them apart, are drawn beside where they stand. 0 for no such wish.
   */
  readonly leastPx?: number;
}

/** How far behind the eyes a chair's middle stands, and how deep it is, metres: enough for a plan this small. */
const CHAIR_BEHIND_EYE_M = 0.1;
const CHAIR_DEPTH_M = 0.85;
/** What begins higher than this hangs: a beam, a lamp over the table. */
const HANGS_FROM_M = 1.2;

/** Which way is behind a sitter, as steps along x and z: to the nearest quarter of a turn, since chairs are drawn square. */
const behindOf = (facingDeg: number): readonly [x: number, z: number] => {
  const quarter = ((Math.round(facingDeg / 90) % 4) + 4) % 4;
  return (
    [
      [0, 1],
      [-1, 0],
      [0, -1],
      [1, 0],
    ] as const
  )[quarter];
};

const sideOf = (turn: PlanTurn, x: number, z: number): PlanSeat['back'] => {
  const [right, down] = turn === 'across' ? [z, -x] : [x, z];
  if (right !== 0) return right > 0 ? 'right' : 'left';
  return down > 0 ? 'bottom' : 'top';
};

const middleOf = ({ left, top, width, height }: PlanRect) => ({ x: left + width / 2, y: top + height / 2 });

/** A hand may miss a chair by this much wherever no other chair is near. */
const EASY_PX = 6;

/**
 * How far each chair's edges may be missed: up to `leastPx` across where there is room, never beyond the middle between it
 * and another.
 */
const withReach = (seats: readonly Omit<PlanSeat, 'reachX' | 'reachY'>[], leastPx: number): readonly PlanSeat[] =>
  seats.map((seat) => {
    let reachX = Math.max(EASY_PX, (leastPx - seat.width) / 2);
    let reachY = Math.max(EASY_PX, (leastPx - seat.height) / 2);
    const at = middleOf(seat);
    const most = (away: number, own: number, others: number) =>
      Math.max(0, Math.min(away / 2 - own / 2, away - (own + others) / 2));
    for (const other of seats) {
      if (other === seat) continue;
      const to = middleOf(other);
      const [awayX, awayY] = [Math.abs(at.x - to.x), Math.abs(at.y - to.y)];
      const gapX = awayX - (seat.width + other.width) / 2;
      const gapY = awayY - (seat.height + other.height) / 2;
      // Beside each other both ways, they are told apart the way their middles are farther apart.
      const sideways = Math.min(gapX, gapY) >= 0 ? awayX >= awayY : gapX >= gapY;
      if (sideways) reachX = Math.min(reachX, most(awayX, seat.width, other.width));
      else reachY = Math.min(reachY, most(awayY, seat.height, other.height));
    }
    return { ...seat, reachX, reachY };
  });

/** Chairs moved apart where they are too near, each no larger than the room between it and the others. */
const apart = <Chair extends PlanRect>(
  chairs: readonly Chair[],
  board: { readonly width: number; readonly height: number },
  leastPx: number,
): readonly Chair[] => {
  const wishes = chairs.map(middleOf);
  const spots = spotsApart(wishes, board, leastPx);
  return chairs.map((chair, i) => {
    let { width, height } = chair;
    spots.forEach(({ x, y }, k) => {
      const awayX = Math.abs(x - spots[i].x);
      const awayY = Math.abs(y - spots[i].y);
      const over = k !== i && awayX < (width + chairs[k].width) / 2 && awayY < (height + chairs[k].height) / 2;
      if (over && awayX >= awayY) width = Math.min(width, awayX);
      else if (over) height = Math.min(height, awayY);
    });
    return { ...chair, width, height, left: spots[i].x - width / 2, top: spots[i].y - height / 2 };
  });
};

/** The room from above, true to scale, as large as fits; lying whichever way is larger unless it is told. */
export const drawSeatPlan = (
  project: Project,
  { maxWidth, maxHeight, leastPx = 0 }: PlanSpace,
  wanted?: PlanTurn,
): SeatPlanDrawing => {
  const { minM, maxM, corners } = roomShape(project);
  const [leastX, , leastZ] = minM;
  const [widthM, lengthM] = [maxM[0] - leastX, maxM[2] - leastZ];
  const acrossScale = Math.min(maxWidth / lengthM, maxHeight / widthM);
  const uprightScale = Math.min(maxWidth / widthM, maxHeight / lengthM);
  const turn = wanted ?? (uprightScale > acrossScale ? 'upright' : 'across');
  const across = turn === 'across' ? lengthM : widthM;
  const down = turn === 'across' ? widthM : lengthM;
  const scale = turn === 'across' ? acrossScale : uprightScale;
  const board = { width: across * scale, height: down * scale };
  // Lying across, the picture is at the left: a person facing it has their right hand up.
  const point = (x: number, z: number): readonly [number, number] =>
    turn === 'across' ? [(z - leastZ) * scale, (maxM[0] - x) * scale] : [(x - leastX) * scale, (z - leastZ) * scale];
  const rect = (x0: number, x1: number, z0: number, z1: number): PlanRect => {
    const [left, top] = turn === 'across' ? point(x1, z0) : point(x0, z0);
    const [wide, deep] = [(x1 - x0) * scale, (z1 - z0) * scale];
    return turn === 'across' ? { left, top, width: deep, height: wide } : { left, top, width: wide, height: deep };
  };
  const around = (x: number, z: number, wide: number, deep: number) =>
    rect(x - wide / 2, x + wide / 2, z - deep / 2, z + deep / 2);
  const chairs = seatPoses(project).map(({ row, seat, seatIndex, facingDeg }) => {
    const [behindX, behindZ] = behindOf(facingDeg);
    const x = seat.xM + CHAIR_BEHIND_EYE_M * behindX;
    const z = (seat.eyeZM ?? row.eyeZM) + CHAIR_BEHIND_EYE_M * behindZ;
    const size = [row.seat.widthM * 0.94, CHAIR_DEPTH_M] as const;
    const [wide, deep] = behindX === 0 ? size : [size[1], size[0]];
    return { id: seat.id, number: seatIndex + 1, back: sideOf(turn, behindX, behindZ), ...around(x, z, wide, deep) };
  });
  const { picture } = project;
  return {
    turn,
    ...board,
    picture: rect(
      picture.centreXM - picture.widthM / 2,
      picture.centreXM + picture.widthM / 2,
      leastZ + picture.offFrontWallM,
      leastZ + picture.offFrontWallM + 0.06,
    ),
    outline: project.room.plan.shape === 'polygon' ? corners.map(([x, z]) => point(x, z)) : null,
    seats: withReach(apart(chairs, board, leastPx), leastPx),
    subwoofers: project.subwoofers.map(({ id, atM, sizeM }) => ({ id, ...around(atM[0], atM[2], sizeM[0], sizeM[2]) })),
    objects: project.room.objects
      .filter(({ minM }) => minM[1] < HANGS_FROM_M)
      .map(({ id, minM, maxM }) => ({ id, ...rect(minM[0], maxM[0], minM[2], maxM[2]) })),
    risers: project.rows.flatMap(({ id, riser }) =>
      riser ? [{ id, ...rect(riser.fromXM, riser.toXM, riser.fromZM, riser.toZM) }] : [],
    ),
  };
};

export type Direction = 'left' | 'right' | 'up' | 'down';

/** The nearest seat that way, looking along the direction first and across it half as much; the same seat at the edge. */
export const neighbour = (seats: readonly PlanSeat[], id: string, direction: Direction): string => {
  const from = seats.find((seat) => seat.id === id);
  if (!from) return id;
  const a = middleOf(from);
  let best = id;
  let least = Number.POSITIVE_INFINITY;
  for (const seat of seats) {
    const b = middleOf(seat);
    const horizontal = direction === 'left' || direction === 'right';
    const sign = direction === 'right' || direction === 'down' ? 1 : -1;
    const along = sign * (horizontal ? b.x - a.x : b.y - a.y);
    const aside = Math.abs(horizontal ? b.y - a.y : b.x - a.x);
    const cost = along + 2 * aside;
    if (seat.id !== id && along > 0.5 && cost < least) {
      least = cost;
      best = seat.id;
    }
  }
  return best;
};
