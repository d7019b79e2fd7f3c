import { plainAxis, shape } from './plain-axis.ts';

/**
 * The field of an upright prism evaluated literally, pair by pair: for every mode n of the even axis the full Galerkin
 * system (Lambda + w_n / L^2 - k^2 + j k B) c = phi(source), solved anew by Gaussian elimination for every source, and
 *
 *   H = 4 pi sum over n of Z_n(z) Z_n(z0) c_n . phi(seat)
 *
 * The functions of the plan are data; nothing else is shared with the engine. Without the engine's closed near field, so that
 * it is less exact near sources.
 */
export interface LiteralPrism {
  readonly lengthM: number;
  readonly soundSpeed: number;
  readonly lambda: ArrayLike<number>;
  /** Real admittances: B, row-major. */
  readonly walls: Float64Array;
  readonly ends: readonly [number, number];
  readonly orders: number;
}

export interface LiteralPoint {
  readonly z: number;
  readonly values: ArrayLike<number>;
}

export const literalResponses = (
  { lengthM, soundSpeed, lambda, walls, ends, orders }: LiteralPrism,
  hz: number,
  sources: readonly LiteralPoint[],
  seats: readonly LiteralPoint[],
): { re: Float64Array; im: Float64Array } => {
  const k = (2 * Math.PI * hz) / soundSpeed;
  const size = lambda.length;
  const axis = plainAxis(lengthM, [ends[0], 0], [ends[1], 0], k, orders, null);
  const out = {
    re: new Float64Array(sources.length * seats.length),
    im: new Float64Array(sources.length * seats.length),
  };
  const [a, b] = [new Float64Array(2), new Float64Array(2)];
  for (let s = 0; s < sources.length; s++) {
    for (let n = 0; n < orders; n++) {
      const [cRe, cIm] = solved(
        lambda,
        walls,
        k,
        size,
        axis.wRe[n] / lengthM ** 2 - k * k,
        axis.wIm[n] / lengthM ** 2,
        sources[s].values,
      );
      shape(axis, n, sources[s].z, a);
      const ownRe = 4 * Math.PI * (a[0] * axis.weightRe[n] - a[1] * axis.weightIm[n]);
      const ownIm = 4 * Math.PI * (a[0] * axis.weightIm[n] + a[1] * axis.weightRe[n]);
      for (let r = 0; r < seats.length; r++) {
        let re = 0;
        let im = 0;
        for (let i = 0; i < size; i++) {
          re += cRe[i] * seats[r].values[i];
          im += cIm[i] * seats[r].values[i];
        }
        shape(axis, n, seats[r].z, b);
        const zRe = ownRe * b[0] - ownIm * b[1];
        const zIm = ownRe * b[1] + ownIm * b[0];
        out.re[s * seats.length + r] += re * zRe - im * zIm;
        out.im[s * seats.length + r] += re * zIm + im * zRe;
      }
    }
  }
  return out;
};

/** c of (Lambda + shift + j k B) c = f by Gaussian elimination. */
const solved = (
  lambda: ArrayLike<number>,
  walls: Float64Array,
  k: number,
  size: number,
  shiftRe: number,
  shiftIm: number,
  f: ArrayLike<number>,
): [Float64Array, Float64Array] => {
  const re = new Float64Array(size * size);
  const im = new Float64Array(size * size);
  const cRe = Float64Array.from(f);
  const cIm = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    for (let j = 0; j < size; j++) im[i * size + j] = k * walls[i * size + j];
    re[i * size + i] = lambda[i] + shiftRe;
    im[i * size + i] += shiftIm;
  }
  for (let p = 0; p < size; p++) {
    const pivot = re[p * size + p] ** 2 + im[p * size + p] ** 2;
    for (let i = p + 1; i < size; i++) {
      const [a, b] = [re[i * size + p], im[i * size + p]];
      const fRe = (a * re[p * size + p] + b * im[p * size + p]) / pivot;
      const fIm = (b * re[p * size + p] - a * im[p * size + p]) / pivot;
      for (let j = p; j < size; j++) {
        re[i * size + j] -= fRe * re[p * size + j] - fIm * im[p * size + j];
        im[i * size + j] -= fRe * im[p * size + j] + fIm * re[p * size + j];
      }
      cRe[i] -= fRe * cRe[p] - fIm * cIm[p];
      cIm[i] -= fRe * cIm[p] + fIm * cRe[p];
    }
  }
  for (let i = size - 1; i >= 0; i--) {
    let [a, b] = [cRe[i], cIm[i]];
    for (let j = i + 1; j < size; j++) {
      a -= re[i * size + j] * cRe[j] - im[i * size + j] * cIm[j];
      b -= re[i * size + j] * cIm[j] + im[i * size + j] * cRe[j];
    }
    const pivot = re[i * size + i] ** 2 + im[i * size + i] ** 2;
    cRe[i] = (a * re[i * size + i] + b * im[i * size + i]) / pivot;
    cIm[i] = (b * re[i * size + i] - a * im[i * size + i]) / pivot;
  }
  return [cRe, cIm];
};
