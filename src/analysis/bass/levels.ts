import type { UnitResponses } from '../../engines/bass/room-field.ts';
import { type Drive, driveWeights } from '../inputs/drives.ts';

/**
 * Levels at every receiver, dB against the free field at 1 m of one subwoofer at 0 dB: 20 log10 |sum of drive x unit
 * response|, one array of frequencies a receiver. Minus infinity where nothing sounds.
 */
export const receiverLevels = (
  units: UnitResponses,
  drives: readonly Drive[],
  frequenciesHz: Float64Array,
): Float64Array[] => {
  const { sources, receivers, frequencies, re, im } = units;
  const weights = new Float64Array(2 * sources);
  const levels = Array.from({ length: receivers }, () => new Float64Array(frequencies));
  for (let f = 0; f < frequencies; f += 1) {
    driveWeights(drives, frequenciesHz[f], weights);
    for (let receiver = 0; receiver < receivers; receiver += 1) {
      let sumRe = 0;
      let sumIm = 0;
      for (let source = 0; source < sources; source += 1) {
        const at = (source * receivers + receiver) * frequencies + f;
        const a = weights[2 * source];
        const b = weights[2 * source + 1];
        sumRe += a * re[at] - b * im[at];
        sumIm += a * im[at] + b * re[at];
      }
      levels[receiver][f] = 10 * Math.log10(sumRe * sumRe + sumIm * sumIm);
    }
  }
  return levels;
};

/** Standard deviation over receivers at one place of the arrays, divisor n - 1. */
export const deviationAt = (levels: readonly Float64Array[], at: number): number => {
  const n = levels.length;
  let mean = 0;
  for (const level of levels) mean += level[at] / n;
  let squares = 0;
  for (const level of levels) squares += (level[at] - mean) ** 2;
  return Math.sqrt(squares / (n - 1));
};

/** The spread figures over a grid of frequencies; null for fewer than two receivers or where nothing sounds. */
export interface SpreadFigures {
  readonly meanSpreadDb: number | null;
  readonly meanVarianceDb2: number | null;
  readonly maxMinDb: number | null;
}

const nothing: SpreadFigures = { meanSpreadDb: null, meanVarianceDb2: null, maxMinDb: null };

/**
 * Means over the first `length` frequencies of: the standard deviation over seats, its square (mean spatial variance), and
 * the greatest less the least level over seats.
 */
export const spreadFigures = (levels: readonly Float64Array[], length: number): SpreadFigures => {
  if (levels.length < 2) return nothing;
  let deviation = 0;
  let variance = 0;
  let range = 0;
  for (let f = 0; f < length; f += 1) {
    const here = deviationAt(levels, f);
    let least = Number.POSITIVE_INFINITY;
    let most = Number.NEGATIVE_INFINITY;
    for (const level of levels) {
      least = Math.min(least, level[f]);
      most = Math.max(most, level[f]);
    }
    deviation += here / length;
    variance += (here * here) / length;
    range += (most - least) / length;
  }
  if (!Number.isFinite(deviation)) return nothing;
  return { meanSpreadDb: deviation, meanVarianceDb2: variance, maxMinDb: range };
};
