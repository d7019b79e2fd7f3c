import { setRoot } from '../axis-modes.ts';
import { solveOne } from '../axis-solver.ts';
import type { PrismGeometry } from './prism-geometry.ts';
import type { Section } from './section.ts';
import { factoriseSymmetric, packedLength, solveSymmetric } from './symmetric-solve.ts';

/** A plan eigenvalue over complex k: mu + slope (k - k0), re, im each. */
export interface PlanLine {
  readonly k: number;
  readonly mu: Float64Array;
  readonly slope: Float64Array;
}

const MOST_STEPS = 30;
const walls = new Float64Array(4);
/** w_q and dw/dlnk of the even axis. */
const axis = new Float64Array(4);

const setAxis = ({ endBeta, lengthM }: PrismGeometry, q: number, kRe: number, kIm: number): boolean => {
  for (let e = 0; e < 4; e += 2) {
    walls[e] = -(kRe * endBeta[e + 1] + kIm * endBeta[e]) * lengthM;
    walls[e + 1] = (kRe * endBeta[e] - kIm * endBeta[e + 1]) * lengthM;
  }
  return solveOne(q, walls, axis);
};

/** d(mu + w_q / L^2) / dk at `k` (re, im); null where the axis is lost. */
export const slopeAt = (
  geometry: PrismGeometry,
  line: PlanLine,
  q: number,
  k: Float64Array,
): readonly [number, number] | null => {
  const [kRe, kIm] = [k[0], k[1]];
  if (!setAxis(geometry, q, kRe, kIm)) return null;
  const scale = 1 / (geometry.lengthM * geometry.lengthM * (kRe * kRe + kIm * kIm));
  return [
    line.slope[0] + (axis[2] * kRe + axis[3] * kIm) * scale,
    line.slope[1] + (axis[3] * kRe - axis[2] * kIm) * scale,
  ];
};

/** Newton's method for mu(k) + w_q(k) / L^2 = k^2 from `k` (re, im), which it moves; false when it wanders. */
export const followMode = (geometry: PrismGeometry, line: PlanLine, q: number, k: Float64Array): boolean => {
  const perL2 = 1 / (geometry.lengthM * geometry.lengthM);
  const [sRe, sIm] = [line.slope[0], line.slope[1]];
  let [kRe, kIm] = [k[0], k[1]];
  for (let step = 0; step < MOST_STEPS; step++) {
    if (!setAxis(geometry, q, kRe, kIm)) return false;
    const dRe = kRe - line.k;
    const fRe = line.mu[0] + sRe * dRe - sIm * kIm + axis[0] * perL2 - (kRe * kRe - kIm * kIm);
    const fIm = line.mu[1] + sRe * kIm + sIm * dRe + axis[1] * perL2 - 2 * kRe * kIm;
    // dw/dk = (dw/dlnk) / k
    const k2 = kRe * kRe + kIm * kIm;
    const gRe = sRe + ((axis[2] * kRe + axis[3] * kIm) * perL2) / k2 - 2 * kRe;
    const gIm = sIm + ((axis[3] * kRe - axis[2] * kIm) * perL2) / k2 - 2 * kIm;
    const g2 = gRe * gRe + gIm * gIm;
    const stepRe = (fRe * gRe + fIm * gIm) / g2;
    const stepIm = (fIm * gRe - fRe * gIm) / g2;
    kRe -= stepRe;
    kIm -= stepIm;
    if (!Number.isFinite(kRe + kIm)) return false;
    if (stepRe * stepRe + stepIm * stepIm < 1e-24 * k2) {
      k[0] = kRe;
      k[1] = kIm;
      return true;
    }
  }
  return false;
};

/**
 * One step of inverse iteration at `k` from the plan vector `v` (re, im per function of the section, overwritten by the
 * answer of bilinear norm 1): x = (Lambda + w_q / L^2 - k^2 + j k B)^-1 v. Its Rayleigh quotient x Lambda x / x x + j k x B x
 * / x x is right to second order. Null when it has none.
 */
