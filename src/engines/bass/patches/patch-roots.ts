import type { RigidBoxMode } from '../box-modes.ts';
import { type BoxState, solveState } from '../box-state.ts';
import { refine } from '../prism/linear-in-k.ts';
import { type FreeRoot, freeRoots, type Guess, MOST_TIED, normal, type Start, TIED_HZ } from './free-roots.ts';
import type { PatchLayout } from './patch-layout.ts';
import { DIFFERENCE, fromReal, guessesFrom, slopesOf } from './tied-guesses.ts';
import { type Order, type PatchedBox, setGap, tieModes } from './tied-modes.ts';

/** A free oscillation of a box with patches, of the modes of the even box. */
export type PatchRoot = FreeRoot<Order>;

/** Of the modes that are tied, those that take most part in an oscillation make it exact: the others stay among the couplings. */
const MOST_PARTS = 24;
const MOST_STEPS = 8;
/** A root is taken once the step to come is expected to move it by less than this share. */
const FOUND = 4e-6;
/** What a step leaves of the one before, until two were made. */
const USUAL_GAIN = 0.05;

/** All free oscillations of a box with patches from 0 Hz to `topHz`; arguments as of free-roots.ts, the rigid modes with their orders. */
export function* patchRoots(
  box: PatchedBox,
  layoutFor: (kRe: number) => PatchLayout,
  rigid: readonly RigidBoxMode[],
  topHz: number,
  likelyIm: number,
): Generator<void, PatchRoot[]> {
  const orders = rigid.map(({ order }) => order);
  let near: BoxState | null = null;
  const room = {
    soundSpeed: box.geometry.soundSpeed,
    startAt: (middle: readonly [number, number], topK: number, reachK: number): Start<Order> | null => {
      near = solveState(box.geometry, middle[0], middle[1], near);
      return startAt(box, layoutFor, nearest(box, near, orders), topK, reachK, middle, near);
    },
  };
  return yield* freeRoots(
    room,
    rigid.map(({ hz }) => hz),
    topHz,
    likelyIm,
  );
}

const startAt = (
  box: PatchedBox,
  layoutFor: (kRe: number) => PatchLayout,
  within: readonly Order[],
  topK: number,
  reachK: number,
  middle: readonly [number, number],
  near: BoxState,
): Start<Order> | null => {
  const layout = layoutFor(topK);
  const tied = tieModes(box, layout, within, middle, near);
  const other = tieModes(box, layout, within, [middle[0] * (1 + DIFFERENCE), middle[1]], near);
  if (tied === null || other === null) return null;
  const slopes = slopesOf(tied, other);
  return {
    guesses: guessesFrom(tied, slopes, within, reachK),
    // by the functions of its own wavenumber, wherever it was found from
    follow: (guess) => followed(box, layoutFor(guess.k[0]), tied.state, slopes, guess),
  };
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
const followed = (
  box: PatchedBox,
  layout: PatchLayout,
  from: BoxState,
  startSlopes: Float64Array,
  guess: Guess<Order>,
): PatchRoot | null => {
  const { parts, x, slopes } = mainParts(guess, startSlopes);
  const k = guess.k.slice();
  let before = 0;
  let near = from;
  for (let step = 0; step < MOST_STEPS; step++) {
    const tied = tieModes(box, layout, parts, [k[0], k[1]], near);
    if (tied === null) return null;
    near = tied.state;
    const [fromRe, fromIm] = k;
    if (!refine(tied.kRe, fromReal(tied, slopes), slopes, x, k)) return null;
    const move = Math.hypot(k[0] - fromRe, k[1] - fromIm) / k[0];
    if (!(k[1] < k[0])) return null;
    const gain = before === 0 ? USUAL_GAIN : Math.min(1, move / before);
    if (move * gain < FOUND) return { k: [k[0], k[1]], x: normal(x), parts };
    before = move;
  }
  return null;
};

/** The modes that take most part in a guess, with the slopes between them. */
const mainParts = (
  { parts, x }: Guess<Order>,
  slopes: Float64Array,
): Pick<Guess<Order>, 'parts' | 'x'> & { slopes: Float64Array } => {
  const shareOf = (i: number): number => x[2 * i] * x[2 * i] + x[2 * i + 1] * x[2 * i + 1];
  const kept = [...parts.keys()].sort((a, b) => shareOf(b) - shareOf(a)).slice(0, MOST_PARTS);
  const pick = (from: Float64Array, row: number): number[] =>
    kept.flatMap((i) => [from[2 * (row + i)], from[2 * (row + i) + 1]]);
  return {
    parts: kept.map((i) => parts[i]),
    x: Float64Array.from(pick(x, 0)),
    slopes: Float64Array.from(kept.flatMap((i) => pick(slopes, i * parts.length))),
  };
};
