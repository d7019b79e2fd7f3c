import { type Allocate, plainly } from './arena.ts';
import { EVEN, GENERAL, seriesEntire } from './axis-equation.ts';
import type { AxisRoots } from './axis-solver.ts';

/**
 * Mode shapes of one axis, normalised bilinearly: the integral of X_n^2 over the axis is 1 (no conjugate: the operator
 * is complex symmetric). A shape is held in the form that does not cancel: cos + sin from wall 0, cos or sin about the
 * middle (equal walls), or decaying exponentials (surface waves).
 */
export interface AxisModes {
  readonly lengthM: number;
  readonly roots: AxisRoots;
  readonly form: Uint8Array;
  /** q a (trigonometric forms) or zeta = sqrt(-w) (exponential forms), re, im per mode. */
  readonly rate: Float64Array;
  /** b0 / (q a), or the far reflection R e^(-2 zeta), or +-e^(-zeta): re, im per mode. */
  readonly second: Float64Array;
  /** 1 / sqrt(integral of X^2), re, im per mode. */
  readonly norm: Float64Array;
  /** Largest modulus of 1 / integral, times the length: huge near an exceptional point. */
  readonly worstNorm: number;
}

const FORM = { trig: 0, even: 1, odd: 2, small: 3, smallOdd: 4, wall0: 5, wall1: 6, pairEven: 7, pairOdd: 8 } as const;
/** Re zeta from which a shape is written as decaying exponentials (general walls, equal walls). */
const SURFACE = 6;
const SURFACE_PAIR = 20;
const SMALL = 0.05;

const entire = new Float64Array(6);
/** One complex number handed between the helpers below. */
const z = new Float64Array(2);

const setQuotient = (aRe: number, aIm: number, bRe: number, bIm: number): void => {
  const scale = bRe * bRe + bIm * bIm;
  z[0] = (aRe * bRe + aIm * bIm) / scale;
  z[1] = (aIm * bRe - aRe * bIm) / scale;
};

/** Principal square root, real part >= 0; +j for negative real numbers. */
export const setRoot = (re: number, im: number, out: Float64Array): void => {
  const modulus = Math.sqrt(re * re + im * im);
  if (re >= 0) {
    out[0] = Math.sqrt((modulus + re) / 2);
    out[1] = out[0] > 0 ? im / (2 * out[0]) : 0;
  } else {
    out[1] = Math.sqrt((modulus - re) / 2);
    out[0] = Math.abs(im) / (2 * out[1]);
    if (im < 0) out[1] = -out[1];
  }
};

/** sin(q) / q, into z. */
const setSinc = (wRe: number, wIm: number, qRe: number, qIm: number): void => {
  if (wRe * wRe + wIm * wIm < SMALL * SMALL) {
    seriesEntire(wRe, wIm, entire);
    z[0] = entire[2];
    z[1] = entire[3];
    return;
  }
  const grow = Math.exp(qIm);
  const ch = (grow + 1 / grow) / 2;
  const sh = (grow - 1 / grow) / 2;
  setQuotient(Math.sin(qRe) * ch, Math.cos(qRe) * sh, qRe, qIm);
};

/** (1 - S(4w)) / 2w = 1/3 - w/15 + 2 w^2/315 ... for |w| < 0.05, into z; S(4w) = sin(2q) / 2q. */
const setThird = (wRe: number, wIm: number): void => {
  let re = 0;
  let im = 0;
  for (let n = THIRD_SERIES.length - 1; n >= 0; n--) {
    const next = THIRD_SERIES[n] + re * wRe - im * wIm;
    im = re * wIm + im * wRe;
    re = next;
  }
  z[0] = re;
  z[1] = im;
};
/** (-1)^n 4^(n+1) / (2 (2n + 3)!) */
const THIRD_SERIES = [1 / 3, -1 / 15, 2 / 315, -1 / 2835, 2 / 155925, -2 / 6081075, 4 / 638512875];

/** The integral of X^2 over s in 0..1 for the trigonometric form, into z: (1 + CS)/2 + b0 S^2 + b0^2 (1 - CS)/2w. */
const setTrigNorm = (wRe: number, wIm: number, qRe: number, qIm: number, bRe: number, bIm: number): void => {
  let cRe: number;
  let cIm: number;
  const small = wRe * wRe + wIm * wIm < SMALL * SMALL;
  if (small) {
    seriesEntire(wRe, wIm, entire);
    cRe = entire[0];
    cIm = entire[1];
    z[0] = entire[2];
    z[1] = entire[3];
  } else {
    const grow = Math.exp(qIm);
    const ch = (grow + 1 / grow) / 2;
    const sh = (grow - 1 / grow) / 2;
    const cosQ = Math.cos(qRe);
    const sinQ = Math.sin(qRe);
    cRe = cosQ * ch;
    cIm = -sinQ * sh;
    setQuotient(sinQ * ch, cosQ * sh, qRe, qIm);
  }
  const sRe = z[0];
  const sIm = z[1];
  const csRe = cRe * sRe - cIm * sIm;
  const csIm = cRe * sIm + cIm * sRe;
  const s2Re = sRe * sRe - sIm * sIm;
  const s2Im = 2 * sRe * sIm;
  if (small) setThird(wRe, wIm);
  else setQuotient(1 - csRe, -csIm, 2 * wRe, 2 * wIm);
  const b2Re = bRe * bRe - bIm * bIm;
  const b2Im = 2 * bRe * bIm;
  const tRe = z[0];
  const tIm = z[1];
  z[0] = (1 + csRe) / 2 + bRe * s2Re - bIm * s2Im + b2Re * tRe - b2Im * tIm;
  z[1] = csIm / 2 + bRe * s2Im + bIm * s2Re + b2Re * tIm + b2Im * tRe;
};

