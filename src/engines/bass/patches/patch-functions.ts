/**
 * The functions that stand for the pressure on patches: on each a product of orthonormal Legendre polynomials of its two
 * axes, as many as its size asks for at the wavelength. Nothing here knows what room the patches belong to.
 */
export interface PatchArea {
  readonly fromM: readonly [number, number];
  readonly toM: readonly [number, number];
  /** Admittance of the patch less that of its wall. */
  readonly delta: readonly [number, number];
}

/** The functions of one patch: number `start + i` is the product of the polynomials first[i] and second[i]. */
export interface FunctionsOfPatch {
  readonly start: number;
  readonly orders: readonly [number, number];
  readonly first: Uint8Array;
  readonly second: Uint8Array;
}

export interface PatchFunctions {
  readonly count: number;
  readonly patches: readonly FunctionsOfPatch[];
  /** Admittance difference per function, re, im. */
  readonly delta: Float64Array;
}

/** Polynomials along a side: two, and these many more per radian k length / 2. */
export const PER_RADIAN = 1;
/** On a soft patch of more than rho c the pressure varies over 1 / (k beta) at its edges. Followed up to this factor. */
const STRONGEST = 2.5;
/**
 * A stiff patch, beta = j b, carries a wave with exp(-k b z) before it and sqrt(1 + b^2) k along it: derived from the wall's
 * condition. What it does is all in its own wave, so it asks for more: from this difference to its wall on, ...
 */
const STIFF = 0.2;
/** ... and up to this one, where the waves are too short for the functions there is time for. */
export const STIFFEST = 2.3;
/** Coefficients of a wave of w radians fall off above order w over a few times w^(1/3), as Bessel functions of that order do. */
const BEYOND_TURNING = 1.5;
/** A side shorter than this is even enough for a constant at long waves. */
const SHORT_M = 0.25;
/** 2 would be an ellipse, all that a plane wave along the patch needs; 1.3 takes a quarter less and is hardly worse. */
const CORNER = 1.3;
/** A patch that does half as much has its orders ranked this much later, on a scale where its last order is 1. */
const PER_OCTAVE = 0.1;
/** Most functions in one room: a factorisation then takes some 10 ms a frequency. */
export const MOST_FUNCTIONS = 160;
/** Where patches are stiff: then some 50 ms. */
const MOST_STIFF = 320;
/** Above 270 Hz, where hundreds of frequencies are asked for at once and single waves no longer decide, that many. */
const MOST_HIGH = 90;
const HIGH_PER_M = 5;

const ordersFor = (lengthM: number, radians: number): number =>
  1 + Math.ceil(Math.min(1, lengthM / SHORT_M) + (radians * lengthM) / 2 - 1e-9);

/** Whether a patch carries waves of its own. */
export const isStiff = ({ delta }: PatchArea): boolean => delta[1] >= STIFF;

/** Orders that the wave before a stiff patch asks for. */
const guidedOrdersFor = (lengthM: number, radians: number, b: number): number => {
  const along = radians * Math.hypot(1, Math.min(STIFFEST, b));
  return ordersFor(lengthM, along + (2 * BEYOND_TURNING * Math.cbrt((along * lengthM) / 2)) / lengthM);
};

/** One product of polynomials on one patch; the constant ranks first, high orders last, earlier on patches that do more. */
interface Candidate {
  readonly patch: number;
  readonly pair: readonly [number, number];
  readonly rank: number;
}

/** Pairs of orders under the curve (p / first)^CORNER + (q / second)^CORNER = 1: the highest products add nothing. */
const candidatesOf = (area: PatchArea, patch: number, radians: number, most: number): Candidate[] => {
  const { fromM, toM, delta } = area;
  const sides = [toM[0] - fromM[0], toM[1] - fromM[1]] as const;
  const strength = Math.hypot(delta[0], delta[1]);
  const own = radians * Math.min(STRONGEST, Math.max(1, strength));
  const [first, second] = sides.map((side) =>
    Math.max(ordersFor(side, own), isStiff(area) ? guidedOrdersFor(side, radians, delta[1]) : 0),
  );
  const lesser = PER_OCTAVE * Math.log2(most / (strength * sides[0] * sides[1]));
  const found: Candidate[] = [];
  for (let p = 0; p < first; p++) {
    for (let q = 0; q < second; q++) {
      if ((p / first) ** CORNER + (q / second) ** CORNER >= 1) continue;
      found.push({
        patch,
        pair: [p, q],
        rank: p + q === 0 ? Number.NEGATIVE_INFINITY : p / first + q / second + lesser,
      });
    }
  }
  return found;
};

/** All functions that patches ask for at the wavenumber k (1/m). */
const candidatesFor = (areas: readonly PatchArea[], k: number, perRadian: number): Candidate[] => {
  const effect = ({ fromM, toM, delta }: PatchArea): number =>
    Math.hypot(delta[0], delta[1]) * (toM[0] - fromM[0]) * (toM[1] - fromM[1]);
  const most = Math.max(0, ...areas.map(effect));
  return areas.flatMap((area, i) => candidatesOf(area, i, perRadian * k, most));
};

/** Whether the waves before stiff patches are followed at wavenumber k, as short as they are and as many functions as they ask for. */
export const followsStiff = (areas: readonly PatchArea[], k: number): boolean =>
  !areas.some(isStiff) ||
  (areas.every(({ delta }) => delta[1] <= STIFFEST) && candidatesFor(areas, k, PER_RADIAN).length <= MOST_STIFF);

/** The functions for the wavenumber k (1/m); of more than there is time for the lowest ranks, at least one of each patch unless patches are more than that. */
export const patchFunctions = (areas: readonly PatchArea[], k: number, perRadian = PER_RADIAN): PatchFunctions => {
  let candidates = candidatesFor(areas, k, perRadian);
  const most = areas.some(isStiff) ? MOST_STIFF : MOST_FUNCTIONS;
  const limit = k > HIGH_PER_M ? Math.max(MOST_HIGH, Math.min(areas.length, MOST_FUNCTIONS)) : most;
  if (candidates.length > limit)
    candidates = candidates.sort((a, b) => a.rank - b.rank || a.patch - b.patch).slice(0, limit);
  const pairs: (readonly [number, number])[][] = areas.map(() => []);
  for (const { patch, pair } of candidates) pairs[patch].push(pair);
  let start = 0;
  const patches = pairs.map((list) => {
    const made: FunctionsOfPatch = {
      start,
      orders: [Math.max(0, ...list.map(([p]) => p)) + 1, Math.max(0, ...list.map(([, q]) => q)) + 1],
      first: Uint8Array.from(list, ([p]) => p),
      second: Uint8Array.from(list, ([, q]) => q),
    };
    start += list.length;
    return made;
  });
  const delta = new Float64Array(2 * start);
  patches.forEach((patch, i) => {
    for (let a = patch.start; a < patch.start + patch.first.length; a++) delta.set(areas[i].delta, 2 * a);
  });
  return { count: start, patches, delta };
};
