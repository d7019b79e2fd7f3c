import type { UnitResponses } from './room-field.ts';

/** What is sent to one subwoofer. */
export interface Drive {
  readonly gainDb: number;
  readonly delayMs: number;
  readonly inverted: boolean;
}

/** Complex weights of the drives at one frequency, re and im per source: 10^(gain / 20) e^(-j omega delay), sign by polarity. */
export const driveWeights = (drives: readonly Drive[], frequencyHz: number, out?: Float64Array): Float64Array => {
  const weights = out ?? new Float64Array(2 * drives.length);
  for (let s = 0; s < drives.length; s++) {
    const { gainDb, delayMs, inverted } = drives[s];
    const size = (inverted ? -1 : 1) * 10 ** (gainDb / 20);
    const phase = (2 * Math.PI * frequencyHz * delayMs) / 1000;
    weights[2 * s] = size * Math.cos(phase);
    weights[2 * s + 1] = -size * Math.sin(phase);
  }
  return weights;
};

/** Pressure at the receivers re the free field of one source at 1 m, index receiver * frequencies + frequency. */
export interface SummedField {
  readonly receivers: number;
  readonly frequencies: number;
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** Sum of all driven sources at every receiver; `drives` holds one entry per source. */
export const superpose = (
  unit: UnitResponses,
  drives: readonly Drive[],
  frequenciesHz: ArrayLike<number>,
): SummedField => {
  const { sources, receivers, frequencies } = unit;
  const re = new Float64Array(receivers * frequencies);
  const im = new Float64Array(receivers * frequencies);
  const weights = new Float64Array(2 * drives.length);
  for (let f = 0; f < frequencies; f++) {
    driveWeights(drives, frequenciesHz[f], weights);
    for (let s = 0; s < sources; s++) {
      const wRe = weights[2 * s];
      const wIm = weights[2 * s + 1];
      for (let r = 0; r < receivers; r++) {
        const from = (s * receivers + r) * frequencies + f;
        const to = r * frequencies + f;
        re[to] += unit.re[from] * wRe - unit.im[from] * wIm;
        im[to] += unit.re[from] * wIm + unit.im[from] * wRe;
      }
    }
  }
  return { receivers, frequencies, re, im };
};

/** Pressures this far below the free field at 1 m (-300 dB) are shown as this, so that silence has a number. */
const SILENCE = 1e-30;

/** 20 log10 |p| of each receiver and frequency, same index. */
export const levelsDb = ({ re, im }: SummedField): Float64Array => {
  const levels = new Float64Array(re.length);
  for (let i = 0; i < re.length; i++) levels[i] = 10 * Math.log10(Math.max(SILENCE, re[i] * re[i] + im[i] * im[i]));
  return levels;
};
