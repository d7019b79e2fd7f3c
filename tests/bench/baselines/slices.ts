import { leastAttenuation, type PlainRoom, shape } from './plain-axis.ts';
import { plainGreen } from './plain-green.ts';

const x = new Float64Array(2);
const y = new Float64Array(2);
const z = new Float64Array(2);
const x0 = new Float64Array(2);
const z0 = new Float64Array(2);
const g = new Float64Array(2);
/** Shapes of the sources along the three axes and their weights, for the triple sum: made once a slice. */
export interface SourceShapes {
  count: number;
  weights: Float64Array;
  /** Per source and axis: re and im of X_n(x0) / integral of X_n^2. */
  values: Float64Array[][];
}

export const sourceShapes = (room: PlainRoom, sources: Float64Array, weights: Float64Array): SourceShapes => {
  const values: Float64Array[][] = [];
  for (let s = 0; 3 * s < sources.length; s++) {
    values.push(
      room.axes.map((axis, which) => {
        const list = new Float64Array(2 * axis.count);
        for (let n = 0; n < axis.count; n++) {
          shape(axis, n, sources[3 * s + which], x);
          list[2 * n] = x[0] * axis.weightRe[n] - x[1] * axis.weightIm[n];
          list[2 * n + 1] = x[0] * axis.weightIm[n] + x[1] * axis.weightRe[n];
        }
        return list;
      }),
    );
  }
  return { count: values.length, weights, values };
};

/**
 * The field at one point as the triple sum over damped modes with rigid frequency up to `cutHz`, term by term: 4 pi sum psi
 * psi0 / (Lam (k_n^2 - k^2)), once for every source. Each shape is evaluated in the loop that runs over its order.
 */
export const tripleSumAt = (
  room: PlainRoom,
  { count, weights, values }: SourceShapes,
  point: readonly [number, number, number],
  cutHz: number,
): [number, number] => {
  const [ax, ay, az] = room.axes;
  const limit = ((2 * Math.PI * cutHz) / room.soundSpeed) ** 2;
  let sumRe = 0;
  let sumIm = 0;
  for (let s = 0; s < count; s++) {
    const [vx, vy, vz] = values[s];
    let re = 0;
    let im = 0;
    for (let l = 0; l < ax.count; l++) {
      const kappaX = ((l * Math.PI) / ax.lengthM) ** 2;
      if (kappaX > limit) break;
      shape(ax, l, point[0], x);
      const aRe = x[0] * vx[2 * l] - x[1] * vx[2 * l + 1];
      const aIm = x[0] * vx[2 * l + 1] + x[1] * vx[2 * l];
      for (let m = 0; m < ay.count; m++) {
        const kappaY = kappaX + ((m * Math.PI) / ay.lengthM) ** 2;
        if (kappaY > limit) break;
        shape(ay, m, point[1], y);
        const bRe = y[0] * vy[2 * m] - y[1] * vy[2 * m + 1];
        const bIm = y[0] * vy[2 * m + 1] + y[1] * vy[2 * m];
        const cRe = aRe * bRe - aIm * bIm;
        const cIm = aRe * bIm + aIm * bRe;
        for (let n = 0; n < az.count; n++) {
          if (kappaY + ((n * Math.PI) / az.lengthM) ** 2 > limit) break;
          shape(az, n, point[2], z);
          const eRe = z[0] * vz[2 * n] - z[1] * vz[2 * n + 1];
          const eIm = z[0] * vz[2 * n + 1] + z[1] * vz[2 * n];
          const pRe = cRe * eRe - cIm * eIm;
          const pIm = cRe * eIm + cIm * eRe;
          const dRe =
            ax.wRe[l] / ax.lengthM ** 2 + ay.wRe[m] / ay.lengthM ** 2 + az.wRe[n] / az.lengthM ** 2 - room.k ** 2;
          const dIm = ax.wIm[l] / ax.lengthM ** 2 + ay.wIm[m] / ay.lengthM ** 2 + az.wIm[n] / az.lengthM ** 2;
          const d = dRe * dRe + dIm * dIm;
          re += (pRe * dRe + pIm * dIm) / d;
          im += (pIm * dRe - pRe * dIm) / d;
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
    room.k ** 2 + (leastAttenuation(room, 0, 2) + Math.log(1 / epsilon) / gap) ** 2,
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
