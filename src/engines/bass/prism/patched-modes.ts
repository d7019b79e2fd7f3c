import { type FreeRoot, freeRoots, MOST_TIED, TIED_HZ, type TiedRoom } from '../patches/free-roots.ts';
import { assignRoots } from '../patches/root-assignment.ts';
import { DIFFERENCE, guessesFrom, slopesOf } from '../patches/tied-guesses.ts';
import type { EvenMode, EvenModes } from './even-modes.ts';
import { createExactRoots, type EvenPart } from './exact-roots.ts';
import { quotient, slopeAt } from './mode-polish.ts';
import { alongModes } from './patch-coupling.ts';
import type { PrismPatch } from './patch-division.ts';
import { createPatchLayouts, type PrismPatchLayout } from './patch-layout.ts';
import { createPrismStates } from './prism-state.ts';
import type { Section } from './section.ts';
import { tiesPrismToHz } from './tied-reach.ts';
import { type Place, shownBy, systemAt, type Tie } from './tied-system.ts';

/** A mode of the room with its patches: complex wavenumber (null where none is left) and delta in first order, 1/s. */
export interface PatchedMode {
  readonly damped: ArrayLike<number> | null;
  readonly firstOrderPerS: number;
}

/** Oscillations are looked for to this far above the highest mode wanted: patches move modes down. */
const ABOVE_HZ = 10;

/**
 * The modes up to `maxHz` of a prism with patches that do not reach over its even axis: every rigid mode with the free oscillation
 * of the patched room it takes most part in (free-roots.ts), no two with the same one. The modes of the even room nearby are tied
 * together (tied-system.ts), what that leads to is made exact (exact-roots.ts). `even.modes` must reach well above maxHz.
 */
export function* patchedModes(
  section: Section,
  even: EvenModes,
  patches: readonly PrismPatch[],
  maxHz: number,
): Generator<void, PatchedMode[]> {
  const { soundSpeed } = section.geometry;
  const toHz = soundSpeed / (2 * Math.PI);
  const layoutFor = createPatchLayouts(section, patches);
  const losses: number[] = [];
  for (const mode of even.modes) {
    losses.push(mode.firstOrderPerS + (soundSpeed / 2) * patchLoss(section, layoutFor(mode.k), mode));
    yield;
  }
  const tiedHz = tiesPrismToHz(section.geometry, patches, maxHz);
  const taken = new Map<EvenMode, FreeRoot<EvenPart>>();
  if (tiedHz > 0) {
    const lookedHz = tiedHz + ABOVE_HZ;
    const modes = even.modes.filter(({ k }) => k * toHz <= lookedHz);
    const usual = losses.slice(0, modes.length).reduce((sum, loss) => sum + loss, 0) / Math.max(1, modes.length);
    const rigidHz = [0, ...even.modes.map(({ k }) => k * toHz)];
    const room = { soundSpeed, startAt: createStarts(section, even, layoutFor) };
    const roots = yield* freeRoots(room, rigidHz, lookedHz, usual / soundSpeed);
    const assigned = assignRoots<EvenMode, EvenPart>(
      roots,
      modes,
      (mode) => mode,
      ({ k }) => k * toHz,
      toHz,
    );
    for (const [mode, root] of assigned) if (mode.k * toHz <= tiedHz) taken.set(mode, root);
  }
  return even.modes
    .filter(({ k }) => k * toHz <= maxHz)
    .map((mode, i) => ({ damped: taken.get(mode)?.k ?? null, firstOrderPerS: losses[i] }));
}

/** What a mode of the even room is at any k: its square there, linear in k from where it was found. */
interface Known {
  readonly part: EvenPart & Pick<Tie, 'plan'>;
  squareAt(kRe: number, kIm: number): readonly [number, number];
}

const createStarts = (
  section: Section,
  { modes, planNear }: EvenModes,
  layoutFor: (kRe: number) => PrismPatchLayout,
): TiedRoom<EvenPart>['startAt'] => {
  const { soundSpeed } = section.geometry;
  const toHz = soundSpeed / (2 * Math.PI);
  const states = createPrismStates(section, 0);
  const follow = createExactRoots(section, layoutFor);
  const known = modes.flatMap((mode) => knownMode(section, mode));
  const still = stillAir(section);
  return ([kRe, kIm], topK, reachK) => {
    const layout = layoutFor(topK);
    const plan = planNear(kRe);
    const shown = shownBy(section, plan, layout.section);
    const placeAt = (re: number): Place => {
      const axis = states.at(re * toHz, -soundSpeed * kIm).even;
      return { section, layout, plan, kRe: re, kIm, axis, along: alongModes(section, layout, axis), shown };
    };
    const place = placeAt(kRe);
    const within = nearest([stillMode(still, place), ...known], kRe, kIm, toHz);
    const matrixAt = (at: Place) =>
      systemAt(
        at,
        within.map(({ part, squareAt }) => ({ ...part, square: squareAt(at.kRe, at.kIm) })),
      );
    const [here, there] = [matrixAt(place), matrixAt(placeAt(kRe * (1 + DIFFERENCE)))];
    if (here === null || there === null) return null;
    const guesses = guessesFrom<EvenPart>(
      here,
      slopesOf(here, there),
      within.map(({ part }) => part),
      reachK,
    );
    return { guesses, follow };
  };
};

