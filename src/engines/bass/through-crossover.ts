import { crossoverHigh, crossoverLow } from './filters.ts';
import { chainWeights, type DrivenSubwoofer } from './headroom.ts';
import type { UnitResponses } from './room-field.ts';

/** Complex fields at the seats, index seat * frequencies + frequency. */
export interface SplitField {
  readonly seats: number;
  readonly frequencies: number;
  /** The centre loudspeaker alone, high-passed. */
  readonly centreRe: Float64Array;
  readonly centreIm: Float64Array;
  /** All subwoofers, high-passed themselves and low-passed, brought to the centre's level. */
  readonly subRe: Float64Array;
  readonly subIm: Float64Array;
  /** What the subwoofers were turned up by to match the centre, dB. */
  readonly trimDb: number;
}

const meanDb = (re: Float64Array, im: Float64Array, picked: (f: number) => boolean, frequencies: number): number => {
  let sum = 0;
  let count = 0;
  for (let i = 0; i < re.length; i++) {
    if (!picked(i % frequencies)) continue;
    sum += 10 * Math.log10(Math.max(1e-30, re[i] * re[i] + im[i] * im[i]));
    count += 1;
  }
  return count === 0 ? 0 : sum / count;
};

/**
 * Centre loudspeaker and all subwoofers through a fourth-order Linkwitz-Riley crossover at every seat. The high-pass is
 * taken as acoustic: filter and the box's own roll-off make it up together (common practice). A fitter sets the subwoofers'
 * common level by ear or meter, so they are brought to the centre's here: mean level over the seats of the subwoofers in the
 * octave below the crossover equal to the centre's in the octave above, both without the crossover.
 */
export const throughCrossover = (
  centre: UnitResponses,
  unit: UnitResponses,
  subwoofers: readonly DrivenSubwoofer[],
  crossoverHz: number,
  frequenciesHz: ArrayLike<number>,
): SplitField => {
  const { receivers: seats, frequencies } = unit;
  const size = seats * frequencies;
  const subRe = new Float64Array(size);
  const subIm = new Float64Array(size);
  const weights = new Float64Array(2 * subwoofers.length);
  for (let f = 0; f < frequencies; f++) {
    chainWeights(subwoofers, frequenciesHz[f], weights);
    for (let s = 0; s < subwoofers.length; s++) {
      for (let r = 0; r < seats; r++) {
        const from = (s * seats + r) * frequencies + f;
        const to = r * frequencies + f;
        subRe[to] += unit.re[from] * weights[2 * s] - unit.im[from] * weights[2 * s + 1];
        subIm[to] += unit.re[from] * weights[2 * s + 1] + unit.im[from] * weights[2 * s];
      }
    }
  }
  const octaves = (f: number): number => Math.log2(frequenciesHz[f] / crossoverHz);
  const below = meanDb(subRe, subIm, (f) => octaves(f) <= 0 && octaves(f) >= -1, frequencies);
  const above = meanDb(centre.re, centre.im, (f) => octaves(f) >= 0 && octaves(f) <= 1, frequencies);
  const trimDb = above - below;
  const gain = 10 ** (trimDb / 20);
  const centreRe = new Float64Array(size);
  const centreIm = new Float64Array(size);
  const low = new Float64Array(2);
  const high = new Float64Array(2);
  for (let f = 0; f < frequencies; f++) {
    crossoverLow(frequenciesHz[f], crossoverHz, low);
    crossoverHigh(frequenciesHz[f], crossoverHz, high);
    for (let i = f; i < size; i += frequencies) {
      const re = subRe[i] * gain;
      const im = subIm[i] * gain;
      subRe[i] = re * low[0] - im * low[1];
      subIm[i] = re * low[1] + im * low[0];
      centreRe[i] = centre.re[i] * high[0] - centre.im[i] * high[1];
      centreIm[i] = centre.re[i] * high[1] + centre.im[i] * high[0];
    }
  }
  return { seats, frequencies, centreRe, centreIm, subRe, subIm, trimDb };
};

/** A delay and a polarity given to all subwoofers alike, on top of what they have. */
export interface CommonShift {
  readonly delayMs: number;
  readonly inverted: boolean;
}

