import { seriesEntire } from './axis-equation.ts';
import { setRoot } from './axis-modes.ts';

/**
 * The one-dimensional Green's function g'' + K2 g = -delta(x - x0) of an axis with locally reacting walls, in the form
 *
 *   g = L(x<) R(x>) D,     gamma = sqrt(-K2), Re gamma >= 0, B = j k beta, e = e^(-gamma a)
 *   L(x) = (gamma + B0) e^(-gamma (a - x)) + (gamma - B0) e e^(-gamma x)
 *   R(x) = (gamma + B1) e^(-gamma x) + (gamma - B1) e e^(-gamma (a - x))
 *   1 / D = 2 gamma e [(gamma + B0)(gamma + B1) - (gamma - B0)(gamma - B1) e^2]
 *
 * without growing exponentials and without the pole of a reflection factor. Where gamma a is small (0 / 0) the entire
 * form takes over: L = C + B0 x S, R the same from the other wall, 1 / D = (B0 + B1) C(K2 a^2) - (K2 - B0 B1) a S.
 * Derived from the wall conditions; checked against the sum over its own modes.
 */
export interface ClosedTerms {
  /** Terms filled so far. */
  filled: number;
  /** gamma, e, D as re, im: six numbers a term. In the entire form gamma holds K2 and e is unused. */
  table: Float64Array;
  /** 1 where the entire form is used. */
  entireForm: Uint8Array;
}

const STRIDE = 6;
/**
 * Terms that decay faster than this over the axis are left out: their numbers would underflow. In rooms up to 30 m only
 * surface waves of walls far stiffer than any real one get there, and they are gone half a metre from the source.
 */
const STRONGEST_DECAY = 600;
const root = new Float64Array(2);
const entire = new Float64Array(6);

export const emptyTerms = (): ClosedTerms => ({ filled: 0, table: new Float64Array(0), entireForm: new Uint8Array(0) });

export const bytesOfTerms = (terms: ClosedTerms): number => terms.table.byteLength + terms.entireForm.byteLength;

/** Makes room for `count` terms, keeping what is filled. */
export const growTerms = (terms: ClosedTerms, count: number): void => {
  if (terms.entireForm.length >= count) return;
  const table = new Float64Array(count * STRIDE);
  table.set(terms.table.subarray(0, terms.filled * STRIDE));
  const entireForm = new Uint8Array(count);
  entireForm.set(terms.entireForm.subarray(0, terms.filled));
  terms.table = table;
  terms.entireForm = entireForm;
};

/** Fills term t for the given K2 and walls (B0 re, im, B1 re, im) of an axis `lengthM` long. */
export const fillTerm = (
  terms: ClosedTerms,
  t: number,
  k2Re: number,
  k2Im: number,
  walls: Float64Array,
  lengthM: number,
): void => {
  const { table } = terms;
  const o = t * STRIDE;
  const b0Re = walls[0];
  const b0Im = walls[1];
  const b1Re = walls[2];
  const b1Im = walls[3];
  let invRe: number;
  let invIm: number;
  if ((k2Re * k2Re + k2Im * k2Im) * lengthM ** 4 < 0.0625) {
    terms.entireForm[t] = 1;
    table[o] = k2Re;
    table[o + 1] = k2Im;
    seriesEntire(k2Re * lengthM * lengthM, k2Im * lengthM * lengthM, entire);
    const gapRe = (k2Re - (b0Re * b1Re - b0Im * b1Im)) * lengthM;
    const gapIm = (k2Im - (b0Re * b1Im + b0Im * b1Re)) * lengthM;
    const sumRe = b0Re + b1Re;
    const sumIm = b0Im + b1Im;
    invRe = sumRe * entire[0] - sumIm * entire[1] - (gapRe * entire[2] - gapIm * entire[3]);
    invIm = sumRe * entire[1] + sumIm * entire[0] - (gapRe * entire[3] + gapIm * entire[2]);
  } else {
    terms.entireForm[t] = 0;
    setRoot(-k2Re, -k2Im, root);
    const gRe = root[0];
    const gIm = root[1];
    if (gRe * lengthM > STRONGEST_DECAY) {
      table.fill(0, o, o + STRIDE);
      return;
    }
    const size = Math.exp(-gRe * lengthM);
    const eRe = size * Math.cos(gIm * lengthM);
    const eIm = -size * Math.sin(gIm * lengthM);
    table[o] = gRe;
    table[o + 1] = gIm;
    table[o + 2] = eRe;
    table[o + 3] = eIm;
    const p0Re = gRe + b0Re;
    const p0Im = gIm + b0Im;
    const p1Re = gRe + b1Re;
    const p1Im = gIm + b1Im;
    const m0Re = gRe - b0Re;
    const m0Im = gIm - b0Im;
    const m1Re = gRe - b1Re;
    const m1Im = gIm - b1Im;
    const e2Re = eRe * eRe - eIm * eIm;
    const e2Im = 2 * eRe * eIm;
    const mRe = m0Re * m1Re - m0Im * m1Im;
    const mIm = m0Re * m1Im + m0Im * m1Re;
    const dRe = p0Re * p1Re - p0Im * p1Im - (mRe * e2Re - mIm * e2Im);
    const dIm = p0Re * p1Im + p0Im * p1Re - (mRe * e2Im + mIm * e2Re);
    const fRe = 2 * (gRe * eRe - gIm * eIm);
    const fIm = 2 * (gRe * eIm + gIm * eRe);
    invRe = fRe * dRe - fIm * dIm;
    invIm = fRe * dIm + fIm * dRe;
  }
  if (invRe === 0 && invIm === 0) invIm = Number.MIN_VALUE * 1e40;
  // 1 / (re + j im) by Smith's rule: e^(-gamma a) may be as small as 1e-220, its square would vanish
  if (Math.abs(invRe) >= Math.abs(invIm)) {
    const r = invIm / invRe;
    const d = invRe + invIm * r;
    table[o + 4] = 1 / d;
    table[o + 5] = -r / d;
  } else {
    const r = invRe / invIm;
    const d = invRe * r + invIm;
    table[o + 4] = r / d;
    table[o + 5] = -1 / d;
  }
};

