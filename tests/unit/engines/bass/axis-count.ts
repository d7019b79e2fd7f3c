/**
 * Counts the eigenvalues of an axis inside a circle |w| = radius by the argument principle: how often F turns round zero.
 * Written for the tests from the wall conditions alone; shares nothing with src.
 */
export interface Walls {
  b0: readonly [number, number];
  b1: readonly [number, number];
}

/** F(w) = (w - b0 b1) sin q / q - (b0 + b1) cos q, w = q^2, times e^(-|Im q|): only its direction is used. */
export const characteristic = ({ b0, b1 }: Walls, qRe: number, qIm: number): [number, number] => {
  const shrink = Math.exp(-2 * Math.abs(qIm));
  const ch = (1 + shrink) / 2;
  const sh = (Math.sign(qIm) * (1 - shrink)) / 2;
  const sin = [Math.sin(qRe) * ch, Math.cos(qRe) * sh];
  const cos = [Math.cos(qRe) * ch, -Math.sin(qRe) * sh];
  const norm = qRe * qRe + qIm * qIm;
  const sinc = [(sin[0] * qRe + sin[1] * qIm) / norm, (sin[1] * qRe - sin[0] * qIm) / norm];
  const gap = [
    qRe * qRe - qIm * qIm - (b0[0] * b1[0] - b0[1] * b1[1]),
    2 * qRe * qIm - (b0[0] * b1[1] + b0[1] * b1[0]),
  ];
  const sum = [b0[0] + b1[0], b0[1] + b1[1]];
  return [
    gap[0] * sinc[0] - gap[1] * sinc[1] - (sum[0] * cos[0] - sum[1] * cos[1]),
    gap[0] * sinc[1] + gap[1] * sinc[0] - (sum[0] * cos[1] + sum[1] * cos[0]),
  ];
};

/** Number of eigenvalues with |w| < radius^2; NaN when the circle runs too close to one. */
export const countInside = (walls: Walls, radius: number): number => {
  const at = (angle: number): number => {
    const [re, im] = characteristic(walls, radius * Math.cos(angle / 2), radius * Math.sin(angle / 2));
    return Math.atan2(im, re);
  };
  const wrap = (turn: number): number => turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI));
  let total = 0;
  let failed = false;
  const between = (from: number, fromPhase: number, to: number, toPhase: number, depth: number): void => {
    const middle = (from + to) / 2;
    const phase = at(middle);
    const first = wrap(phase - fromPhase);
    const second = wrap(toPhase - phase);
    if (Math.abs(first) < 0.6 && Math.abs(second) < 0.6) total += first + second;
    else if (depth > 30) failed = true;
    else {
      between(from, fromPhase, middle, phase, depth + 1);
      between(middle, phase, to, toPhase, depth + 1);
    }
  };
  const pieces = Math.ceil(8 * radius) + 16;
  let before = at(0);
  for (let i = 1; i <= pieces; i++) {
    const phase = at((2 * Math.PI * i) / pieces);
    between((2 * Math.PI * (i - 1)) / pieces, before, (2 * Math.PI * i) / pieces, phase, 0);
    before = phase;
  }
  return failed ? Number.NaN : Math.round(total / (2 * Math.PI));
};

/** Random walls over the whole right half plane of beta, |beta| from 0.001 to 14, on an axis of 1.5 to 30 m at 20 to 600 Hz. */
export const randomWalls = (random: () => number): Walls & { ka: number } => {
  const ka = (2 * Math.PI * 20 * 30 ** random() * 1.5 * 20 ** random()) / 343.2;
  const b = (): [number, number] => {
    const size = 0.001 * 14_000 ** random();
    const angle = (random() - 0.5) * Math.PI;
    // j k a beta
    return [-ka * size * Math.sin(angle), ka * size * Math.cos(angle)];
  };
  const b0 = b();
  const same = random();
  const b1 = same < 0.1 ? b0 : same < 0.2 ? ([b0[0] * (1 + 1e-5), b0[1]] as [number, number]) : b();
  return { b0, b1, ka };
};

/**
 * Says what is wrong with a list of eigenvalues (re, im pairs) for these walls: one that is none, one found twice, or a
 * number inside a circle that differs from the count; '' when nothing is. The circle is laid through the widest gap
 * below half the list.
 */
export const faultIn = (walls: Walls, w: Float64Array): string => {
  const count = w.length / 2;
  const sizes = Array.from({ length: count }, (_, n) => Math.sqrt(Math.hypot(w[2 * n], w[2 * n + 1]))).sort(
    (a, b) => a - b,
  );
  const half = (Math.PI * count) / 2;
  let radius = 0;
  let widest = 0;
  for (let i = 1; i < count && sizes[i] < half; i++) {
    const gap = sizes[i] - sizes[i - 1];
    if (gap * (i + 4) > widest) {
      widest = gap * (i + 4);
      radius = (sizes[i] + sizes[i - 1]) / 2;
    }
  }
  if (radius === 0) return 'no gap for the circle';
  for (let n = 0; n < count; n++) {
    for (let m = 0; m < n; m++) {
      const apart = Math.hypot(w[2 * n] - w[2 * m], w[2 * n + 1] - w[2 * m + 1]);
      // the two surface waves of equal walls do agree, to e^(-|Im q|)
      const decay = Math.sqrt((sizes2(w, n) - w[2 * n]) / 2);
      const stiffPair = decay > 6 && Math.hypot(walls.b0[0] - walls.b1[0], walls.b0[1] - walls.b1[1]) < 1e-3 * decay;
      if (apart < 1e-6 * (1 + sizes2(w, n)) && !stiffPair)
        return `modes ${m} and ${n} agree at ${w[2 * n]}, ${w[2 * n + 1]}`;
    }
  }
  const inside = sizes.filter((size) => size < radius).length;
  const counted = countInside(walls, radius);
  return counted === inside ? '' : `${inside} found, ${counted} counted within |q| < ${radius}`;
};

const sizes2 = (w: Float64Array, n: number): number => Math.hypot(w[2 * n], w[2 * n + 1]);
