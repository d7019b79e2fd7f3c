import type { RigidBoxMode } from '../box-modes.ts';
import { type BoxState, solveState } from '../box-state.ts';
import { refine, rootOf, setDot, timesVector } from '../prism/linear-in-k.ts';
import { eigenvectorsOf } from '../prism/symmetric-eigen.ts';
import type { PatchLayout } from './patch-layout.ts';
import { type Order, type PatchedBox, setGap, type TiedModes, tieModes } from './tied-modes.ts';
import { TIED_HZ } from './tied-reach.ts';

/** A free oscillation of a box with patches. */
export interface PatchRoot {
  readonly k: readonly [number, number];
  /** The modes of the even box that take part, and how: re, im each, 1 in all as |x|^2. */
  readonly orders: readonly Order[];
  readonly x: Float64Array;
}

/** Roots are looked for in stretches of at most and at least this width, ... */
const MOST_STRETCH_HZ = 10;
const LEAST_STRETCH_HZ = 2;
/** ... so that modes are tied to this far beyond either end, but for rooms with more than there is time for. */
const BEYOND_HZ = 6;
/** Beyond a stretch by this much a guess may still lead into it. */
const MARGIN_HZ = 2.5;
/** Of modes near enough to be tied together (TIED_HZ) the nearest: a stretch holds fewer in any room there is time for. */
const MOST_TIED = 80;
/** Of them, those that take most part in an oscillation make it exact: the others stay among the couplings. */
const MOST_PARTS = 24;
/** Slope by a difference of this share of k. */
const DIFFERENCE = 0.02;
const MOST_STEPS = 8;
/** A root is taken once the step to come is expected to move it by less than this share. */
const FOUND = 4e-6;
/** What a step leaves of the one before, until two were made. */
const USUAL_GAIN = 0.05;
/** Roots nearer than this, relative, of one shape are one root found twice; ... */
const SAME = 3e-4;
/** ... a guess this near to a root that is known leads there. */
const GUESSED = 2e-3;
const SAME_SHAPE = 0.95;
/** Nothing grows: a guess that does by more than this share of Re k is none. */
const LEAST_IM = 0.02;
/** Where modes usually die this fast, Im k in Hz (T of 0.09 s), those twice as fast are looked for too. */
const HEAVY_HZ = 12;
/** Where a guess was lost its root is looked for within this share of k. */
const AROUND = 0.1;
const MOST_ROUNDS = 4;

/**
 * All free oscillations of a box with patches from 0 Hz to `topHz`, with |Im k| < Re k. In every stretch the modes
 * nearby are tied together at one wavenumber in its middle (tied-modes.ts): there are as many eigenvectors as modes tied, and each is
 * followed to its own root. `likelyIm` is the usual Im k, `rigid` are the modes between rigid walls to well above topHz + TIED_HZ, the still air among them. Yields
 * after every root.
 */
export function* patchRoots(
  box: PatchedBox,
  layoutFor: (kRe: number) => PatchLayout,
  rigid: readonly RigidBoxMode[],
  topHz: number,
  likelyIm: number,
): Generator<void, PatchRoot[]> {
  const toHz = box.geometry.soundSpeed / (2 * Math.PI);
  const found: PatchRoot[] = [];
  const orders = rigid.map(({ order }) => order);
  const heights = likelyIm * toHz > HEAVY_HZ ? [likelyIm, 2 * likelyIm] : [likelyIm];
  // of what dies at once everywhere little is worth looking for
  const rounds = heights.length === 1 ? MOST_ROUNDS : 0;
  let near: BoxState | null = null;
  for (let fromHz = 0, widthHz = 0; fromHz < topHz; fromHz += widthHz) {
    widthHz = stretchHz(rigid, fromHz);
    const layout = layoutFor((fromHz + widthHz) / toHz);
    for (const heightIm of heights) {
      const middle = [(fromHz + widthHz / 2) / toHz, heightIm] as const;
      const start: Start | null = startAt(box, layout, orders, middle, near);
      yield;
      if (start === null) continue;
      near = start.tied.state;
      const guesses = start.guesses.filter(({ k: [re, im] }) => {
        const hz = re * toHz;
        return hz > fromHz - MARGIN_HZ && hz < fromHz + widthHz + MARGIN_HZ && im < re && im > -LEAST_IM * re;
      });
      for (const lost of yield* addRoots(box, layoutFor, start, guesses, found)) {
        // too far from the middle: anew from where it was lost, until it leads somewhere
        let from: Guess | undefined = lost;
        for (let round = 0; round < rounds && from !== undefined; round++) {
          const anew: Start | null = startAt(box, layout, orders, [from.k[0], from.k[1]], near);
          yield;
          if (anew === null || anew.guesses.length === 0) break;
          const next: Guess = anew.guesses.reduce((a, b) => (likeness(b, lost) > likeness(a, lost) ? b : a));
          const there = anew.guesses.filter((guess) => guess === next || apart(guess, lost) < AROUND * lost.k[0]);
          from = (yield* addRoots(box, layoutFor, anew, there, found)).find((guess) => guess === next);
        }
      }
    }
  }
  return found;
}

