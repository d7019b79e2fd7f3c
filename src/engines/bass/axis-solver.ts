import { type Allocate, plainly } from './arena.ts';
import { EVEN, evaluate, type Family, GENERAL, ODD } from './axis-equation.ts';

/** The eigenvalues of one axis at one wavenumber, ascending in Re w. */
export interface AxisRoots {
  readonly count: number;
  /** b0 and b1 as re, im. */
  readonly b: Float64Array;
  /** w as re, im per mode. */
  readonly w: Float64Array;
  /** dw / d ln k as re, im per mode (both walls' b are proportional to k). */
  readonly slope: Float64Array;
  readonly family: Uint8Array;
}

/** Largest change of b0 or b1 in one continuation step, while both are small and n is low. */
const STEP = 1;
/**
 * Shares of |b| and of the order n that a step may reach instead: a mode far above |b| or far below it hardly moves with
 * b. Longer steps only save time: a step is judged by Newton's method and by what it did to the whole set.
 */
const STEP_PER_B = 0.5;
const STEP_PER_ORDER = 0.5;
/** Newton's first correction may move q a = sqrt w by this much: modes lie about pi apart. */
const MOST_CORRECTION = 0.5;
/** Steps below this fraction of the path are given up. */
const LEAST_FRACTION = 1e-7;
const MOST_NEWTON = 12;
/** Walls closer than this (relative) are solved as equal, which moves w by less than the same fraction. */
const EQUAL_WALLS = 1e-9;

const value = new Float64Array(8);
const bNow = new Float64Array(4);
/** The tracked root: w re, im and dw/dt re, im. */
const root = new Float64Array(4);

/** Newton's method at `b` from `root`; false when it wanders: then the caller shortens its step. */
const newton = (family: Family, b: Float64Array): boolean => {
  let wRe = root[0];
  let wIm = root[1];
  let first = 0;
  for (let i = 0; i < MOST_NEWTON; i++) {
    evaluate(family, wRe, wIm, b, value);
    const scale = value[2] * value[2] + value[3] * value[3];
    const dRe = (value[0] * value[2] + value[1] * value[3]) / scale;
    const dIm = (value[1] * value[2] - value[0] * value[3]) / scale;
    wRe -= dRe;
    wIm -= dIm;
    const size = dRe * dRe + dIm * dIm;
    const size0 = 1 + wRe * wRe + wIm * wIm;
    if (!(size < Number.POSITIVE_INFINITY)) return false;
    if (i === 0) {
      first = size;
      // |dw|^2 = |2 q dq|^2
      if (size > 4 * MOST_CORRECTION * MOST_CORRECTION * Math.sqrt(size0)) return false;
    } else if (i === 1 && size > 0.01 * first && size > 1e-18 * size0) return false;
    if (size < 1e-22 * size0 || size < 1e-14 * Math.sqrt(size0)) {
      root[0] = wRe;
      root[1] = wIm;
      return true;
    }
  }
  return false;
};

/** dw/dt into root[2..3] from the last evaluation, for walls moving at db0, db1 per unit t. */
const slopeFor = (db0Re: number, db0Im: number, db1Re: number, db1Im: number): void => {
  const tRe = value[4] * db0Re - value[5] * db0Im + value[6] * db1Re - value[7] * db1Im;
  const tIm = value[4] * db0Im + value[5] * db0Re + value[6] * db1Im + value[7] * db1Re;
  const scale = value[2] * value[2] + value[3] * value[3];
  root[2] = -(tRe * value[2] + tIm * value[3]) / scale;
  root[3] = -(tIm * value[2] - tRe * value[3]) / scale;
};

/** Euler's step of length h, taken in q = sqrt w once w is large: exact there for surface waves, better for all. */
const predict = (wRe: number, wIm: number, h: number): void => {
  const dRe = root[2] * h;
  const dIm = root[3] * h;
  const scale = wRe * wRe + wIm * wIm;
  if (scale < 4) {
    root[0] = wRe + dRe;
    root[1] = wIm + dIm;
    return;
  }
  // (q + dw / 2q)^2 = w + dw + dw^2 / 4w
  const squareRe = dRe * dRe - dIm * dIm;
  const squareIm = 2 * dRe * dIm;
  root[0] = wRe + dRe + (squareRe * wRe + squareIm * wIm) / (4 * scale);
  root[1] = wIm + dIm + (squareIm * wRe - squareRe * wIm) / (4 * scale);
};

