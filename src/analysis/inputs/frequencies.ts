/** `count` frequencies from 20 Hz in steps of 1/24 octave. */
const fromTwentyHz = (count: number): Float64Array =>
  Float64Array.from({ length: count }, (_, i) => 20 * 2 ** (i / 24));

/** The report's own frequencies when none are asked for: 20 x 2^(i/24), i = 0..79, to 195.8 Hz. */
export const defaultFrequenciesHz = (): Float64Array => fromTwentyHz(80);

/** How many of the default frequencies make up the grid of the spread figures: 20 to 80 Hz, i = 0..48. */
export const SPREAD_GRID_LENGTH = 49;

/** The fixed grid of meanSpreadDb, meanVarianceDb2 and maxMinDb (contract). */
export const spreadGridHz = (): Float64Array => fromTwentyHz(SPREAD_GRID_LENGTH);

/** Whether a list opens with the fixed grid, so that the figures can be read off it. */
export const opensWithSpreadGrid = (frequenciesHz: Float64Array): boolean =>
  spreadGridHz().every((hz, index) => frequenciesHz[index] === hz);
