/**
 * The one-dimensional eigenvalue equation of an axis of length a with walls of admittance beta0, beta1, in the variable
 * w = (q a)^2 with b = j k a beta and the entire functions C(w) = cos sqrt w, S(w) = sin(sqrt w) / sqrt w:
 *
 *   general        F = (w - b0 b1) S(w) - (b0 + b1) C(w)
 *   equal walls    even modes F = (w / 2) S(w / 4) - b C(w / 4),   odd modes F = C(w / 4) + (b / 2) S(w / 4)
 *
 * Derived from X'' = -q^2 X, X'(0) = (b0 / a) X(0), X'(a) = -(b1 / a) X(a) (project derivation; Morse and Ingard,
 * Theoretical Acoustics, ch. 9, has the same problem in q). Equal walls are split by parity because their two surface
 * waves agree to e^(-Re zeta) and could not be told apart otherwise.
 */
export const GENERAL = 0;
export const EVEN = 1;
export const ODD = 2;
export type Family = typeof GENERAL | typeof EVEN | typeof ODD;

/** Below this |w| the entire functions are summed as series; above, (C - S) / 2w loses at most one digit. */
const SERIES_BELOW = 0.05;

/** C, S, dS/dw as re, im; all times e^(-|Im sqrt w|) so that no admittance overflows. */
const entire = new Float64Array(6);

/** Writes C(w), S(w) and S'(w), each times e^(-|Im sqrt w|), into `out`. */
const scaledEntire = (wRe: number, wIm: number, out: Float64Array): void => {
  const modulus = Math.sqrt(wRe * wRe + wIm * wIm);
  let u: number;
  let v: number;
  if (wRe >= 0) {
    u = Math.sqrt((modulus + wRe) / 2);
    v = u > 0 ? wIm / (2 * u) : 0;
  } else {
    v = Math.sqrt((modulus - wRe) / 2);
    u = Math.abs(wIm) / (2 * v);
    if (wIm < 0) v = -v;
  }
  const decay = Math.exp(-2 * Math.abs(v));
  if (modulus < SERIES_BELOW) {
    const scale = Math.sqrt(decay);
    seriesEntire(wRe, wIm, out);
    for (let i = 0; i < 6; i++) out[i] *= scale;
    return;
  }
  const ch = (1 + decay) / 2;
  const sh = v < 0 ? (decay - 1) / 2 : (1 - decay) / 2;
  const cosU = Math.cos(u);
  const sinU = Math.sin(u);
  const cRe = cosU * ch;
  const cIm = -sinU * sh;
  const nRe = sinU * ch;
  const nIm = cosU * sh;
  const sRe = (nRe * u + nIm * v) / modulus;
  const sIm = (nIm * u - nRe * v) / modulus;
  const half = 0.5 / (modulus * modulus);
  const dRe = cRe - sRe;
  const dIm = cIm - sIm;
  out[0] = cRe;
  out[1] = cIm;
  out[2] = sRe;
  out[3] = sIm;
  out[4] = (dRe * wRe + dIm * wIm) * half;
  out[5] = (dIm * wRe - dRe * wIm) * half;
};

/** The same three functions, unscaled, by Horner's rule; good for |w| below about 0.3. */
export const seriesEntire = (wRe: number, wIm: number, out: Float64Array): void => {
  let cRe = 0;
  let cIm = 0;
  let sRe = 0;
  let sIm = 0;
  let dRe = 0;
  let dIm = 0;
  for (let n = 7; n >= 0; n--) {
    const c = SERIES_C[n];
    const s = SERIES_S[n];
    const d = (n + 1) * SERIES_S[n + 1];
    let next = c + cRe * wRe - cIm * wIm;
    cIm = cRe * wIm + cIm * wRe;
    cRe = next;
    next = s + sRe * wRe - sIm * wIm;
    sIm = sRe * wIm + sIm * wRe;
    sRe = next;
    next = d + dRe * wRe - dIm * wIm;
    dIm = dRe * wIm + dIm * wRe;
    dRe = next;
  }
  out[0] = cRe;
  out[1] = cIm;
  out[2] = sRe;
  out[3] = sIm;
  out[4] = dRe;
  out[5] = dIm;
};

