import { type PeakFilter, peakDb } from './filters.ts';

/** The seats' mean level and their spread over rising frequencies, all in dB. */
export interface FitInput {
  readonly frequenciesHz: Float64Array;
  readonly meanDb: Float64Array;
  /** Standard deviation over the seats; zeros for one seat. */
  readonly spreadDb: Float64Array;
  readonly most: number;
}

export interface EqualiserFit {
  readonly filters: readonly PeakFilter[];
  /** The level the filters lead to, dB. */
  readonly targetDb: number;
  /** 1 where a dip is left alone: narrow, or not shared by the seats. */
  readonly leftAlone: Uint8Array;
  /** Rms of the mean level about the target over what is not left alone, dB. */
  readonly beforeDb: number;
  readonly afterDb: number;
}

/** Bounds of the filters: common practice, no source. Boosts cost headroom everywhere and cure no null. */
export const MOST_BOOST_DB = 3;
export const MOST_CUT_DB = 12;
const LEAST_Q = 0.7;
const MOST_Q = 10;
const MOST_BOOST_Q = 2;
/** A dip narrower than this (in octaves, at half its depth) is a cancellation, not a lack. */
const NARROW_OCTAVES = 1 / 3;
/** Seats that differ by more than this at a dip do not share it, dB. */
const SHARED_DB = 4;
/** A further filter has to lower the rms by this. */
const WORTH_DB = 0.1;
/** The target stands below the middle of the band's levels, so that more is cut than boosted. */
const TARGET_SHARE = 0.4;

const quantile = (values: Float64Array, share: number): number => {
  const sorted = Float64Array.from(values).sort();
  return sorted[Math.round(share * (sorted.length - 1))];
};

/** Marks the dips below the target that no equaliser should fill. */
const dipsLeftAlone = ({ frequenciesHz, meanDb, spreadDb }: FitInput, targetDb: number): Uint8Array => {
  const alone = new Uint8Array(meanDb.length);
  const end = meanDb.length - 1;
  let from = 0;
  while (from <= end) {
    if (meanDb[from] >= targetDb) {
      from += 1;
      continue;
    }
    let to = from;
    let deepest = from;
    while (to < end && meanDb[to + 1] < targetDb) {
      to += 1;
      if (meanDb[to] < meanDb[deepest]) deepest = to;
    }
    const half = targetDb - (targetDb - meanDb[deepest]) / 2;
    let left = deepest;
    let right = deepest;
    while (left > from && meanDb[left - 1] < half) left -= 1;
    while (right < to && meanDb[right + 1] < half) right += 1;
    const narrow = Math.log2(frequenciesHz[right] / frequenciesHz[left]) < NARROW_OCTAVES;
    for (let f = from; f <= to; f += 1) if (narrow || spreadDb[f] > SHARED_DB) alone[f] = 1;
    from = to + 1;
  }
  return alone;
};

const clamped = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));

const bounded = ({ frequencyHz, gainDb, q }: PeakFilter, lowHz: number, highHz: number): PeakFilter => ({
  frequencyHz: clamped(frequencyHz, lowHz, highHz),
  gainDb: clamped(gainDb, -MOST_CUT_DB, MOST_BOOST_DB),
  q: clamped(q, LEAST_Q, gainDb > 0 ? MOST_BOOST_Q : MOST_Q),
});

/** As a fitter types them. */
const rounded = ({ frequencyHz, gainDb, q }: PeakFilter): PeakFilter => ({
  frequencyHz: Math.round(frequencyHz * 10) / 10,
  gainDb: Math.round(gainDb * 10) / 10,
  q: Math.round(q * 10) / 10,
});

/** Level of all filters together in dB. */
export const equaliserDb = (filters: readonly PeakFilter[], frequencyHz: number): number =>
  filters.reduce((sum, filter) => sum + peakDb(frequencyHz, filter), 0);

/**
 * A few peak filters common to all subwoofers that bring the seats' mean towards one level: one filter after another where
 * the largest error stands, all refined together after each by a pattern search with shrinking steps (deterministic). Boosts
 * are bounded to +3 dB in all, cuts to -12 dB; a dip that is narrow or not shared by the seats is left alone: what rises
 * above the target there is still held down.
 */
