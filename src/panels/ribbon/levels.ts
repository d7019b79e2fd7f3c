/** Where a frequency falls in an ascending table: between `index` and the next entry, `t` of the way in log f. */
const placeIn = (frequenciesHz: Float64Array, hz: number): { index: number; t: number } => {
  let low = 0;
  let high = frequenciesHz.length - 1;
  if (hz <= frequenciesHz[low]) return { index: 0, t: 0 };
  if (hz >= frequenciesHz[high]) return { index: high, t: 0 };
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (frequenciesHz[middle] <= hz) low = middle;
    else high = middle;
  }
  return { index: low, t: Math.log(hz / frequenciesHz[low]) / Math.log(frequenciesHz[high] / frequenciesHz[low]) };
};

/** The level at a frequency: exact on the table's own frequencies, straight over log f between, its ends beyond. */
export const levelAt = (frequenciesHz: Float64Array, levelsDb: Float64Array, hz: number): number => {
  const { index, t } = placeIn(frequenciesHz, hz);
  return t === 0 ? levelsDb[index] : levelsDb[index] + t * (levelsDb[index + 1] - levelsDb[index]);
};

export const LOWEST_HZ = 20;
export const HIGHEST_HZ = 200;
const STEPS_PER_OCTAVE = 24;
/** The cursor's stops: 20 x 2^(i/24), the last below 200 Hz. The report's default grid has the same ones. */
export const LAST_STEP = Math.floor(STEPS_PER_OCTAVE * Math.log2(HIGHEST_HZ / LOWEST_HZ));

export const frequencyOfStep = (step: number): number =>
  LOWEST_HZ * 2 ** (Math.min(LAST_STEP, Math.max(0, step)) / STEPS_PER_OCTAVE);
export const stepOfFrequency = (hz: number): number =>
  Math.min(LAST_STEP, Math.max(0, Math.round(STEPS_PER_OCTAVE * Math.log2(hz / LOWEST_HZ))));

/** Where a frequency lies along the ribbon: 0 at 20 Hz, 1 at 200 Hz, even steps an octave. */
export const shareOfHz = (hz: number): number => Math.log(hz / LOWEST_HZ) / Math.log(HIGHEST_HZ / LOWEST_HZ);
export const hzOfShare = (share: number): number => LOWEST_HZ * (HIGHEST_HZ / LOWEST_HZ) ** share;

/** Nominal third-octave centres, the frequencies people read. */
export const TICKS_HZ = [20, 25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200] as const;
