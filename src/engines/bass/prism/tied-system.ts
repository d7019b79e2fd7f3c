import type { AxisModes } from '../axis-modes.ts';
import { answerOfPatches, couplePatches } from '../patches/coupled-system.ts';
import type { DampedPlan, EvenMode } from './even-modes.ts';
import { setDot, timesVector } from './linear-in-k.ts';
import { addOrder } from './patch-coupling.ts';
import type { PrismPatchLayout } from './patch-layout.ts';
import type { Section } from './section.ts';

/** What is known at one real wavenumber. */
export interface Place {
  readonly section: Section;
  readonly layout: PrismPatchLayout;
  readonly plan: DampedPlan;
  readonly k: number;
  readonly axis: AxisModes;
  /** Of every part along the axis, re, im per order. */
  readonly along: Float64Array;
}

/** A mode of the even room as the patches tie it to others. */
export interface Tie {
  readonly plan: number;
  readonly order: number;
  /** k_m^2 as seen from the place, and its slope there: re, im each. */
  readonly line: readonly number[];
  /** psi, re, im per patch function. */
  readonly load: Float64Array;
  readonly mode: EvenMode | null;
}

/** A of the modes tied at a place, and its slope over k. */
export interface TiedSystem {
  readonly matrix: Float64Array;
  readonly slopes: Float64Array;
}

/** With y = j k D (1 + j k W' D)^-1 psi, P = psi . y and dP/dk = y . (1 / (j k^2 D) - dW'/dk) y (derived); null where singular. */
export const systemAt = (place: Place, near: readonly Tie[]): TiedSystem | null => {
  const { layout, k } = place;
  const { delta, count: functions } = layout.functions;
  const count = near.length;
  const { couplings, slope } = restCouplings(place, near);
  const system = couplePatches(functions, couplings, delta, k, 0);
  if (system === null) return null;
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
  return { matrix, slopes };
};

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
export const loadsOf = ({ section, layout, along }: Place, vector: Float64Array, order: number): Float64Array => {
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