/** The modes nearest to a wavenumber, by their squares as seen from there. */
const nearest = (known: readonly Known[], kRe: number, kIm: number, toHz: number): Known[] => {
  // those damped twice as fast or half as fast as usual belong to it, however heavy the walls are
  const band = TIED_HZ / toHz + Math.abs(kIm);
  return known
    .map((one) => {
      const [re, im] = one.squareAt(kRe, kIm);
      return { one, away: Math.hypot(kRe * kRe - kIm * kIm - re, 2 * kRe * kIm - im) };
    })
    .filter(({ away }) => away < 2 * Math.max(kRe, band) * band)
    .sort((a, b) => a.away - b.away)
    .slice(0, MOST_TIED)
    .map(({ one }) => one);
};

/** None where the damped mode was not found: it stays among the couplings. */
const knownMode = (section: Section, mode: EvenMode): Known[] => {
  const { damped, vector, order } = mode;
  const line = damped === null ? null : quotient(section, vector);
  const slope = damped === null || line === null ? null : slopeAt(section.geometry, line, order, damped);
  if (damped === null || slope === null) return [];
  const [ownRe, ownIm] = damped;
  const [sRe, sIm] = slope;
  const squareAt: Known['squareAt'] = (kRe, kIm) => {
    const [dRe, dIm] = [kRe - ownRe, kIm - ownIm];
    return [ownRe * ownRe - ownIm * ownIm + sRe * dRe - sIm * dIm, 2 * ownRe * ownIm + sRe * dIm + sIm * dRe];
  };
  return [{ part: mode, squareAt }];
};

/** The pressure that is the same everywhere: no mode, but patches tie the lowest modes to it. */
const stillAir = ({ size }: Section): Known['part'] => {
  const vector = new Float64Array(2 * size);
  vector[0] = 1;
  return { plan: 0, order: 0, vector };
};

/** Its square follows the walls, as the plan's lowest mode and the axis' do. */
const stillMode = (part: Known['part'], { section, plan, kRe: atRe, kIm: atIm, axis }: Place): Known => {
  const { lengthM } = section.geometry;
  const [wRe, wIm] = axis.roots.slope;
  const per = 1 / (lengthM * lengthM * (atRe * atRe + atIm * atIm));
  // of the axis (dw/dlnk) / k
  const line = {
    at: [plan.k, 0, atRe, atIm],
    slope: [plan.slope[0], plan.slope[1], (wRe * atRe + wIm * atIm) * per, (wIm * atRe - wRe * atIm) * per],
  };
  const [startRe, startIm] = [0, 1].map((i) => plan.mu[i] + axis.roots.w[i] / lengthM ** 2);
  return {
    part,
    squareAt: (kRe, kIm) => {
      let [re, im] = [startRe, startIm];
      for (const i of [0, 2]) {
        const [dRe, dIm] = [kRe - line.at[i], kIm - line.at[i + 1]];
        re += line.slope[i] * dRe - line.slope[i + 1] * dIm;
        im += line.slope[i] * dIm + line.slope[i + 1] * dRe;
      }
      return [re, im];
    },
  };
};

/** Sum of Re D times the rigid mode squared over the patches. */
const patchLoss = (
  { geometry }: Section,
  { functions, section: parts, sectionOf, alongOf, along }: PrismPatchLayout,
  { plan, order }: EvenMode,
): number => {
  const norm = Math.sqrt((order === 0 ? 1 : 2) / geometry.lengthM);
  const courses = along.map(({ atM, weights }) =>
    atM.reduce((sum, at, j) => sum + norm * weights[j] * Math.cos((order * Math.PI * at) / geometry.lengthM), 0),
  );
  let loss = 0;
  for (let a = 0; a < functions.count; a++)
    loss += functions.delta[2 * a] * (parts[sectionOf[a]][plan] * courses[alongOf[a]]) ** 2;
  return loss;
};
