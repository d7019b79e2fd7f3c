import type { RoomMode } from '../room-field.ts';
import { followMode, polishMode } from './mode-polish.ts';
import type { PrismGeometry } from './prism-geometry.ts';
import type { Section } from './section.ts';
import { eigenvectorsOf } from './symmetric-eigen.ts';

/** Wavenumbers at which the walls' coupling is worked out, this many hertz apart; between them it is followed linearly. */
const STEP_HZ = 20;
/** With more functions than this twice as far: every mode is made exact from there all the same. */
const MANY = 120;
/** Functions up to this multiple of the highest wavenumber wanted take part. */
const REACH = 1.35;
/** With more functions than this (plans above some 120 m2) every mode is damped by itself, to first order. */
const MOST_COUPLED = 260;
/** Polishing moves a mode by less than this share. */
const FARTHEST_POLISH = 0.02;

/** The plan modes at one real wavenumber: mu_i + mu'_i (k - k0), re, im each. */
interface Damped {
  readonly k: number;
  readonly mu: Float64Array;
  readonly slope: Float64Array;
  /** The vectors, one a row, re, im; null where each mode is damped by itself. */
  readonly vectors: Float64Array | null;
}

/** A rigid mode: plan mode and order along the even axis. */
interface RigidMode {
  readonly plan: number;
  readonly order: number;
  readonly k: number;
}

/** All rigid modes above 0 Hz up to `maxHz`, ascending; `rigid` must be complete to there. */
const rigidModes = ({ soundSpeed, lengthM }: PrismGeometry, rigid: Float64Array, maxHz: number): RigidMode[] => {
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

/**
 * Rigid eigenfrequencies of a prism above 0 Hz up to `maxHz` from the rigid plan modes, each with the decay of its damped mode:
 * the complex k with mu_i(k) + w_q(k) / L^2 = k^2 (derived), mu_i(k) the eigenvalue of Lambda + j k B that continues plan mode i.
 * `rigid` must be complete to maxHz.
 */
export const prismModes = (section: Section, rigid: Float64Array, maxHz: number): RoomMode[] => {
  const { geometry } = section;
  const scale = geometry.soundSpeed / (2 * Math.PI);
  const known = new Map<number, Damped>();
  const stepHz = countTo(section, maxHz / scale) > MANY ? 2 * STEP_HZ : STEP_HZ;
  const dampedNear = (k: number): Damped => {
    const step = Math.max(1, Math.round((k * scale) / stepHz));
    let damped = known.get(step);
    if (damped === undefined) {
      damped = dampedPlan(section, (step * stepHz) / scale, countTo(section, maxHz / scale));
      known.set(step, damped);
    }
    return damped;
  };
  return rigidModes(geometry, rigid, maxHz).map(({ plan, order, k }) => ({
    hz: k * scale,
    order: null,
    ...decayOf(section, geometry.rigid ? null : dampedNear(k), plan, order, k),
  }));
};

/** The rigid shapes of `prismModes` at points (section and place along the axis, triples), index mode * points + point. */
export const prismShapes = (
  section: Section,
  rigid: Float64Array,
  maxHz: number,
  points: Float64Array,
): Float64Array => {
  const { geometry, basis, size } = section;
  const count = points.length / 3;
  const values = basis.valuesAt(points.filter((_, i) => i % 3 !== 2));
  const modes = rigidModes(geometry, rigid, maxHz);
  const shapes = new Float64Array(modes.length * count);
  for (const [m, { plan, order }] of modes.entries()) {
    const norm = Math.sqrt((order === 0 ? 1 : 2) / geometry.lengthM);
    for (let p = 0; p < count; p++) {
      const along = Math.cos((order * Math.PI * points[3 * p + 2]) / geometry.lengthM);
      shapes[m * count + p] = norm * values[p * size + plan] * along;
    }
  }
  return shapes;
};

/** Functions that take part in modes up to the wavenumber `highest`. */
const countTo = ({ size, lambda }: Section, highest: number): number => {
  let count = 1;
  while (count < size && lambda[count] <= (REACH * highest) ** 2) count++;
  return count;
};

const dampedPlan = (section: Section, k: number, count: number): Damped => {
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

/**
 * Where the mode is found the pair is made exact by inverse iteration (mode-polish.ts); where no mode that decays is found (walls that
 * absorb everything) the first-order estimate delta = (c / 2) (Re beta over the walls, as the rigid mode weights them) stands in.
 */
const decayOf = (
  section: Section,
  damped: Damped | null,
  i: number,
  q: number,
  rigidK: number,
): { dampedHz: number; decayS: number } => {
  const { geometry, wallRe, size } = section;
  const { soundSpeed, lengthM, endBeta } = geometry;
  const scale = soundSpeed / (2 * Math.PI);
  if (damped === null) return { dampedHz: rigidK * scale, decayS: Number.POSITIVE_INFINITY };
  const ends = ((q === 0 ? 1 : 2) * (endBeta[0] + endBeta[2])) / lengthM;
  const firstOrder = (soundSpeed / 2) * ((i < size ? wallRe[i * size + i] : 0) + ends);
  const k = Float64Array.of(rigidK, 0);
  let found = false;
  if (i < damped.mu.length / 2) {
    const line = { k: damped.k, mu: damped.mu.subarray(2 * i), slope: damped.slope.subarray(2 * i) };
    found = followMode(geometry, line, q, k);
    if (found && damped.vectors !== null) {
      const polished = polishMode(section, damped.vectors.subarray(i * damped.mu.length), damped.mu.length / 2, q, k);
      const kept = k.slice();
      if (polished === null || !followMode(geometry, polished, q, k) || apart(k, kept)) k.set(kept);
    }
  }
  const delta = soundSpeed * k[1];
  const plausible = found && k[0] >= 0 && delta >= -1e-9 * firstOrder;
  const decay = plausible ? Math.max(0, delta) : firstOrder;
  return {
    dampedHz: (plausible ? k[0] : rigidK) * scale,
    decayS: decay > 0 ? (3 * Math.LN10) / decay : Number.POSITIVE_INFINITY,
  };
};

/** Whether polishing led to another mode. */
const apart = (a: Float64Array, b: Float64Array): boolean =>
  Math.hypot(a[0] - b[0], a[1] - b[1]) > FARTHEST_POLISH * Math.hypot(b[0], b[1]);