/**
 * Follows `root`, the mode that began as the rigid one n, from walls `from` to walls `to`. `root[2..3]` must hold dw/dt at
 * the start when `slopeKnown`. False when the path could not be followed.
 */
const follow = (
  family: Family,
  n: number,
  from: Float64Array,
  to: Float64Array,
  maxStep: number,
  slopeKnown: boolean,
): boolean => {
  const d0Re = to[0] - from[0];
  const d0Im = to[1] - from[1];
  const d1Re = to[2] - from[2];
  const d1Im = to[3] - from[3];
  const travel0 = Math.sqrt(d0Re * d0Re + d0Im * d0Im);
  const travel1 = Math.sqrt(d1Re * d1Re + d1Im * d1Im);
  if (travel0 === 0 && travel1 === 0) {
    evaluate(family, root[0], root[1], to, value);
    return true;
  }
  const shortest = (LEAST_FRACTION * maxStep) / Math.max(travel0, travel1);
  const byOrder = Math.max(1, STEP_PER_ORDER * n);
  let step = 1;
  let t = 0;
  let wRe = root[0];
  let wIm = root[1];
  if (!slopeKnown) {
    evaluate(family, wRe, wIm, from, value);
    slopeFor(d0Re, d0Im, d1Re, d1Im);
  }
  bNow.set(from);
  while (t < 1) {
    const size0 = Math.sqrt(bNow[0] * bNow[0] + bNow[1] * bNow[1]);
    const size1 = Math.sqrt(bNow[2] * bNow[2] + bNow[3] * bNow[3]);
    const h = Math.min(
      step,
      1 - t,
      (maxStep * Math.max(byOrder, STEP_PER_B * size0)) / travel0,
      (maxStep * Math.max(byOrder, STEP_PER_B * size1)) / travel1,
    );
    const end = t + h >= 1 - 1e-14 ? 1 : t + h;
    bNow[0] = from[0] + end * d0Re;
    bNow[1] = from[1] + end * d0Im;
    bNow[2] = from[2] + end * d1Re;
    bNow[3] = from[3] + end * d1Im;
    predict(wRe, wIm, h);
    if (newton(family, bNow)) {
      t = end;
      wRe = root[0];
      wIm = root[1];
      slopeFor(d0Re, d0Im, d1Re, d1Im);
      step = 2 * h;
    } else {
      step = h / 2;
      if (step < shortest) return false;
    }
  }
  return true;
};

const rigidWalls = new Float64Array(4);

const familyOf = (b: Float64Array, n: number): Family => {
  const gap = Math.abs(b[0] - b[2]) + Math.abs(b[1] - b[3]);
  if (gap > EQUAL_WALLS * (Math.abs(b[0]) + Math.abs(b[1]) + Math.abs(b[2]) + Math.abs(b[3]))) return GENERAL;
  return n % 2 === 0 ? EVEN : ODD;
};

/**
 * One eigenvalue, the one that continues the rigid mode n: w at walls `b` into `out` as re, im, dw/dlnk re, im.
 * With `start` the search goes on from a neighbouring solution (its walls and its w). False when the path was lost.
 */
export const solveOne = (
  n: number,
  b: Float64Array,
  out: Float64Array,
  start: { readonly b: Float64Array; readonly w: Float64Array } | null = null,
): boolean => {
  const family = familyOf(b, n);
  root[0] = start === null ? (n * Math.PI) ** 2 : start.w[0];
  root[1] = start === null ? 0 : start.w[1];
  const found = follow(family, n, start === null ? rigidWalls : start.b, b, STEP, false);
  slopeFor(b[0], b[1], b[2], b[3]);
  for (let i = 0; i < 4; i++) out[i] = root[i];
  return found;
};

/** All modes from rigid walls. */
const solveCold = (roots: AxisRoots, maxStep: number): boolean => {
  let whole = true;
  for (let n = 0; n < roots.count; n++) if (!solveFromRigid(roots, n, maxStep)) whole = false;
  return whole;
};

const solveFromRigid = (roots: AxisRoots, n: number, maxStep: number): boolean => {
  const family = familyOf(roots.b, n);
  root[0] = (n * Math.PI) ** 2;
  root[1] = 0;
  const found = follow(family, n, rigidWalls, roots.b, maxStep, false);
  keep(roots, n, family);
  return found;
};

