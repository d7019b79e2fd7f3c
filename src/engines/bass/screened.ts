import { ACROSS, type BoxGeometry } from './box-state.ts';
import type { Axis } from './room-field.ts';

/**
 * Near a source the transverse sum of the engine stops too early. What it leaves out is nearly the same at all low
 * frequencies: the rest of the field G_s of a screened source, -lap G + s^2 G = delta, in the same room with rigid
 * walls: 1 / (lambda - k^2) = 1 / (lambda + s^2) + (k^2 + s^2) / (lambda + s^2)^2 + ... for every mode left out, so
 *
 *   rest = near + (k^2 + s^2) slope,   near = 4 pi G_s less the kept terms,   slope = -d near / d(s^2)
 *
 * both real and independent of frequency; 4 pi G_s = sum over images of e^(-sR) / R, slope of it e^(-sR) / 2s.
 * Derived (engine notes, section 4, carried one order further).
 */
export const SCREEN_PER_M = 3;
/** Images farther than this many decay lengths are dropped: e^-14 = 8e-7. */
const FARTHEST = 14;
/** Distances below this are evaluated at this. */
export const NEAREST_M = 0.1;

/** Coordinates of the images of x0 in walls at 0 and a, within `reach` of the interval 0..a. */
const imagesOf = (x0: number, lengthM: number, reach: number): Float64Array => {
  const found: number[] = [];
  const most = Math.ceil((reach + lengthM) / (2 * lengthM)) + 1;
  for (let n = -most; n <= most; n++) {
    for (const sign of x0 === 0 || x0 === lengthM ? [1] : [1, -1]) {
      const x = 2 * n * lengthM + sign * x0;
      if (x >= -reach && x <= lengthM + reach) found.push(x);
    }
  }
  found.sort((a, b) => Math.abs(a - x0) - Math.abs(b - x0));
  return Float64Array.from(found);
};

/** How many images a wall source stands for along this axis: a source in the wall meets its own image. */
const weightOf = (x0: number, lengthM: number): number => (x0 === 0 || x0 === lengthM ? 2 : 1);

const distanceOutside = (x: number, lengthM: number): number => (x < 0 ? -x : x > lengthM ? x - lengthM : 0);

/** Images of a source in three dimensions that can matter anywhere in the room, as x, y, z, weight. */
export const imageList = (geometry: BoxGeometry, source: ArrayLike<number>): Float64Array => {
  const reach = FARTHEST / SCREEN_PER_M;
  const { sizeM } = geometry;
  const along = [0, 1, 2].map((axis) => imagesOf(source[axis], sizeM[axis], reach));
  const weight = weightOf(source[0], sizeM[0]) * weightOf(source[1], sizeM[1]) * weightOf(source[2], sizeM[2]);
  const list: number[] = [];
  for (const x of along[0]) {
    const dx = distanceOutside(x, sizeM[0]);
    for (const y of along[1]) {
      const dy = distanceOutside(y, sizeM[1]);
      for (const z of along[2]) {
        const dz = distanceOutside(z, sizeM[2]);
        if (dx * dx + dy * dy + dz * dz <= reach * reach) list.push(x, y, z, weight);
      }
    }
  }
  return Float64Array.from(list);
};

/** The near part and the slope of a rest; scratch, overwritten by each call below. */
export const rest = { near: 0, slope: 0 };

/** Sums of e^(-sR) / R and of e^(-sR) / 2s over the images at a point, into `rest`. */
export const sumImages = (images: Float64Array, x: number, y: number, z: number): void => {
  let near = 0;
  let slope = 0;
  const reach2 = (FARTHEST / SCREEN_PER_M) ** 2;
  for (let i = 0; i < images.length; i += 4) {
    const dx = images[i] - x;
    const dy = images[i + 1] - y;
    const dz = images[i + 2] - z;
    const r2 = dx * dx + dy * dy + dz * dz;
    if (r2 > reach2) continue;
    const r = Math.max(NEAREST_M, Math.sqrt(r2));
    const decayed = images[i + 3] * Math.exp(-SCREEN_PER_M * r);
    near += decayed / r;
    slope += decayed;
  }
  rest.near = near;
  rest.slope = slope / (2 * SCREEN_PER_M);
};

/**
 * The closed-axis function of the screened rigid room for one transverse term, g = cosh(gamma x<) cosh(gamma (a - x>)) /
 * (gamma sinh(gamma a)) with gamma^2 = kappa^2 + s^2, and -dg / d(s^2); into `rest`.
 */
export const setRigidClosed = (kappa2: number, x: number, x0: number, lengthM: number): void => {
  const gamma = Math.sqrt(kappa2 + SCREEN_PER_M * SCREEN_PER_M);
  const low = Math.min(x, x0);
  const high = lengthM - Math.max(x, x0);
  const eLow = Math.exp(-2 * gamma * low);
  const eHigh = Math.exp(-2 * gamma * high);
  const eAll = Math.exp(-2 * gamma * lengthM);
  const g = (Math.exp(-gamma * (lengthM - low - high)) * (1 + eLow) * (1 + eHigh)) / (2 * gamma * (1 - eAll));
  const steepness =
    1 / gamma +
    (lengthM * (1 + eAll)) / (1 - eAll) -
    (low * (1 - eLow)) / (1 + eLow) -
    (high * (1 - eHigh)) / (1 + eHigh);
  rest.near = g;
  rest.slope = (g * steepness) / (2 * gamma);
};

/** Normalised rigid cosine, integral of its square 1. */
export const rigidShape = (n: number, x: number, lengthM: number): number =>
  (n === 0 ? 1 : Math.SQRT2 * Math.cos((n * Math.PI * x) / lengthM)) / Math.sqrt(lengthM);

/** The rest for one pair of points, all terms of the closed axis being kept in the engine's sum; into `rest`. */
export const setRestOfPair = (
  geometry: BoxGeometry,
  closed: Axis,
  source: ArrayLike<number>,
  receiver: ArrayLike<number>,
): void => {
  const terms = geometry.terms(closed);
  const [b, c] = ACROSS[closed];
  const { sizeM } = geometry;
  const productB = rigidProducts(geometry.orders[b], source[b], receiver[b], sizeM[b]);
  const productC = rigidProducts(geometry.orders[c], source[c], receiver[c], sizeM[c]);
  let near = 0;
  let slope = 0;
  for (let t = 0; t < terms.count; t++) {
    setRigidClosed(terms.kappa2[t], receiver[closed], source[closed], sizeM[closed]);
    const product = productB[terms.first[t]] * productC[terms.second[t]];
    near += product * rest.near;
    slope += product * rest.slope;
  }
  sumImages(imageList(geometry, source), receiver[0], receiver[1], receiver[2]);
  rest.near -= 4 * Math.PI * near;
  rest.slope -= 4 * Math.PI * slope;
};

const rigidProducts = (orders: number, x0: number, x: number, lengthM: number): Float64Array => {
  const products = new Float64Array(orders);
  for (let n = 0; n < orders; n++) products[n] = rigidShape(n, x0, lengthM) * rigidShape(n, x, lengthM);
  return products;
};
