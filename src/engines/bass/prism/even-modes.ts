import { rings } from '../free-decay.ts';
import { followMode, polishMode, quotient } from './mode-polish.ts';
import type { PrismGeometry } from './prism-geometry.ts';
import type { Section } from './section.ts';
import { eigenvectorsOf } from './symmetric-eigen.ts';
import { MOST_COUPLED, REACH } from './tied-reach.ts';

/** Wavenumbers at which the walls' coupling is worked out, this many hertz apart; between them it is followed linearly. */
const STEP_HZ = 20;
/** With more functions than this twice as far: every mode is made exact from there all the same. */
const MANY = 120;
/** Polishing moves a mode by less than this share, ... */
const FARTHEST_POLISH = 0.1;
/** ... in at most so many steps, until one moves it by less than this share: the next would move it by about the square. */
const MOST_POLISHING = 8;
const POLISHED = 1e-3;
/** A mode damped more than this, Im k / Re k, is followed from rigid walls on, this much of beta at a time. */
const HEAVILY = 0.25;
const BETA_STEP = 0.1;

/** The plan modes at one real wavenumber: mu_i + mu'_i (k - k0), re, im each. */
export interface DampedPlan {
  readonly k: number;
  readonly mu: Float64Array;
  readonly slope: Float64Array;
  /** The vectors, one a row, re, im; null where each mode is damped by itself. */
  readonly vectors: Float64Array | null;
}

/** A rigid mode: plan mode and order along the even axis. */
export interface RigidMode {
  readonly plan: number;
  readonly order: number;
  readonly k: number;
}

/** All rigid modes above 0 Hz up to `maxHz`, ascending; `rigid` must be complete to there. */
export const rigidModes = ({ soundSpeed, lengthM }: PrismGeometry, rigid: Float64Array, maxHz: number): RigidMode[] => {
  const highest = (2 * Math.PI * maxHz) / soundSpeed;
  const found: RigidMode[] = [];
  for (let plan = 0; plan < rigid.length; plan++) {
    for (let order = plan === 0 ? 1 : 0; ; order++) {
      const k = Math.sqrt(Math.max(0, rigid[plan]) + ((order * Math.PI) / lengthM) ** 2);
      if (k > highest) break;
      found.push({ plan, order, k });
    }
  }
  return found.sort((a, b) => a.k - b.k);
};

export interface EvenModes {
  /** One per rigid mode. */
  readonly modes: readonly EvenMode[];
  /** The plan's modes at the nearest of the wavenumbers where they were worked out. */
  planNear(k: number): DampedPlan;
}

/** The damped modes of a prism whose walls are even along its axis, a mode a step. */
export function* evenModes(section: Section, rigid: Float64Array, maxHz: number): Generator<void, EvenModes> {
  const { geometry } = section;
  const scale = geometry.soundSpeed / (2 * Math.PI);
  const known = new Map<number, DampedPlan>();
  const count = countTo(section, maxHz / scale);
  const stepHz = count > MANY ? 2 * STEP_HZ : STEP_HZ;
  const planNear = (k: number): DampedPlan => {
    const step = Math.max(1, Math.round((k * scale) / stepHz));
    let damped = known.get(step);
    if (damped === undefined) {
      damped = dampedPlan(section, (step * stepHz) / scale, count);
      known.set(step, damped);
    }
    return damped;
  };
  const weaker = growing(section);
  const modes: EvenMode[] = [];
  for (const mode of rigidModes(geometry, rigid, maxHz)) {
    modes.push(evenMode(section, weaker, planNear(mode.k), mode));
    yield;
  }
  return { modes, planNear };
}

/** Functions that take part in modes up to the wavenumber `highest`. */
const countTo = ({ size, lambda }: Section, highest: number): number => {
  let count = 1;
  while (count < size && lambda[count] <= (REACH * highest) ** 2) count++;
  return count;
};

const dampedPlan = (section: Section, k: number, count: number): DampedPlan => {
  const { size, lambda, wallRe, wallIm } = section;
  const mu = new Float64Array(2 * count);
  const slope = new Float64Array(2 * count);
  if (count > MOST_COUPLED) {
    for (let i = 0; i < count; i++) {
      slope[2 * i] = wallIm === null ? 0 : -wallIm[i * size + i];
      slope[2 * i + 1] = wallRe[i * size + i];
      mu[2 * i] = lambda[i] + k * slope[2 * i];
      mu[2 * i + 1] = k * slope[2 * i + 1];
    }
    return { k, mu, slope, vectors: null };
  }
  const matrix = new Float64Array(2 * count * count);
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < count; j++) {
      const at = 2 * (i * count + j);
      matrix[at] = (i === j ? lambda[i] : 0) - k * (wallIm === null ? 0 : wallIm[i * size + j]);
      matrix[at + 1] = k * wallRe[i * size + j];
    }
  }
  const vectors = eigenvectorsOf(count, matrix);
  for (let i = 0; i < count; i++) {
    mu[2 * i] = matrix[2 * (i * count + i)];
    mu[2 * i + 1] = matrix[2 * (i * count + i) + 1];
    // dmu/dk = (mu - v . Lambda v) / k, the vectors being bilinearly normal
    let re = mu[2 * i];
    let im = mu[2 * i + 1];
    for (let j = 0; j < count; j++) {
      const vRe = vectors[2 * (i * count + j)];
      const vIm = vectors[2 * (i * count + j) + 1];
      re -= lambda[j] * (vRe * vRe - vIm * vIm);
      im -= 2 * lambda[j] * vRe * vIm;
    }
    slope[2 * i] = re / k;
    slope[2 * i + 1] = im / k;
  }
  return { k, mu, slope, vectors };
};

