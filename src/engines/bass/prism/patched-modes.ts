import type { AxisModes } from '../axis-modes.ts';
import { answerOfPatches, couplePatches } from '../patches/coupled-system.ts';
import type { DampedPlan, EvenMode, EvenModes } from './even-modes.ts';
import { refine, rootOf, setDot, timesVector } from './linear-in-k.ts';
import { quotient, slopeAt } from './mode-polish.ts';
import { addOrder, alongModes } from './patch-coupling.ts';
import type { PrismPatch } from './patch-division.ts';
import { createPatchLayouts, type PrismPatchLayout } from './patch-layout.ts';
import { createPrismStates } from './prism-state.ts';
import type { Section } from './section.ts';
import { eigenvectorsOf } from './symmetric-eigen.ts';
import { BAND_HZ, MOST_TIED } from './tied-reach.ts';

/** A mode of the room with its patches: complex wavenumber (null where it was lost) and delta in first order, 1/s. */
export interface PatchedMode {
  readonly damped: Float64Array | null;
  readonly firstOrderPerS: number;
}

/** The matrix is made at frequencies this far apart. */
const STEP_HZ = 10;
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
 * that continues each of them taken, and its k found from the eigenvalue and its slope, P growing as k.
 */
export const patchedModes = (
  section: Section,
  { modes, planNear }: EvenModes,
  patches: readonly PrismPatch[],
): PatchedMode[] => {
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
    const plan = planNear(k);
    const layout = layoutFor(k);
    const here: Place = {
      section,
      layout,
      plan,
      k,
      axis: states.at(step * STEP_HZ, 0).even,
      along: new Float64Array(0),
    };
    const place = { ...here, along: alongModes(section, layout, here.axis) };
    const within = modes.filter((mode) => mode.damped !== null && Math.abs(mode.k - k) <= BAND_HZ / toHz);
    const isTied = plan.vectors !== null && within.length <= MOST_TIED;
    const near = isTied ? within.map((mode) => tieOf(place, mode)) : [];
    if (isTied && k * toHz <= BAND_HZ) near.push(stillOf(place));
    const followed = isTied ? coupled(place, near, own[own.length - 1]) : new Map<EvenMode, Float64Array>();
    for (const mode of own) {
      const firstOrderPerS = mode.firstOrderPerS + (soundSpeed / 2) * patchLoss(section, layout, mode);
      found.set(mode, { damped: followed.get(mode) ?? null, firstOrderPerS });
    }
  }
  return modes.map((mode) => found.get(mode) ?? { damped: null, firstOrderPerS: mode.firstOrderPerS });
};

/** What is known at one real wavenumber. */
interface Place {
  readonly section: Section;
  readonly layout: PrismPatchLayout;
  readonly plan: DampedPlan;
  readonly k: number;
  readonly axis: AxisModes;
  /** Of every part along the axis, re, im per order. */
  readonly along: Float64Array;
}

/** A mode of the even room as the patches tie it to others. */
interface Tie {
  readonly plan: number;
  readonly order: number;
  /** k_m^2 as seen from the place, and its slope there: re, im each. */
  readonly line: readonly number[];
  /** psi, re, im per patch function. */
  readonly load: Float64Array;
  readonly mode: EvenMode | null;
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
 * The wavenumbers of the modes `near` up to `last` once the patches tie all of them together, from the place's k. With y = j k D (1 +
 * j k W' D)^-1 psi, P = psi . y and dP/dk = y . (1 / (j k^2 D) - dW'/dk) y (derived).
 */
const coupled = (place: Place, near: readonly Tie[], last: EvenMode): Map<EvenMode, Float64Array> => {
  const { layout, k } = place;
  const { delta, count: functions } = layout.functions;
  const found = new Map<EvenMode, Float64Array>();
  const count = near.length;
  const { couplings, slope } = restCouplings(place, near);
  const system = couplePatches(functions, couplings, delta, k, 0);
  if (system === null) return found;
  for (let a = 0; a < functions; a++) {
    const square = k * k * (delta[2 * a] ** 2 + delta[2 * a + 1] ** 2);
    slope[2 * (a * functions + a)] -= delta[2 * a + 1] / square;
    slope[2 * (a * functions + a) + 1] -= delta[2 * a] / square;
  }
  const matrix = new Float64Array(2 * count * count);
  const slopes = new Float64Array(2 * count * count);
  const answers = near.map(({ load }) => {
    const answer = load.slice();
    answerOfPatches(system, answer);
    return answer;
  });
  for (const [n, answer] of answers.entries()) {
    const turned = timesVector(slope, answer);
    for (const [m, { load }] of near.entries()) {
      const at = 2 * (m * count + n);
      setDot(load, answer, matrix, at);
      setDot(answers[m], turned, slopes, at);
    }
    const at = 2 * (n * count + n);
    for (let part = 0; part < 2; part++) {
      matrix[at + part] += near[n].line[part];
      slopes[at + part] += near[n].line[2 + part];
    }
  }
  const start = matrix.slice();
  const vectors = eigenvectorsOf(count, matrix);
  for (const [m, { mode }] of near.entries()) {
    if (mode === null) continue;
    const v = vectors.slice(2 * m * count, 2 * (m + 1) * count);
    const rise = new Float64Array(2);
    setDot(v, timesVector(slopes, v), rise, 0);
    const root = rootOf(k, matrix.subarray(2 * (m * count + m)), rise, mode.k);
    if (root !== null) {
      const exact = root.slice();
      refine(k, start, slopes, v, exact);
      // two modes do not share one root
      if (![...found.values()].some((other) => same(other, exact))) found.set(mode, exact);
    }
    if (mode === last) break;
  }
  return found;
};

