import { solveOne } from '../axis-solver.ts';
import type { RoomMode } from '../room-field.ts';
import type { PrismGeometry } from './prism-geometry.ts';
import type { Section } from './section.ts';
import { eigenvectorsOf } from './symmetric-eigen.ts';

/** Wavenumbers at which the walls' coupling is worked out, this many hertz apart; between them it is followed linearly. */
const STEP_HZ = 20;
/** Functions up to this multiple of the highest wavenumber wanted take part. */
const REACH = 1.35;
const MOST_STEPS = 30;

/** The plan modes at one real wavenumber: mu_i + mu'_i (k - k0), re, im each. */
interface Damped {
  readonly k: number;
  readonly mu: Float64Array;
  readonly slope: Float64Array;
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
  const dampedNear = (k: number): Damped => {
    const step = Math.max(1, Math.round((k * scale) / STEP_HZ));
    let damped = known.get(step);
    if (damped === undefined) {
      damped = dampedPlan(section, (step * STEP_HZ) / scale, maxHz / scale);
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

const dampedPlan = (section: Section, k: number, highest: number): Damped => {
  const { size, lambda, wallRe, wallIm } = section;
  let count = 1;
  while (count < size && lambda[count] <= (REACH * highest) ** 2) count++;
  const matrix = new Float64Array(2 * count * count);
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < count; j++) {
      const at = 2 * (i * count + j);
      matrix[at] = (i === j ? lambda[i] : 0) - k * (wallIm === null ? 0 : wallIm[i * size + j]);
      matrix[at + 1] = k * wallRe[i * size + j];
    }
  }
  const vectors = eigenvectorsOf(count, matrix);
  const mu = new Float64Array(2 * count);
  const slope = new Float64Array(2 * count);
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
  return { k, mu, slope };
};

/**
 * Newton's method for f(k) = mu(k) + w_q(k) / L^2 - k^2. Where it finds no mode that decays (walls that absorb everything) the
 * first-order estimate delta = (c / 2) (mean of Re beta over the walls, as the rigid mode weights them) stands in.
 */
const decayOf = (
  { geometry, wallRe, size }: Section,
  damped: Damped | null,
  i: number,
  q: number,
  rigidK: number,
): { dampedHz: number; decayS: number } => {
  const { soundSpeed, lengthM, endBeta } = geometry;
  const scale = soundSpeed / (2 * Math.PI);
  if (damped === null) return { dampedHz: rigidK * scale, decayS: Number.POSITIVE_INFINITY };
  const perL2 = 1 / (lengthM * lengthM);
  const ends = ((q === 0 ? 1 : 2) * (endBeta[0] + endBeta[2])) / lengthM;
  const firstOrder = (soundSpeed / 2) * ((i < size ? wallRe[i * size + i] : 0) + ends);
  let kRe = rigidK;
  let kIm = 0;
  let found = false;
  const walls = new Float64Array(4);
  const axis = new Float64Array(4);
  const known = i < damped.mu.length / 2;
  for (let step = 0; step < MOST_STEPS && known; step++) {
    for (let e = 0; e < 4; e += 2) {
      walls[e] = -(kRe * endBeta[e + 1] + kIm * endBeta[e]) * lengthM;
      walls[e + 1] = (kRe * endBeta[e] - kIm * endBeta[e + 1]) * lengthM;
    }
    if (!solveOne(q, walls, axis)) break;
    const dRe = kRe - damped.k;
    const sRe = damped.slope[2 * i];
    const sIm = damped.slope[2 * i + 1];
    const fRe = damped.mu[2 * i] + sRe * dRe - sIm * kIm + axis[0] * perL2 - (kRe * kRe - kIm * kIm);
    const fIm = damped.mu[2 * i + 1] + sRe * kIm + sIm * dRe + axis[1] * perL2 - 2 * kRe * kIm;
    // dw/dk = (dw/dlnk) / k
    const k2 = kRe * kRe + kIm * kIm;
    const gRe = sRe + ((axis[2] * kRe + axis[3] * kIm) * perL2) / k2 - 2 * kRe;
    const gIm = sIm + ((axis[3] * kRe - axis[2] * kIm) * perL2) / k2 - 2 * kIm;
    const g2 = gRe * gRe + gIm * gIm;
    const stepRe = (fRe * gRe + fIm * gIm) / g2;
    const stepIm = (fIm * gRe - fRe * gIm) / g2;
    kRe -= stepRe;
    kIm -= stepIm;
    if (!Number.isFinite(kRe + kIm)) break;
    if (stepRe * stepRe + stepIm * stepIm < 1e-24 * k2) {
      found = true;
      break;
    }
  }
  const delta = soundSpeed * kIm;
  const plausible = found && kRe >= 0 && delta >= -1e-9 * firstOrder;
  const decay = plausible ? Math.max(0, delta) : firstOrder;
  return {
    dampedHz: (plausible ? kRe : rigidK) * scale,
    decayS: decay > 0 ? (3 * Math.LN10) / decay : Number.POSITIVE_INFINITY,
  };
};