/**
 * L and R of the terms `from`..`to` at x, as Lre, Lim, Rre, Rim a term, into `out` (index 4 t); with `withD` both are
 * multiplied by D, so that g = (L D)(x<) R(x>) = L(x<) (R D)(x>).
 */
export const pointFactors = (
  terms: ClosedTerms,
  from: number,
  to: number,
  xM: number,
  walls: Float64Array,
  lengthM: number,
  withD: boolean,
  out: Float64Array,
): void => {
  const { table, entireForm } = terms;
  const b0Re = walls[0];
  const b0Im = walls[1];
  const b1Re = walls[2];
  const b1Im = walls[3];
  const y = lengthM - xM;
  for (let t = from; t < to; t++) {
    const o = t * STRIDE;
    const gRe = table[o];
    const gIm = table[o + 1];
    let lRe: number;
    let lIm: number;
    let rRe: number;
    let rIm: number;
    if (entireForm[t] === 1) {
      seriesEntire(gRe * xM * xM, gIm * xM * xM, entire);
      lRe = entire[0] + xM * (b0Re * entire[2] - b0Im * entire[3]);
      lIm = entire[1] + xM * (b0Re * entire[3] + b0Im * entire[2]);
      seriesEntire(gRe * y * y, gIm * y * y, entire);
      rRe = entire[0] + y * (b1Re * entire[2] - b1Im * entire[3]);
      rIm = entire[1] + y * (b1Re * entire[3] + b1Im * entire[2]);
    } else {
      const eRe = table[o + 2];
      const eIm = table[o + 3];
      const size = Math.exp(-gRe * xM);
      const cos = Math.cos(gIm * xM);
      const sin = Math.sin(gIm * xM);
      const nRe = size * cos;
      const nIm = -size * sin;
      // e^(-gamma (a - x)) = e^(-gamma a) / e^(-gamma x)
      const grow = 1 / size;
      const fRe = grow * (eRe * cos - eIm * sin);
      const fIm = grow * (eIm * cos + eRe * sin);
      const neRe = nRe * eRe - nIm * eIm;
      const neIm = nRe * eIm + nIm * eRe;
      const feRe = fRe * eRe - fIm * eIm;
      const feIm = fRe * eIm + fIm * eRe;
      lRe = (gRe + b0Re) * fRe - (gIm + b0Im) * fIm + (gRe - b0Re) * neRe - (gIm - b0Im) * neIm;
      lIm = (gRe + b0Re) * fIm + (gIm + b0Im) * fRe + (gRe - b0Re) * neIm + (gIm - b0Im) * neRe;
      rRe = (gRe + b1Re) * nRe - (gIm + b1Im) * nIm + (gRe - b1Re) * feRe - (gIm - b1Im) * feIm;
      rIm = (gRe + b1Re) * nIm + (gIm + b1Im) * nRe + (gRe - b1Re) * feIm + (gIm - b1Im) * feRe;
    }
    const i = 4 * t;
    if (withD) {
      const dRe = table[o + 4];
      const dIm = table[o + 5];
      out[i] = lRe * dRe - lIm * dIm;
      out[i + 1] = lRe * dIm + lIm * dRe;
      out[i + 2] = rRe * dRe - rIm * dIm;
      out[i + 3] = rRe * dIm + rIm * dRe;
    } else {
      out[i] = lRe;
      out[i + 1] = lIm;
      out[i + 2] = rRe;
      out[i + 3] = rIm;
    }
  }
};