export const polishMode = (section: Section, v: Float64Array, q: number, k: Float64Array): PlanLine | null => {
  const { geometry, lambda, wallRe, wallIm, size } = section;
  const [kRe, kIm] = [k[0], k[1]];
  if (!setAxis(geometry, q, kRe, kIm)) return null;
  const perL2 = 1 / (geometry.lengthM * geometry.lengthM);
  const shiftRe = axis[0] * perL2 - (kRe * kRe - kIm * kIm);
  const shiftIm = axis[1] * perL2 - 2 * kRe * kIm;
  // functions in descending order, as symmetric-solve.ts wants them
  const matrix = new Float64Array(packedLength(size));
  for (let i = size - 1, at = 0; i >= 0; i--) {
    for (let j = i; j >= 0; j--, at += 2) {
      const re = wallRe[i * size + j];
      const im = wallIm === null ? 0 : wallIm[i * size + j];
      matrix[at] = -(kRe * im + kIm * re) + (i === j ? lambda[i] + shiftRe : 0);
      matrix[at + 1] = kRe * re - kIm * im + (i === j ? shiftIm : 0);
    }
  }
  if (!factoriseSymmetric(size, matrix)) return null;
  const x = new Float64Array(2 * size);
  for (let i = 0; i < size; i++) x.set(v.subarray(2 * i, 2 * i + 2), 2 * (size - 1 - i));
  solveSymmetric(size, matrix, x, 1);
  for (let i = 0; i < size; i++) v.set(x.subarray(2 * (size - 1 - i), 2 * (size - i)), 2 * i);
  const line = quotient(section, v);
  if (line === null) return null;
  for (let i = 0; i < 2 * size; i += 2) {
    const [re, im] = [v[i], v[i + 1]];
    v[i] = (re * norm[0] + im * norm[1]) / norm[2];
    v[i + 1] = (im * norm[0] - re * norm[1]) / norm[2];
  }
  return line;
};

/** The root of x x of the last quotient, re, im, and its square's size. */
const norm = new Float64Array(3);

/** The plan eigenvalue over k that a vector stands for (its Rayleigh quotient, bilinear); null for a vector of no norm. */
export const quotient = ({ lambda, wallRe, wallIm, size }: Section, x: Float64Array): PlanLine | null => {
  let [nRe, nIm, aRe, aIm, bRe, bIm] = [0, 0, 0, 0, 0, 0];
  for (let i = 0; i < size; i++) {
    const xRe = x[2 * i];
    const xIm = x[2 * i + 1];
    const sRe = xRe * xRe - xIm * xIm;
    const sIm = 2 * xRe * xIm;
    nRe += sRe;
    nIm += sIm;
    aRe += lambda[i] * sRe;
    aIm += lambda[i] * sIm;
    let [yRe, yIm] = [0, 0];
    for (let j = 0; j < size; j++) {
      const re = wallRe[i * size + j];
      const im = wallIm === null ? 0 : wallIm[i * size + j];
      yRe += re * x[2 * j] - im * x[2 * j + 1];
      yIm += re * x[2 * j + 1] + im * x[2 * j];
    }
    bRe += xRe * yRe - xIm * yIm;
    bIm += xRe * yIm + xIm * yRe;
  }
  const n2 = nRe * nRe + nIm * nIm;
  if (!(n2 > 0 && n2 < Number.POSITIVE_INFINITY)) return null;
  setRoot(nRe, nIm, norm);
  norm[2] = norm[0] * norm[0] + norm[1] * norm[1];
  const mu = Float64Array.of((aRe * nRe + aIm * nIm) / n2, (aIm * nRe - aRe * nIm) / n2);
  // j B / N
  const slope = Float64Array.of(-(bIm * nRe - bRe * nIm) / n2, (bRe * nRe + bIm * nIm) / n2);
  return { k: 0, mu, slope };
};
