import { answerOfPatches } from '../patches/coupled-system.ts';
import { type FreeRoot, type Guess, normal } from '../patches/free-roots.ts';
import type { EvenMode } from './even-modes.ts';
import { alongModes, type PrismPatchState, solvePatches } from './patch-coupling.ts';
import type { PrismPatchLayout } from './patch-layout.ts';
import { createPrismStates, type PrismState } from './prism-state.ts';
import type { Section } from './section.ts';

/** A mode of the even room as oscillations are made of it. */
export type EvenPart = Pick<EvenMode, 'order' | 'vector'>;

const MOST_STEPS = 6;
/** A root is taken once a step moved it by less than this share: the next would move it by about the cube. */
const FOUND = 1e-5;
/** A guess is made exact by moving it by less than this share. */
const FARTHEST = 0.03;
const MOST_SECANTS = 12;
const SECANT = 1e-4;
const EXACT = 1e-10;
/** Secants that lead farther than this share of k have lost their root. */
const ASTRAY = 0.1;

/**
 * Makes the free oscillations of a prism with patches exact. With M_n = Lambda + w_n / L^2 - k^2 + j k B per order of the even axis, F_n
 * the integrals of the patch functions over its functions and E = 1 / j k D + tail (coupled-system.ts, patch-layout.ts), they solve
 *
 *   M_n c_n + F_n y = 0,     sum over n of F_n . c_n - E y = 0
 *
 * which is symmetric, so that k from its quadratic form is right to the square of the error of (c, y): inverse iteration from that k
 * converges to the third order (the Rayleigh quotient's; derived for this system). Answers null where it wanders.
 */
export const createExactRoots = (
  section: Section,
  layoutFor: (kRe: number) => PrismPatchLayout,
): ((guess: Guess<EvenPart>) => FreeRoot<EvenPart> | null) => {
  const states = createPrismStates(section, 0);
  const { soundSpeed } = section.geometry;
  const toHz = soundSpeed / (2 * Math.PI);
  const stateAt = (kRe: number, kIm: number): PrismState => states.at(kRe * toHz, -soundSpeed * kIm);
  return (guess) => {
    const layout = layoutFor(guess.k[0]);
    const c = functionsOf(section, guess);
    const k = guess.k.slice();
    for (let step = 0; step < MOST_STEPS; step++) {
      const [fromRe, fromIm] = k;
      const state = stateAt(fromRe, fromIm);
      const own = solvePatches(section, states, layout, state);
      const y = iterate(section, own, c, (n, load) => states.solve(state, n, load, 1));
      states.trim();
      // a singular system: k is exact already
      if (y === null) return { k: [fromRe, fromIm], x: partsOf(guess, c), parts: guess.parts };
      if (!followForm(formOf(section, layout, c, y), (re, im) => stateAt(re, im), k)) return null;
      if (!(Math.hypot(k[0] - guess.k[0], k[1] - guess.k[1]) < FARTHEST * guess.k[0])) return null;
      if (Math.hypot(k[0] - fromRe, k[1] - fromIm) < FOUND * k[0])
        return { k: [k[0], k[1]], x: partsOf(guess, c), parts: guess.parts };
    }
    return null;
  };
};

/** c_n of a guess, re, im per function that the order carries. */
const functionsOf = ({ orders, functions }: Section, { parts, x }: Guess<EvenPart>): Float64Array[] => {
  const c = Array.from({ length: orders }, (_, n) => new Float64Array(2 * functions[n]));
  for (const [m, { order, vector }] of parts.entries()) {
    const own = c[order];
    const [xRe, xIm] = [x[2 * m], x[2 * m + 1]];
    for (let i = 0; i < own.length; i += 2) {
      own[i] += xRe * vector[i] - xIm * vector[i + 1];
      own[i + 1] += xRe * vector[i + 1] + xIm * vector[i];
    }
  }
  return c;
};

/** How the modes of the even room take part in c, 1 in all. */
const partsOf = ({ parts }: Guess<EvenPart>, c: readonly Float64Array[]): Float64Array => {
  const x = new Float64Array(2 * parts.length);
  for (const [m, { order, vector }] of parts.entries()) {
    const own = c[order];
    for (let i = 0; i < own.length; i += 2) {
      x[2 * m] += vector[i] * own[i] - vector[i + 1] * own[i + 1];
      x[2 * m + 1] += vector[i] * own[i + 1] + vector[i + 1] * own[i];
    }
  }
  return normal(x);
};

