/**
 * One axis of a box with absorbing walls, written plainly from the wall conditions: the baseline of the bench and an oracle
 * for the engine, with which it shares no code. Good for moderate walls (no surface waves).
 */
export interface PlainAxis {
  lengthM: number;
  count: number;
  /** (q a)^2, q in 1/m, b0 / (q a), 1 / integral of X^2: re and im per mode. */
  wRe: Float64Array;
  wIm: Float64Array;
  qRe: Float64Array;
  qIm: Float64Array;
  ratioRe: Float64Array;
  ratioIm: Float64Array;
  weightRe: Float64Array;
  weightIm: Float64Array;
}

type Complex = readonly [number, number];
const mul = (a: Complex, b: Complex): Complex => [a[0] * b[0] - a[1] * b[1], a[0] * b[1] + a[1] * b[0]];
const div = (a: Complex, b: Complex): Complex => {
  const d = b[0] * b[0] + b[1] * b[1];
  return [(a[0] * b[0] + a[1] * b[1]) / d, (a[1] * b[0] - a[0] * b[1]) / d];
};
const root = ([re, im]: Complex): Complex => {
  const size = Math.hypot(re, im);
  const a = Math.sqrt(Math.max(0, (size + re) / 2));
  const b = Math.sqrt(Math.max(0, (size - re) / 2));
  return [a, im < 0 ? -b : b];
};
const cosine = ([u, v]: Complex): Complex => [Math.cos(u) * Math.cosh(v), -Math.sin(u) * Math.sinh(v)];
const sine = ([u, v]: Complex): Complex => [Math.sin(u) * Math.cosh(v), Math.cos(u) * Math.sinh(v)];

/** Newton's method on (q^2 - b0 b1) sin q - (b0 + b1) q cos q, divided by q, from a start in w = q^2. */
const newton = (start: Complex, b0: Complex, b1: Complex): Complex => {
  let w = start;
  const product = mul(b0, b1);
  const sum: Complex = [b0[0] + b1[0], b0[1] + b1[1]];
  for (let i = 0; i < 30; i++) {
    if (Math.hypot(...w) < 1e-6) w = [1e-6, 0];
    const q = root(w);
    const c = cosine(q);
    const s = div(sine(q), q);
    const slopeS = div([c[0] - s[0], c[1] - s[1]], [2 * w[0], 2 * w[1]]);
    const gap: Complex = [w[0] - product[0], w[1] - product[1]];
    const f0 = mul(gap, s);
    const f1 = mul(sum, c);
    const d0 = mul(gap, slopeS);
    const d1 = mul(sum, s);
    const step = div([f0[0] - f1[0], f0[1] - f1[1]], [s[0] + d0[0] + d1[0] / 2, s[1] + d0[1] + d1[1] / 2]);
    w = [w[0] - step[0], w[1] - step[1]];
    if (Math.hypot(...step) < 1e-11 * (1 + Math.hypot(...w))) break;
  }
  return w;
};

