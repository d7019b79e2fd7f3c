import { radiansOf } from '../math/angles.ts';
import type { Vec3 } from '../math/vec3.ts';
import type { Placement } from './solid.ts';

export const standing = (positionM: Vec3, yawDeg = 0, pitchDeg = 0): Placement => ({ positionM, yawDeg, pitchDeg });

export const asDrawn: Placement = standing([0, 0, 0]);

/** The columns of the turn: where the part's right (x), up (y) and back (z) point in the room. */
export const axesOf = ({ yawDeg, pitchDeg }: Placement): { right: Vec3; up: Vec3; back: Vec3 } => {
  const cy = Math.cos(radiansOf(yawDeg));
  const sy = Math.sin(radiansOf(yawDeg));
  const cp = Math.cos(radiansOf(pitchDeg));
  const sp = Math.sin(radiansOf(pitchDeg));
  return { right: [cy, 0, sy], up: [-sp * sy, cp, sp * cy], back: [-cp * sy, -sp, cp * cy] };
};

/** The placement as a 4 x 4 matrix, column by column, as WebGL and three take it. */
export const placementMatrix = (placement: Placement): Float64Array => {
  const { right, up, back } = axesOf(placement);
  return new Float64Array([...right, 0, ...up, 0, ...back, 0, ...placement.positionM, 1]);
};

/** Puts a part's points (or, with `move` false, its directions) where they are in the room. */
export const placed = (local: Float32Array, placement: Placement, move = true): Float32Array => {
  const { right, up, back } = axesOf(placement);
  const [px, py, pz] = move ? placement.positionM : [0, 0, 0];
  const out = new Float32Array(local.length);
  for (let i = 0; i < local.length; i += 3) {
    const x = local[i];
    const y = local[i + 1];
    const z = local[i + 2];
    out[i] = px + x * right[0] + y * up[0] + z * back[0];
    out[i + 1] = py + x * right[1] + y * up[1] + z * back[1];
    out[i + 2] = pz + x * right[2] + y * up[2] + z * back[2];
  }
  return out;
};

/** Yaw and pitch that turn a part's front (-z) along a direction. */
export const facing = (direction: Vec3): { yawDeg: number; pitchDeg: number } => {
  const level = Math.hypot(direction[0], direction[2]);
  const yaw = level > 1e-12 ? Math.atan2(direction[0], -direction[2]) : 0;
  return { yawDeg: (yaw * 180) / Math.PI, pitchDeg: (Math.atan2(direction[1], level) * 180) / Math.PI };
};
