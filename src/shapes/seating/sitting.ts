import type { Row } from '../../model/project.ts';
import type { SeatPose } from '../../model/seating.ts';
import { standing } from '../placement.ts';
import type { Placement } from '../solid.ts';

/**
 * What chair and sitter share, in the chair's own axes: origin on the row's floor under the hip, which stands under the
 * eye of an upright sitter; front towards -z. Metres. Common practice, no source, chosen so that a grown person's body
 * (facts 3.2: buttock-knee 610 mm, buttock-popliteal 495 mm) sits with the back on the backrest.
 */
export const BACK_PLANE_M = 0.19;
export const SEAT_FRONT_M = -0.33;
/** Armrest above the pan (elbow above seat, DIN 33402-2: 240 mm men, 230 mm women; a little lower for comfort). */
export const ARM_ABOVE_PAN_M = 0.2;

export type Furniture = Row['furniture'];

/** Width of each arm of a chair whose file width is the whole chair's. */
export const armWidthM = (furniture: Furniture, widthM: number): number =>
  furniture === 'recliner' ? Math.min(0.12, widthM * 0.17) : Math.min(0.075, widthM * 0.12);

/** Where a sitter's elbows can rest: half the distance between the armrests' middles, or null for none. */
export const elbowHalfM = (furniture: Furniture, widthM: number): number | null => {
  if (furniture !== 'single' && furniture !== 'recliner') return null;
  const half = widthM / 2 - armWidthM(furniture, widthM) / 2;
  return half >= 0.24 && half <= 0.37 ? half : null;
};

/** How far the legs are raised from hanging straight down, degrees: 0 sitting, 90 lying. */
export const legRaiseDeg = (furniture: Furniture, reclineDeg: number): number => {
  if (furniture === 'chaise') return 90;
  return furniture === 'recliner' ? Math.min(78, reclineDeg * 2.6) : 0;
};

/** A foot rail on a high stool: under the balls of feet whose shins lean back. Common practice, no source. */
export const RAIL_BELOW_PAN_M = 0.397;
export const RAIL_Z_M = -0.309;
export const RAIL_RADIUS_M = 0.011;
export const RAIL_LEAN_DEG = 25;

/** Whether a stool is too high for feet on the floor. */
export const hasFootRail = (furniture: Furniture, panM: number): boolean =>
  furniture === 'stool' && panM - RAIL_BELOW_PAN_M > 0.12;

/** Where the chair of a pose stands. */
export const seatPlacement = ({ row, seat, facingDeg }: SeatPose): Placement =>
  standing([seat.xM, row.floorM, seat.eyeZM ?? row.eyeZM], facingDeg);

export const hasBack = (row: Row): boolean =>
  row.furniture !== 'stool' && row.seat.backHeightM > row.seat.panHeightM + 0.08;