const same = (a: Float64Array, b: Float64Array): boolean => Math.hypot(a[0] - b[0], a[1] - b[1]) < SAME * b[0];

/** W' of the patches, on and right of the diagonal, and its negative slope over k: all modes but those of `near`, and what is left out of the modes. */
const restCouplings = (
  { section, layout, plan, k, axis, along }: Place,
  near: readonly Tie[],
): { couplings: Float64Array; slope: Float64Array } => {
  const { size, orders, functions, lambda, geometry } = section;
  const parts = layout.section.length;
  const count = layout.functions.count;
  const known = plan.vectors === null ? 0 : plan.mu.length / 2;
  const shown = layout.section.map((part) => shownBy(plan, part, known, size));
  const taken = new Set(near.map(({ plan: i, order }) => order * size + i));
  const couplings = new Float64Array(2 * count * count);
  const slope = new Float64Array(2 * count * count);
  const between = new Float64Array(2 * parts * parts);
  const betweenSlope = new Float64Array(2 * parts * parts);
  const perL2 = 1 / geometry.lengthM ** 2;
  for (let n = 0; n < orders; n++) {
    between.fill(0);
    betweenSlope.fill(0);
    const ownRe = axis.roots.w[2 * n] * perL2 - k * k;
    const ownIm = axis.roots.w[2 * n + 1] * perL2;
    for (let i = 0; i < functions[n]; i++) {
      if (taken.has(n * size + i)) continue;
      const gapRe = ownRe + (i < known ? plan.mu[2 * i] + plan.slope[2 * i] * (k - plan.k) : lambda[i]);
      const gapIm = ownIm + (i < known ? plan.mu[2 * i + 1] + plan.slope[2 * i + 1] * (k - plan.k) : 0);
      const square = gapRe * gapRe + gapIm * gapIm;
      // -d/dk of 1 / gap = gap' / gap^2, gap' = -2 k
      const stepRe = (-2 * k * gapRe) / square;
      const stepIm = (2 * k * gapIm) / square;
      for (let m = 0; m < parts; m++) {
        const re = (shown[m][2 * i] * gapRe + shown[m][2 * i + 1] * gapIm) / square;
        const im = (shown[m][2 * i + 1] * gapRe - shown[m][2 * i] * gapIm) / square;
        for (let l = 0; l < parts; l++) {
          const at = 2 * (m * parts + l);
          const productRe = re * shown[l][2 * i] - im * shown[l][2 * i + 1];
          const productIm = re * shown[l][2 * i + 1] + im * shown[l][2 * i];
          between[at] += productRe;
          between[at + 1] += productIm;
          betweenSlope[at] += productRe * stepRe - productIm * stepIm;
          betweenSlope[at + 1] += productRe * stepIm + productIm * stepRe;
        }
      }
    }
    addOrder(section, layout, along, n, between, couplings);
    addOrder(section, layout, along, n, betweenSlope, slope);
  }
  for (let i = 0; i < count * count; i++) couplings[2 * i] += layout.tail[i];
  for (let a = 0; a < count; a++)
    for (let b = 0; b < a; b++)
      for (const part of [0, 1]) slope[2 * (a * count + b) + part] = slope[2 * (b * count + a) + part];
  return { couplings, slope };
};

/** Integrals of a part over the plan's damped modes, over the functions as they are from `known` on; re, im. */
const shownBy = ({ vectors }: DampedPlan, part: Float64Array, known: number, size: number): Float64Array => {
  const out = new Float64Array(2 * size);
  for (let i = 0; i < size; i++) {
    if (i >= known || vectors === null) {
      out[2 * i] = part[i];
      continue;
    }
    for (let j = 0; j < known; j++) {
      out[2 * i] += part[j] * vectors[2 * (i * known + j)];
      out[2 * i + 1] += part[j] * vectors[2 * (i * known + j) + 1];
    }
  }
  return out;
};

/** psi: integrals of the patch functions over a damped mode of the even room, re, im. */
const loadsOf = ({ section, layout, along }: Place, vector: Float64Array, order: number): Float64Array => {
  const { size, orders } = section;
  const { section: parts, sectionOf, alongOf, functions } = layout;
  const sums = parts.map((part) => {
    let [re, im] = [0, 0];
    for (let i = 0; i < size; i++) {
      re += part[i] * vector[2 * i];
      im += part[i] * vector[2 * i + 1];
    }
    return [re, im] as const;
  });
  const loads = new Float64Array(2 * functions.count);
  for (let a = 0; a < functions.count; a++) {
    const [re, im] = sums[sectionOf[a]];
    const z = 2 * (alongOf[a] * orders + order);
    loads[2 * a] = re * along[z] - im * along[z + 1];
    loads[2 * a + 1] = re * along[z + 1] + im * along[z];
  }
  return loads;
};

/** k_m^2 of an even mode as seen from the real k0, and its slope there: re, im each. */
const evenLine = (section: Section, { damped, vector, order }: EvenMode, k0: number): readonly number[] => {
  if (damped === null) return [0, 0, 0, 0];
  const [kRe, kIm] = damped;
  const line = quotient(section, vector);
  const slope = line === null ? null : slopeAt(section.geometry, line, order, damped);
  const [sRe, sIm] = slope ?? [0, 0];
  return [kRe * kRe - kIm * kIm + sRe * (k0 - kRe) + sIm * kIm, 2 * kRe * kIm - sRe * kIm + sIm * (k0 - kRe), sRe, sIm];
};