/** A mode of the prism with walls that are even along its axis. */
export interface EvenMode extends RigidMode {
  /** Complex wavenumber of the damped mode, re, im; null where none was found. */
  readonly damped: Float64Array | null;
  /** Its plan vector over all functions, re, im, of bilinear norm 1. */
  readonly vector: Float64Array;
  /** delta in first order, (c / 2) (Re beta over the walls, as the rigid mode weights them), 1/s. */
  readonly firstOrderPerS: number;
}

/** Where the mode is found the pair is made exact by inverse iteration (mode-polish.ts). */
const evenMode = (section: Section, weaker: readonly Section[], plan: DampedPlan, rigid: RigidMode): EvenMode => {
  const { geometry, wallRe, size } = section;
  const { plan: i, order: q } = rigid;
  const { soundSpeed, lengthM, endBeta } = geometry;
  const ends = ((q === 0 ? 1 : 2) * (endBeta[0] + endBeta[2])) / lengthM;
  const firstOrderPerS = (soundSpeed / 2) * ((i < size ? wallRe[i * size + i] : 0) + ends);
  const vector = new Float64Array(2 * size);
  const count = plan.mu.length / 2;
  if (i >= count || plan.vectors === null) {
    if (i < size) vector[2 * i] = 1;
  } else vector.set(plan.vectors.subarray(2 * i * count, 2 * (i + 1) * count));
  const k = Float64Array.of(rigid.k, 0);
  let found = false;
  if (i < count) {
    found = followMode(geometry, { k: plan.k, mu: plan.mu.subarray(2 * i), slope: plan.slope.subarray(2 * i) }, q, k);
    if (found && plan.vectors !== null && (!polish(section, vector, q, k) || k[1] > HEAVILY * k[0])) {
      // from rigid walls on, as their admittance grows
      vector.fill(0);
      vector[2 * i] = 1;
      k[0] = rigid.k;
      k[1] = 0;
      found = weaker.every((one) => {
        const line = quotient(one, vector);
        return (
          line !== null &&
          followMode(one.geometry, line, q, k) &&
          polish(one, vector, q, k) &&
          rings(k[0], k[1], rigid.k)
        );
      });
    }
  }
  return { ...rigid, damped: found ? k : null, vector, firstOrderPerS };
};

/** Makes a mode exact in place; false when that leads to another one, or nowhere. */
const polish = (section: Section, vector: Float64Array, q: number, k: Float64Array): boolean => {
  const from = k.slice();
  for (let step = 0; step < MOST_POLISHING; step++) {
    const [atRe, atIm] = k;
    const line = polishMode(section, vector, q, k);
    // a singular system: k is exact already
    if (line === null) return true;
    if (!followMode(section.geometry, line, q, k) || apart(k, from)) return false;
    if (Math.hypot(k[0] - atRe, k[1] - atIm) < POLISHED * Math.hypot(k[0], k[1])) return true;
  }
  return false;
};

/** The same section with `share` of its walls' admittance. */
const withShare = (section: Section, share: number): Section => {
  const { geometry, wallRe, wallIm } = section;
  const part = (list: Float64Array): Float64Array => list.map((value) => share * value);
  return {
    ...section,
    geometry: { ...geometry, edgeBeta: part(geometry.edgeBeta), endBeta: part(geometry.endBeta) },
    wallRe: part(wallRe),
    wallIm: wallIm === null ? null : part(wallIm),
  };
};

/** The section from light walls to its own, in steps of BETA_STEP. */
const growing = (section: Section): Section[] => {
  const { edgeBeta, endBeta } = section.geometry;
  const largest = [...edgeBeta, ...endBeta].reduce((most, part) => Math.max(most, Math.abs(part)), 0);
  const steps = Math.ceil(largest / BETA_STEP);
  return Array.from({ length: steps }, (_, i) => (i + 1 === steps ? section : withShare(section, (i + 1) / steps)));
};

/** Whether polishing led to another mode. */
const apart = (a: Float64Array, b: Float64Array): boolean =>
  Math.hypot(a[0] - b[0], a[1] - b[1]) > FARTHEST_POLISH * Math.hypot(b[0], b[1]);
