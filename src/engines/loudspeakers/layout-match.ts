import { wrapDegrees } from '../../math/angles.ts';
import { type ItuPosition, ituSystems, positionIn, type Range, type SystemLetter, systemsWith } from './itu-layout.ts';

/** How a set of loudspeakers compares with a system: what the system wants and is not there, and what is over. */
export interface LayoutMatch {
  readonly letter: SystemLetter;
  readonly missing: readonly string[];
  readonly extra: readonly string[];
}

/**
 * The system of BS.2051 nearest to a set of labels: the one with the fewest labels missing and over, the smaller system at
 * a tie. LFE labels do not count. Null for a set that shares no label with any system.
 */
export const matchLayout = (labels: readonly string[]): LayoutMatch | null => {
  const given = new Set(labels.filter((label) => !label.startsWith('LFE')));
  let best: LayoutMatch | null = null;
  for (const { letter, positions } of ituSystems) {
    const wanted = new Set(positions.map((p) => p.label));
    const missing = [...wanted].filter((label) => !given.has(label));
    const extra = [...given].filter((label) => !wanted.has(label));
    if (missing.length === wanted.size) continue;
    const faults = missing.length + extra.length;
    const fewest = best ? best.missing.length + best.extra.length : Number.POSITIVE_INFINITY;
    const smaller = best !== null && faults === fewest && wanted.size < sizeOf(best.letter);
    if (faults < fewest || smaller) best = { letter, missing, extra };
  }
  return best;
};

const sizeOf = (letter: SystemLetter): number => ituSystems.find((s) => s.letter === letter)?.positions.length ?? 0;

/** A range of the standard and the system it was taken from. Azimuth positive LEFT. */
export interface StandardRange {
  readonly letter: SystemLetter;
  readonly position: ItuPosition;
}

/**
 * The standard's range for a label: of the system asked for, else of the first system that has the label (an extra
 * loudspeaker is still judged). Null for a label no system has.
 */
export const rangeOf = (letter: SystemLetter, label: string): StandardRange | null => {
  const own = positionIn(letter, label);
  if (own) return { letter, position: own };
  const [other] = systemsWith(label);
  const position = other ? positionIn(other, label) : null;
  return other && position ? { letter: other, position } : null;
};

/**
 * How far an angle lies outside a range, in degrees round the circle the shorter way: 0 inside, positive past the high
 * end, negative short of the low end.
 */
export const degreesOutside = (angleDeg: number, [low, high]: Range): number => {
  const middle = (low + high) / 2;
  const fromMiddle = wrapDegrees(angleDeg - middle);
  const half = (high - low) / 2;
  if (Math.abs(fromMiddle) <= half) return 0;
  return fromMiddle > 0 ? fromMiddle - half : fromMiddle + half;
};

/**
 * Whether a direction (azimuth positive LEFT) lies in a position's range. `slackDeg` is for rounding or for a reader's
 * one degree; the standard has none.
 */
export const insideRange = (
  position: ItuPosition,
  azimuthDeg: number,
  elevationDeg: number,
  slackDeg = 1e-9,
): boolean => {
  const azimuthOk =
    position.azimuthRangeDeg === null || Math.abs(degreesOutside(azimuthDeg, position.azimuthRangeDeg)) <= slackDeg;
  return azimuthOk && Math.abs(degreesOutside(elevationDeg, position.elevationRangeDeg)) <= slackDeg;
};
