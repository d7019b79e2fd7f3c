import { setRoot } from '../axis-modes.ts';

/**
 * Eigenvectors of a complex symmetric matrix (no conjugate) that is nearly diagonal but for close neighbours: Jacobi's
 * rotations by complex angles, cot 2 theta = (a_qq - a_pp) / 2 a_pq, which keep the matrix symmetric and the vectors
 * bilinearly orthonormal (Anderson and Loizou, Numer. Math. 26 (1976) 347; from memory). Column i stays the one that
 * continues unit vector i, as no rotation is wider than it need be.
 */
const MOST_SWEEPS = 16;
const SMALL = 1e-26;

const root = new Float64Array(2);

/**
 * The vectors of `a` (row-major, re, im, on and right of the diagonal; overwritten, eigenvalues on its diagonal), column i at row i
 * of the answer.
 */
export const eigenvectorsOf = (n: number, a: Float64Array): Float64Array => {
  const vectors = new Float64Array(2 * n * n);
  for (let i = 0; i < n; i++) vectors[2 * (i * n + i)] = 1;
  let scale = 0;
  for (let i = 0; i < a.length; i++) scale = Math.max(scale, Math.abs(a[i]));
  const enough = SMALL * scale * scale;
  for (let sweep = 0; sweep < MOST_SWEEPS; sweep++) {
    let rest = 0;
    for (let p = 0; p < n; p++) {
      for (let q = p + 1; q < n; q++) {
        const size = a[2 * (p * n + q)] ** 2 + a[2 * (p * n + q) + 1] ** 2;
        if (size <= enough) continue;
        rest = Math.max(rest, size);
        rotate(n, a, vectors, p, q);
      }
    }
    if (rest <= enough) break;
  }
  return vectors;
};

const rotate = (n: number, a: Float64Array, vectors: Float64Array, p: number, q: number): void => {
  const pq = 2 * (p * n + q);
  const bRe = 2 * a[pq];
  const bIm = 2 * a[pq + 1];
  const dRe = a[2 * (q * n + q)] - a[2 * (p * n + p)];
  const dIm = a[2 * (q * n + q) + 1] - a[2 * (p * n + p) + 1];
  // t = b / (d +- sqrt(d^2 + b^2)), the sign that makes the denominator large
  setRoot(dRe * dRe - dIm * dIm + bRe * bRe - bIm * bIm, 2 * (dRe * dIm + bRe * bIm), root);
  const sign = dRe * root[0] + dIm * root[1] >= 0 ? 1 : -1;
  const mRe = dRe + sign * root[0];
  const mIm = dIm + sign * root[1];
  const m2 = mRe * mRe + mIm * mIm;
  if (m2 < 1e-300) return;
  const tRe = (bRe * mRe + bIm * mIm) / m2;
  const tIm = (bIm * mRe - bRe * mIm) / m2;
  setRoot(1 + tRe * tRe - tIm * tIm, 2 * tRe * tIm, root);
  const r2 = root[0] * root[0] + root[1] * root[1];
  if (r2 < 1e-12) return;
  const cRe = root[0] / r2;
  const cIm = -root[1] / r2;
  const sRe = tRe * cRe - tIm * cIm;
  const sIm = tRe * cIm + tIm * cRe;
  for (let i = 0; i < p; i++) turn(a, 2 * (i * n + p), 2 * (i * n + q), cRe, cIm, sRe, sIm);
  for (let i = p + 1; i < q; i++) turn(a, 2 * (p * n + i), 2 * (i * n + q), cRe, cIm, sRe, sIm);
  for (let i = q + 1; i < n; i++) turn(a, 2 * (p * n + i), 2 * (q * n + i), cRe, cIm, sRe, sIm);
  turnPair(a, 2 * (p * n + p), pq, 2 * (q * n + q), cRe, cIm, sRe, sIm);
  for (let i = 0; i < n; i++) turn(vectors, 2 * (p * n + i), 2 * (q * n + i), cRe, cIm, sRe, sIm);
};

/** (x, y) -> (c x - s y, s x + c y). */
const turn = (list: Float64Array, i: number, j: number, cRe: number, cIm: number, sRe: number, sIm: number): void => {
  const xRe = list[i];
  const xIm = list[i + 1];
  const yRe = list[j];
  const yIm = list[j + 1];
  list[i] = cRe * xRe - cIm * xIm - (sRe * yRe - sIm * yIm);
  list[i + 1] = cRe * xIm + cIm * xRe - (sRe * yIm + sIm * yRe);
  list[j] = sRe * xRe - sIm * xIm + cRe * yRe - cIm * yIm;
  list[j + 1] = sRe * xIm + sIm * xRe + cRe * yIm + cIm * yRe;
};

/** The three entries of the pair itself: both sides are turned. */
const turnPair = (
  a: Float64Array,
  pp: number,
  pq: number,
  qq: number,
  cRe: number,
  cIm: number,
  sRe: number,
  sIm: number,
): void => {
  const [cosine, sine] = [cRe * cRe - cIm * cIm, sRe * sRe - sIm * sIm];
  const [cosineIm, sineIm] = [2 * cRe * cIm, 2 * sRe * sIm];
  const [bothRe, bothIm] = [cRe * sRe - cIm * sIm, cRe * sIm + cIm * sRe];
  const [xRe, xIm, zRe, zIm, yRe, yIm] = [a[pp], a[pp + 1], a[pq], a[pq + 1], a[qq], a[qq + 1]];
  const crossRe = 2 * (bothRe * zRe - bothIm * zIm);
  const crossIm = 2 * (bothRe * zIm + bothIm * zRe);
  a[pp] = cosine * xRe - cosineIm * xIm + sine * yRe - sineIm * yIm - crossRe;
  a[pp + 1] = cosine * xIm + cosineIm * xRe + sine * yIm + sineIm * yRe - crossIm;
  a[qq] = sine * xRe - sineIm * xIm + cosine * yRe - cosineIm * yIm + crossRe;
  a[qq + 1] = sine * xIm + sineIm * xRe + cosine * yIm + cosineIm * yRe + crossIm;
  const [dRe, dIm, eRe, eIm] = [xRe - yRe, xIm - yIm, cosine - sine, cosineIm - sineIm];
  a[pq] = bothRe * dRe - bothIm * dIm + eRe * zRe - eIm * zIm;
  a[pq + 1] = bothRe * dIm + bothIm * dRe + eRe * zIm + eIm * zRe;
};
