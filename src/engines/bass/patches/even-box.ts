import type { Admittance, Axis, BoxSpec } from '../room-field.ts';

const ACROSS: readonly (readonly [Axis, Axis])[] = [
  [1, 2],
  [0, 2],
  [0, 1],
];

/**
 * The box with every wall's patches spread evenly over it: the mean of the admittances by area, so that the room as a whole
 * absorbs as much. A picture for the moving hand; patched-box-field.ts is exact.
 */
export const evenBox = ({ sizeM, soundSpeed, admittance, patches = [] }: BoxSpec): BoxSpec => ({
  sizeM,
  soundSpeed,
  admittance: admittance.map((own, wall): Admittance => {
    const [u, v] = ACROSS[wall >> 1];
    const whole = sizeM[u] * sizeM[v];
    let [re, im] = own;
    for (const patch of patches) {
      if (patch.wall !== wall) continue;
      const share = ((patch.toM[0] - patch.fromM[0]) * (patch.toM[1] - patch.fromM[1])) / whole;
      re += share * (patch.admittance[0] - own[0]);
      im += share * (patch.admittance[1] - own[1]);
    }
    return [Math.max(0, re), im];
  }),
});
