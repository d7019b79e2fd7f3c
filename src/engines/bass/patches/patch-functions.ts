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
/** A side shorter than this is even enough for a constant at long waves. */
const SHORT_M = 0.25;
/** Most functions in one room: a factorisation then takes some 10 ms a frequency. */
export const MOST_FUNCTIONS = 160;

const ordersFor = (lengthM: number, radians: number, share: number): number =>
  1 + Math.ceil(share * (Math.min(1, lengthM / SHORT_M) + (radians * lengthM) / 2) - 1e-9);

/** Pairs of orders below the straight line from one side's last order to the other's: high products add nothing. */
const pairsOf = (first: number, second: number): [number, number][] => {
  const pairs: [number, number][] = [];
  for (let p = 0; p < first; p++)
    for (let q = 0; q < second; q++) if (p / first + q / second < 1 + 0.5 / Math.max(first, second)) pairs.push([p, q]);
  return pairs;
};

const pairsFor = (areas: readonly PatchArea[], radians: number, share: number): [number, number][][] =>
  areas.map(({ fromM, toM }) =>
    pairsOf(ordersFor(toM[0] - fromM[0], radians, share), ordersFor(toM[1] - fromM[1], radians, share)),
  );

/** The functions for the wavenumber k (1/m); with too many patches each gets fewer, at least one. */
export const patchFunctions = (areas: readonly PatchArea[], k: number, perRadian = PER_RADIAN): PatchFunctions => {
  let share = 1;
  let pairs = pairsFor(areas, perRadian * k, share);
  const total = (): number => pairs.reduce((sum, list) => sum + list.length, 0);
  while (total() > MOST_FUNCTIONS && share > 0.01) {
    share *= 0.9;
    pairs = pairsFor(areas, perRadian * k, share);
  }
  if (total() > MOST_FUNCTIONS) pairs = areas.map(() => [[0, 0]]);
  let start = 0;
  const patches = pairs.map((list) => {
    const made: FunctionsOfPatch = {
      start,
      orders: [Math.max(...list.map(([p]) => p)) + 1, Math.max(...list.map(([, q]) => q)) + 1],
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