/** Coefficients (-1)^n / (2n)! and (-1)^n / (2n + 1)!. */
const SERIES_C = new Float64Array(9);
const SERIES_S = new Float64Array(9);
let factorial = 1;
for (let n = 0; n < 9; n++) {
  const sign = n % 2 === 0 ? 1 : -1;
  SERIES_C[n] = sign / factorial;
  SERIES_S[n] = sign / (factorial * (2 * n + 1));
  factorial *= (2 * n + 1) * (2 * n + 2);
}

/**
 * Evaluates F and its derivatives at w for walls b (b0Re, b0Im, b1Re, b1Im). Into `out`: F, dF/dw, dF/db0, dF/db1 as
 * re, im, all with the same positive factor. For EVEN and ODD only b0 is read and dF/db1 is 0.
 */
export const evaluate = (family: Family, wRe: number, wIm: number, b: Float64Array, out: Float64Array): void => {
  const b0Re = b[0];
  const b0Im = b[1];
  if (family !== GENERAL) {
    scaledEntire(wRe / 4, wIm / 4, entire);
    const cRe = entire[0];
    const cIm = entire[1];
    const sRe = entire[2];
    const sIm = entire[3];
    const dRe = entire[4] / 8;
    const dIm = entire[5] / 8;
    out[6] = 0;
    out[7] = 0;
    if (family === EVEN) {
      out[0] = (wRe * sRe - wIm * sIm) / 2 - (b0Re * cRe - b0Im * cIm);
      out[1] = (wRe * sIm + wIm * sRe) / 2 - (b0Re * cIm + b0Im * cRe);
      out[2] = sRe / 2 + wRe * dRe - wIm * dIm + (b0Re * sRe - b0Im * sIm) / 8;
      out[3] = sIm / 2 + wRe * dIm + wIm * dRe + (b0Re * sIm + b0Im * sRe) / 8;
      out[4] = -cRe;
      out[5] = -cIm;
    } else {
      out[0] = cRe + (b0Re * sRe - b0Im * sIm) / 2;
      out[1] = cIm + (b0Re * sIm + b0Im * sRe) / 2;
      out[2] = -sRe / 8 + b0Re * dRe - b0Im * dIm;
      out[3] = -sIm / 8 + b0Re * dIm + b0Im * dRe;
      out[4] = sRe / 2;
      out[5] = sIm / 2;
    }
    return;
  }
  scaledEntire(wRe, wIm, entire);
  const b1Re = b[2];
  const b1Im = b[3];
  const cRe = entire[0];
  const cIm = entire[1];
  const sRe = entire[2];
  const sIm = entire[3];
  const sumRe = b0Re + b1Re;
  const sumIm = b0Im + b1Im;
  const gapRe = wRe - (b0Re * b1Re - b0Im * b1Im);
  const gapIm = wIm - (b0Re * b1Im + b0Im * b1Re);
  out[0] = gapRe * sRe - gapIm * sIm - (sumRe * cRe - sumIm * cIm);
  out[1] = gapRe * sIm + gapIm * sRe - (sumRe * cIm + sumIm * cRe);
  out[2] = sRe + gapRe * entire[4] - gapIm * entire[5] + (sumRe * sRe - sumIm * sIm) / 2;
  out[3] = sIm + gapRe * entire[5] + gapIm * entire[4] + (sumRe * sIm + sumIm * sRe) / 2;
  out[4] = -(b1Re * sRe - b1Im * sIm) - cRe;
  out[5] = -(b1Re * sIm + b1Im * sRe) - cIm;
  out[6] = -(b0Re * sRe - b0Im * sIm) - cRe;
  out[7] = -(b0Re * sIm + b0Im * sRe) - cIm;
};
