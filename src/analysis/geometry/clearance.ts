import { leastClearance, type RowEyes } from '../../engines/sight/c-value.ts';
import type { Vec3 } from '../../math/vec3.ts';
import type { SeatPose } from '../../model/seating.ts';

/** The eyes of every row: at the row's own z, as high as the highest eye of its seats. */
export const rowEyes = (poses: readonly SeatPose[]): RowEyes[] => {
  const eyes = new Map<string, RowEyes>();
  for (const { row, eyeM } of poses) {
    const known = eyes.get(row.id);
    const eyeHeightM = Math.max(eyeM[1], known?.eyeHeightM ?? Number.NEGATIVE_INFINITY);
    eyes.set(row.id, { id: row.id, eyeHeightM, eyeZM: row.eyeZM });
  }
  return [...eyes.values()];
};

/** The least C-value of one eye over the rows in front of its own, and the row that gives it; null with none in front. */
export const clearanceOf = (pose: SeatPose, lowerEdge: Vec3, rows: readonly RowEyes[]) =>
  leastClearance(
    pose.eyeM,
    lowerEdge,
    rows.filter(({ id }) => id !== pose.row.id),
  );
