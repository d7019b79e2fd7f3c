import { type PlainRoom, shape } from './plain-axis.ts';
import { plainGreen } from './plain-green.ts';

const x = new Float64Array(2);
const y = new Float64Array(2);
const z = new Float64Array(2);
const x0 = new Float64Array(2);
const y0 = new Float64Array(2);
const z0 = new Float64Array(2);
const g = new Float64Array(2);
const p = new Float64Array(2);

const times = (re: number, im: number): void => {
  const next = p[0] * re - p[1] * im;
  p[1] = p[0] * im + p[1] * re;
  p[0] = next;
};

/**
 * The field at one point as the triple sum over damped modes with rigid frequency up to `cutHz`, term by term: 4 pi sum psi
 * psi0 / (Lam (k_n^2 - k^2)), once for every source.
 */
export const tripleSumAt = (
  room: PlainRoom,
  sources: Float64Array,
  weights: Float64Array,
  point: readonly [number, number, number],
  cutHz: number,
): [number, number] => {
  const [ax, ay, az] = room.axes;
  const limit = ((2 * Math.PI * cutHz) / room.soundSpeed) ** 2;
  let sumRe = 0;
  let sumIm = 0;
  for (let s = 0; 3 * s < sources.length; s++) {
    let re = 0;
    let im = 0;
    for (let l = 0; ((l * Math.PI) / ax.lengthM) ** 2 <= limit; l++) {
      for (let m = 0; ((l * Math.PI) / ax.lengthM) ** 2 + ((m * Math.PI) / ay.lengthM) ** 2 <= limit; m++) {
        const plane = ((l * Math.PI) / ax.lengthM) ** 2 + ((m * Math.PI) / ay.lengthM) ** 2;
        for (let n = 0; plane + ((n * Math.PI) / az.lengthM) ** 2 <= limit; n++) {
          shape(ax, l, point[0], x);
          shape(ay, m, point[1], y);
          shape(az, n, point[2], z);
          shape(ax, l, sources[3 * s], x0);
          shape(ay, m, sources[3 * s + 1], y0);
          shape(az, n, sources[3 * s + 2], z0);
          p[0] = ax.weightRe[l];
          p[1] = ax.weightIm[l];
          times(x[0], x[1]);
          times(y[0], y[1]);
          times(z[0], z[1]);
          times(x0[0], x0[1]);
          times(y0[0], y0[1]);
          times(z0[0], z0[1]);
          times(ay.weightRe[m], ay.weightIm[m]);
          times(az.weightRe[n], az.weightIm[n]);
          const dRe =
            ax.wRe[l] / ax.lengthM ** 2 + ay.wRe[m] / ay.lengthM ** 2 + az.wRe[n] / az.lengthM ** 2 - room.k ** 2;
          const dIm = ax.wIm[l] / ax.lengthM ** 2 + ay.wIm[m] / ay.lengthM ** 2 + az.wIm[n] / az.lengthM ** 2;
          const d = dRe * dRe + dIm * dIm;
          re += (p[0] * dRe + p[1] * dIm) / d;
          im += (p[1] * dRe - p[0] * dIm) / d;
        }
      }
    }
    sumRe += re * weights[2 * s] - im * weights[2 * s + 1];
    sumIm += re * weights[2 * s + 1] + im * weights[2 * s];
  }
  return [4 * Math.PI * sumRe, 4 * Math.PI * sumIm];
};

/**
 * A horizontal slice (y closed) by straightforward factored code: coefficients C summed over the sources, tables of mode
 * values over the grid, then C times one table and the other table times that. Index iz * xs.length + ix.
 */