/** Level of centre and subwoofers together after a common shift, dB, index seat * frequencies + frequency. */
export const togetherDb = (field: SplitField, frequenciesHz: ArrayLike<number>, shift: CommonShift): Float64Array =>
  overShift(field, frequenciesHz, shift, (re, im) => 10 * Math.log10(Math.max(1e-30, re * re + im * im)));

const overShift = (
  field: SplitField,
  frequenciesHz: ArrayLike<number>,
  { delayMs, inverted }: CommonShift,
  value: (re: number, im: number, alone: number) => number,
): Float64Array => {
  const { frequencies, centreRe, centreIm, subRe, subIm } = field;
  const out = new Float64Array(centreRe.length);
  for (let f = 0; f < frequencies; f++) {
    const phase = (2 * Math.PI * frequenciesHz[f] * delayMs) / 1000;
    const wRe = (inverted ? -1 : 1) * Math.cos(phase);
    const wIm = (inverted ? 1 : -1) * Math.sin(phase);
    for (let i = f; i < out.length; i += frequencies) {
      const re = centreRe[i] + subRe[i] * wRe - subIm[i] * wIm;
      const im = centreIm[i] + subRe[i] * wIm + subIm[i] * wRe;
      out[i] = value(re, im, Math.hypot(centreRe[i], centreIm[i]) + Math.hypot(subRe[i], subIm[i]));
    }
  }
  return out;
};

/** A loss deeper than this is as bad as it gets: what lies in it is heard from the walls. */
const DEEPEST_LOSS_DB = -20;

/**
 * What is lost where the two do not arrive together: 20 log10(|C + S| / (|C| + |S|)), 0 dB where they add fully, not below
 * -20 dB. A room's own null at a seat, which no delay can fill, does not count. Index seat * frequencies + frequency.
 */
export const lossDb = (field: SplitField, frequenciesHz: ArrayLike<number>, shift: CommonShift): Float64Array =>
  overShift(field, frequenciesHz, shift, (re, im, alone) =>
    Math.max(DEEPEST_LOSS_DB, 20 * Math.log10(Math.hypot(re, im) / Math.max(alone, 1e-15))),
  );

export interface Cure extends CommonShift {
  /** Mean loss over the seats and the octave about the crossover, dB (0 is none), before and after. */
  readonly beforeDb: number;
  readonly afterDb: number;
}

/** Mean loss within half an octave to either side of the crossover. */
export const meanLossDb = (
  field: SplitField,
  frequenciesHz: ArrayLike<number>,
  crossoverHz: number,
  shift: CommonShift,
): number => {
  const loss = lossDb(field, frequenciesHz, shift);
  let sum = 0;
  let count = 0;
  for (let i = 0; i < loss.length; i++) {
    if (Math.abs(Math.log2(frequenciesHz[i % field.frequencies] / crossoverHz)) > 0.5) continue;
    sum += loss[i];
    count += 1;
  }
  return count === 0 ? 0 : sum / count;
};

const STEP_MS = 0.1;

/**
 * The common delay (from `leastMs` to `mostMs` on top of what is set) and polarity with the least mean loss: every tenth of
 * a millisecond is tried, so nothing better lies between two that were. Among equals the least change wins.
 */
export const fillDip = (
  field: SplitField,
  frequenciesHz: ArrayLike<number>,
  crossoverHz: number,
  leastMs: number,
  mostMs: number,
): Cure => {
  const beforeDb = meanLossDb(field, frequenciesHz, crossoverHz, { delayMs: 0, inverted: false });
  let best: Cure = { delayMs: 0, inverted: false, beforeDb, afterDb: beforeDb };
  const first = Math.ceil(leastMs / STEP_MS - 1e-9) + 0;
  for (const inverted of [false, true]) {
    for (let step = first; step * STEP_MS <= mostMs + 1e-9; step++) {
      const delayMs = step / 10;
      const afterDb = meanLossDb(field, frequenciesHz, crossoverHz, { delayMs, inverted });
      const gain = afterDb - best.afterDb;
      if (gain > 1e-9 || (gain > -1e-9 && inverted === best.inverted && Math.abs(delayMs) < Math.abs(best.delayMs)))
        best = { delayMs, inverted, beforeDb, afterDb };
    }
  }
  return best;
};
