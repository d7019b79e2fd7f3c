import { radiansOf, wrapDegrees } from '../../math/angles.ts';
import type { Vec3 } from '../../math/vec3.ts';

/**
 * The loudspeaker systems of ITU-R BS.2051. Positions read in the layout data of a public broadcasters' renderer derived
 * from BS.2051-1; the letters C, D, E, F and I read in public data, the others from memory. Where the data gives no range
 * the position is a point. LFE loudspeakers have a direction in systems F and H only.
 * Azimuths in this file are the standard's: degrees, positive to the LEFT. `azimuthFromItu` turns them.
 */
export type Range = readonly [low: number, high: number];

export interface ItuPosition {
  readonly label: string;
  /** Null where the standard names none (the screen pair of system G) or it has no meaning (straight above). */
  readonly azimuthDeg: number | null;
  readonly azimuthRangeDeg: Range | null;
  readonly elevationDeg: number;
  readonly elevationRangeDeg: Range;
}

export type SystemLetter = 'A' | 'B' | 'C' | 'D' | 'E' | 'F' | 'G' | 'H' | 'I' | 'J';

export interface ItuSystem {
  readonly letter: SystemLetter;
  /** Loudspeakers in the upper + middle + bottom layer. */
  readonly layers: string;
  readonly positions: readonly ItuPosition[];
  /** LFE loudspeakers with a stated place; they stand beside the layout and take no part in naming it. */
  readonly lfe: readonly ItuPosition[];
}

const level: Range = [0, 0];
const at = (
  label: string,
  azimuthDeg: number | null,
  azimuthRangeDeg: Range | null = azimuthDeg === null ? null : [azimuthDeg, azimuthDeg],
  elevationDeg = 0,
  elevationRangeDeg: Range = level,
): ItuPosition => ({ label, azimuthDeg, azimuthRangeDeg, elevationDeg, elevationRangeDeg });

const negative = (value: number): number => (value === 0 ? 0 : -value);

/** The same position on the other side: the label's and the azimuth's sign change. */
const mirrored = (p: ItuPosition): ItuPosition => ({
  ...p,
  label: p.label.replace('+', '-'),
  azimuthDeg: p.azimuthDeg === null ? null : negative(p.azimuthDeg),
  azimuthRangeDeg: p.azimuthRangeDeg === null ? null : [negative(p.azimuthRangeDeg[1]), negative(p.azimuthRangeDeg[0])],
});
const pair = (p: ItuPosition): ItuPosition[] => [p, mirrored(p)];

const centre = at('M+000', 0);
const fronts = pair(at('M+030', 30));
const upperFronts = pair(at('U+030', 30, [30, 45], 30, [30, 55]));
const fiveLevel = [centre, ...fronts, ...pair(at('M+110', 110, [100, 120]))];
const nineD = [...fiveLevel, ...upperFronts, ...pair(at('U+110', 110, [100, 135], 30, [30, 55]))];
const sevenLevel = [
  centre,
  ...pair(at('M+030', 30, [30, 45])),
  ...pair(at('M+090', 90, [85, 110])),
  ...pair(at('M+135', 135, [120, 150])),
];
const upperFour = [
  ...pair(at('U+045', 45, [30, 45], 30, [30, 55])),
  ...pair(at('U+135', 135, [100, 150], 30, [30, 55])),
];

const twoLfe: readonly ItuPosition[] = [
  at('LFE1', 45, [30, 90], -30, [-30, -15]),
  at('LFE2', -45, [-90, -30], -30, [-30, -15]),
];

