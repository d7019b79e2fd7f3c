import type { Range } from './itu-layout.ts';

/**
 * What a loudspeaker does in a home layout, from its label. `surround` is the one pair of a five-channel layout: it is kept
 * apart from `side` because with no rear pair behind it it does the work of both.
 */
export type HomeGroup = 'centre' | 'front' | 'wide' | 'side' | 'surround' | 'rear' | 'height';

/** The target sets that are common practice; the third set, `standard`, is BS.2051 itself. */
export type HomeSet = 'living' | 'diffuse';

const groups: readonly (readonly [RegExp, HomeGroup])[] = [
  [/^M[+-]000$/, 'centre'],
  [/^M[+-]030$/, 'front'],
  [/^M[+-]060$/, 'wide'],
  [/^M[+-]090$/, 'side'],
  [/^M[+-]110$/, 'surround'],
  [/^M[+-]135$/, 'rear'],
  [/^U[+-](030|045|090|110|135)$/, 'height'],
];

/** The home group of a label, or null for one that homes have no habit for (screen pair, rear centre, top, bottom). */
export const homeGroupOf = (label: string): HomeGroup | null => groups.find(([name]) => name.test(label))?.[1] ?? null;

/** The size of the angle from straight ahead, on either side, and the elevation; null where no habit is stated. */
export interface HomeRange {
  readonly azimuthSizeDeg: Range | null;
  readonly elevationDeg: Range;
}

const frontElevation: Range = [-15, 10];
const heightElevation: Range = [30, 55];
const earLayer = { withHeights: [0, 20] as Range, alone: [15, 35] as Range };

/**
 * The home target range of a group. Common practice, no source, save where named.
 *
 * Fronts 22 to 32 degrees, elevation -15 to +10 (a centre under a panel sits near -10); rears 135 to 157; heights 30 to 55
 * (also BS.2051). The ear layer (sides and rears) lies at 0 to 20 degrees under a height layer, so that the two stay distinct, and
 * at 15 to 35 without one, to pass over heads.
 *
 * A five-channel surround pair takes 90 to 120: from the sides' 90, because a surround is to be heard from the side rather
 * than from behind, to the 120 at which BS.775 and BS.2051 still allow it, so that a pair right by the standard is never
 * wrong at home.
 *
 * `diffuse` differs from `living` in the ear layer only, high and wide: 15 to 35 degrees up whether or not there are
 * heights, sides from 80 to 120.
 */
export const homeRange = (set: HomeSet, group: HomeGroup, hasHeights: boolean): HomeRange => {
  const diffuse = set === 'diffuse';
  const ear = hasHeights && !diffuse ? earLayer.withHeights : earLayer.alone;
  switch (group) {
    case 'centre':
      return { azimuthSizeDeg: null, elevationDeg: frontElevation };
    case 'front':
      return { azimuthSizeDeg: [22, 32], elevationDeg: frontElevation };
    case 'wide':
      return { azimuthSizeDeg: [50, 70], elevationDeg: frontElevation };
    case 'side':
      return { azimuthSizeDeg: diffuse ? [80, 120] : [90, 110], elevationDeg: ear };
    case 'surround':
      return { azimuthSizeDeg: diffuse ? [80, 120] : [90, 120], elevationDeg: ear };
    case 'rear':
      return { azimuthSizeDeg: [135, 157], elevationDeg: ear };
    case 'height':
      return { azimuthSizeDeg: null, elevationDeg: heightElevation };
  }
};