/** c becomes the answer to c as a load, of size 1; returns its y, or null where the system is singular. */
const iterate = (
  { orders, functions }: Section,
  { layout, solved, along, coupled }: PrismPatchState,
  c: readonly Float64Array[],
  solve: (n: number, load: Float64Array) => void,
): Float64Array | null => {
  if (coupled === null) return null;
  const { section: parts, sectionOf, alongOf } = layout;
  const count = layout.functions.count;
  const y = new Float64Array(2 * count);
  for (let n = 0; n < orders; n++) {
    solve(n, c[n]);
    const sums = parts.map((part) => partTimes(part, c[n]));
    for (let a = 0; a < count; a++) {
      const z = 2 * (alongOf[a] * orders + n);
      const [re, im] = sums[sectionOf[a]];
      y[2 * a] += re * along[z] - im * along[z + 1];
      y[2 * a + 1] += re * along[z + 1] + im * along[z];
    }
  }
  answerOfPatches(coupled, y);
  const weights = new Float64Array(2 * parts.length);
  let square = 0;
  for (let n = 0; n < orders; n++) {
    weights.fill(0);
    for (let a = 0; a < count; a++) {
      const z = 2 * (alongOf[a] * orders + n);
      weights[2 * sectionOf[a]] += y[2 * a] * along[z] - y[2 * a + 1] * along[z + 1];
      weights[2 * sectionOf[a] + 1] += y[2 * a] * along[z + 1] + y[2 * a + 1] * along[z];
    }
    const own = c[n];
    for (let i = 0; i < functions[n]; i++) {
      const row = 2 * (functions[n] - 1 - i) * parts.length;
      for (let m = 0; m < weights.length; m += 2) {
        own[2 * i] -= weights[m] * solved[n][row + m] - weights[m + 1] * solved[n][row + m + 1];
        own[2 * i + 1] -= weights[m] * solved[n][row + m + 1] + weights[m + 1] * solved[n][row + m];
      }
    }
    for (let i = 0; i < own.length; i++) square += own[i] * own[i];
  }
  const scale = 1 / Math.sqrt(square);
  for (const own of [...c, y]) for (let i = 0; i < own.length; i++) own[i] *= scale;
  return y;
};

const partTimes = (part: Float64Array, c: Float64Array): readonly [number, number] => {
  let [re, im] = [0, 0];
  for (let i = 0; 2 * i < c.length; i++) {
    re += part[i] * c[2 * i];
    im += part[i] * c[2 * i + 1];
  }
  return [re, im];
};

/** The quadratic form at (c, y) over k: re, im into `out`. */
type Form = (state: PrismState, out: Float64Array) => void;

