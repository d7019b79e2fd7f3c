import { radiansOf } from '../../math/angles.ts';
import type { Placement } from '../../shapes/solid.ts';

/** Where a placement puts a part: rows of a rotation and the place, twelve numbers (r00 r01 r02 x r10 ...). */
export type WorldMatrix = Float64Array;

/** Yaw about y, positive to the right (so -z turns towards +x), after pitch, positive upwards. */
export const worldMatrix = ({ positionM, yawDeg, pitchDeg }: Placement): WorldMatrix => {
  const yaw = radiansOf(yawDeg);
  const pitch = radiansOf(pitchDeg);
  const cy = Math.cos(yaw);
  const sy = Math.sin(yaw);
  const cp = Math.cos(pitch);
  const sp = Math.sin(pitch);
  return Float64Array.of(
    cy,
    -sy * sp,
    -sy * cp,
    positionM[0],
    0,
    cp,
    -sp,
    positionM[1],
    sy,
    cy * sp,
    cy * cp,
    positionM[2],
  );
};

export const toWorld = (m: WorldMatrix, x: number, y: number, z: number, out: Float64Array): void => {
  out[0] = m[0] * x + m[1] * y + m[2] * z + m[3];
  out[1] = m[4] * x + m[5] * y + m[6] * z + m[7];
  out[2] = m[8] * x + m[9] * y + m[10] * z + m[11];
};

export const turnToWorld = (m: WorldMatrix, x: number, y: number, z: number, out: Float64Array): void => {
  out[0] = m[0] * x + m[1] * y + m[2] * z;
  out[1] = m[4] * x + m[5] * y + m[6] * z;
  out[2] = m[8] * x + m[9] * y + m[10] * z;
};
