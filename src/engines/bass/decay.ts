/**
 * e^(-t) for 0 <= t <= 700, to 4e-16 relative: the engine spends most of its time on these, and a call of Math.exp costs
 * more than the arithmetic. t = (m + f) ln 2 / 32, |f| <= 1/2: 2^(-m / 32) from two tables, the rest by its Taylor series to
 * the sixth power (the seventh is below 3e-18). Standard table method (derived; the subtraction in two parts as in Cody and
 * Waite, from memory).
 */
export const decay = (t: number): number => {
  const m = (t * PER_STEP + 0.5) | 0;
  const r = m * STEP_HIGH - t + m * STEP_LOW;
  const series = r * (1 + r * (1 / 2 + r * (1 / 6 + r * (1 / 24 + r * (1 / 120 + r * (1 / 720))))));
  const power = WHOLE[m >> 5] * FRACTION[m & 31];
  return power + power * series;
};

const PER_STEP = 32 / Math.LN2;
/** ln 2 / 32 in two parts, the first so short (33 bits) that m times it is exact. */
const STEP_HIGH = 5_954_088_943 / 2 ** 38;
const STEP_LOW = 2.325192846878874e-12;
const WHOLE = Float64Array.from({ length: 1024 }, (_, n) => 2 ** -n);
const FRACTION = Float64Array.from({ length: 32 }, (_, i) => 2 ** (-i / 32));

/** cos and sin of an angle into `out`; small angles, the usual case, by their Taylor series to 2e-16. */
export const setTurn = (angle: number, out: Float64Array): void => {
  if (angle < 0.25 && angle > -0.25) {
    const a2 = angle * angle;
    out[0] = 1 + a2 * (-1 / 2 + a2 * (1 / 24 + a2 * (-1 / 720 + a2 * (1 / 40_320 - a2 * (1 / 3_628_800)))));
    out[1] =
      angle * (1 + a2 * (-1 / 6 + a2 * (1 / 120 + a2 * (-1 / 5040 + a2 * (1 / 362_880 - a2 * (1 / 39_916_800))))));
    return;
  }
  out[0] = Math.cos(angle);
  out[1] = Math.sin(angle);
};