/** The first `count` modes at wavenumber k; `near`, the same axis at a neighbouring k, is where Newton starts. */
export const plainAxis = (
  lengthM: number,
  beta0: Complex,
  beta1: Complex,
  k: number,
  count: number,
  near: PlainAxis | null,
): PlainAxis => {
  const list = (): Float64Array => new Float64Array(count);
  const axis: PlainAxis = {
    lengthM,
    count,
    wRe: list(),
    wIm: list(),
    qRe: list(),
    qIm: list(),
    ratioRe: list(),
    ratioIm: list(),
    weightRe: list(),
    weightIm: list(),
  };
  const b0: Complex = [-k * lengthM * beta0[1], k * lengthM * beta0[0]];
  const b1: Complex = [-k * lengthM * beta1[1], k * lengthM * beta1[0]];
  for (let n = 0; n < count; n++) {
    let w: Complex = [(n * Math.PI) ** 2, 0];
    if (near === null) {
      for (let step = 1; step <= 20; step++) {
        const t = step / 20;
        if (step === 1 && n === 0) w = [t * (b0[0] + b1[0]), t * (b0[1] + b1[1])];
        w = newton(w, [t * b0[0], t * b0[1]], [t * b1[0], t * b1[1]]);
      }
    } else w = newton([near.wRe[n], near.wIm[n]], b0, b1);
    const q = root(w);
    const c = cosine(q);
    const s = div(sine(q), q);
    const cs = mul(c, s);
    const ratio = div(b0, q);
    // (1 + CS) / 2 + b0 S^2 + b0^2 (1 - CS) / 2w
    const squares = mul(b0, mul(s, s));
    const last = div(mul(mul(b0, b0), [1 - cs[0], -cs[1]]), [2 * w[0], 2 * w[1]]);
    const integral: Complex = [(1 + cs[0]) / 2 + squares[0] + last[0], cs[1] / 2 + squares[1] + last[1]];
    const weight = div([1 / lengthM, 0], integral);
    axis.wRe[n] = w[0];
    axis.wIm[n] = w[1];
    axis.qRe[n] = q[0] / lengthM;
    axis.qIm[n] = q[1] / lengthM;
    axis.ratioRe[n] = ratio[0];
    axis.ratioIm[n] = ratio[1];
    axis.weightRe[n] = weight[0];
    axis.weightIm[n] = weight[1];
  }
  return axis;
};

/** X_n(x) = cos qx + (b0 / qa) sin qx into out[0], out[1]. */
export const shape = (axis: PlainAxis, n: number, x: number, out: Float64Array): void => {
  const u = axis.qRe[n] * x;
  const v = axis.qIm[n] * x;
  const grow = Math.exp(v);
  const ch = (grow + 1 / grow) / 2;
  const sh = (grow - 1 / grow) / 2;
  const cos = Math.cos(u);
  const sin = Math.sin(u);
  const sRe = sin * ch;
  const sIm = cos * sh;
  out[0] = cos * ch + axis.ratioRe[n] * sRe - axis.ratioIm[n] * sIm;
  out[1] = -sin * sh + axis.ratioRe[n] * sIm + axis.ratioIm[n] * sRe;
};

/** A box at one wavenumber. */
export interface PlainRoom {
  sizeM: readonly [number, number, number];
  k: number;
  soundSpeed: number;
  /** j k beta per wall, re and im, order x-, x+, y-, y+, z-, z+. */
  walls: Float64Array;
  axes: readonly [PlainAxis, PlainAxis, PlainAxis];
}

export const plainRoom = (
  sizeM: readonly [number, number, number],
  soundSpeed: number,
  admittance: readonly (readonly [number, number])[],
  hz: number,
  cutHz: number,
  near: PlainRoom | null,
): PlainRoom => {
  const k = (2 * Math.PI * hz) / soundSpeed;
  const solve = (axis: 0 | 1 | 2): PlainAxis => {
    const count = Math.floor((2 * cutHz * sizeM[axis]) / soundSpeed) + 1;
    return plainAxis(sizeM[axis], admittance[2 * axis], admittance[2 * axis + 1], k, count, near?.axes[axis] ?? null);
  };
  const walls = new Float64Array(12);
  for (let i = 0; i < 6; i++) {
    walls[2 * i] = -k * admittance[i][1];
    walls[2 * i + 1] = k * admittance[i][0];
  }
  return { sizeM, k, soundSpeed, walls, axes: [solve(0), solve(1), solve(2)] };
};

/**
 * Attenuation in 1/m of the first term across a closed axis, the least of all where walls are moderate: the real part of
 * gamma with gamma^2 = w / L^2 + w' / L'^2 - k^2. Sums are cut at gamma of rigid walls beyond that plus ln(1 / eps) / d.
 */
export const leastAttenuation = ({ k, axes }: PlainRoom, b: 0 | 1 | 2, c: 0 | 1 | 2): number => {
  const re = axes[b].wRe[0] / axes[b].lengthM ** 2 + axes[c].wRe[0] / axes[c].lengthM ** 2 - k ** 2;
  const im = axes[b].wIm[0] / axes[b].lengthM ** 2 + axes[c].wIm[0] / axes[c].lengthM ** 2;
  return root([re, im])[0];
};