/** Builds the shapes for the given eigenvalues. */
export const shapeAxis = (lengthM: number, roots: AxisRoots, allocate: Allocate = plainly): AxisModes => {
  const { count, b, w, family } = roots;
  const form = new Uint8Array(count);
  const block = allocate(6 * count);
  const rate = block.subarray(0, 2 * count);
  const second = block.subarray(2 * count, 4 * count);
  const norm = block.subarray(4 * count);
  let worstNorm = 0;
  for (let n = 0; n < count; n++) {
    const wRe = w[2 * n];
    const wIm = w[2 * n + 1];
    setRoot(wRe, wIm, z);
    const qRe = z[0];
    const qIm = z[1];
    // zeta = sqrt(-w) = -j q or +j q, whichever has the positive real part
    const zetaRe = Math.abs(qIm);
    const zetaIm = qIm >= 0 ? -qRe : qRe;
    const small = wRe * wRe + wIm * wIm < SMALL * SMALL;
    let kind: number;
    if (family[n] === GENERAL) {
      kind = small ? FORM.small : FORM.trig;
      if (zetaRe > SURFACE) {
        const gap0 = Math.hypot(zetaRe + b[0], zetaIm + b[1]);
        const gap1 = Math.hypot(zetaRe + b[2], zetaIm + b[3]);
        kind = gap0 <= gap1 ? FORM.wall0 : FORM.wall1;
      }
    } else if (zetaRe > SURFACE_PAIR) kind = family[n] === EVEN ? FORM.pairEven : FORM.pairOdd;
    else if (family[n] === EVEN) kind = FORM.even;
    else kind = small ? FORM.smallOdd : FORM.odd;
    form[n] = kind;
    rate[2 * n] = qRe;
    rate[2 * n + 1] = qIm;
    switch (kind) {
      case FORM.small:
      case FORM.trig: {
        if (kind === FORM.trig) {
          setQuotient(b[0], b[1], qRe, qIm);
          second[2 * n] = z[0];
          second[2 * n + 1] = z[1];
        } else {
          second[2 * n] = b[0];
          second[2 * n + 1] = b[1];
        }
        setTrigNorm(wRe, wIm, qRe, qIm, b[0], b[1]);
        break;
      }
      case FORM.even:
        setSinc(wRe, wIm, qRe, qIm);
        z[0] = (1 + z[0]) / 2;
        z[1] /= 2;
        break;
      case FORM.odd:
        setSinc(wRe, wIm, qRe, qIm);
        z[0] = (1 - z[0]) / 2;
        z[1] /= -2;
        break;
      case FORM.smallOdd:
        // integral of t^2 S(w t^2)^2 over -1/2..1/2 = (1 - S(w)) / 2w = third(w / 4) / 4
        setThird(wRe / 4, wIm / 4);
        z[0] /= 4;
        z[1] /= 4;
        break;
      default:
        rate[2 * n] = zetaRe;
        rate[2 * n + 1] = zetaIm;
        setSurface(kind, zetaRe, zetaIm, b, second, n);
    }
    let inverse = 1 / Math.sqrt(z[0] * z[0] + z[1] * z[1]);
    if (kind >= FORM.wall0) inverse /= 2 * Math.sqrt(zetaRe * zetaRe + zetaIm * zetaIm);
    if (inverse > worstNorm) worstNorm = inverse;
    setRoot(z[0] * lengthM, z[1] * lengthM, z);
    setQuotient(1, 0, z[0], z[1]);
    norm[2 * n] = z[0];
    norm[2 * n + 1] = z[1];
  }
  return { lengthM, roots, form, rate, second, norm, worstNorm };
};