/** Adds the roots that guesses lead to, where they were not known; returns the guesses that led nowhere. */
function* addRoots(
  box: PatchedBox,
  layoutFor: (kRe: number) => PatchLayout,
  start: Start,
  guesses: readonly Guess[],
  found: PatchRoot[],
): Generator<void, Guess[]> {
  const lost: Guess[] = [];
  for (const guess of withoutKnown(guesses, found)) {
    // by the functions of its own wavenumber, wherever it was found from
    const root = followed(box, layoutFor(guess.k[0]), start, guess);
    yield;
    if (root === null) lost.push(guess);
    else if (!found.some((other) => isNear(root, other, SAME))) found.push(root);
  }
  return lost;
}

/** The width of the stretch from `fromHz`: narrower where so many modes lie that not all nearby can be tied. */
const stretchHz = (rigid: readonly RigidBoxMode[], fromHz: number): number => {
  const middleHz = fromHz + MOST_STRETCH_HZ / 2;
  const within = rigid.filter(({ hz }) => Math.abs(hz - middleHz) < TIED_HZ).length;
  const reachHz = (TIED_HZ * MOST_TIED) / Math.max(within, MOST_TIED);
  return Math.max(LEAST_STRETCH_HZ, Math.min(MOST_STRETCH_HZ, 2 * (reachHz - BEYOND_HZ)));
};

/** The guesses that no root known before answers to; each root answers to one guess, the nearest. */
const withoutKnown = (guesses: readonly Guess[], known: readonly PatchRoot[]): Guess[] => {
  const left = new Set(guesses);
  for (const root of known) {
    let best: Guess | null = null;
    for (const guess of left)
      if (isNear(guess, root, GUESSED) && (best === null || apart(guess, root) < apart(best, root))) best = guess;
    if (best !== null) left.delete(best);
  }
  return [...left];
};

/** An oscillation: k, re and im, and how the modes `orders` of the even box take part, re, im each. */
interface Shape {
  readonly k: ArrayLike<number>;
  readonly x: Float64Array;
  readonly orders: readonly Order[];
}

interface Guess extends Shape {
  readonly k: Float64Array;
}

interface Start {
  readonly tied: TiedModes;
  /** dA/dk. */
  readonly slopes: Float64Array;
  readonly guesses: readonly Guess[];
}

/** A + A' (k - k_real) in place of A + A' (k - k_complex), as linear-in-k.ts wants it. */
const fromReal = ({ matrix, kIm }: TiedModes, slopes: Float64Array): Float64Array => {
  const out = matrix.slice();
  for (let i = 0; i < out.length; i += 2) {
    out[i] += kIm * slopes[i + 1];
    out[i + 1] -= kIm * slopes[i];
  }
  return out;
};

const startAt = (
  box: PatchedBox,
  layout: PatchLayout,
  orders: readonly Order[],
  middle: readonly [number, number],
  near: BoxState | null,
): Start | null => {
  const state = solveState(box.geometry, middle[0], middle[1], near);
  const within = nearest(box, state, orders);
  const tied = tieModes(box, layout, within, middle, state);
  const other = tieModes(box, layout, within, [middle[0] * (1 + DIFFERENCE), middle[1]], state);
  if (tied === null || other === null) return null;
  const slopes = slopesOf(tied, other);
  const size = within.length;
  const matrix = fromReal(tied, slopes);
  const rotated = tied.matrix.slice();
  const vectors = eigenvectorsOf(size, rotated);
  const guesses: Guess[] = [];
  for (let i = 0; i < size; i++) {
    const x = vectors.slice(2 * i * size, 2 * (i + 1) * size);
    const rise = new Float64Array(2);
    setDot(x, timesVector(slopes, x), rise, 0);
    const at = 2 * (i * size + i);
    const mu = Float64Array.of(rotated[at] + tied.kIm * rise[1], rotated[at + 1] - tied.kIm * rise[0]);
    const k = rootOf(tied.kRe, mu, rise, Math.sqrt(Math.max(mu[0], tied.kRe ** 2 / 9)));
    if (k === null) continue;
    refine(tied.kRe, matrix, slopes, x, k);
    guesses.push({ k, x, orders: within });
  }
  return { tied, slopes, guesses };
};

