/**
 * Eigenvalues and right eigenvectors of any complex matrix: Householder's reduction to Hessenberg form, QR steps with
 * Wilkinson's shifts to the triangle of Schur, its vectors by back substitution (Golub and Van Loan, Matrix Computations, 7.4 to 7.6;
 * from memory). All steps are unitary, so that nothing grows however far from diagonal or normal the matrix is.
 */
export interface Eigenpairs {
  /** re, im each. */
  readonly values: Float64Array;
  /** Vector i at row i, 1 in all as |x|^2. */
  readonly vectors: Float64Array;
}

const MOST_STEPS_EACH = 30;
const EPSILON = 2 ** -52;
/** A square that is nothing beside any number that matters. */
const TINY = 1e-280;

/** Of `a`, n x n, row by row as re, im; overwritten. Null where the steps do not end, as has not been seen. */
export const eigenpairsOf = (n: number, a: Float64Array): Eigenpairs | null => {
  const q = new Float64Array(2 * n * n);
  for (let i = 0; i < n; i++) q[2 * (i * n + i)] = 1;
  reduce(n, a, q);
  if (!triangulate(n, a, q)) return null;
  const values = new Float64Array(2 * n);
  for (let i = 0; i < n; i++) values.set(a.subarray(2 * (i * n + i), 2 * (i * n + i) + 2), 2 * i);
  return { values, vectors: vectorsOf(n, a, q) };
};

/** To Hessenberg form, H = Q* A Q. */
const reduce = (n: number, a: Float64Array, q: Float64Array): void => {
  const v = new Float64Array(2 * n);
  for (let c = 0; c + 2 < n; c++) {
    const first = 2 * (c + 1);
    let below = 0;
    for (let i = c + 1; i < n; i++) {
      v[2 * i] = a[2 * (i * n + c)];
      v[2 * i + 1] = a[2 * (i * n + c) + 1];
      if (2 * i > first) below += v[2 * i] ** 2 + v[2 * i + 1] ** 2;
    }
    if (below < TINY) continue;
    const head = Math.hypot(v[first], v[first + 1]);
    const size = Math.sqrt(head * head + below);
    // away from what is there, in its own direction
    if (head === 0) v[first] = size;
    else {
      v[first] *= 1 + size / head;
      v[first + 1] *= 1 + size / head;
    }
    const scale = 2 / (below + (head + size) ** 2);
    for (let j = c; j < n; j++) {
      let [re, im] = [0, 0];
      for (let i = c + 1; i < n; i++) {
        const at = 2 * (i * n + j);
        re += v[2 * i] * a[at] + v[2 * i + 1] * a[at + 1];
        im += v[2 * i] * a[at + 1] - v[2 * i + 1] * a[at];
      }
      re *= scale;
      im *= scale;
      for (let i = c + 1; i < n; i++) {
        const at = 2 * (i * n + j);
        a[at] -= v[2 * i] * re - v[2 * i + 1] * im;
        a[at + 1] -= v[2 * i] * im + v[2 * i + 1] * re;
      }
    }
    reflectColumns(n, a, v, c + 1, scale);
    reflectColumns(n, q, v, c + 1, scale);
  }
};

/** Rows times 1 - scale v v*. */
const reflectColumns = (n: number, rows: Float64Array, v: Float64Array, from: number, scale: number): void => {
  for (let i = 0; i < n; i++) {
    let [re, im] = [0, 0];
    for (let j = from; j < n; j++) {
      const at = 2 * (i * n + j);
      re += rows[at] * v[2 * j] - rows[at + 1] * v[2 * j + 1];
      im += rows[at] * v[2 * j + 1] + rows[at + 1] * v[2 * j];
    }
    re *= scale;
    im *= scale;
    for (let j = from; j < n; j++) {
      const at = 2 * (i * n + j);
      rows[at] -= re * v[2 * j] + im * v[2 * j + 1];
      rows[at + 1] -= im * v[2 * j] - re * v[2 * j + 1];
    }
  }
};

