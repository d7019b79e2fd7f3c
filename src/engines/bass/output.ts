/** A subwoofer's greatest output as its maker states it, one figure a band, by centre frequency in hertz. */
export interface StatedOutput {
  readonly bandsDb: Readonly<Record<string, number>>;
  /** 'half': measured on the ground, into half space; 'full': free field. At 1 m either way. */
  readonly space: 'half' | 'full';
  readonly kind: 'peak' | 'rms';
}

/** A source on a large rigid plane reads 6.02 dB above its own free field: pressure doubles (derived: image source). */
export const HALF_SPACE_DB = 20 * Math.log10(2);

/** The peak of a sine stands 3.01 dB above its rms (derived); burst tests state peaks, common practice. */
export const CREST_DB = 10 * Math.log10(2);

/** Free-field rms level at 1 m, dB, by rising band centre. */
export interface BandOutput {
  readonly frequenciesHz: Float64Array;
  readonly rmsDb: Float64Array;
}

/** What is taken off a stated figure to bring it to a free-field rms level, dB. */
export const aboveFreeFieldRmsDb = ({ space, kind }: Pick<StatedOutput, 'space' | 'kind'>): number =>
  (space === 'half' ? HALF_SPACE_DB : 0) + (kind === 'peak' ? CREST_DB : 0);

/** Half-space and peak figures brought to one kind: free field, rms, 1 m. */
export const freeFieldRms = (stated: StatedOutput): BandOutput => {
  const lessDb = aboveFreeFieldRmsDb(stated);
  const bands = Object.entries(stated.bandsDb)
    .map(([hz, db]) => [Number(hz), db - lessDb] as const)
    .sort((a, b) => a[0] - b[0]);
  return {
    frequenciesHz: Float64Array.from(bands, ([hz]) => hz),
    rmsDb: Float64Array.from(bands, ([, db]) => db),
  };
};

/** A third-octave band reaches this far in octaves to either side of its centre. */
const HALF_BAND = 1 / 6;

/**
 * Output at any frequency: straight lines in dB over the logarithm of frequency between bands; an end band's own figure as
 * far as its edge; null beyond, where nothing is stated.
 */
export const outputAt = ({ frequenciesHz, rmsDb }: BandOutput, hz: number): number | null => {
  const last = frequenciesHz.length - 1;
  if (last < 0) return null;
  if (hz <= frequenciesHz[0]) return Math.log2(frequenciesHz[0] / hz) <= HALF_BAND + 1e-9 ? rmsDb[0] : null;
  if (hz >= frequenciesHz[last]) return Math.log2(hz / frequenciesHz[last]) <= HALF_BAND + 1e-9 ? rmsDb[last] : null;
  let i = 0;
  while (frequenciesHz[i + 1] < hz) i++;
  const share = Math.log(hz / frequenciesHz[i]) / Math.log(frequenciesHz[i + 1] / frequenciesHz[i]);
  return rmsDb[i] + share * (rmsDb[i + 1] - rmsDb[i]);
};
