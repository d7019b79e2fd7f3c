import { radiansOf } from '../../math/angles.ts';
import type { Seat } from '../../model/project.ts';
import type { SeatPose } from '../../model/seating.ts';
import { type Part, partsOf, type RawPart } from '../geometries.ts';
import { standing } from '../placement.ts';
import type { Placement, Solid } from '../solid.ts';
import { chairParts, sofaArm } from './chair-makers.ts';
import { type ChairMeasures, measuresOf } from './chair-measures.ts';
import { seatPlacement } from './sitting.ts';

const END_ARM_M = 0.15;
/** Seats of a sofa farther apart than this have no arm between them but stand as two pieces. */
const WIDEST_SHARED_ARM_M = 0.34;
/** Seats nearer than this meet with no arm between them. */
const LEAST_SHARED_ARM_M = 0.06;

const keyOf = (m: ChairMeasures): (string | number)[] => [
  m.furniture,
  m.widthM,
  m.panM,
  m.backM ?? 'none',
  m.reclineDeg,
  m.legRaiseDeg,
];

/** Upholstery bends softly over all but its true edges. */
const soft = (parts: readonly RawPart[]): RawPart[] => parts.map((part) => ({ ...part, creaseDeg: 78 }));

const at = (id: string, placement: Placement, parts: readonly Part[], side = ''): Solid[] =>
  parts.map(({ part, material, geometry }) => ({ kind: 'seat', id, part: part + side, material, geometry, placement }));

/** The gap from a seat's edge to its sofa neighbour's on one side (-1 left, 1 right), or null where it stands apart. */
const gapBeside = (pose: SeatPose, side: -1 | 1): number | null => {
  const { row, seat } = pose;
  const zOf = (other: Seat): number => other.eyeZM ?? row.eyeZM;
  let least: number | null = null;
  for (const other of row.seats) {
    if (other === seat || (other.facingDeg ?? 0) !== (seat.facingDeg ?? 0) || zOf(other) !== zOf(seat)) continue;
    const gap = side * (other.xM - seat.xM) - row.seat.widthM;
    if (side * (other.xM - seat.xM) > 0 && (least === null || gap < least)) least = gap;
  }
  // A row that is turned no longer lies along x: its seats stand side by side each with its own arms.
  return least !== null && (pose.facingDeg === 0 || least < LEAST_SHARED_ARM_M) ? least : null;
};

/** A sofa's arms that belong to this seat: its outer ends, and the arm shared with the neighbour to its right. */
const sofaArms = (pose: SeatPose, measures: ChairMeasures): Solid[] => {
  const stands = seatPlacement(pose);
  const arm = (side: -1 | 1, widthM: number): Solid[] => {
    const out = side * (measures.widthM / 2 + widthM / 2);
    const turn = radiansOf(pose.facingDeg);
    const [x, y, z] = stands.positionM;
    const placement = standing([x + out * Math.cos(turn), y, z + out * Math.sin(turn)], stands.yawDeg);
    const key = [measures.panM, widthM];
    const parts = partsOf('sofa-arm', key, () => soft(sofaArm(measures, widthM)));
    return at(pose.seat.id, placement, parts, side < 0 ? '-left' : '-right');
  };
  const left = gapBeside(pose, -1);
  const right = gapBeside(pose, 1);
  const standsApart = (gap: number | null): boolean => gap === null || gap > WIDEST_SHARED_ARM_M;
  const solids: Solid[] = [];
  if (standsApart(left)) solids.push(...arm(-1, END_ARM_M));
  if (standsApart(right)) solids.push(...arm(1, END_ARM_M));
  else if (right !== null && right > LEAST_SHARED_ARM_M) solids.push(...arm(1, right));
  return solids;
};

/**
 * The chair of one seat, kind 'seat' with the seat's id. Single chairs and recliners are as wide as the file says, arms
 * included; a sofa's seat is as wide as the file says between its arms, and its end arms stand outside.
 */
export const chairSolids = (pose: SeatPose): Solid[] => {
  const measures = measuresOf(pose.row, pose);
  const chair = at(
    pose.seat.id,
    seatPlacement(pose),
    partsOf('chair', keyOf(measures), () => soft(chairParts(measures))),
  );
  return measures.furniture === 'sofa' ? [...chair, ...sofaArms(pose, measures)] : chair;
};
