import { type Allocate, plainly } from './arena.ts';
import { seriesEntire } from './axis-equation.ts';
import { setRoot } from './axis-modes.ts';
import { decay, setTurn } from './decay.ts';

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
  /** gamma, e, D, (gamma - B0) e, (gamma - B1) e as re, im: ten numbers a term. In the entire form gamma holds K2, e is 2. */
  table: Float64Array;
}

const STRIDE = 10;
/** Stands where e would, whose modulus is at most 1. */
const ENTIRE = 2;
/**
 * Terms that decay faster than this over the axis are left out: their numbers would underflow. In rooms up to 30 m only
 * surface waves of walls far stiffer than any real one get there, and they are gone half a metre from the source.
 */
const STRONGEST_DECAY = 600;
const root = new Float64Array(2);
const turn = new Float64Array(2);
const entire = new Float64Array(6);

export const emptyTerms = (): ClosedTerms => ({ filled: 0, table: new Float64Array(0) });

/** Makes room for `count` terms, keeping what is filled; `allocate` hands out numbers. */
export const growTerms = (terms: ClosedTerms, count: number, allocate: Allocate = plainly): void => {
  if (terms.table.length >= count * STRIDE) return;
  const table = allocate(count * STRIDE);
  for (let i = 0; i < terms.filled * STRIDE; i++) table[i] = terms.table[i];
  terms.table = table;
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
  const square = lengthM * lengthM;
  if ((k2Re * k2Re + k2Im * k2Im) * square * square < 0.0625) {
    table[o] = k2Re;
    table[o + 1] = k2Im;
    table[o + 2] = ENTIRE;
    seriesEntire(k2Re * square, k2Im * square, entire);
    const gapRe = (k2Re - (b0Re * b1Re - b0Im * b1Im)) * lengthM;
    const gapIm = (k2Im - (b0Re * b1Im + b0Im * b1Re)) * lengthM;
    const sumRe = b0Re + b1Re;
    const sumIm = b0Im + b1Im;
    const invRe = sumRe * entire[0] - sumIm * entire[1] - (gapRe * entire[2] - gapIm * entire[3]);
    const invIm = sumRe * entire[1] + sumIm * entire[0] - (gapRe * entire[3] + gapIm * entire[2]);
    setInverse(table, o + 4, invRe, invIm);
    return;
  }
  setRoot(-k2Re, -k2Im, root);
  const gRe = root[0];
  const gIm = root[1];
  if (gRe * lengthM > STRONGEST_DECAY) {
    table.fill(0, o, o + STRIDE);
    return;
  }
  const size = decay(gRe * lengthM);
  setTurn(gIm * lengthM, turn);
  const cos = turn[0];
  const sin = turn[1];
  const eRe = size * cos;
  const eIm = -size * sin;
  table[o] = gRe;
  table[o + 1] = gIm;
  table[o + 2] = eRe;
  table[o + 3] = eIm;
  const m0Re = gRe - b0Re;
  const m0Im = gIm - b0Im;
  const m1Re = gRe - b1Re;
  const m1Im = gIm - b1Im;
  const e0Re = m0Re * eRe - m0Im * eIm;
  const e0Im = m0Re * eIm + m0Im * eRe;
  const e1Re = m1Re * eRe - m1Im * eIm;
  const e1Im = m1Re * eIm + m1Im * eRe;
  table[o + 6] = e0Re;
  table[o + 7] = e0Im;
  table[o + 8] = e1Re;
  table[o + 9] = e1Im;
  const p0Re = gRe + b0Re;
  const p0Im = gIm + b0Im;
  const p1Re = gRe + b1Re;
  const p1Im = gIm + b1Im;
  const dRe = p0Re * p1Re - p0Im * p1Im - (e0Re * e1Re - e0Im * e1Im);
  const dIm = p0Re * p1Im + p0Im * p1Re - (e0Re * e1Im + e0Im * e1Re);
  setInverse(table, o + 4, 2 * (gRe * dRe - gIm * dIm), 2 * (gRe * dIm + gIm * dRe));
  // and by e, whose inverse is known: its modulus may be as small as 1e-220
  const grow = 1 / size;
  const iRe = table[o + 4] * grow;
  const iIm = table[o + 5] * grow;
  table[o + 4] = iRe * cos - iIm * sin;
  table[o + 5] = iRe * sin + iIm * cos;
};

