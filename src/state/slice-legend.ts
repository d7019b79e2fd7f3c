import type { BassSlice } from '../analysis/types.ts';
import { type LevelScale, mapTopDb, ownScale } from '../math/level-scale.ts';

const tops = new WeakMap<BassSlice, number>();
let topShown: number | null = null;

/** The top of a slice's own levels: one answer a slice, so that map and legend agree. */
const ownTopDb = (slice: BassSlice): number => {
  const known = tops.get(slice);
  if (known !== undefined) return known;
  topShown = mapTopDb(slice.levelDb, topShown);
  tops.set(slice, topShown);
  return topShown;
};

const scales = new WeakMap<BassSlice, LevelScale>();

const ownScaleOf = (slice: BassSlice): LevelScale => {
  const known = scales.get(slice) ?? ownScale(slice.levelDb);
  scales.set(slice, known);
  return known;
};

/** What the colours of a slice mean: from `low` to `high`, contours every `step`, in decibels or in pressure. */
export interface SliceLegend {
  readonly kind: 'level' | 'pressure' | 'difference';
  readonly low: number;
  readonly high: number;
  readonly step: number;
}

/** A difference from the seats' mean is shown to here; beyond it all is one colour. */
const DIFFERENCE_DB = 12;
const DIFFERENCE_STEP_DB = 3;
/** Contours of a pressure: three either side of the nodal line. */
const PRESSURE_STEPS = 4;

/**
 * The scale of a slice as it is shown. A level's is that of the seats' strips as well, unless it has one to itself. A pressure, in free-field pressures of
 * one subwoofer at 1 m, runs to the top of its own levels either way.
 */
export const sliceLegend = (slice: BassSlice, scale: LevelScale, alone: boolean): SliceLegend => {
  if (slice.as === 'difference' && slice.meanDb !== null)
    return { kind: 'difference', low: -DIFFERENCE_DB, high: DIFFERENCE_DB, step: DIFFERENCE_STEP_DB };
  if (slice.as === 'pressure' && slice.pressure) {
    const high = 10 ** (ownTopDb(slice) / 20);
    return { kind: 'pressure', low: -high, high, step: high / PRESSURE_STEPS };
  }
  const { lowDb, highDb, stepDb } = alone ? ownScaleOf(slice) : scale;
  return { kind: 'level', low: lowDb, high: highDb, step: stepDb };
};
