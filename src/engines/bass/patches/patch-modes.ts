import { valuesAt } from '../axis-modes.ts';
import { AXES, type BoxGeometry, type BoxState, readyTerms, solveState } from '../box-state.ts';
import { freeDecay } from '../free-decay.ts';
import type { BoxMode } from '../room-field.ts';
import type { BoxPatch } from './box-patches.ts';
import { answerOfPatches, couplePatches } from './coupled-system.ts';
import { patchCouplings } from './patch-couplings.ts';
import { allModeIntegrals, wallFactors } from './patch-integrals.ts';
import type { PatchLayout } from './patch-layout.ts';

const MOST_STEPS = 12;
/** Change of k, relative, after which a mode counts as found: the secant leaves about its square. */
const FOUND = 1e-4;
/** With more patches than this every mode is the first-order one: each step of the secant couples all of them anew. */
const MOST_COUPLED = 40;
/** Two modes nearer than this, relative, are one mode found twice. */
const SAME = 1e-4;

/**
 * Damped modes of a box with patches. With psi the integrals of the patch functions over one mode of the even box at k,
 * lambda(k) its eigenvalue and W' the couplings without that mode's own part psi psi^T / (lambda - k^2), a mode of the patched
 * room is a root of
 *
 *   k^2 = lambda(k) + psi . j k D (1 + j k W' D)^-1 psi
 *
 * Derived from the singular system of coupled-system.ts; solved by the secant method from the even box's mode, moved by the
 * same formula without W' (the sum of wall and patch losses to first order). Where the secant wanders, or two modes meet in
 * one root (walls that patches tie together, as in a cube), that first-order mode stands in, as it does for all modes of a room
 * of more than forty patches.
 */
export const patchModes = (
  geometry: BoxGeometry,
  patches: readonly BoxPatch[],
  layoutFor: (kRe: number) => PatchLayout,
  even: readonly BoxMode[],
): BoxMode[] => {
  const toHz = geometry.soundSpeed / (2 * Math.PI);
  const made: { mode: BoxMode; k: Wavenumber | null }[] = [];
  for (const mode of even) {
    const start: Wavenumber = [
      mode.dampedHz / toHz,
      mode.decayS === Number.POSITIVE_INFINITY ? 0 : (3 * Math.LN10) / (mode.decayS * geometry.soundSpeed),
    ];
    const layout = layoutFor(Math.max(start[0], mode.hz / toHz));
    const { k, firstOrder } = follow(geometry, patches, layout, mode.order, start);
    const taken = k !== null && made.some(({ k: other }) => other !== null && distance(other, k) < SAME * k[0]);
    made.push({ mode, k: k !== null && !taken ? k : hasRung(mode) ? firstOrder : null });
  }
  return made.map(({ mode, k }) => ({
    hz: mode.hz,
    order: mode.order,
    ...freeDecay(k, firstOrderPerS(geometry, patches, mode.order), mode.hz, geometry.soundSpeed),
  }));
};

/** delta of a mode in first order: (c / 2 V) times the sum of Re beta eps cos^2 cos^2 over walls and patches, derived. */
const firstOrderPerS = (
  geometry: BoxGeometry,
  patches: readonly BoxPatch[],
  order: readonly [number, number, number],
): number => {
  const { sizeM, soundSpeed, beta } = geometry;
  const eps = order.map((n) => (n === 0 ? 1 : 2));
  let sum = 0;
  for (const axis of AXES) sum += (eps[axis] * (beta[axis][0] + beta[axis][2])) / sizeM[axis];
  for (const { normal, axes, fromM, toM, delta } of patches) {
    const [u, v] = axes.map((axis, i) => {
      const rate = (2 * order[axis] * Math.PI) / sizeM[axis];
      const even = toM[i] - fromM[i];
      const mean = rate === 0 ? even : (even + (Math.sin(rate * toM[i]) - Math.sin(rate * fromM[i])) / rate) / 2;
      return (eps[axis] * mean) / sizeM[axis];
    });
    sum += (delta[0] * u * v * eps[normal]) / sizeM[normal];
  }
  return (soundSpeed / 2) * sum;
};

type Wavenumber = readonly [number, number];

/** Whether the even box's mode was found (free-decay.ts). */
const hasRung = ({ hz, dampedHz, decayS }: BoxMode): boolean => dampedHz !== hz || !Number.isFinite(decayS);

const distance = (a: Wavenumber, b: Wavenumber): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

interface Followed {
  readonly k: Wavenumber | null;
  readonly firstOrder: Wavenumber;
}

