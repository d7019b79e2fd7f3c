import type { Vec3 } from '../../math/vec3.ts';
import { loft } from '../mesh/loft.ts';
import type { RawMesh } from '../mesh/raw.ts';

/** Median man's head, British, 19 to 65 (facts 3.2): breadth 155 mm, length 195 mm from brow to back. */
const HEAD_BREADTH_M = 0.155;
const HEAD_LENGTH_M = 0.195;
/** Chin below the eye, scaled with the crown; the widest ring stands a little over the eye. Derived from DIN 33402-2's
 *  head heights as remembered; no measure hangs on it. */
const CHIN_BELOW_EYE_M = 0.112;

/**
 * How far the middle of the head's length lies behind the eye. The ear line is the middle (contract); the eye stays at
 * least 12 mm inside the brow, where the read figure is about 20 mm (facts 3.2).
 */
export const headMiddleBehindEyeM = (earBehindEyeM: number): number =>
  Math.max(0.05, Math.min(earBehindEyeM, HEAD_LENGTH_M / 2 - 0.012));

const AROUND = 20;

/** A smooth head with a jaw and no features, about the eye point, looking to -z. Its crown is exactly at `crownM`. */
export const headMesh = (crownM: number, earBehindEyeM: number): RawMesh => {
  const middle = headMiddleBehindEyeM(earBehindEyeM);
  const widest = Math.min(0.012, crownM / 4);
  const chin = -CHIN_BELOW_EYE_M * (crownM / 0.115) ** 0.5;
  const ring = (y: number, breadth: number, front: number, back: number): Vec3[] =>
    Array.from({ length: AROUND }, (_, i): Vec3 => {
      const angle = (2 * Math.PI * i) / AROUND;
      const c = Math.cos(angle);
      const s = Math.sin(angle);
      // Counter-clockwise from above: from +z over +x to -z. The sides are a little fuller than an ellipse's.
      const fuller = 1 / (Math.abs(c) ** 2.1 + Math.abs(s) ** 2.1) ** (1 / 2.1);
      return [breadth * s * fuller, y, middle + (c > 0 ? back : front) * c * fuller];
    });
  const rings: Vec3[][] = [];
  const breadth = HEAD_BREADTH_M / 2;
  const length = HEAD_LENGTH_M / 2;
  for (const t of [1, 0.9, 0.68, 0.42, 0.2]) {
    // From the chin up to the widest ring: the jaw narrows, the nape draws in under the skull.
    const under = t === 1 ? 0.62 : 1;
    const jaw = breadth * (1 - 0.42 * t ** 1.9) * under;
    const front = length * (1 - 0.17 * t ** 2.4) * (t === 1 ? 0.8 : 1);
    const nape = length * (1 - 0.62 * t ** 1.6) * under;
    rings.push(ring(widest + (chin - widest) * t, jaw, front, nape));
  }
  for (const angle of [0, 0.38, 0.74, 1.06, 1.33]) {
    const inward = Math.cos(angle);
    rings.push(ring(widest + (crownM - widest) * Math.sin(angle), breadth * inward, length * inward, length * inward));
  }
  return loft([0, chin - 0.003, middle - length * 0.25], rings, [0, crownM, middle]);
};