const slopesOf = (a: TiedModes, b: TiedModes): Float64Array => {
  const [dRe, dIm] = [b.kRe - a.kRe, b.kIm - a.kIm];
  const square = dRe * dRe + dIm * dIm;
  const out = new Float64Array(a.matrix.length);
  for (let i = 0; i < out.length; i += 2) {
    const re = b.matrix[i] - a.matrix[i];
    const im = b.matrix[i + 1] - a.matrix[i + 1];
    out[i] = (re * dRe + im * dIm) / square;
    out[i + 1] = (im * dRe - re * dIm) / square;
  }
  return out;
};

/** The modes nearest to a state's wavenumber, by the eigenvalues they have there. */
const nearest = ({ geometry }: PatchedBox, state: BoxState, orders: readonly Order[]): Order[] => {
  // those damped twice as fast or half as fast as usual belong to it, however heavy the walls are
  const band = (2 * Math.PI * TIED_HZ) / geometry.soundSpeed + Math.abs(state.kIm);
  const gap = new Float64Array(2);
  return orders
    .map((order) => {
      setGap(geometry, state, order, gap);
      return { order, away: Math.hypot(gap[0], gap[1]) };
    })
    .filter(({ away }) => away < 2 * Math.max(state.kRe, band) * band)
    .sort((a, b) => a.away - b.away)
    .slice(0, MOST_TIED)
    .map(({ order }) => order);
};

/** Follows a guess to its root by the exact matrix at every step; null where it wanders. */
const followed = (box: PatchedBox, layout: PatchLayout, start: Start, guess: Guess): PatchRoot | null => {
  const { orders, x, slopes } = mainParts(guess, start.slopes);
  const k = guess.k.slice();
  let before = 0;
  let near = start.tied.state;
  for (let step = 0; step < MOST_STEPS; step++) {
    const tied = tieModes(box, layout, orders, [k[0], k[1]], near);
    if (tied === null) return null;
    near = tied.state;
    const [fromRe, fromIm] = k;
    if (!refine(tied.kRe, fromReal(tied, slopes), slopes, x, k)) return null;
    const move = Math.hypot(k[0] - fromRe, k[1] - fromIm) / k[0];
    if (!(k[1] < k[0])) return null;
    const gain = before === 0 ? USUAL_GAIN : Math.min(1, move / before);
    if (move * gain < FOUND) return { k: [k[0], k[1]], x: normal(x), orders };
    before = move;
  }
  return null;
};

/** The modes that take most part in a guess, with the slopes between them. */
const mainParts = ({ orders, x }: Guess, slopes: Float64Array): Pick<Guess, 'orders' | 'x'> & Pick<Start, 'slopes'> => {
  const shareOf = (i: number): number => x[2 * i] * x[2 * i] + x[2 * i + 1] * x[2 * i + 1];
  const kept = [...orders.keys()].sort((a, b) => shareOf(b) - shareOf(a)).slice(0, MOST_PARTS);
  const pick = (from: Float64Array, row: number): number[] =>
    kept.flatMap((i) => [from[2 * (row + i)], from[2 * (row + i) + 1]]);
  return {
    orders: kept.map((i) => orders[i]),
    x: Float64Array.from(pick(x, 0)),
    slopes: Float64Array.from(kept.flatMap((i) => pick(slopes, i * orders.length))),
  };
};

/** The vector of the same direction with 1 in all as |x|^2. */
const normal = (x: Float64Array): Float64Array => {
  const scale = 1 / Math.sqrt(x.reduce((sum, part) => sum + part * part, 0));
  return x.map((part) => scale * part);
};

const apart = (a: Shape, b: Shape): number => Math.hypot(a.k[0] - b.k[0], a.k[1] - b.k[1]);

/** Whether two oscillations lie within a share of k of each other and are of one shape. */
const isNear = (a: Shape, b: Shape, share: number): boolean =>
  apart(a, b) < share * a.k[0] && likeness(a, b) > SAME_SHAPE;

/** The square of the cosine between two shapes, over the modes they share. */
const likeness = (a: Shape, b: Shape): number => {
  const places = new Map(a.orders.map((order, i) => [order, i]));
  let [re, im, sizeA, sizeB] = [0, 0, 0, 0];
  for (const [i, order] of b.orders.entries()) {
    const j = places.get(order);
    if (j === undefined) continue;
    const [aRe, aIm, bRe, bIm] = [a.x[2 * j], a.x[2 * j + 1], b.x[2 * i], b.x[2 * i + 1]];
    re += aRe * bRe + aIm * bIm;
    im += aRe * bIm - aIm * bRe;
    sizeA += aRe * aRe + aIm * aIm;
    sizeB += bRe * bRe + bIm * bIm;
  }
  return sizeA * sizeB > 0 ? (re * re + im * im) / (sizeA * sizeB) : 0;
};
