import { METRIC_FREQUENCIES_HZ } from '../../engines/bass/metrics.ts';

/** `count` frequencies from 20 Hz in steps of 1/24 octave. */
const fromTwentyHz = (count: number): Float64Array =>
  Float64Array.from({ length: count }, (_, i) => 20 * 2 ** (i / 24));

/** The report's own frequencies when none are asked for: 20 x 2^(i/24), i = 0..79, to 195.8 Hz. */
export const defaultFrequenciesHz = (): Float64Array => fromTwentyHz(80);

/** The fixed grid of meanSpreadDb, meanVarianceDb2 and maxMinDb: 20 to 80 Hz (contract). */
export { METRIC_FREQUENCIES_HZ } from '../../engines/bass/metrics.ts';

/** Whether a list opens with the fixed grid, so that the figures can be read off it. */
export const opensWithSpreadGrid = (frequenciesHz: Float64Array): boolean =>
  METRIC_FREQUENCIES_HZ.every((hz, index) => frequenciesHz[index] === hz);