export const factoredSlice = (
  room: PlainRoom,
  sources: Float64Array,
  weights: Float64Array,
  atM: number,
  xs: Float64Array,
  zs: Float64Array,
  epsilon: number,
  cutHz: number,
): { re: Float64Array; im: Float64Array } => {
  const [ax, , az] = room.axes;
  let gap = Number.POSITIVE_INFINITY;
  for (let s = 1; s < sources.length; s += 3) gap = Math.min(gap, Math.abs(sources[s] - atM));
  const limit = Math.min(
    room.k ** 2 + (Math.log(1 / epsilon) / gap) ** 2,
    ((2 * Math.PI * cutHz) / room.soundSpeed) ** 2,
  );
  const rows = Math.floor((Math.sqrt(limit) * ax.lengthM) / Math.PI) + 1;
  const columns = Math.floor((Math.sqrt(limit) * az.lengthM) / Math.PI) + 1;
  const cRe = new Float64Array(rows * columns);
  const cIm = new Float64Array(rows * columns);
  for (let l = 0; l < rows; l++) {
    for (let n = 0; n < columns; n++) {
      if (((l * Math.PI) / ax.lengthM) ** 2 + ((n * Math.PI) / az.lengthM) ** 2 > limit) break;
      const k2Re = room.k ** 2 - ax.wRe[l] / ax.lengthM ** 2 - az.wRe[n] / az.lengthM ** 2;
      const k2Im = -ax.wIm[l] / ax.lengthM ** 2 - az.wIm[n] / az.lengthM ** 2;
      const wRe = 4 * Math.PI * (ax.weightRe[l] * az.weightRe[n] - ax.weightIm[l] * az.weightIm[n]);
      const wIm = 4 * Math.PI * (ax.weightRe[l] * az.weightIm[n] + ax.weightIm[l] * az.weightRe[n]);
      for (let s = 0; 3 * s < sources.length; s++) {
        shape(ax, l, sources[3 * s], x0);
        shape(az, n, sources[3 * s + 2], z0);
        plainGreen(room, 1, k2Re, k2Im, atM, sources[3 * s + 1], g);
        const aRe = x0[0] * z0[0] - x0[1] * z0[1];
        const aIm = x0[0] * z0[1] + x0[1] * z0[0];
        const bRe = aRe * g[0] - aIm * g[1];
        const bIm = aRe * g[1] + aIm * g[0];
        const vRe = bRe * weights[2 * s] - bIm * weights[2 * s + 1];
        const vIm = bRe * weights[2 * s + 1] + bIm * weights[2 * s];
        cRe[l * columns + n] += vRe * wRe - vIm * wIm;
        cIm[l * columns + n] += vRe * wIm + vIm * wRe;
      }
    }
  }
  const nx = xs.length;
  const nz = zs.length;
  const xRe = new Float64Array(rows * nx);
  const xIm = new Float64Array(rows * nx);
  for (let l = 0; l < rows; l++) {
    for (let i = 0; i < nx; i++) {
      shape(ax, l, xs[i], x);
      xRe[l * nx + i] = x[0];
      xIm[l * nx + i] = x[1];
    }
  }
  const tRe = new Float64Array(rows);
  const tIm = new Float64Array(rows);
  const zRe = new Float64Array(columns);
  const zIm = new Float64Array(columns);
  const re = new Float64Array(nx * nz);
  const im = new Float64Array(nx * nz);
  for (let j = 0; j < nz; j++) {
    for (let n = 0; n < columns; n++) {
      shape(az, n, zs[j], z);
      zRe[n] = z[0];
      zIm[n] = z[1];
    }
    for (let l = 0; l < rows; l++) {
      let sRe = 0;
      let sIm = 0;
      for (let n = 0; n < columns; n++) {
        sRe += cRe[l * columns + n] * zRe[n] - cIm[l * columns + n] * zIm[n];
        sIm += cRe[l * columns + n] * zIm[n] + cIm[l * columns + n] * zRe[n];
      }
      tRe[l] = sRe;
      tIm[l] = sIm;
    }
    for (let l = 0; l < rows; l++) {
      const aRe = tRe[l];
      const aIm = tIm[l];
      for (let i = 0; i < nx; i++) {
        re[j * nx + i] += aRe * xRe[l * nx + i] - aIm * xIm[l * nx + i];
        im[j * nx + i] += aRe * xIm[l * nx + i] + aIm * xRe[l * nx + i];
      }
    }
  }
  return { re, im };
};