export const ituSystems: readonly ItuSystem[] = [
  { letter: 'A', layers: '0+2+0', lfe: [], positions: fronts },
  {
    letter: 'B',
    layers: '0+5+0',
    lfe: [],
    positions: [centre, ...fronts, ...pair(at('M+110', 110, [100, 120], 0, [0, 15]))],
  },
  {
    letter: 'C',
    layers: '2+5+0',
    lfe: [],
    positions: [centre, ...fronts, ...pair(at('M+110', 110, [100, 120], 0, [0, 15])), ...upperFronts],
  },
  { letter: 'D', layers: '4+5+0', lfe: [], positions: nineD },
  { letter: 'E', layers: '4+5+1', lfe: [], positions: [...nineD, at('B+000', 0, [0, 0], -30, [-30, -15])] },
  {
    letter: 'F',
    layers: '3+7+0',
    lfe: twoLfe,
    positions: [
      centre,
      ...fronts,
      ...pair(at('U+045', 45, [30, 45], 30, [30, 45])),
      ...pair(at('M+090', 90, [60, 150])),
      ...pair(at('M+135', 135, [60, 150])),
      at('UH+180', 180, [180, 180], 45, [45, 90]),
    ],
  },
  {
    letter: 'G',
    layers: '4+9+0',
    lfe: [],
    positions: [...sevenLevel, ...pair(at('M+SC', null, [5, 25])), ...upperFour],
  },
  {
    letter: 'H',
    layers: '9+10+3',
    lfe: twoLfe,
    positions: [
      at('M+000', 0, [0, 0], 0, [0, 5]),
      ...pair(at('M+030', 30, [22.5, 30], 0, [0, 5])),
      ...pair(at('M+060', 60, [45, 60], 0, [0, 5])),
      ...pair(at('M+090', 90, [90, 90], 0, [0, 15])),
      ...pair(at('M+135', 135, [110, 135], 0, [0, 15])),
      at('M+180', 180, [180, 180], 0, [0, 15]),
      at('U+000', 0, [0, 0], 30, [30, 45]),
      ...pair(at('U+045', 45, [45, 60], 30, [30, 45])),
      ...pair(at('U+090', 90, [90, 90], 30, [30, 45])),
      ...pair(at('U+135', 135, [110, 135], 30, [30, 45])),
      at('U+180', 180, [180, 180], 30, [30, 45]),
      at('T+000', null, null, 90, [90, 90]),
      at('B+000', 0, [0, 0], -30, [-30, -15]),
      ...pair(at('B+045', 45, [45, 60], -30, [-30, -15])),
    ],
  },
  { letter: 'I', layers: '0+7+0', lfe: [], positions: sevenLevel },
  { letter: 'J', layers: '4+7+0', lfe: [], positions: [...sevenLevel, ...upperFour] },
];

export const systemOf = (letter: SystemLetter): ItuSystem => {
  const found = ituSystems.find((system) => system.letter === letter);
  if (!found) throw new Error(`No loudspeaker system "${letter}".`);
  return found;
};

/** A label's position in a system, or null where the system has no such loudspeaker. */
export const positionIn = (letter: SystemLetter, label: string): ItuPosition | null =>
  [...systemOf(letter).positions, ...systemOf(letter).lfe].find((p) => p.label === label) ?? null;

/** The systems that hold a label, A first. */
export const systemsWith = (label: string): SystemLetter[] =>
  ituSystems.filter((s) => positionIn(s.letter, label) !== null).map((s) => s.letter);

/** A label's nominal direction: the same in every system that has it. Azimuth positive LEFT; null where none is named. */
export const nominalOf = (label: string): { azimuthDeg: number | null; elevationDeg: number } | null => {
  const [letter] = systemsWith(label);
  const position = letter ? positionIn(letter, label) : null;
  return position && { azimuthDeg: position.azimuthDeg, elevationDeg: position.elevationDeg };
};

/** Between the standard's azimuth (positive left) and the report's (positive right): its own inverse. In (-180, 180]. */
export const azimuthFromItu = (azimuthDeg: number): number => wrapDegrees(negative(azimuthDeg));

/**
 * A point `distanceM` from the ear in document axes (x right, y up, z away from the picture), for a direction as the
 * standard writes it (azimuth positive LEFT).
 */
export const pointFromItu = (azimuthDeg: number, elevationDeg: number, distanceM: number): Vec3 => {
  const azimuth = radiansOf(azimuthDeg);
  const elevation = radiansOf(elevationDeg);
  const levelM = distanceM * Math.cos(elevation);
  return [-levelM * Math.sin(azimuth), distanceM * Math.sin(elevation), -levelM * Math.cos(azimuth)];
};
