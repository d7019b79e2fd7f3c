/**
 * Filters of the bass chain as complex factors at one frequency, time convention e^(+j omega t), normalised s = j f / f0.
 * Every function writes re, im into `out`.
 */

/**
 * Second-order Butterworth high-pass s^2 / (s^2 + sqrt2 s + 1): -3.01 dB at `cutHz`, 12 dB an octave below. What a
 * subwoofer's own high-pass is taken as (common practice; the form is Butterworth's).
 */
export const highPassTwo = (frequencyHz: number, cutHz: number, out: Float64Array): void => {
  const r = frequencyHz / cutHz;
  const r2 = r * r;
  const re = 1 - r2;
  const im = Math.SQRT2 * r;
  const size = re * re + im * im;
  out[0] = (-r2 * re) / size;
  out[1] = (r2 * im) / size;
};

const setSquare = (re: number, im: number, out: Float64Array): void => {
  out[0] = re * re - im * im;
  out[1] = 2 * re * im;
};

/**
 * Fourth-order Linkwitz-Riley low-pass [1 / (s^2 + sqrt2 s + 1)]^2: -6.02 dB at the crossover, in phase with its high-pass
 * at every frequency, the two adding up to magnitude 1 (Linkwitz, JAES 24(1), 1976, from memory; derived).
 */
export const crossoverLow = (frequencyHz: number, crossoverHz: number, out: Float64Array): void => {
  const r = frequencyHz / crossoverHz;
  const re = 1 - r * r;
  const im = Math.SQRT2 * r;
  const size = re * re + im * im;
  setSquare(re / size, -im / size, out);
};

/** Fourth-order Linkwitz-Riley high-pass [s^2 / (s^2 + sqrt2 s + 1)]^2; see `crossoverLow`. */
export const crossoverHigh = (frequencyHz: number, crossoverHz: number, out: Float64Array): void => {
  highPassTwo(frequencyHz, crossoverHz, out);
  setSquare(out[0], out[1], out);
};

/** One peak filter of an equaliser. */
export interface PeakFilter {
  readonly frequencyHz: number;
  readonly gainDb: number;
  readonly q: number;
}

/**
 * A peak filter (s^2 + s A / Q + 1) / (s^2 + s / (A Q) + 1), A = 10^(gain / 40): the analogue prototype of the Audio EQ
 * Cookbook (W3C note, from memory). Below 200 Hz a digital one at 48 kHz is the same to 0.01 dB.
 */
export const peak = (frequencyHz: number, filter: PeakFilter, out: Float64Array): void => {
  const r = frequencyHz / filter.frequencyHz;
  const a = 10 ** (filter.gainDb / 40);
  const real = 1 - r * r;
  const up = (r * a) / filter.q;
  const down = r / (a * filter.q);
  const size = real * real + down * down;
  out[0] = (real * real + up * down) / size;
  out[1] = (real * (up - down)) / size;
};

/** Level of a peak filter in dB. */
export const peakDb = (frequencyHz: number, filter: PeakFilter): number => {
  const r = frequencyHz / filter.frequencyHz;
  const a = 10 ** (filter.gainDb / 40);
  const real = (1 - r * r) ** 2;
  const up = (r * a) / filter.q;
  const down = r / (a * filter.q);
  return 10 * Math.log10((real + up * up) / (real + down * down));
};
