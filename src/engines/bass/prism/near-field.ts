import { bessel, FARTHEST, setBessel } from './bessel.ts';
import { PLACE, type Section } from './section.ts';
import { endImages, planImages } from './source-images.ts';

/**
 * How a source enters the modes. With A the screened field of the source and its images (source-images.ts), resolved over
 * the rigid even axis into A_n = sum of weights K0(sigma_n rho) / 2 pi and A'_n = -dA_n / d(sigma^2) = sum of weights rho
 * K1(sigma_n rho) / (4 pi sigma_n), the field is sought as
 *
 *   p = A + tau A' + v,   tau = k^2 + s^2,   v in the span of the functions phi_i
 *
 * Galerkin's method for v (derived, by Green's identities: (-lap + sigma_n^2) A = delta, (-lap + sigma_n^2) A' = A) gives
 *
 *   v = c . phi - sum of (a_i + tau a'_i) phi_i,     (Lambda + w_n / L^2 - k^2 + j k B) c = phi(r0) - j k (b + tau b')
 *   a_i  = (phi_i(r0) + F_i) / (lambda_i + sigma_n^2),    F_i = integral of dA_n/dn phi_i along the walls, 0 where the images fit
 *   a'_i = (a_i + F'_i) / (lambda_i + sigma_n^2),         b_i = integral of beta (A_n - sum of a_j phi_j) phi_i, b' likewise
 *
 * so that the singularity and one order more are in closed form and what the modes must still show converges as lambda^-3.
 * All of it is real or proportional to beta and independent of frequency: one set a source, whatever the frequencies.
 */
export interface SourceTerms {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly plan: Float64Array;
  readonly ends: Float64Array;
  /** phi_i at the source. */
  readonly values: Float64Array;
  /** a and a' per order and function, at n size + i. */
  readonly a: Float64Array;
  readonly slope: Float64Array;
  /** b and b', re and im apart (`im` null when all betas are real). */
  readonly wallRe: Float64Array;
  readonly wallIm: Float64Array | null;
  readonly wallSlopeRe: Float64Array;
  readonly wallSlopeIm: Float64Array | null;
}

/** Images nearer to a place on a wall than this are taken to be this far. */
const LEAST_M = 0.02;

export const sourceTerms = (section: Section, x: number, y: number, z: number): SourceTerms => {
  const { geometry, size, orders, functions, lambda, sigma2, places, atPlaces, wallRe, wallIm } = section;
  const plan = planImages(geometry, x, y);
  const values = section.basis.valuesAt(Float64Array.of(x, y));
  const total = orders * size;
  const terms: SourceTerms = {
    x,
    y,
    z,
    plan,
    ends: endImages(z, geometry.lengthM),
    values,
    a: new Float64Array(total),
    slope: new Float64Array(total),
    wallRe: new Float64Array(total),
    wallIm: wallIm === null ? null : new Float64Array(total),
    wallSlopeRe: new Float64Array(total),
    wallSlopeIm: wallIm === null ? null : new Float64Array(total),
  };
  const flux = new Float64Array(size);
  const fluxSlope = new Float64Array(size);
  for (let n = 0; n < orders; n++) {
    const count = functions[n];
    const start = n * size;
    flux.fill(0);
    fluxSlope.fill(0);
    for (let q = 0, o = 0; o < places.length; q++, o += PLACE) {
      if (!setOnWall(plan, places, o, Math.sqrt(sigma2[n]))) continue;
      const { value, slope, normal, normalSlope } = onWall;
      const row = q * size;
      const re = places[o + 5];
      const im = places[o + 6];
      for (let i = 0; i < count; i++) {
        const phi = atPlaces[row + i];
        flux[i] += normal * phi;
        fluxSlope[i] += normalSlope * phi;
        terms.wallRe[start + i] += re * value * phi;
        terms.wallSlopeRe[start + i] += re * slope * phi;
      }
      if (terms.wallIm !== null && terms.wallSlopeIm !== null && im !== 0) {
        for (let i = 0; i < count; i++) {
          terms.wallIm[start + i] += im * value * atPlaces[row + i];
          terms.wallSlopeIm[start + i] += im * slope * atPlaces[row + i];
        }
      }
    }
    for (let i = 0; i < count; i++) {
      const bottom = 1 / (lambda[i] + sigma2[n]);
      terms.a[start + i] = (values[i] + flux[i]) * bottom;
      terms.slope[start + i] = (terms.a[start + i] + fluxSlope[i]) * bottom;
    }
    subtractShown(size, count, start, wallRe, terms.a, terms.wallRe);
    subtractShown(size, count, start, wallRe, terms.slope, terms.wallSlopeRe);
    if (wallIm !== null && terms.wallIm !== null && terms.wallSlopeIm !== null) {
      subtractShown(size, count, start, wallIm, terms.a, terms.wallIm);
      subtractShown(size, count, start, wallIm, terms.slope, terms.wallSlopeIm);
    }
  }
  return terms;
};

/** out -= matrix a, for one order. */
const subtractShown = (
  size: number,
  count: number,
  start: number,
  matrix: Float64Array,
  a: Float64Array,
  out: Float64Array,
): void => {
  for (let i = 0; i < count; i++) {
    let sum = 0;
    for (let j = 0, row = i * size; j < count; j++) sum += matrix[row + j] * a[start + j];
    out[start + i] -= sum;
  }
};

/** A, A' and their outward slopes at one place of the quadrature, all times its weight. */
const onWall = { value: 0, slope: 0, normal: 0, normalSlope: 0 };

const setOnWall = (plan: Float64Array, places: Float64Array, o: number, sigma: number): boolean => {
  const far = (FARTHEST / sigma) ** 2;
  let value = 0;
  let slope = 0;
  let normal = 0;
  let normalSlope = 0;
  for (let i = 0; i < plan.length; i += 3) {
    const dx = places[o] - plan[i];
    const dy = places[o + 1] - plan[i + 1];
    const rho2 = dx * dx + dy * dy;
    if (rho2 > far) continue;
    const rho = Math.max(LEAST_M, Math.sqrt(rho2));
    setBessel(sigma * rho);
    const weight = plan[i + 2];
    const outward = weight * (dx * places[o + 2] + dy * places[o + 3]);
    value += weight * bessel.k0;
    slope += weight * rho * bessel.k1;
    normal -= (outward * bessel.k1) / rho;
    normalSlope -= outward * bessel.k0;
  }
  const scale = places[o + 4] / (2 * Math.PI);
  onWall.value = value * scale;
  onWall.slope = (slope * scale) / (2 * sigma);
  onWall.normal = normal * sigma * scale;
  onWall.normalSlope = (normalSlope * scale) / 2;
  return value !== 0;
};
