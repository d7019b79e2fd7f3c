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
/** So many places are tried for each further filter. */
const SPOTS = 3;

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

  const curve = (filter: PeakFilter): Float64Array => frequenciesHz.map((hz) => peakDb(hz, filter));
  const sumOf = (curves: readonly Float64Array[]): Float64Array => {
    const sum = new Float64Array(count);
    for (const each of curves) for (let f = 0; f < count; f += 1) sum[f] += each[f];
    return sum;
  };

  /** Mean square of the error with filters that come to `eqDb`; `penalties` hold the rules in while they are sought. */
  const meanSquareOf = (eqDb: Float64Array, extraDb: Float64Array | null, penalties: boolean): number => {
    let sum = 0;
    for (let f = 0; f < count; f += 1) {
      const eq = extraDb ? eqDb[f] + extraDb[f] : eqDb[f];
      const error = meanDb[f] + eq - targetDb;
      if (error > 0 || leftAlone[f] === 0) sum += error * error;
      if (!penalties) continue;
      if (eq > MOST_BOOST_DB) sum += 100 * (eq - MOST_BOOST_DB) ** 2;
      if (leftAlone[f] === 1 && error <= 0) sum += (eq > 0 ? 4 : 0.5) * eq * eq;
    }
    return sum / count;
  };
  const meanSquare = (filters: readonly PeakFilter[], penalties: boolean): number =>
    meanSquareOf(sumOf(filters.map(curve)), null, penalties);

  const refine = (start: readonly PeakFilter[]): PeakFilter[] => {
    const filters = [...start];
    const curves = filters.map(curve);
    let cost = meanSquare(filters, true);
    for (let step = 1; step > 0.02; step /= 2) {
      for (let round = 0; round < 12; round += 1) {
        const before = cost;
        for (let i = 0; i < filters.length; i += 1) {
          const others = sumOf(curves.filter((_, index) => index !== i));
          for (const [octaves, db, width] of MOVES) {
            const { frequencyHz, gainDb, q } = filters[i];
            const moved = {
              frequencyHz: frequencyHz * 2 ** (octaves * step),
              gainDb: gainDb + db * step,
              q: q * 2 ** (width * step),
            };
            const tried = bounded(moved, lowHz, highHz);
            const there = curve(tried);
            const next = meanSquareOf(others, there, true);
            if (next >= cost) continue;
            cost = next;
            filters[i] = tried;
            curves[i] = there;
          }
        }
        if (before - cost < 1e-6) break;
      }
    }
    return filters;
  };

  /** Filters to begin with: at the largest errors that lie apart, narrow and wide. */
  const starts = (filters: readonly PeakFilter[]): PeakFilter[] => {
    const errors = meanDb.map((db, f) => db + equaliserDb(filters, frequenciesHz[f]) - targetDb);
    const weight = (f: number): number =>
      errors[f] > 0 ? errors[f] : leftAlone[f] === 1 ? 0 : Math.min(MOST_BOOST_DB, -errors[f]);
    const spots: number[] = [];
    for (const f of Array.from(errors.keys()).sort((a, b) => weight(b) - weight(a))) {
      if (spots.length >= SPOTS || weight(f) < 0.5) break;
      if (spots.every((other) => Math.abs(Math.log2(frequenciesHz[f] / frequenciesHz[other])) > 1 / 3)) spots.push(f);
    }
    return spots.flatMap((f) =>
      [1.2, 5].map((q) => bounded({ frequencyHz: frequenciesHz[f], gainDb: -errors[f], q }, lowHz, highHz)),
    );
  };

  let filters: PeakFilter[] = [];
  while (filters.length < input.most) {
    let best = filters;
    for (const next of starts(filters)) {
      const tried = refine([...filters, next]);
      if (meanSquare(tried, true) < meanSquare(best, true)) best = tried;
    }
    const gained = Math.sqrt(meanSquare(filters, true)) - Math.sqrt(meanSquare(best, true));
    if (gained < WORTH_DB) break;
    filters = best;
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
