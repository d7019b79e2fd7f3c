import { highPassTwo } from './filters.ts';
import { type BandOutput, CREST_DB, outputAt } from './output.ts';
import type { UnitResponses } from './room-field.ts';
import { type Drive, driveWeights } from './superpose.ts';

/** A driven subwoofer with what it can give. */
export interface DrivenSubwoofer extends Drive {
  readonly highPassHz: number;
  /** Null where the maker says nothing. */
  readonly output: BandOutput | null;
}

/** Complex weights of the subwoofers at one frequency with their own high-passes, re and im per source. */
export const chainWeights = (subwoofers: readonly DrivenSubwoofer[], frequencyHz: number, out: Float64Array): void => {
  driveWeights(subwoofers, frequencyHz, out);
  const factor = new Float64Array(2);
  for (const [s, { highPassHz }] of subwoofers.entries()) {
    highPassTwo(frequencyHz, highPassHz, factor);
    const re = out[2 * s];
    const im = out[2 * s + 1];
    out[2 * s] = re * factor[0] - im * factor[1];
    out[2 * s + 1] = re * factor[1] + im * factor[0];
  }
};

/**
 * Greatest peak level of the set at every seat, dB, index seat * frequencies + frequency; NaN where one of the subwoofers
 * states nothing. All get the same programme through their own gains and high-passes, so the first to reach its limit sets
 * the programme's, and filters common to all (crossover, equaliser) cancel:
 *
 *   greatest = 20 log10 |sum w_s H_s| + min over s of (output_s - 20 log10 |w_s|) + 3.01 dB
 */
export const greatestPeaks = (
  unit: UnitResponses,
  subwoofers: readonly DrivenSubwoofer[],
  frequenciesHz: ArrayLike<number>,
): Float64Array => {
  const { sources, receivers, frequencies } = unit;
  const levels = new Float64Array(receivers * frequencies);
  const weights = new Float64Array(2 * sources);
  for (let f = 0; f < frequencies; f++) {
    chainWeights(subwoofers, frequenciesHz[f], weights);
    let limit = sources > 0 ? Number.POSITIVE_INFINITY : Number.NaN;
    for (let s = 0; s < sources; s++) {
      const { output } = subwoofers[s];
      const most = output === null ? null : outputAt(output, frequenciesHz[f]);
      const sent = 20 * Math.log10(Math.hypot(weights[2 * s], weights[2 * s + 1]));
      limit = most === null ? Number.NaN : Math.min(limit, most - sent);
      if (Number.isNaN(limit)) break;
    }
    for (let r = 0; r < receivers; r++) {
      let re = 0;
      let im = 0;
      for (let s = 0; s < sources; s++) {
        const at = (s * receivers + r) * frequencies + f;
        re += unit.re[at] * weights[2 * s] - unit.im[at] * weights[2 * s + 1];
        im += unit.re[at] * weights[2 * s + 1] + unit.im[at] * weights[2 * s];
      }
      levels[r * frequencies + f] = 10 * Math.log10(Math.max(1e-30, re * re + im * im)) + limit + CREST_DB;
    }
  }
  return levels;
};
