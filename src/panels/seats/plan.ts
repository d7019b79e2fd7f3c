import type { Project } from '../../model/project.ts';
import { roomShape } from '../../model/room/shape.ts';
import { seatPoses } from '../../model/seating.ts';

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
  readonly turnDeg: number;
}

export interface SeatPlanDrawing {
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

/** How far behind the eyes a chair's middle stands, and how deep it is, metres: enough for a plan this small. */
const CHAIR_BEHIND_EYE_M = 0.1;
const CHAIR_DEPTH_M = 0.85;
/** What begins higher than this hangs: a beam, a lamp over the table. */
const HANGS_FROM_M = 1.2;

/** The room from above, true to scale, as large as fits. */
export const drawSeatPlan = (
  project: Project,
  turn: PlanTurn,
  maxWidth: number,
  maxHeight: number,
): SeatPlanDrawing => {
  const { minM, maxM, corners } = roomShape(project);
  const [leastX, , leastZ] = minM;
  const [widthM, lengthM] = [maxM[0] - leastX, maxM[2] - leastZ];
  const across = turn === 'across' ? lengthM : widthM;
  const down = turn === 'across' ? widthM : lengthM;
  const scale = Math.min(maxWidth / across, maxHeight / down);
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
  const { picture } = project;
  return {
    width: across * scale,
    height: down * scale,
    picture: rect(
      picture.centreXM - picture.widthM / 2,
      picture.centreXM + picture.widthM / 2,
      leastZ + picture.offFrontWallM,
      leastZ + picture.offFrontWallM + 0.06,
    ),
    outline: project.room.plan.shape === 'polygon' ? corners.map(([x, z]) => point(x, z)) : null,
    seats: seatPoses(project).map(({ row, seat, seatIndex, facingDeg }) => ({
      id: seat.id,
      number: seatIndex + 1,
      turnDeg: facingDeg,
      ...around(seat.xM, (seat.eyeZM ?? row.eyeZM) + CHAIR_BEHIND_EYE_M, row.seat.widthM * 0.94, CHAIR_DEPTH_M),
    })),
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
  const middle = ({ left, top, width, height }: PlanRect) => ({ x: left + width / 2, y: top + height / 2 });
  const from = seats.find((seat) => seat.id === id);
  if (!from) return id;
  const a = middle(from);
  let best = id;
  let least = Number.POSITIVE_INFINITY;
  for (const seat of seats) {
    const b = middle(seat);
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
