/**
 * An oscillation: k, re and im, and how parts of the even room (its modes) take part in it, re, im each. Parts are the same
 * when they are the same object.
 */
export interface Shape<Part extends object> {
  readonly k: ArrayLike<number>;
  readonly x: Float64Array;
  readonly parts: readonly Part[];
}

/** A free oscillation of a room with patches, 1 in all as |x|^2. */
export interface FreeRoot<Part extends object> extends Shape<Part> {
  readonly k: readonly [number, number];
}

/** Where one is thought to be. */
export interface Guess<Part extends object> extends Shape<Part> {
  readonly k: Float64Array;
}

/** What is thought of from one wavenumber. */
export interface Start<Part extends object> {
  readonly guesses: readonly Guess<Part>[];
  /** Follows a guess to its root; null where it wanders. */
  follow(guess: Guess<Part>): FreeRoot<Part> | null;
}

/** A room with patches as the search sees it. */
export interface TiedRoom<Part extends object> {
  readonly soundSpeed: number;
  /**
   * The modes near the complex wavenumber `middle` tied together, with patch functions for waves to `topK`; guesses as far from it as
   * `reachK` along the real axis. Null where the system is singular.
   */
  startAt(middle: readonly [number, number], topK: number, reachK: number): Start<Part> | null;
}

/** Modes this near in the plane of k are tied together, Hz; ... */
export const TIED_HZ = 25;
/** ... of more the nearest: a stretch holds fewer in any room there is time for. */
export const MOST_TIED = 80;
/** Roots are looked for in stretches of at most and at least this width, ... */
const MOST_STRETCH_HZ = 10;
const LEAST_STRETCH_HZ = 2;
/** ... so that modes are tied to this far beyond either end, but for rooms with more than there is time for. */
const BEYOND_HZ = 6;
/** Beyond a stretch by this much a guess may still lead into it; ... */
const MARGIN_HZ = 2.5;
/** ... and a first one, before it is refined, by this much farther. */
const ROUGH_HZ = 5;
/** Roots nearer than this, relative, of one shape are one root found twice; ... */
const SAME = 3e-4;
/** ... a guess this near to a root that is known leads there. */
const GUESSED = 2e-3;
const SAME_SHAPE = 0.95;
/** Nothing grows: a guess that does by more than this share of Re k is none. */
const LEAST_IM = 0.02;
/** Where modes usually die this fast, Im k in Hz (T of 0.09 s), those twice as fast are looked for too. */
const HEAVY_HZ = 12;
/** Where a guess was lost its root is looked for within this share of k, so often; once where it led to what another one is. */
const AROUND = 0.1;
const MOST_ROUNDS = 4;

/**
 * All free oscillations of a room with patches from 0 Hz to `topHz`, with |Im k| < Re k. In every stretch the modes nearby are
 * tied together at one wavenumber in its middle: there are as many eigenvectors as modes tied, and each is followed to its own
 * root. `likelyIm` is the usual Im k, `rigidHz` are the modes between rigid walls to well above topHz + TIED_HZ, the still air among
 * them. Yields after every root.
 */
export function* freeRoots<Part extends object>(
  room: TiedRoom<Part>,
  rigidHz: readonly number[],
  topHz: number,
  likelyIm: number,
): Generator<void, FreeRoot<Part>[]> {
  const toHz = room.soundSpeed / (2 * Math.PI);
  const found: FreeRoot<Part>[] = [];
  const heights = likelyIm * toHz > HEAVY_HZ ? [likelyIm, 2 * likelyIm] : [likelyIm];
  // of what dies at once everywhere little is worth looking for
  const mostRounds = heights.length === 1 ? MOST_ROUNDS : 0;
  const chased: Guess<Part>[] = [];
  const isChased = (guess: Guess<Part>): boolean => chased.some((other) => isNear(guess, other, GUESSED));
  for (let fromHz = 0, widthHz = 0; fromHz < topHz; fromHz += widthHz) {
    widthHz = stretchHz(rigidHz, fromHz);
    const topK = (fromHz + widthHz) / toHz;
    const reachK = (widthHz / 2 + MARGIN_HZ + ROUGH_HZ) / toHz;
    for (const heightIm of heights) {
      const start: Start<Part> | null = room.startAt([(fromHz + widthHz / 2) / toHz, heightIm], topK, reachK);
      yield;
      if (start === null) continue;
      const guesses = start.guesses.filter((guess) => {
        const hz = guess.k[0] * toHz;
        return hz > fromHz - MARGIN_HZ && hz < fromHz + widthHz + MARGIN_HZ && swings(guess);
      });
      for (const { guess: lost, isTaken } of yield* addRoots(start, guesses, found)) {
        if (isChased(lost)) continue;
        chased.push(lost);
        // too far from the middle: anew from where it was lost, until it leads somewhere
        const rounds = isTaken ? Math.min(1, mostRounds) : mostRounds;
        let from: Guess<Part> | undefined = lost;
        for (let round = 0; round < rounds && from !== undefined; round++) {
          const anew: Start<Part> | null = room.startAt([from.k[0], from.k[1]], topK, TIED_HZ / toHz);
          yield;
          const swinging: Guess<Part>[] = anew === null ? [] : anew.guesses.filter(swings);
          if (anew === null || swinging.length === 0) break;
          const next: Guess<Part> = swinging.reduce((a, b) => (likeness(b, lost) > likeness(a, lost) ? b : a));
          const there = swinging.filter(
            (guess) => guess === next || (apart(guess, lost) < AROUND * lost.k[0] && !isChased(guess)),
          );
          from = (yield* addRoots(anew, there, found)).find(({ guess }) => guess === next)?.guess;
        }
      }
    }
  }
  return found;
}

