/**
 * Normalised specific admittance of a locally reacting wall and the share of sound energy it absorbs.
 *
 *   normal incidence    alpha = 1 - |(1 - beta) / (1 + beta)|^2
 *   diffuse incidence   alpha = 8 beta [1 + beta / (1 + beta) - 2 beta ln(1 + 1 / beta)]      (real beta)
 *
 * The second is Paris' integral 2 int alpha(theta) cos theta d(cos theta) of the first (derived; the same result is in
 * Kuttruff, Room Acoustics, ch. 2, from memory). Its maximum, 0.951, lies near beta = 0.64: no real admittance absorbs more.
 */
export type Admittance = readonly [re: number, im: number];

/** Share absorbed at normal incidence, 0..1. */
export const normalAbsorption = ([re, im]: Admittance): number => (4 * re) / ((1 + re) ** 2 + im * im);

/** Share absorbed from a diffuse field by a wall of real admittance beta >= 0. */
export const diffuseAbsorption = (beta: number): number => {
  if (beta <= 0) return 0;
  if (beta > LARGE) return diffuseSeries(1 / beta);
  return 8 * beta * (1 + beta / (1 + beta) - 2 * beta * Math.log1p(1 / beta));
};

/** Above this beta the closed form cancels; its series in 1 / beta takes over. */
const LARGE = 1e3;

/** 8 beta [...] with x = 1 / beta: 8 sum over n >= 2 of (-1)^n x^(n-1) (1 - 2 / (n + 1)) = 8/3 x - 4 x^2 + 24/5 x^3 ... */
const diffuseSeries = (x: number): number => x * (8 / 3 + x * (-4 + x * (24 / 5 + x * (-16 / 3))));

/** The real admittance whose diffuse-field absorption is largest, and that absorption. */
export const BEST_BETA = goldenMaximum(diffuseAbsorption, 0.3, 1.2);
export const MOST_DIFFUSE = diffuseAbsorption(BEST_BETA);

export interface WallAdmittance {
  readonly beta: Admittance;
  /** True when no real admittance absorbs so much and the most absorbing one was taken. */
  readonly clamped: boolean;
}

/** The real admittance (on the stiff side, beta <= 0.64) whose diffuse-field absorption is `alpha`. */
export const admittanceFromDiffuse = (alpha: number): WallAdmittance => {
  if (!(alpha > 0)) return { beta: [0, 0], clamped: false };
  if (alpha >= MOST_DIFFUSE) return { beta: [BEST_BETA, 0], clamped: alpha > MOST_DIFFUSE };
  let low = 0;
  let high = BEST_BETA;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (diffuseAbsorption(middle) < alpha) low = middle;
    else high = middle;
  }
  return { beta: [(low + high) / 2, 0], clamped: false };
};

/** The real admittance (beta <= 1) whose normal-incidence absorption is `alpha`, 0..1. */
export const admittanceFromNormal = (alpha: number): WallAdmittance => {
  const s = Math.sqrt(1 - Math.min(1, Math.max(0, alpha)));
  return { beta: [(1 - s) / (1 + s), 0], clamped: alpha > 1 };
};

/** Where a function with one maximum between the ends has it. */
function goldenMaximum(f: (x: number) => number, from: number, to: number): number {
  const ratio = (Math.sqrt(5) - 1) / 2;
  let low = from;
  let high = to;
  while (high - low > 1e-9) {
    const a = high - ratio * (high - low);
    const b = low + ratio * (high - low);
    if (f(a) > f(b)) high = b;
    else low = a;
  }
  return (low + high) / 2;
}