/** Second coefficient and integral (into z) of the exponential forms. */
const setSurface = (kind: number, re: number, im: number, b: Float64Array, second: Float64Array, n: number): void => {
  const size = Math.exp(-re);
  const eRe = size * Math.cos(im);
  const eIm = -size * Math.sin(im);
  const e2Re = eRe * eRe - eIm * eIm;
  const e2Im = 2 * eRe * eIm;
  if (kind === FORM.pairEven || kind === FORM.pairOdd) {
    const sign = kind === FORM.pairEven ? 1 : -1;
    // X = e^(-zeta s) +- e^(-zeta (1 - s)):  (1 - E) / zeta +- 2 e^(-zeta)
    second[2 * n] = sign;
    second[2 * n + 1] = 0;
    setQuotient(1 - e2Re, -e2Im, re, im);
    z[0] += 2 * sign * eRe;
    z[1] += 2 * sign * eIm;
    return;
  }
  const far = kind === FORM.wall0 ? 2 : 0;
  // X = e^(-zeta s) + R e^(-zeta (2 - s)) = e^(-zeta s) + (R e^(-zeta)) e^(-zeta (1 - s))
  setQuotient(re - b[far], im - b[far + 1], re + b[far], im + b[far + 1]);
  const rRe = z[0];
  const rIm = z[1];
  const pRe = rRe * eRe - rIm * eIm;
  const pIm = rRe * eIm + rIm * eRe;
  second[2 * n] = pRe;
  second[2 * n + 1] = pIm;
  // (1 - E)(1 + R^2 E) / 2 zeta + 2 R E, with P = R e^(-zeta): R^2 E = P^2, R E = P e^(-zeta)
  const qRe = 1 + pRe * pRe - pIm * pIm;
  const qIm = 2 * pRe * pIm;
  const gRe = 1 - e2Re;
  const gIm = -e2Im;
  setQuotient(gRe * qRe - gIm * qIm, gRe * qIm + gIm * qRe, 2 * re, 2 * im);
  z[0] += 2 * (pRe * eRe - pIm * eIm);
  z[1] += 2 * (pRe * eIm + pIm * eRe);
};

/** Values of the first `count` normalised shapes at x (metres from wall 0), as re, im from `offset` on. */
export const valuesAt = (modes: AxisModes, xM: number, count: number, out: Float64Array, offset: number): void => {
  const { form, rate, second, norm, roots } = modes;
  const s = xM / modes.lengthM;
  for (let n = 0; n < count; n++) {
    const i = 2 * n;
    const kind = form[n];
    const pRe = rate[i];
    const pIm = rate[i + 1];
    let re: number;
    let im: number;
    if (kind <= FORM.odd) {
      const from = kind === FORM.trig ? s : s - 0.5;
      const u = pRe * from;
      const v = pIm * from;
      let ch: number;
      let sh: number;
      if (v < 0.25 && v > -0.25) {
        // light walls: Taylor's series to 2e-16
        const v2 = v * v;
        ch = 1 + (v2 / 2) * (1 + (v2 / 12) * (1 + (v2 / 30) * (1 + (v2 / 56) * (1 + v2 / 90))));
        sh = v * (1 + (v2 / 6) * (1 + (v2 / 20) * (1 + (v2 / 42) * (1 + (v2 / 72) * (1 + v2 / 110)))));
      } else {
        const grow = Math.exp(v);
        ch = (grow + 1 / grow) / 2;
        sh = (grow - 1 / grow) / 2;
      }
      const cosU = Math.cos(u);
      const sinU = Math.sin(u);
      if (kind === FORM.even) {
        re = cosU * ch;
        im = -sinU * sh;
      } else if (kind === FORM.odd) {
        re = sinU * ch;
        im = cosU * sh;
      } else {
        const sRe = sinU * ch;
        const sIm = cosU * sh;
        re = cosU * ch + second[i] * sRe - second[i + 1] * sIm;
        im = -sinU * sh + second[i] * sIm + second[i + 1] * sRe;
      }
    } else if (kind === FORM.small) {
      seriesEntire(roots.w[i] * s * s, roots.w[i + 1] * s * s, entire);
      re = entire[0] + s * (second[i] * entire[2] - second[i + 1] * entire[3]);
      im = entire[1] + s * (second[i] * entire[3] + second[i + 1] * entire[2]);
    } else if (kind === FORM.smallOdd) {
      const t = s - 0.5;
      seriesEntire(roots.w[i] * t * t, roots.w[i + 1] * t * t, entire);
      re = t * entire[2];
      im = t * entire[3];
    } else {
      const near = kind === FORM.wall1 ? 1 - s : s;
      let size = Math.exp(-pRe * near);
      re = size * Math.cos(pIm * near);
      im = -size * Math.sin(pIm * near);
      size = Math.exp(-pRe * (1 - near));
      const fRe = size * Math.cos(pIm * (1 - near));
      const fIm = -size * Math.sin(pIm * (1 - near));
      re += second[i] * fRe - second[i + 1] * fIm;
      im += second[i] * fIm + second[i + 1] * fRe;
    }
    out[offset + i] = re * norm[i] - im * norm[i + 1];
    out[offset + i + 1] = re * norm[i + 1] + im * norm[i];
  }
};