const sizeAt = (a: Float64Array, at: number): number => Math.hypot(a[at], a[at + 1]);

/** From Hessenberg to upper triangular form, Q along with it; false where it does not end. */
const triangulate = (n: number, h: Float64Array, q: Float64Array): boolean => {
  const turns = new Float64Array(4 * n);
  const shift = new Float64Array(2);
  // a change of the matrix as small as its numbers' own errors
  const nothing = EPSILON * largestOf(h);
  let steps = 0;
  for (let last = n - 1; last > 0; ) {
    let first = last;
    for (; first > 0; first--) {
      const below = 2 * (first * n + first - 1);
      if (sizeAt(h, below) > nothing) continue;
      h[below] = 0;
      h[below + 1] = 0;
      break;
    }
    if (first === last) {
      last--;
      steps = 0;
      continue;
    }
    if (steps++ === MOST_STEPS_EACH) return false;
    setShift(n, h, last, steps, shift);
    for (let i = first; i <= last; i++) addTo(h, 2 * (i * n + i), -shift[0], -shift[1]);
    for (let k = first; k < last; k++) turnRows(n, h, k, turns);
    for (let k = first; k < last; k++) {
      turnColumns(n, h, k, Math.min(k + 1, last) + 1, turns);
      turnColumns(n, q, k, n, turns);
    }
    for (let i = first; i <= last; i++) addTo(h, 2 * (i * n + i), shift[0], shift[1]);
  }
  return true;
};

const largestOf = (a: Float64Array): number => a.reduce((most, part) => Math.max(most, Math.abs(part)), 0);

const addTo = (a: Float64Array, at: number, re: number, im: number): void => {
  a[at] += re;
  a[at + 1] += im;
};

/** The eigenvalue of the last two rows that is nearer to the last entry; now and then another one, where steps go round. */
const setShift = (n: number, h: Float64Array, last: number, steps: number, out: Float64Array): void => {
  const dd = 2 * (last * n + last);
  const aa = dd - 2 * n - 2;
  out[0] = h[dd];
  out[1] = h[dd + 1];
  if (steps % 10 === 0) {
    out[0] += sizeAt(h, dd - 2);
    return;
  }
  // b c
  const re = h[aa + 2] * h[dd - 2] - h[aa + 3] * h[dd - 1];
  const im = h[aa + 2] * h[dd - 1] + h[aa + 3] * h[dd - 2];
  const halfRe = (h[aa] - h[dd]) / 2;
  const halfIm = (h[aa + 1] - h[dd + 1]) / 2;
  const [rootRe, rootIm] = rootOf(halfRe * halfRe - halfIm * halfIm + re, 2 * halfRe * halfIm + im);
  const sign = halfRe * rootRe + halfIm * rootIm >= 0 ? 1 : -1;
  const [sumRe, sumIm] = [halfRe + sign * rootRe, halfIm + sign * rootIm];
  const square = sumRe * sumRe + sumIm * sumIm;
  if (square === 0) return;
  out[0] -= (re * sumRe + im * sumIm) / square;
  out[1] -= (im * sumRe - re * sumIm) / square;
};

const rootOf = (re: number, im: number): readonly [number, number] => {
  const size = Math.hypot(re, im);
  const x = Math.sqrt(Math.max(0, (size + re) / 2));
  const y = Math.sqrt(Math.max(0, (size - re) / 2));
  return [x, im < 0 ? -y : y];
};

