import FFT from 'fft.js';

/**
 * How a response over time is sampled: on the line omega = 2 pi f - j growth, so that what is longer than the duration does
 * not come round again at the beginning (exponential window; engine notes, section 8).
 */
export interface ImpulseGrid {
  readonly durationS: number;
  /** A power of two. */
  readonly samples: number;
  /** i / durationS, the first a millionth of a hertz: the engine answers above 0. */
  readonly frequenciesHz: Float64Array;
  readonly growthPerS: number;
}

/** What comes round again is this much smaller: e^-6.9 = -60 dB. */
const WRAP_NEPERS = 6.9;
/** Above here the spectrum is faded out by a raised cosine, up to its end. */
const TAPER_FROM = 0.55;
const ZERO_HZ = 1e-6;
/** The end of the response, where rounding is largest after the window is taken off, is faded out. */
const FADE_SHARE = 0.12;

/** A grid up to `highestHz` with at least eight samples a period there. */
export const impulseGrid = (durationS: number, highestHz: number): ImpulseGrid => ({
  durationS,
  samples: 2 ** Math.ceil(Math.log2(8 * highestHz * durationS)),
  frequenciesHz: Float64Array.from({ length: Math.floor(highestHz * durationS) + 1 }, (_, i) =>
    i === 0 ? ZERO_HZ : i / durationS,
  ),
  growthPerS: WRAP_NEPERS / durationS,
});

/** What is sent to a source and what its own high-pass leaves of it. */
export interface PlayedDrive {
  readonly gainDb: number;
  readonly delayMs: number;
  readonly inverted: boolean;
  readonly highPassHz: number;
}

/**
 * A source's complex weight at s = growth + j 2 pi f, re and im into `out`: gain, sign, e^(-s delay), and a second-order
 * Butterworth high-pass s^2 / (s^2 + sqrt2 w s + w^2).
 */
export const playedWeight = (drive: PlayedDrive, hz: number, growthPerS: number, out: Float64Array): void => {
  const w = 2 * Math.PI * drive.highPassHz;
  const sRe = growthPerS;
  const sIm = 2 * Math.PI * hz;
  const topRe = sRe * sRe - sIm * sIm;
  const topIm = 2 * sRe * sIm;
  const lowRe = topRe + Math.SQRT2 * w * sRe + w * w;
  const lowIm = topIm + Math.SQRT2 * w * sIm;
  const size2 = lowRe * lowRe + lowIm * lowIm;
  const filterRe = (topRe * lowRe + topIm * lowIm) / size2;
  const filterIm = (topIm * lowRe - topRe * lowIm) / size2;
  const delayS = drive.delayMs / 1000;
  const size = (drive.inverted ? -1 : 1) * 10 ** (drive.gainDb / 20) * Math.exp(-growthPerS * delayS);
  const turnRe = size * Math.cos(sIm * delayS);
  const turnIm = -size * Math.sin(sIm * delayS);
  out[0] = filterRe * turnRe - filterIm * turnIm;
  out[1] = filterRe * turnIm + filterIm * turnRe;
};

/**
 * The response over time of a spectrum on the grid's line: h(t) = e^(growth t) (X_0 + 2 Re sum X_i e^(2 pi j i t / T)) / T.
 * Its unit is that of the spectrum times 1/s. Derived (Fourier series of the windowed response).
 */
export const impulseResponse = (grid: ImpulseGrid, re: Float64Array, im: Float64Array): Float64Array => {
  const { durationS, samples, frequenciesHz, growthPerS } = grid;
  const fft = new FFT(samples);
  const spectrum = fft.createComplexArray();
  const response = fft.createComplexArray();
  const last = frequenciesHz.length - 1;
  for (let i = 0; i <= last; i++) {
    const share = (i / last - TAPER_FROM) / (1 - TAPER_FROM);
    const taper = share <= 0 ? 1 : 0.5 + 0.5 * Math.cos(Math.PI * share);
    spectrum[2 * i] = taper * re[i];
    spectrum[2 * i + 1] = i === 0 ? 0 : taper * im[i];
    if (i === 0) continue;
    spectrum[2 * (samples - i)] = taper * re[i];
    spectrum[2 * (samples - i) + 1] = -taper * im[i];
  }
  fft.inverseTransform(response, spectrum);
  const fadeFrom = 1 - FADE_SHARE;
  return Float64Array.from({ length: samples }, (_, n) => {
    const place = n / samples;
    const fade = place <= fadeFrom ? 1 : 0.5 + 0.5 * Math.cos((Math.PI * (place - fadeFrom)) / FADE_SHARE);
    return fade * (samples / durationS) * response[2 * n] * Math.exp(growthPerS * durationS * place);
  });
};
