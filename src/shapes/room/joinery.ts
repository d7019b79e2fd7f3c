import type { Vec3 } from '../../math/vec3.ts';
import { bevelledBox } from '../mesh/bevelled-box.ts';
import { joined, type RawMesh } from '../mesh/raw.ts';
import { boxBetween } from '../mesh/rounded-box.ts';

/**
 * Joinery is made in an opening's own axes: x along the wall from the opening's middle, y up from its lower edge, z out of
 * the room from the wall's inner face (so the front, -z, looks into the room). Metres.
 */

const bar = (min: Vec3, max: Vec3, radiusM = 0.003): RawMesh => bevelledBox(min, max, radiusM);

/** A frame of four (or, for a door, three) flat bars round a rectangle, the bars' inner edges on the rectangle. */
const surround = (
  half: number,
  low: number,
  high: number,
  wide: number,
  z0: number,
  z1: number,
  sill: boolean,
): RawMesh =>
  joined(
    bar([-half - wide, low, z0], [-half, high, z1]),
    bar([half, low, z0], [half + wide, high, z1]),
    bar([-half - wide, high, z0], [half + wide, high + wide, z1]),
    ...(sill ? [bar([-half - wide, low - wide, z0], [half + wide, low, z1])] : []),
  );

export const ARCHITRAVE_M = 0.06;
const LINING_M = 0.022;

/** Lining in the reveal and a flat architrave on the room's side. `clear` says how far the architrave may reach. */
export const doorFrame = (width: number, height: number, thick: number, wide: number): RawMesh => {
  const half = width / 2 - LINING_M;
  const lining = surround(half, 0, height - LINING_M, LINING_M - 0.001, 0, thick, false);
  if (wide < 0.01) return lining;
  return joined(lining, surround(width / 2 - 0.008, 0, height - 0.008, wide, -0.014, -0.0005, false));
};

export interface LeafMeasures {
  readonly widthM: number;
  readonly heightM: number;
}

const LEAF_M = 0.04;

/** The leaf that fits the lining. */
export const leafOf = (width: number, height: number): LeafMeasures => ({
  widthM: width - 2 * LINING_M - 0.006,
  heightM: height - LINING_M - 0.009,
});

/** A framed leaf with two sunk panels a side, hinged along x = 0, reaching to +x; its middle plane at z = 0. */
export const doorLeaf = ({ widthM, heightM }: LeafMeasures): RawMesh => {
  const t = LEAF_M / 2;
  const stile = Math.min(0.1, widthM / 5);
  const rail = Math.min(0.1, heightM / 12);
  const lock = heightM * 0.46;
  const y = 0.006;
  const solid = (x0: number, y0: number, x1: number, y1: number) => bar([x0, y + y0, -t], [x1, y + y1, t]);
  const panel = (y0: number, y1: number) =>
    bar([stile - 0.004, y + y0, -t + 0.011], [widthM - stile + 0.004, y + y1, t - 0.011], 0.002);
  return joined(
    solid(0, 0, stile, heightM),
    solid(widthM - stile, 0, widthM, heightM),
    solid(stile, 0, widthM - stile, rail * 1.8),
    solid(stile, lock - rail / 2, widthM - stile, lock + rail / 2),
    solid(stile, heightM - rail, widthM - stile, heightM),
    panel(rail * 1.8 - 0.004, lock - rail / 2 + 0.004),
    panel(lock + rail / 2 - 0.004, heightM - rail + 0.004),
  );
};

/** A lever on a round rose, on both faces of the leaf. */
export const doorHandle = ({ widthM, heightM }: LeafMeasures): RawMesh => {
  const x = widthM - 0.055;
  const y = Math.min(1.02, heightM * 0.52);
  const face = LEAF_M / 2;
  const one = (sign: 1 | -1): RawMesh => {
    const z = (a: number, b: number): [number, number] => (sign > 0 ? [a, b] : [-b, -a]);
    const [rose, neck, lever] = [z(face, face + 0.008), z(face, face + 0.045), z(face + 0.034, face + 0.05)];
    return joined(
      boxBetween([x - 0.025, y - 0.025, rose[0]], [x + 0.025, y + 0.025, rose[1]], { radiusM: 0.004 }),
      boxBetween([x - 0.009, y - 0.009, neck[0]], [x + 0.009, y + 0.009, neck[1]], { radiusM: 0.004 }),
      boxBetween([x - 0.115, y - 0.009, lever[0]], [x + 0.012, y + 0.009, lever[1]], { radiusM: 0.006 }),
    );
  };
  return joined(one(1), one(-1));
};

const SASH_M = 0.05;

/** A window's fixed frame with one glazing bar each way, a sill board into the room, all set back in the reveal. */
export const windowFrame = (width: number, height: number, thick: number): RawMesh => {
  const z0 = thick * 0.45;
  const z1 = thick * 0.95;
  const rim = Math.min(SASH_M, width / 6, height / 6);
  const half = width / 2 - rim;
  const thin = Math.min(0.024, rim / 2);
  const bars = joined(
    bar([-thin / 2, rim, z0 + 0.012], [thin / 2, height - rim, z1 - 0.012]),
    ...(height > 0.9 ? [bar([-half, height * 0.62, z0 + 0.012], [half, height * 0.62 + thin, z1 - 0.012])] : []),
  );
  const sill = bar([-width / 2 - 0.04, -0.024, -0.05], [width / 2 + 0.04, -0.001, 0], 0.006);
  const inner = bar([-width / 2 + 0.001, 0, 0], [width / 2 - 0.001, 0.004, z0], 0.001);
  return joined(surround(half, rim, height - rim, rim - 0.001, z0, z1, true), bars, sill, inner);
};

/** The pane in that frame. */
export const windowPane = (width: number, height: number, thick: number): RawMesh => {
  const rim = Math.min(SASH_M, width / 6, height / 6);
  const z = thick * 0.7;
  return boxBetween([rim - width / 2, rim, z - 0.003], [width / 2 - rim, height - rim, z + 0.003], { radiusM: 0 });
};