export const fitEqualiser = (input: FitInput): EqualiserFit => {
  const { frequenciesHz, meanDb } = input;
  const count = meanDb.length;
  const targetDb = quantile(meanDb, TARGET_SHARE);
  const leftAlone = dipsLeftAlone(input, targetDb);
  const lowHz = frequenciesHz[0];
  const highHz = frequenciesHz[count - 1];

  const meanSquare = (filters: readonly PeakFilter[], penalties: boolean): number => {
    let sum = 0;
    for (let f = 0; f < count; f += 1) {
      const eq = equaliserDb(filters, frequenciesHz[f]);
      const error = meanDb[f] + eq - targetDb;
      if (error > 0 || leftAlone[f] === 0) sum += error * error;
      if (penalties && eq > MOST_BOOST_DB) sum += 100 * (eq - MOST_BOOST_DB) ** 2;
      if (penalties && leftAlone[f] === 1 && eq > 0) sum += 4 * eq * eq;
    }
    return sum / count;
  };

  const refine = (start: readonly PeakFilter[]): PeakFilter[] => {
    let filters = [...start];
    let cost = meanSquare(filters, true);
    for (let step = 1; step > 0.02; step /= 2) {
      for (let round = 0; round < 12; round += 1) {
        const before = cost;
        for (let i = 0; i < filters.length; i += 1) {
          for (const [octaves, db, width] of MOVES) {
            const { frequencyHz, gainDb, q } = filters[i];
            const tried = filters.with(
              i,
              bounded(
                {
                  frequencyHz: frequencyHz * 2 ** (octaves * step),
                  gainDb: gainDb + db * step,
                  q: q * 2 ** (width * step),
                },
                lowHz,
                highHz,
              ),
            );
            const next = meanSquare(tried, true);
            if (next < cost) {
              cost = next;
              filters = tried;
            }
          }
        }
        if (before - cost < 1e-6) break;
      }
    }
    return filters;
  };

  const start = (filters: readonly PeakFilter[]): PeakFilter | null => {
    let at = -1;
    let most = 0.5;
    for (let f = 0; f < count; f += 1) {
      const error = meanDb[f] + equaliserDb(filters, frequenciesHz[f]) - targetDb;
      const counts = error > 0 ? error : leftAlone[f] === 1 ? 0 : Math.min(MOST_BOOST_DB, -error);
      if (counts <= most) continue;
      most = counts;
      at = f;
    }
    if (at < 0) return null;
    const error = meanDb[at] + equaliserDb(filters, frequenciesHz[at]) - targetDb;
    return bounded({ frequencyHz: frequenciesHz[at], gainDb: -error, q: error > 0 ? 4 : 1.4 }, lowHz, highHz);
  };

  let filters: PeakFilter[] = [];
  while (filters.length < input.most) {
    const next = start(filters);
    if (!next) break;
    const tried = refine([...filters, next]);
    const gained = Math.sqrt(meanSquare(filters, false)) - Math.sqrt(meanSquare(tried, false));
    if (gained < WORTH_DB) break;
    filters = tried;
  }
  const kept = filters
    .map(rounded)
    .filter(({ gainDb }) => Math.abs(gainDb) >= 0.5)
    .sort((a, b) => a.frequencyHz - b.frequencyHz);
  return {
    filters: kept,
    targetDb,
    leftAlone,
    beforeDb: Math.sqrt(meanSquare([], false)),
    afterDb: Math.sqrt(meanSquare(kept, false)),
  };
};

/** Octaves of frequency, dB of gain, octaves of Q: one at a time, and the pairs that trade against each other. */
const MOVES: readonly (readonly [number, number, number])[] = [
  [1 / 4, 0, 0],
  [-1 / 4, 0, 0],
  [0, 3, 0],
  [0, -3, 0],
  [0, 0, 1],
  [0, 0, -1],
  [0, 2, 1],
  [0, -2, 1],
  [0, 2, -1],
  [0, -2, -1],
];