/** Rows k and k + 1 turned so that the entry below the diagonal vanishes; how is kept for the columns. */
const turnRows = (n: number, h: Float64Array, k: number, turns: Float64Array): void => {
  const top = 2 * (k * n + k);
  const below = top + 2 * n;
  const size = Math.hypot(h[top], h[top + 1], h[below], h[below + 1]);
  const [cRe, cIm, sRe, sIm] =
    size === 0 ? [1, 0, 0, 0] : [h[top] / size, h[top + 1] / size, h[below] / size, h[below + 1] / size];
  turns[4 * k] = cRe;
  turns[4 * k + 1] = cIm;
  turns[4 * k + 2] = sRe;
  turns[4 * k + 3] = sIm;
  for (let j = 0; j < n - k; j++) {
    const [x, y] = [top + 2 * j, below + 2 * j];
    const [xRe, xIm, yRe, yIm] = [h[x], h[x + 1], h[y], h[y + 1]];
    h[x] = cRe * xRe + cIm * xIm + sRe * yRe + sIm * yIm;
    h[x + 1] = cRe * xIm - cIm * xRe + sRe * yIm - sIm * yRe;
    h[y] = cRe * yRe - cIm * yIm - sRe * xRe + sIm * xIm;
    h[y + 1] = cRe * yIm + cIm * yRe - sRe * xIm - sIm * xRe;
  }
};

const turnColumns = (n: number, rows: Float64Array, k: number, to: number, turns: Float64Array): void => {
  const [cRe, cIm, sRe, sIm] = [turns[4 * k], turns[4 * k + 1], turns[4 * k + 2], turns[4 * k + 3]];
  for (let i = 0; i < to; i++) {
    const x = 2 * (i * n + k);
    const [xRe, xIm, yRe, yIm] = [rows[x], rows[x + 1], rows[x + 2], rows[x + 3]];
    rows[x] = xRe * cRe - xIm * cIm + yRe * sRe - yIm * sIm;
    rows[x + 1] = xRe * cIm + xIm * cRe + yRe * sIm + yIm * sRe;
    rows[x + 2] = yRe * cRe + yIm * cIm - xRe * sRe - xIm * sIm;
    rows[x + 3] = yIm * cRe - yRe * cIm - xIm * sRe + xRe * sIm;
  }
};

/** Q times the eigenvectors of the triangle. */
const vectorsOf = (n: number, t: Float64Array, q: Float64Array): Float64Array => {
  const least = EPSILON * largestOf(t) || 1;
  const y = new Float64Array(2 * n);
  const vectors = new Float64Array(2 * n * n);
  for (let k = 0; k < n; k++) {
    y[2 * k] = 1;
    y[2 * k + 1] = 0;
    for (let i = k - 1; i >= 0; i--) {
      let [re, im] = [0, 0];
      for (let j = i + 1; j <= k; j++) {
        const at = 2 * (i * n + j);
        re -= t[at] * y[2 * j] - t[at + 1] * y[2 * j + 1];
        im -= t[at] * y[2 * j + 1] + t[at + 1] * y[2 * j];
      }
      let dRe = t[2 * (i * n + i)] - t[2 * (k * n + k)];
      const dIm = t[2 * (i * n + i) + 1] - t[2 * (k * n + k) + 1];
      // two that are one: a little apart
      if (Math.hypot(dRe, dIm) < least) dRe += least;
      const square = dRe * dRe + dIm * dIm;
      y[2 * i] = (re * dRe + im * dIm) / square;
      y[2 * i + 1] = (im * dRe - re * dIm) / square;
    }
    let square = 0;
    for (let i = 0; i < n; i++) {
      let [re, im] = [0, 0];
      for (let j = 0; j <= k; j++) {
        const at = 2 * (i * n + j);
        re += q[at] * y[2 * j] - q[at + 1] * y[2 * j + 1];
        im += q[at] * y[2 * j + 1] + q[at + 1] * y[2 * j];
      }
      vectors[2 * (k * n + i)] = re;
      vectors[2 * (k * n + i) + 1] = im;
      square += re * re + im * im;
    }
    for (let i = 2 * k * n; i < 2 * (k + 1) * n; i++) vectors[i] /= Math.sqrt(square);
  }
  return vectors;
};
