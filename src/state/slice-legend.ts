import type { BassSlice } from '../analysis/types.ts';
import { type LevelScale, levelScale } from '../math/level-scale.ts';

const scales = new WeakMap<BassSlice, LevelScale>();
let shown: LevelScale | null = null;

/** The level scale a slice is drawn over: one answer a slice, so that map, legend and ribbon always agree. */
export const floorLegend = (slice: BassSlice): LevelScale => {
  const known = scales.get(slice);
  if (known) return known;
  shown = levelScale(slice.levelDb, shown);
  scales.set(slice, shown);
  return shown;
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
 * The scale of a slice as it is shown. A pressure, in free-field pressures of one subwoofer at 1 m, runs to the top of the
 * level scale either way.
 */
export const sliceLegend = (slice: BassSlice): SliceLegend => {
  if (slice.as === 'difference' && slice.meanDb !== null)
    return { kind: 'difference', low: -DIFFERENCE_DB, high: DIFFERENCE_DB, step: DIFFERENCE_STEP_DB };
  const { lowDb, highDb, stepDb } = floorLegend(slice);
  if (slice.as === 'pressure' && slice.pressure) {
    const high = 10 ** (highDb / 20);
    return { kind: 'pressure', low: -high, high, step: high / PRESSURE_STEPS };
  }
  return { kind: 'level', low: lowDb, high: highDb, step: stepDb };
};
