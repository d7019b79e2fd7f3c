import type { Vec3 } from '../../math/vec3.ts';

/** The eyes of one row: their height above the common zero and the row's place from the front wall. Metres. */
export interface RowEyes {
  readonly id: string;
  readonly eyeHeightM: number;
  readonly eyeZM: number;
}

/** How high a sight line passes over one row's eyes; negative where it passes below them. */
export interface Clearance {
  readonly rowId: string;
  readonly clearanceMm: number;
}

/**
 * The height of the sight line from `eye` to the middle of the picture's lower edge over the eyes of each row in front,
 * where it crosses that row's z: the C-value of every row passed, nearest the picture first. Rows level with the eye,
 * behind it, or at or beyond the picture do not count. Derived: a straight line.
 */
export const clearancesOver = (eye: Vec3, lowerEdge: Vec3, rows: readonly RowEyes[]): Clearance[] =>
  rows
    .filter((row) => row.eyeZM < eye[2] && row.eyeZM > lowerEdge[2])
    .sort((a, b) => a.eyeZM - b.eyeZM)
    .map((row) => {
      const share = (row.eyeZM - lowerEdge[2]) / (eye[2] - lowerEdge[2]);
      const lineM = lowerEdge[1] + (eye[1] - lowerEdge[1]) * share;
      return { rowId: row.id, clearanceMm: (lineM - row.eyeHeightM) * 1000 };
    });

/** The least C-value over the rows in front and the row that gives it; null when no row is in front. */
export const leastClearance = (eye: Vec3, lowerEdge: Vec3, rows: readonly RowEyes[]): Clearance | null =>
  clearancesOver(eye, lowerEdge, rows).reduce<Clearance | null>(
    (least, next) => (least === null || next.clearanceMm < least.clearanceMm ? next : least),
    null,
  );

/** Clearance over the crown of the head in front, mm: another quantity than C, which is measured from the eye. */
export const headClearanceMm = (clearanceMm: number, crownAboveEyeM: number): number =>
  clearanceMm - crownAboveEyeM * 1000;

/**
 * Two rows as the sightline formula of grandstand practice has them. All metres, measured from the focus (here the
 * picture's lower edge): the front eye's horizontal distance D, its height R above the focus (negative for a picture
 * whose lower edge is above the eye) and the row pitch T.
 */
export interface TwoRows {
  readonly frontDistanceM: number;
  readonly frontEyeAboveFocusM: number;
  readonly pitchM: number;
}

/** C = D (N + R) / (D + T) - R, metres, for a rise N of the row behind over the row in front. */
export const clearanceForRiserM = (rows: TwoRows, riserM: number): number =>
  (rows.frontDistanceM * (riserM + rows.frontEyeAboveFocusM)) / (rows.frontDistanceM + rows.pitchM) -
  rows.frontEyeAboveFocusM;

/** N = (R + C) (D + T) / D - R, metres: the rise that gives the clearance C. */
export const riserForClearanceM = (rows: TwoRows, clearanceM: number): number =>
  ((rows.frontEyeAboveFocusM + clearanceM) * (rows.frontDistanceM + rows.pitchM)) / rows.frontDistanceM -
  rows.frontEyeAboveFocusM;
