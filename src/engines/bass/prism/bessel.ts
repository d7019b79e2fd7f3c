/**
 * Modified Bessel functions K0 and K1 of a positive argument, into `bessel`. Up to 2 by the power series
 *
 *   K0(x) = -(ln(x / 2) + gamma) I0(x) + sum of (x^2 / 4)^n / n!^2 (1 + 1/2 + ... + 1/n)
 *   K1(x) = 1 / x + (ln(x / 2) + gamma) I1(x) - (x / 4) sum of (x^2 / 4)^n / (n! (n + 1)!) (2 (1 + ... + 1/n) + 1 / (n + 1))
 *
 * (Abramowitz and Stegun, 9.6.10 to 9.6.13; from memory), above it between tabulated places of e^x K (cubic in both ends'
 * values and slopes, K0' = -K1, K1' = -K0 - K1 / x); the table is the integral of e^(-x cosh t) cosh(nu t) (9.6.24).
 * Relative error below 1e-9; beyond FARTHEST both are 0.
 */
export const bessel = { k0: 0, k1: 0 };

const EULER = 0.5772156649015329;
const SERIES_TO = 2;
const STEP = 1 / 32;
/** e^-16 = 1e-7: what lies beyond is dropped. */
export const FARTHEST = 16;
const PLACES = Math.round((FARTHEST - SERIES_TO) / STEP) + 1;

/** e^x K_nu(x) by the trapezoidal rule, whose error falls faster than any power of the step. */
const scaledByIntegral = (x: number, nu: 0 | 1): number => {
  const h = 0.08;
  let sum = 0.5;
  for (let t = h; ; t += h) {
    const half = Math.sinh(t / 2);
    const term = Math.exp(-2 * x * half * half) * (nu === 0 ? 1 : Math.cosh(t));
    sum += term;
    if (term < 1e-18) return sum * h;
  }
};

/** e^x K0, its slope, e^x K1, its slope at SERIES_TO + i STEP. */
const table = ((): Float64Array => {
  const values = new Float64Array(4 * PLACES);
  for (let i = 0; i < PLACES; i++) {
    const x = SERIES_TO + i * STEP;
    const k0 = scaledByIntegral(x, 0);
    const k1 = scaledByIntegral(x, 1);
    values[4 * i] = k0;
    values[4 * i + 1] = (k0 - k1) * STEP;
    values[4 * i + 2] = k1;
    values[4 * i + 3] = (k1 - k0 - k1 / x) * STEP;
  }
  return values;
})();

export const setBessel = (x: number): void => {
  if (x >= FARTHEST) {
    bessel.k0 = 0;
    bessel.k1 = 0;
    return;
  }
  if (x < SERIES_TO) {
    setSeries(x);
    return;
  }
  const place = (x - SERIES_TO) / STEP;
  const i = Math.min(PLACES - 2, Math.floor(place));
  const t = place - i;
  const u = 1 - t;
  const o = 4 * i;
  const size = Math.exp(-x);
  const a = u * u * (1 + 2 * t);
  const b = u * u * t;
  const c = t * t * (3 - 2 * t);
  const d = -t * t * u;
  bessel.k0 = size * (a * table[o] + b * table[o + 1] + c * table[o + 4] + d * table[o + 5]);
  bessel.k1 = size * (a * table[o + 2] + b * table[o + 3] + c * table[o + 6] + d * table[o + 7]);
};

const setSeries = (x: number): void => {
  const q = (x * x) / 4;
  const log = Math.log(x / 2) + EULER;
  let term0 = 1;
  let term1 = 1;
  let harmonic = 0;
  let i0 = 1;
  let i1 = 1;
  let rest0 = 0;
  let rest1 = 1;
  for (let n = 1; n < 14; n++) {
    harmonic += 1 / n;
    term0 *= q / (n * n);
    term1 *= q / (n * (n + 1));
    i0 += term0;
    i1 += term1;
    rest0 += term0 * harmonic;
    rest1 += term1 * (2 * harmonic + 1 / (n + 1));
    if (term0 < 1e-14) break;
  }
  bessel.k0 = rest0 - log * i0;
  bessel.k1 = 1 / x + (log * i1 * x) / 2 - (x / 4) * rest1;
};
