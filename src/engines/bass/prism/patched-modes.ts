import type { EvenMode, EvenModes } from './even-modes.ts';
import { refine, rootOf, setDot, timesVector } from './linear-in-k.ts';
import { quotient, slopeAt } from './mode-polish.ts';
import { alongModes } from './patch-coupling.ts';
import type { PrismPatch } from './patch-division.ts';
import { createPatchLayouts, type PrismPatchLayout } from './patch-layout.ts';
import { createPrismStates } from './prism-state.ts';
import type { Section } from './section.ts';
import { eigenvectorsOf } from './symmetric-eigen.ts';
import { BAND_HZ, MOST_TIED } from './tied-reach.ts';
import { loadsOf, type Place, systemAt, type Tie, type TiedSystem } from './tied-system.ts';

/** A mode of the room with its patches: complex wavenumber (null where it was lost) and delta in first order, 1/s. */
export interface PatchedMode {
  readonly damped: Float64Array | null;
  readonly firstOrderPerS: number;
}

/** The matrix is made at frequencies this far apart. */
const STEP_HZ = 10;
/** It bends with k as between its middle and this share of a step beside. */
const BESIDE = 0.4;
/** How often a root is found anew where the last one was. */
const ROUNDS = 2;
/** Roots nearer than this, relative, are one. */
const SAME = 1e-5;

/**
 * Damped modes of a prism with patches that do not reach over its even axis. With the damped modes u_m of the even room, k_m
 * their wavenumbers, psi_m the integrals of the patch functions over them, and W' the couplings of the patches through all
 * other modes (coupled-system.ts), p = sum of x_m u_m with
 *
 *   (k_m^2 - k^2) x_m + sum over n of P_mn x_n = 0,     P = psi . j k D (1 + j k W' D)^-1 psi
 *
 * Derived from the singular system of coupled-system.ts. At steps of k the matrix is made with the modes nearby, the eigenvector
 * that continues each of them taken, and its k found from the eigenvalue and its slope, P growing as k; then, as k has an imaginary part,
 * from the matrix bent over k as it is between the step and a place beside it.
 */
export function* patchedModes(
  section: Section,
  { modes, planNear }: EvenModes,
  patches: readonly PrismPatch[],
): Generator<void, PatchedMode[]> {
  const layoutFor = createPatchLayouts(section, patches);
  const states = createPrismStates(section, 0);
  const { soundSpeed } = section.geometry;
  const toHz = soundSpeed / (2 * Math.PI);
  const found = new Map<EvenMode, PatchedMode>();
  const last = modes.length === 0 ? 0 : modes[modes.length - 1].k;
  for (let step = 1; (step - 0.5) * STEP_HZ <= last * toHz; step++) {
    const k = (step * STEP_HZ) / toHz;
    const own = modes.filter((mode) => Math.round((mode.k * toHz) / STEP_HZ) === step || (step === 1 && mode.k < k));
    if (own.length === 0) continue;
    yield;
    const plan = planNear(k);
    const layout = layoutFor(k);
    const placeAt = (hz: number): Place => {
      const axis = states.at(hz, 0).even;
      return { section, layout, plan, k: hz / toHz, axis, along: alongModes(section, layout, axis) };
    };
    const place = placeAt(step * STEP_HZ);
    const within = modes.filter((mode) => mode.damped !== null && Math.abs(mode.k - k) <= BAND_HZ / toHz);
    const isTied = plan.vectors !== null && within.length <= MOST_TIED;
    const tiesAt = (at: Place): Tie[] => {
      const ties = within.map((mode) => tieOf(at, mode));
      return k * toHz <= BAND_HZ ? [...ties, stillOf(at)] : ties;
    };
    const followed = isTied
      ? coupled(place, placeAt((step + BESIDE) * STEP_HZ), tiesAt, own[own.length - 1])
      : new Map<EvenMode, Float64Array>();
    for (const mode of own) {
      const firstOrderPerS = mode.firstOrderPerS + (soundSpeed / 2) * patchLoss(section, layout, mode);
      found.set(mode, { damped: followed.get(mode) ?? null, firstOrderPerS });
    }
  }
  return modes.map((mode) => found.get(mode) ?? { damped: null, firstOrderPerS: mode.firstOrderPerS });
}

const tieOf = (place: Place, mode: EvenMode): Tie => ({
  plan: mode.plan,
  order: mode.order,
  line: evenLine(place.section, mode, place.k),
  load: loadsOf(place, mode.vector, mode.order),
  mode,
});

