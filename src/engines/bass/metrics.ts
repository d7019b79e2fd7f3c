/** The fixed grid on which seat-to-seat figures are stated: 20 x 2^(i/24), i = 0..48, 20 to 80 Hz. */
export const METRIC_FREQUENCIES_HZ = Float64Array.from({ length: 49 }, (_, i) => 20 * 2 ** (i / 24));

/**
 * Seat-to-seat figures of levels in dB, index receiver * frequencies + frequency: plain sample statistics over the seats, as
 * multi-subwoofer studies state them (common practice; the divisor n - 1 is this project's choice).
 */
export interface Spread {
  /** Standard deviation over seats at each frequency, divisor n - 1. */
  readonly spreadDb: Float64Array;
  readonly meanSpreadDb: number;
  /** Mean over frequency of the variance over seats, dB^2 (mean spatial variance). */
  readonly meanVarianceDb2: number;
  /** Mean over frequency of the loudest less the quietest seat. */
  readonly maxMinDb: number;
}

/** Null for fewer than two seats: one seat has no spread. */
export const spreadOf = (levels: Float64Array, seats: number, frequencies: number): Spread | null => {
  if (seats < 2 || frequencies < 1) return null;
  const spreadDb = new Float64Array(frequencies);
  let variances = 0;
  let spreads = 0;
  let ranges = 0;
  for (let f = 0; f < frequencies; f++) {
    let mean = 0;
    let most = Number.NEGATIVE_INFINITY;
    let least = Number.POSITIVE_INFINITY;
    for (let s = 0; s < seats; s++) {
      const level = levels[s * frequencies + f];
      mean += level / seats;
      most = Math.max(most, level);
      least = Math.min(least, level);
    }
    let squares = 0;
    for (let s = 0; s < seats; s++) squares += (levels[s * frequencies + f] - mean) ** 2;
    const variance = squares / (seats - 1);
    spreadDb[f] = Math.sqrt(variance);
    variances += variance;
    spreads += spreadDb[f];
    ranges += most - least;
  }
  return {
    spreadDb,
    meanSpreadDb: spreads / frequencies,
    meanVarianceDb2: variances / frequencies,
    maxMinDb: ranges / frequencies,
  };
};
