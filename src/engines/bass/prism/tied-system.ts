import type { AxisModes } from '../axis-modes.ts';
import { symmetricKernel } from '../kernels/symmetric-kernel.ts';
import { answerOfPatches, couplePatches } from '../patches/coupled-system.ts';
import type { TiedMatrix } from '../patches/tied-guesses.ts';
import type { DampedPlan, RigidMode } from './even-modes.ts';
import { setDot } from './linear-in-k.ts';
import { addOrder, addTails } from './patch-coupling.ts';
import type { PrismPatchLayout } from './patch-layout.ts';
import type { Section } from './section.ts';

/** What is known at one complex wavenumber. */
export interface Place {
  readonly section: Section;
  readonly layout: PrismPatchLayout;
  readonly plan: DampedPlan;
  readonly kRe: number;
  readonly kIm: number;
  readonly axis: AxisModes;
  /** Of every part along the axis, re, im per order. */
  readonly along: Float64Array;
  /** Of every part of the section over the plan's modes (`shownBy`). */
  readonly shown: Float64Array;
}

/** A mode of the even room as patches tie it to others. */
export interface Tie extends Pick<RigidMode, 'plan' | 'order'> {
  /** Its k^2 as seen from the place: re, im. */
  readonly square: readonly [number, number];
  /** Its plan vector over all functions, re, im, of bilinear norm 1. */
  readonly vector: Float64Array;
}

/**
 * With the damped modes u_m of the even room, k_m their wavenumbers, psi_m the integrals of the patch functions over them, and
 * W' the couplings of the patches through all other modes (coupled-system.ts), a mode of the room with its patches is p = sum
 * of x_m u_m with
 *
 *   A x = k^2 x,     A_mn = k_m^2 if m = n, + psi_m . j k D (1 + j k W' D)^-1 psi_n
 *
 * Derived from the singular system of coupled-system.ts. Exact but for the even modes, which are taken as they are at a wavenumber nearby.
 * Null where it is singular.
 */
export const systemAt = (place: Place, near: readonly Tie[]): TiedMatrix | null => {
  const { layout, kRe, kIm } = place;
  const { delta, count: functions } = layout.functions;
  const system = couplePatches(functions, restCouplings(place, near), delta, kRe, kIm);
  if (system === null) return null;
  const count = near.length;
  const matrix = new Float64Array(2 * count * count);
  const loads = near.map((tie) => loadsOf(place, tie));
  for (const [n, load] of loads.entries()) {
    const answer = load.slice();
    answerOfPatches(system, answer);
    for (let m = 0; m <= n; m++) {
      const at = 2 * (m * count + n);
      setDot(loads[m], answer, matrix, at);
      if (m === n) for (const part of [0, 1]) matrix[at + part] += near[n].square[part];
      else matrix.copyWithin(2 * (n * count + m), at, at + 2);
    }
  }
  return { kRe, kIm, matrix };
};

/** W' of the patches, on and right of the diagonal: all modes but those of `near`, and what is left out of the modes. */
const restCouplings = (place: Place, near: readonly Tie[]): Float64Array => {
  const { section, layout, plan, axis, along, shown } = place;
  const { size, orders, functions } = section;
  const parts = layout.section.length;
  const count = layout.functions.count;
  const taken = new Set(near.map(({ plan: i, order }) => order * size + i));
  const couplings = new Float64Array(2 * count * count);
  // real and imaginary rows of parts from the left, so that a product of real and complex matrices does
  const both = new Float64Array(4 * parts * parts);
  const between = new Float64Array(2 * parts * parts);
  const answers = new Float64Array(2 * size * parts);
  const planGaps = gapsOf(place, knownOf(plan));
  const perL2 = 1 / section.geometry.lengthM ** 2;
  for (let n = 0; n < orders; n++) {
    for (let i = 0; i < functions[n]; i++) {
      const gapRe = planGaps[2 * i] + axis.roots.w[2 * n] * perL2;
      const gapIm = planGaps[2 * i + 1] + axis.roots.w[2 * n + 1] * perL2;
      const weight = taken.has(n * size + i) ? 0 : 1 / (gapRe * gapRe + gapIm * gapIm);
      for (let m = 0; m < parts; m++) {
        const re = shown[2 * i * parts + m];
        const im = shown[(2 * i + 1) * parts + m];
        const to = 2 * (i * parts + m);
        answers[to] = weight * (re * gapRe + im * gapIm);
        answers[to + 1] = weight * (im * gapRe - re * gapIm);
      }
    }
    symmetricKernel().products(functions[n], shown, 2 * parts, answers, parts, both);
    for (let i = 0, from = between.length; i < between.length; i += 2, from += 2) {
      between[i] = both[i] - both[from + 1];
      between[i + 1] = both[i + 1] + both[from];
    }
    addOrder(section, layout, along, n, between, couplings);
  }
  addTails(layout, place.kRe, place.kIm, couplings);
  return couplings;
};

const knownOf = (plan: DampedPlan): number => (plan.vectors === null ? 0 : plan.mu.length / 2);

/** mu_i - k^2 of the plan's modes, damped as far as they are `known`; re, im. */
const gapsOf = ({ section, plan, kRe, kIm }: Place, known: number): Float64Array => {
  const gaps = new Float64Array(2 * section.size);
  const d = kRe - plan.k;
  for (let i = 0; i < section.size; i++) {
    gaps[2 * i] = kIm * kIm - kRe * kRe;
    gaps[2 * i + 1] = -2 * kRe * kIm;
    if (i < known) {
      gaps[2 * i] += plan.mu[2 * i] + plan.slope[2 * i] * d - plan.slope[2 * i + 1] * kIm;
      gaps[2 * i + 1] += plan.mu[2 * i + 1] + plan.slope[2 * i] * kIm + plan.slope[2 * i + 1] * d;
    } else gaps[2 * i] += section.lambda[i];
  }
  return gaps;
};

/**
 * Integrals of all parts over the plan's damped modes, and over functions as they are where modes are not worked out: a row of real
 * parts and one of imaginary ones per mode.
 */
export const shownBy = ({ size }: Section, plan: DampedPlan, parts: readonly Float64Array[]): Float64Array => {
  const known = knownOf(plan);
  const { vectors } = plan;
  const count = parts.length;
  const out = new Float64Array(2 * size * count);
  for (let i = 0; i < size; i++) {
    for (const [m, part] of parts.entries()) {
      let [re, im] = [i < known ? 0 : part[i], 0];
      if (i < known && vectors !== null) {
        for (let j = 0; j < known; j++) {
          re += part[j] * vectors[2 * (i * known + j)];
          im += part[j] * vectors[2 * (i * known + j) + 1];
        }
      }
      out[2 * i * count + m] = re;
      out[(2 * i + 1) * count + m] = im;
    }
  }
  return out;
};

/** psi: integrals of the patch functions over a damped mode of the even room, re, im. */
const loadsOf = ({ section, layout, along }: Place, { vector, order }: Tie): Float64Array => {
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