/** A guess that led nowhere, or to a root of another shape that is known already. */
interface Lost<Part extends object> {
  readonly guess: Guess<Part>;
  readonly isTaken: boolean;
}

/** Adds the roots that guesses lead to, where they were not known; returns the guesses that were lost. */
function* addRoots<Part extends object>(
  start: Start<Part>,
  guesses: readonly Guess<Part>[],
  found: FreeRoot<Part>[],
): Generator<void, Lost<Part>[]> {
  const lost: Lost<Part>[] = [];
  for (const guess of withoutKnown(guesses, found)) {
    const root = start.follow(guess);
    yield;
    const known = root === null ? undefined : found.find((other) => isNear(root, other, SAME));
    if (root === null) lost.push({ guess, isTaken: false });
    else if (known === undefined) found.push(root);
    else if (likeness(guess, known) < SAME_SHAPE) lost.push({ guess, isTaken: true });
  }
  return lost;
}

/** The width of the stretch from `fromHz`: narrower where so many modes lie that not all nearby can be tied. */
const stretchHz = (rigidHz: readonly number[], fromHz: number): number => {
  const middleHz = fromHz + MOST_STRETCH_HZ / 2;
  const within = rigidHz.filter((hz) => Math.abs(hz - middleHz) < TIED_HZ).length;
  const reachHz = (TIED_HZ * MOST_TIED) / Math.max(within, MOST_TIED);
  return Math.max(LEAST_STRETCH_HZ, Math.min(MOST_STRETCH_HZ, 2 * (reachHz - BEYOND_HZ)));
};

/** The guesses that no root known before answers to; each root answers to one guess, the nearest. */
const withoutKnown = <Part extends object>(
  guesses: readonly Guess<Part>[],
  known: readonly FreeRoot<Part>[],
): Guess<Part>[] => {
  const left = new Set(guesses);
  for (const root of known) {
    let best: Guess<Part> | null = null;
    for (const guess of left)
      if (isNear(guess, root, GUESSED) && (best === null || apart(guess, root) < apart(best, root))) best = guess;
    if (best !== null) left.delete(best);
  }
  return [...left];
};

/** Whether it turns further than it dies, and does not grow. */
const swings = ({ k: [re, im] }: Guess<object>): boolean => im < re && im > -LEAST_IM * re;

/** The vector of the same direction with 1 in all as |x|^2. */
export const normal = (x: Float64Array): Float64Array => {
  const scale = 1 / Math.sqrt(x.reduce((sum, part) => sum + part * part, 0));
  return x.map((part) => scale * part);
};

const apart = (a: Pick<Shape<object>, 'k'>, b: Pick<Shape<object>, 'k'>): number =>
  Math.hypot(a.k[0] - b.k[0], a.k[1] - b.k[1]);

/** Whether two oscillations lie within a share of k of each other and are of one shape. */
const isNear = <Part extends object>(a: Shape<Part>, b: Shape<Part>, share: number): boolean =>
  apart(a, b) < share * a.k[0] && likeness(a, b) > SAME_SHAPE;

/** The square of the cosine between two shapes, over the parts they share. */
const likeness = <Part extends object>(a: Shape<Part>, b: Shape<Part>): number => {
  const places = new Map(a.parts.map((part, i) => [part, i]));
  let [re, im, sizeA, sizeB] = [0, 0, 0, 0];
  for (const [i, part] of b.parts.entries()) {
    const j = places.get(part);
    if (j === undefined) continue;
    const [aRe, aIm, bRe, bIm] = [a.x[2 * j], a.x[2 * j + 1], b.x[2 * i], b.x[2 * i + 1]];
    re += aRe * bRe + aIm * bIm;
    im += aRe * bIm - aIm * bRe;
    sizeA += aRe * aRe + aIm * aIm;
    sizeB += bRe * bRe + bIm * bIm;
  }
  return sizeA * sizeB > 0 ? (re * re + im * im) / (sizeA * sizeB) : 0;
};