const follow = (
  geometry: BoxGeometry,
  patches: readonly BoxPatch[],
  layout: PatchLayout,
  order: readonly [number, number, number],
  start: Wavenumber,
): Followed => {
  // a little aside, so that the even box's own pole can be taken out of W
  let kRe = start[0];
  let kIm = start[1] + 1e-5 * start[0];
  let state = solveState(geometry, kRe, kIm, null);
  residual(geometry, patches, layout, order, state, false);
  const shift = halfOver(gap[2], gap[3], start[0], start[1]);
  const firstOrder = [Math.max(0, start[0] + shift[0]), Math.max(0, start[1] + shift[1])] as const;
  if (patches.length > MOST_COUPLED) return { k: null, firstOrder };
  kRe = firstOrder[0];
  kIm = firstOrder[1] + 1e-5 * start[0];
  let before: readonly [number, number, number, number] | null = null;
  for (let step = 0; step < MOST_STEPS; step++) {
    if (!(kRe > 0.2 * start[0] && kRe < 2 * start[0] && kIm > -0.1 * kRe && kIm < kRe)) break;
    state = solveState(geometry, kRe, kIm, state);
    if (!residual(geometry, patches, layout, order, state, true)) break;
    // h = k^2 - lambda - S; its slope is 2 k at first, the secant's afterwards
    const [hRe, hIm] = [gap[0] - gap[2], gap[1] - gap[3]];
    let [slopeRe, slopeIm] = [2 * kRe, 2 * kIm];
    if (before !== null) {
      const [dRe, dIm] = [kRe - before[0], kIm - before[1]];
      const square = dRe * dRe + dIm * dIm;
      const [eRe, eIm] = [hRe - before[2], hIm - before[3]];
      slopeRe = (eRe * dRe + eIm * dIm) / square;
      slopeIm = (eIm * dRe - eRe * dIm) / square;
    }
    before = [kRe, kIm, hRe, hIm];
    const scale = slopeRe * slopeRe + slopeIm * slopeIm;
    const moveRe = (hRe * slopeRe + hIm * slopeIm) / scale;
    const moveIm = (hIm * slopeRe - hRe * slopeIm) / scale;
    kRe -= moveRe;
    kIm -= moveIm;
    if (Math.hypot(moveRe, moveIm) < FOUND * kRe) return { k: [kRe, Math.max(0, kIm)], firstOrder };
  }
  return { k: null, firstOrder };
};

/** (re + j im) / 2 k. */
const halfOver = (re: number, im: number, kRe: number, kIm: number): [number, number] => {
  const square = 2 * (kRe * kRe + kIm * kIm);
  return [(re * kRe + im * kIm) / square, (im * kRe - re * kIm) / square];
};

/** k^2 - lambda, then S = psi . y(psi), each re, im. */
const gap = new Float64Array(4);
let wallValues = new Float64Array(64);

/** Sets `gap` at a state; without `coupled` W' counts as zero. False when the system is singular. */
const residual = (
  geometry: BoxGeometry,
  patches: readonly BoxPatch[],
  layout: PatchLayout,
  order: readonly [number, number, number],
  state: BoxState,
  coupled: boolean,
): boolean => {
  const { count, delta } = layout.functions;
  for (const axis of AXES) readyTerms(geometry, state, axis, layout.counts[axis]);
  const integrals = allModeIntegrals(state, patches, layout);
  const psi = modeLoads(geometry, patches, layout, order, state, integrals);
  gap[0] = state.kRe * state.kRe - state.kIm * state.kIm;
  gap[1] = 2 * state.kRe * state.kIm;
  for (const axis of AXES) {
    const per = 1 / geometry.sizeM[axis] ** 2;
    gap[0] -= state.axes[axis].roots.w[2 * order[axis]] * per;
    gap[1] -= state.axes[axis].roots.w[2 * order[axis] + 1] * per;
  }
  let couplings: Float64Array = new Float64Array(2 * count * count);
  if (coupled) {
    const walls = AXES.map((axis) =>
      patches.some(({ normal }) => normal === axis) ? wallFactors(geometry, state, axis, layout.counts[axis]) : null,
    );
    couplings = patchCouplings({ geometry, state, patches, layout, integrals, walls });
    // W' = W + psi psi^T / (k^2 - lambda)
    const square = gap[0] * gap[0] + gap[1] * gap[1];
    for (let a = 0; a < count; a++) {
      const re = (psi[2 * a] * gap[0] + psi[2 * a + 1] * gap[1]) / square;
      const im = (psi[2 * a + 1] * gap[0] - psi[2 * a] * gap[1]) / square;
      for (let b = 0; b < count; b++) {
        const i = 2 * (a * count + b);
        couplings[i] += re * psi[2 * b] - im * psi[2 * b + 1];
        couplings[i + 1] += re * psi[2 * b + 1] + im * psi[2 * b];
      }
    }
  }
  const system = couplePatches(count, couplings, delta, state.kRe, state.kIm);
  if (system === null) return false;
  const answer = psi.slice();
  answerOfPatches(system, answer);
  gap[2] = 0;
  gap[3] = 0;
  for (let i = 0; i < 2 * count; i += 2) {
    gap[2] += psi[i] * answer[i] - psi[i + 1] * answer[i + 1];
    gap[3] += psi[i] * answer[i + 1] + psi[i + 1] * answer[i];
  }
  return true;
};

/** psi: integrals of the patch functions over the mode, re, im per function. */
const modeLoads = (
  geometry: BoxGeometry,
  patches: readonly BoxPatch[],
  layout: PatchLayout,
  order: readonly [number, number, number],
  state: BoxState,
  integrals: ReturnType<typeof allModeIntegrals>,
): Float64Array => {
  const psi = new Float64Array(2 * layout.functions.count);
  for (const [i, { normal, side, axes }] of patches.entries()) {
    const { start, first, second } = layout.functions.patches[i];
    const [u, v] = integrals[i];
    const own = order[normal];
    if (wallValues.length < 2 * own + 2) wallValues = new Float64Array(4 * own + 4);
    valuesAt(state.axes[normal], side === 0 ? 0 : geometry.sizeM[normal], own + 1, wallValues, 0);
    const xRe = wallValues[2 * own];
    const xIm = wallValues[2 * own + 1];
    for (let f = 0; f < first.length; f++) {
      const m = 2 * (first[f] * layout.orders[axes[0]] + order[axes[0]]);
      const n = 2 * (second[f] * layout.orders[axes[1]] + order[axes[1]]);
      const yRe = u[m] * v[n] - u[m + 1] * v[n + 1];
      const yIm = u[m] * v[n + 1] + u[m + 1] * v[n];
      psi[2 * (start + f)] = xRe * yRe - xIm * yIm;
      psi[2 * (start + f) + 1] = xRe * yIm + xIm * yRe;
    }
  }
  return psi;
};
