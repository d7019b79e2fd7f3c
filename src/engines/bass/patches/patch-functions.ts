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
/**
 * On a patch of more than rho c the pressure varies over 1 / (k beta) instead of 1 / k: at its edges where it is soft, in surface
 * waves where it is stiff. Followed up to this factor.
 */
const STRONGEST = 2.5;
/** A side shorter than this is even enough for a constant at long waves. */
const SHORT_M = 0.25;
/** 2 would be an ellipse, all that a plane wave along the patch needs; 1.3 takes a quarter less and is hardly worse. */
const CORNER = 1.3;
/** A patch that does half as much has its orders ranked this much later, on a scale where its last order is 1. */
const PER_OCTAVE = 0.1;
/** Most functions in one room: a factorisation then takes some 10 ms a frequency. */
export const MOST_FUNCTIONS = 160;
/** Above 270 Hz, where hundreds of frequencies are asked for at once and single waves no longer decide, that many. */
const MOST_HIGH = 90;
const HIGH_PER_M = 5;

const ordersFor = (lengthM: number, radians: number): number =>
  1 + Math.ceil(Math.min(1, lengthM / SHORT_M) + (radians * lengthM) / 2 - 1e-9);

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
  const [first, second] = [ordersFor(sides[0], own), ordersFor(sides[1], own)];
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

/** The functions for the wavenumber k (1/m); the lowest MOST_FUNCTIONS ranks, at least one of each patch unless patches are more than that. */
export const patchFunctions = (areas: readonly PatchArea[], k: number, perRadian = PER_RADIAN): PatchFunctions => {
  const effect = ({ fromM, toM, delta }: PatchArea): number =>
    Math.hypot(delta[0], delta[1]) * (toM[0] - fromM[0]) * (toM[1] - fromM[1]);
  const most = Math.max(0, ...areas.map(effect));
  let candidates = areas.flatMap((area, i) => candidatesOf(area, i, perRadian * k, most));
  const limit = k > HIGH_PER_M ? Math.max(MOST_HIGH, Math.min(areas.length, MOST_FUNCTIONS)) : MOST_FUNCTIONS;
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