/** 1 / (re + j im) into table[o], table[o + 1]; an exact zero (a lossless room on a resonance) counts as 1e-120 j. */
const setInverse = (table: Float64Array, o: number, re: number, im: number): void => {
  const square = re * re + im * im;
  if (square === 0) {
    table[o] = 0;
    table[o + 1] = -1e120;
    return;
  }
  table[o] = re / square;
  table[o + 1] = -im / square;
};

/** Which of L and R is wanted. */
export const LEFT = 1;
export const RIGHT = 2;
export const BOTH = 3;

/**
 * L and R of the terms `from`..`to` at x, as Lre, Lim, Rre, Rim a term, into `out` (index 4 t), as far as `sides` asks for
 * them. With `withD` they are multiplied by D, so that g = (L D)(x<) R(x>) = L(x<) (R D)(x>).
 */
export const pointFactors = (
  terms: ClosedTerms,
  from: number,
  to: number,
  xM: number,
  walls: Float64Array,
  lengthM: number,
  withD: boolean,
  sides: number,
  out: Float64Array,
): void => {
  const { table } = terms;
  const b0Re = walls[0];
  const b0Im = walls[1];
  const b1Re = walls[2];
  const b1Im = walls[3];
  const y = lengthM - xM;
  for (let t = from; t < to; t++) {
    const o = t * STRIDE;
    const gRe = table[o];
    const gIm = table[o + 1];
    const eRe = table[o + 2];
    const i = 4 * t;
    if (eRe === ENTIRE) {
      seriesEntire(gRe * xM * xM, gIm * xM * xM, entire);
      out[i] = entire[0] + xM * (b0Re * entire[2] - b0Im * entire[3]);
      out[i + 1] = entire[1] + xM * (b0Re * entire[3] + b0Im * entire[2]);
      seriesEntire(gRe * y * y, gIm * y * y, entire);
      out[i + 2] = entire[0] + y * (b1Re * entire[2] - b1Im * entire[3]);
      out[i + 3] = entire[1] + y * (b1Re * entire[3] + b1Im * entire[2]);
    } else {
      const eIm = table[o + 3];
      const size = decay(gRe * xM);
      setTurn(gIm * xM, turn);
      const cos = turn[0];
      const sin = turn[1];
      const nRe = size * cos;
      const nIm = -size * sin;
      // e^(-gamma (a - x)) = e^(-gamma a) / e^(-gamma x)
      const grow = 1 / size;
      const fRe = grow * (eRe * cos - eIm * sin);
      const fIm = grow * (eIm * cos + eRe * sin);
      if ((sides & LEFT) !== 0) {
        const pRe = gRe + b0Re;
        const pIm = gIm + b0Im;
        const mRe = table[o + 6];
        const mIm = table[o + 7];
        out[i] = pRe * fRe - pIm * fIm + mRe * nRe - mIm * nIm;
        out[i + 1] = pRe * fIm + pIm * fRe + mRe * nIm + mIm * nRe;
      }
      if ((sides & RIGHT) !== 0) {
        const pRe = gRe + b1Re;
        const pIm = gIm + b1Im;
        const mRe = table[o + 8];
        const mIm = table[o + 9];
        out[i + 2] = pRe * nRe - pIm * nIm + mRe * fRe - mIm * fIm;
        out[i + 3] = pRe * nIm + pIm * nRe + mRe * fIm + mIm * fRe;
      }
    }
    if (withD) {
      const dRe = table[o + 4];
      const dIm = table[o + 5];
      const lRe = out[i];
      const lIm = out[i + 1];
      const rRe = out[i + 2];
      const rIm = out[i + 3];
      out[i] = lRe * dRe - lIm * dIm;
      out[i + 1] = lRe * dIm + lIm * dRe;
      out[i + 2] = rRe * dRe - rIm * dIm;
      out[i + 3] = rRe * dIm + rIm * dRe;
    }
  }
};