/** The modes that `near` holds from there, the others from rigid walls. */
const solveWarm = (roots: AxisRoots, near: AxisRoots, ratioRe: number, ratioIm: number): boolean => {
  for (let n = 0; n < roots.count; n++) {
    if (n >= near.count) {
      if (!solveFromRigid(roots, n, STEP)) return false;
      continue;
    }
    const family = near.family[n] as Family;
    const sRe = near.slope[2 * n];
    const sIm = near.slope[2 * n + 1];
    root[0] = near.w[2 * n];
    root[1] = near.w[2 * n + 1];
    root[2] = sRe * (ratioRe - 1) - sIm * ratioIm;
    root[3] = sRe * ratioIm + sIm * (ratioRe - 1);
    if (!follow(family, n, near.b, roots.b, STEP, true)) return false;
    keep(roots, n, family);
  }
  return true;
};

const keep = (roots: AxisRoots, n: number, family: Family): void => {
  const { b, w, slope } = roots;
  slopeFor(b[0], b[1], b[2], b[3]);
  w[2 * n] = root[0];
  w[2 * n + 1] = root[1];
  slope[2 * n] = root[2];
  slope[2 * n + 1] = root[3];
  roots.family[n] = family;
};

/** Insertion sort by Re w: the list is nearly in order. */
const sortRoots = ({ count, w, slope, family }: AxisRoots): void => {
  for (let i = 1; i < count; i++) {
    for (let j = i; j > 0 && w[2 * j] < w[2 * j - 2]; j--) {
      swap(w, 2 * j, 2 * j - 2);
      swap(w, 2 * j + 1, 2 * j - 1);
      swap(slope, 2 * j, 2 * j - 2);
      swap(slope, 2 * j + 1, 2 * j - 1);
      swap(family, j, j - 1);
    }
  }
};

const swap = (list: Float64Array | Uint8Array, i: number, j: number): void => {
  const held = list[i];
  list[i] = list[j];
  list[j] = held;
};

/** True when two eigenvalues of one family agree within 1e-6 (1 + |w|): a mode was found twice. */
const hasDouble = ({ count, w, family }: AxisRoots): boolean => {
  for (let i = 0; i < count; i++) {
    const limit = 1e-6 * (1 + Math.sqrt(w[2 * i] * w[2 * i] + w[2 * i + 1] * w[2 * i + 1]));
    for (let j = i + 1; j < count && w[2 * j] - w[2 * i] < limit; j++) {
      if (family[i] === family[j] && Math.abs(w[2 * j + 1] - w[2 * i + 1]) < limit) return true;
    }
  }
  return false;
};

/**
 * The first `count` eigenvalues for walls b = j k a beta (b0Re, b0Im, b1Re, b1Im). `near`, the same axis at a
 * neighbouring k or with fewer modes, makes it cheap: `ratio` is then k / k_near as [re, im].
 */
export const solveAxis = (
  count: number,
  b: Float64Array,
  near: AxisRoots | null = null,
  ratio: readonly [number, number] = [1, 0],
  allocate: Allocate = plainly,
): AxisRoots => {
  // one block for all: hundreds of small typed arrays cost more than the mathematics
  const block = allocate(4 * count + 4);
  const roots: AxisRoots = {
    count,
    b: block.subarray(0, 4),
    w: block.subarray(4, 4 + 2 * count),
    slope: block.subarray(4 + 2 * count),
    family: new Uint8Array(count),
  };
  for (let i = 0; i < 4; i++) roots.b[i] = b[i];
  if (near !== null && solveWarm(roots, near, ratio[0], ratio[1])) {
    sortRoots(roots);
    if (!hasDouble(roots)) return roots;
  }
  for (const maxStep of [STEP, STEP / 4, STEP / 16]) {
    const whole = solveCold(roots, maxStep);
    sortRoots(roots);
    if (whole && !hasDouble(roots)) return roots;
  }
  // An exceptional point lies on the path or at its end: go round it. The nudge is far below any wall's accuracy.
  for (const [re, im] of [
    [1 + 1e-6, 1e-6],
    [1 - 1e-6, 1e-5],
  ]) {
    for (let i = 0; i < 4; i += 2) {
      roots.b[i] = b[i] * re - b[i + 1] * im;
      roots.b[i + 1] = b[i] * im + b[i + 1] * re;
    }
    const whole = solveCold(roots, STEP / 16);
    sortRoots(roots);
    if (whole && !hasDouble(roots)) return roots;
  }
  return roots;
};