/** The pressure that is the same everywhere: no mode, but patches tie the lowest modes to it. */
const stillOf = (place: Place): Tie => {
  const { section, plan, axis, k } = place;
  const { size, geometry } = section;
  const vector = new Float64Array(2 * size);
  if (plan.vectors === null) vector[0] = 1;
  else vector.set(plan.vectors.subarray(0, plan.mu.length));
  const perL2 = 1 / geometry.lengthM ** 2;
  const line = [0, 1].map((part) => plan.mu[part] + plan.slope[part] * (k - plan.k) + axis.roots.w[part] * perL2);
  const slope = [0, 1].map((part) => plan.slope[part] + (axis.roots.slope[part] * perL2) / k);
  return { plan: 0, order: 0, line: [...line, ...slope], load: loadsOf(place, vector, 0), mode: null };
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

/**
 * The wavenumbers of the modes tied at `place` up to `last` once the patches tie all of them together: first with A linear in k from the place's,
 * then, where a mode is damped far off the real k, bent as A is on the way to `beside`.
 */
const coupled = (
  place: Place,
  beside: Place,
  tiesAt: (at: Place) => readonly Tie[],
  last: EvenMode,
): Map<EvenMode, Float64Array> => {
  const { k } = place;
  const found = new Map<EvenMode, Float64Array>();
  const near = tiesAt(place);
  const here = systemAt(place, near);
  const there = systemAt(beside, tiesAt(beside));
  if (here === null || there === null) return found;
  const { matrix: start, slopes } = here;
  const count = near.length;
  const step = beside.k - k;
  const bend = start.map((part, i) => (2 * (there.matrix[i] - part - step * slopes[i])) / (step * step));
  const matrix = start.slice();
  const vectors = eigenvectorsOf(count, matrix);
  for (const [m, { mode }] of near.entries()) {
    if (mode === null) continue;
    const v = vectors.slice(2 * m * count, 2 * (m + 1) * count);
    const rise = new Float64Array(2);
    setDot(v, timesVector(slopes, v), rise, 0);
    const root = rootOf(k, matrix.subarray(2 * (m * count + m)), rise, mode.k);
    if (root !== null) {
      const exact = root.slice();
      if (refine(k, start, slopes, v, exact)) {
        for (let round = 0; round < ROUNDS; round++) {
          const bent = bentAt(here, bend, k, exact);
          refine(exact[0], bent.matrix, bent.slopes, v, exact);
        }
      }
      // two modes do not share one root
      if (![...found.values()].some((other) => same(other, exact))) found.set(mode, exact);
    }
    if (mode === last) break;
  }
  return found;
};

/** A and its slope at a complex k, of A + A' d + A'' d^2 / 2 with d = k - k0, as linear-in-k.ts wants it: from the real part of k on. */
const bentAt = (
  { matrix, slopes }: TiedSystem,
  bend: Float64Array,
  k0: number,
  [kRe, kIm]: Float64Array,
): TiedSystem => {
  const at = new Float64Array(matrix.length);
  const rise = new Float64Array(matrix.length);
  const d = kRe - k0;
  for (let i = 0; i < matrix.length; i += 2) {
    rise[i] = slopes[i] + bend[i] * d - bend[i + 1] * kIm;
    rise[i + 1] = slopes[i + 1] + bend[i] * kIm + bend[i + 1] * d;
    // A(k) - j Im k A'(k): the real parts of d^2 / 2 - j d Im k are (d^2 + Im k^2) / 2, the imaginary ones cancel
    const share = (d * d + kIm * kIm) / 2;
    at[i] = matrix[i] + slopes[i] * d + bend[i] * share;
    at[i + 1] = matrix[i + 1] + slopes[i + 1] * d + bend[i + 1] * share;
  }
  return { matrix: at, slopes: rise };
};

const same = (a: Float64Array, b: Float64Array): boolean => Math.hypot(a[0] - b[0], a[1] - b[1]) < SAME * b[0];

/** k_m^2 of an even mode as seen from the real k0, and its slope there: re, im each. */
const evenLine = (section: Section, { damped, vector, order }: EvenMode, k0: number): readonly number[] => {
  if (damped === null) return [0, 0, 0, 0];
  const [kRe, kIm] = damped;
  const line = quotient(section, vector);
  const slope = line === null ? null : slopeAt(section.geometry, line, order, damped);
  const [sRe, sIm] = slope ?? [0, 0];
  return [kRe * kRe - kIm * kIm + sRe * (k0 - kRe) + sIm * kIm, 2 * kRe * kIm - sRe * kIm + sIm * (k0 - kRe), sRe, sIm];
};