const formOf = (section: Section, layout: PrismPatchLayout, c: readonly Float64Array[], y: Float64Array): Form => {
  const { orders, size, lambda, wallRe, wallIm, geometry } = section;
  const { section: parts, sectionOf, alongOf, tail } = layout;
  const { count, delta } = layout.functions;
  const perL2 = 1 / geometry.lengthM ** 2;
  // per order c . Lambda c, c . c; of all c . B c
  const squares = new Float64Array(4 * orders);
  let [wallsRe, wallsIm] = [0, 0];
  for (const [n, own] of c.entries()) {
    for (let i = 0; 2 * i < own.length; i++) {
      const [re, im] = [own[2 * i], own[2 * i + 1]];
      const [sRe, sIm] = [re * re - im * im, 2 * re * im];
      squares[4 * n] += lambda[i] * sRe;
      squares[4 * n + 1] += lambda[i] * sIm;
      squares[4 * n + 2] += sRe;
      squares[4 * n + 3] += sIm;
      let [bRe, bIm] = [0, 0];
      for (let j = 0; 2 * j < own.length; j++) {
        const [wRe, wIm] = [wallRe[i * size + j], wallIm === null ? 0 : wallIm[i * size + j]];
        bRe += wRe * own[2 * j] - wIm * own[2 * j + 1];
        bIm += wRe * own[2 * j + 1] + wIm * own[2 * j];
      }
      wallsRe += re * bRe - im * bIm;
      wallsIm += re * bIm + im * bRe;
    }
  }
  // twice y . F c, per course along the axis and order
  const courses = new Float64Array(2 * layout.along.length * orders);
  for (const [n, own] of c.entries()) {
    const sums = parts.map((part) => partTimes(part, own));
    for (let a = 0; a < count; a++) {
      const [re, im] = sums[sectionOf[a]];
      const at = 2 * (alongOf[a] * orders + n);
      courses[at] += 2 * (re * y[2 * a] - im * y[2 * a + 1]);
      courses[at + 1] += 2 * (re * y[2 * a + 1] + im * y[2 * a]);
    }
  }
  // y . y / D and y . tail y
  let [loadRe, loadIm] = [0, 0];
  const tails = new Float64Array(4);
  for (let a = 0; a < count; a++) {
    const [re, im] = [y[2 * a], y[2 * a + 1]];
    const [sRe, sIm] = [re * re - im * im, 2 * re * im];
    const d2 = delta[2 * a] ** 2 + delta[2 * a + 1] ** 2;
    loadRe += (sRe * delta[2 * a] + sIm * delta[2 * a + 1]) / d2;
    loadIm += (sIm * delta[2 * a] - sRe * delta[2 * a + 1]) / d2;
    for (let b = 0; b < count; b++) {
      const [pRe, pIm] = [re * y[2 * b] - im * y[2 * b + 1], re * y[2 * b + 1] + im * y[2 * b]];
      const [rest, rise] = [tail.rest[a * count + b], tail.rise[a * count + b]];
      tails[0] += rest * pRe;
      tails[1] += rest * pIm;
      tails[2] += rise * pRe;
      tails[3] += rise * pIm;
    }
  }
  return (state, out) => {
    const { kRe, kIm, even } = state;
    const along = alongModes(section, layout, even);
    const k2 = kRe * kRe + kIm * kIm;
    // + j k c . B c - y . y / j k D - y . tail y
    const [qRe, qIm] = [kRe * kRe - kIm * kIm, 2 * kRe * kIm];
    let re = -(kRe * wallsIm + kIm * wallsRe) - (loadIm * kRe - loadRe * kIm) / k2;
    let im = kRe * wallsRe - kIm * wallsIm + (loadRe * kRe + loadIm * kIm) / k2;
    re -= tails[0] + qRe * tails[2] - qIm * tails[3];
    im -= tails[1] + qRe * tails[3] + qIm * tails[2];
    for (let n = 0; n < orders; n++) {
      const wRe = even.roots.w[2 * n] * perL2 - qRe;
      const wIm = even.roots.w[2 * n + 1] * perL2 - qIm;
      const [sRe, sIm] = [squares[4 * n + 2], squares[4 * n + 3]];
      re += squares[4 * n] + wRe * sRe - wIm * sIm;
      im += squares[4 * n + 1] + wRe * sIm + wIm * sRe;
    }
    for (let i = 0; i < along.length; i += 2) {
      re += courses[i] * along[i] - courses[i + 1] * along[i + 1];
      im += courses[i] * along[i + 1] + courses[i + 1] * along[i];
    }
    out[0] = re;
    out[1] = im;
  };
};

/** Moves k to the root of a form by secants; false where there is none. */
const followForm = (form: Form, stateAt: (kRe: number, kIm: number) => PrismState, k: Float64Array): boolean => {
  const [here, there] = [new Float64Array(2), new Float64Array(2)];
  let [kRe, kIm] = k;
  let [nextRe, nextIm] = [kRe * (1 + SECANT), kIm];
  form(stateAt(kRe, kIm), here);
  for (let step = 0; step < MOST_SECANTS; step++) {
    form(stateAt(nextRe, nextIm), there);
    const [fRe, fIm] = [there[0] - here[0], there[1] - here[1]];
    const square = fRe * fRe + fIm * fIm;
    const [dRe, dIm] = [nextRe - kRe, nextIm - kIm];
    const [sRe, sIm] = [(dRe * fRe + dIm * fIm) / square, (dIm * fRe - dRe * fIm) / square];
    const [moveRe, moveIm] = [there[0] * sRe - there[1] * sIm, there[0] * sIm + there[1] * sRe];
    [kRe, kIm] = [nextRe, nextIm];
    here.set(there);
    [nextRe, nextIm] = [kRe - moveRe, kIm - moveIm];
    // what is no oscillation: the states answer for positive frequencies only
    if (!(nextRe > 0 && Math.abs(nextIm) < nextRe && Math.abs(nextRe - k[0]) < ASTRAY * k[0])) return false;
    if (Math.hypot(moveRe, moveIm) < EXACT * kRe) {
      k[0] = nextRe;
      k[1] = nextIm;
      return true;
    }
  }
  return false;
};
