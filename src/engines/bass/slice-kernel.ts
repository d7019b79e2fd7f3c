/**
 * out[q * np + p] = sum over m of P[p, m] T[q, m], complex and bilinear, P and T with `orders` re, im pairs a row. Two by
 * two outputs are kept in registers; everything else is read in order.
 */
export const multiplyRows = (
  rowsP: Float64Array,
  np: number,
  rowsT: Float64Array,
  nq: number,
  orders: number,
  outRe: Float64Array,
  outIm: Float64Array,
  strideP: number,
  strideQ: number,
): void => {
  const width = 2 * orders;
  for (let q = 0; q < nq; q += 2) {
    const q1 = q + 1 < nq ? q + 1 : q;
    const t0 = q * width;
    const t1 = q1 * width;
    for (let p = 0; p < np; p += 2) {
      const p1 = p + 1 < np ? p + 1 : p;
      const u0 = p * width;
      const u1 = p1 * width;
      let re00 = 0;
      let im00 = 0;
      let re01 = 0;
      let im01 = 0;
      let re10 = 0;
      let im10 = 0;
      let re11 = 0;
      let im11 = 0;
      for (let m = 0; m < width; m += 2) {
        const aRe = rowsP[u0 + m];
        const aIm = rowsP[u0 + m + 1];
        const bRe = rowsP[u1 + m];
        const bIm = rowsP[u1 + m + 1];
        const cRe = rowsT[t0 + m];
        const cIm = rowsT[t0 + m + 1];
        const dRe = rowsT[t1 + m];
        const dIm = rowsT[t1 + m + 1];
        re00 += aRe * cRe - aIm * cIm;
        im00 += aRe * cIm + aIm * cRe;
        re01 += aRe * dRe - aIm * dIm;
        im01 += aRe * dIm + aIm * dRe;
        re10 += bRe * cRe - bIm * cIm;
        im10 += bRe * cIm + bIm * cRe;
        re11 += bRe * dRe - bIm * dIm;
        im11 += bRe * dIm + bIm * dRe;
      }
      const o00 = q * strideQ + p * strideP;
      const o01 = q1 * strideQ + p * strideP;
      const o10 = q * strideQ + p1 * strideP;
      const o11 = q1 * strideQ + p1 * strideP;
      outRe[o00] = re00;
      outIm[o00] = im00;
      outRe[o01] = re01;
      outIm[o01] = im01;
      outRe[o10] = re10;
      outIm[o10] = im10;
      outRe[o11] = re11;
      outIm[o11] = im11;
    }
  }
};

/**
 * Step one: T[q, m] = sum over n < counts[m] of C[m, n] V[q, n]. C is orders x width re, im pairs, V has `width` pairs a row.
 */
export const contract = (
  matrix: Float64Array,
  counts: Int32Array,
  orders: number,
  width: number,
  rowsV: Float64Array,
  nq: number,
  out: Float64Array,
): void => {
  for (let q = 0; q < nq; q++) {
    const v = 2 * width * q;
    for (let m = 0; m < orders; m++) {
      const c = 2 * width * m;
      const end = 2 * counts[m];
      let re = 0;
      let im = 0;
      for (let n = 0; n < end; n += 2) {
        const aRe = matrix[c + n];
        const aIm = matrix[c + n + 1];
        const bRe = rowsV[v + n];
        const bIm = rowsV[v + n + 1];
        re += aRe * bRe - aIm * bIm;
        im += aRe * bIm + aIm * bRe;
      }
      const o = 2 * (orders * q + m);
      out[o] = re;
      out[o + 1] = im;
    }
  }
};
