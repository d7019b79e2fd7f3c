import { spreadOf } from './metrics.ts';
import type { UnitResponses } from './room-field.ts';
import { type Drive, levelsDb, superpose } from './superpose.ts';

/** An arrangement's figures over one frequency grid; each answers another question, so they stay apart. */
export interface ArrangementFigures {
  /** Mean over frequency of the standard deviation over the seats, dB, divisor n - 1; null for one seat. */
  readonly spreadDb: number | null;
  /** Mean over the seats of the standard deviation over frequency, dB, divisor n. */
  readonly flatnessDb: number;
  /** Mean level over seats and frequencies, dB against the free field at 1 m of one subwoofer at 0 dB. */
  readonly levelDb: number;
  /** `levelDb` less 20 log10 of the number: what each subwoofer of the set brings, dB. */
  readonly perSubwooferDb: number;
}

/** Figures of levels, index seat * frequencies + frequency, of so many subwoofers. */
export const figuresOf = (
  levels: Float64Array,
  seats: number,
  frequencies: number,
  subwoofers: number,
): ArrangementFigures => {
  let total = 0;
  let deviations = 0;
  for (let s = 0; s < seats; s++) {
    let sum = 0;
    for (let f = 0; f < frequencies; f++) sum += levels[s * frequencies + f];
    const mean = sum / frequencies;
    let squares = 0;
    for (let f = 0; f < frequencies; f++) squares += (levels[s * frequencies + f] - mean) ** 2;
    deviations += Math.sqrt(squares / frequencies);
    total += mean;
  }
  const levelDb = total / seats;
  return {
    spreadDb: spreadOf(levels, seats, frequencies)?.meanSpreadDb ?? null,
    flatnessDb: deviations / seats,
    levelDb,
    perSubwooferDb: levelDb - 20 * Math.log10(subwoofers),
  };
};

/** Responses of some of the sources, in the order given. */
export const pickSources = (unit: UnitResponses, chosen: readonly number[]): UnitResponses => {
  const { receivers, frequencies } = unit;
  const size = receivers * frequencies;
  const re = new Float64Array(chosen.length * size);
  const im = new Float64Array(chosen.length * size);
  const moved = new Uint8Array(chosen.length * receivers);
  for (const [to, from] of chosen.entries()) {
    re.set(unit.re.subarray(from * size, (from + 1) * size), to * size);
    im.set(unit.im.subarray(from * size, (from + 1) * size), to * size);
    moved.set(unit.moved.subarray(from * receivers, (from + 1) * receivers), to * receivers);
  }
  return { sources: chosen.length, receivers, frequencies, re, im, moved };
};

/** The figures of driven sources. */
export const drivenFigures = (
  unit: UnitResponses,
  drives: readonly Drive[],
  frequenciesHz: ArrayLike<number>,
): ArrangementFigures =>
  figuresOf(levelsDb(superpose(unit, drives, frequenciesHz)), unit.receivers, unit.frequencies, unit.sources);
