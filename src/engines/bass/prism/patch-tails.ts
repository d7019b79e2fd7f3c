import { type Stretch, stretchOf } from '../patches/gauss.ts';
import type { FunctionsOfPatch } from '../patches/patch-functions.ts';
import { rigidIntegrals } from '../patches/static-tail.ts';
import type { PrismPatch } from './patch-division.ts';
import type { PrismGeometry } from './prism-geometry.ts';
import type { Section } from './section.ts';

/**
 * What modes and orders that are not carried add to the coupling of a patch to itself, for all pairs of its functions. They
 * answer almost as they would without waves, and a little more: W = at rest + k^2 rise. Derived, for rigid walls.
 */
export interface PatchTails {
  readonly rest: Float64Array;
  readonly rise: Float64Array;
}

/** Orders of the even axis beyond those carried are summed to this multiple. */
const TAIL_REACH = 6;
/** So are the functions of an end's own rectangle, beyond the last one of the section. */
const RECTANGLE_REACH = 5;
/** What is nearer than this decides what functions beyond the section's show of an end; 1/m. */
const SCREEN_PER_M = 2;
/** Below this share of x0, kappa is nothing. */
const SMALL = 1e-2;

/**
 * Orders left out on an edge: there the section answers like a half plane, 1 / sqrt(sigma^2 - k^2), sigma that of the order and of the
 * polynomial along the edge.
 */
export const edgeTails = (
  { geometry, orders }: Section,
  patch: PrismPatch,
  v: Stretch,
  { first, second }: FunctionsOfPatch,
): PatchTails => {
  const { lengthM } = geometry;
  const count = first.length;
  const fine = stretchOf(v.fromM, v.toM, v.orders, (TAIL_REACH * orders * Math.PI) / lengthM);
  const places = fine.atM.length;
  const rest = new Float64Array(count * count);
  const rise = new Float64Array(count * count);
  const shown = new Float64Array(v.orders);
  for (let n = orders; n < TAIL_REACH * orders; n++) {
    const step = (n * Math.PI) / lengthM;
    shown.fill(0);
    for (let j = 0; j < places; j++) {
      const value = Math.cos(step * fine.atM[j]);
      for (let q = 0; q < v.orders; q++) shown[q] += fine.weighted[q * places + j] * value;
    }
    for (let f = 0; f < count; f++) {
      const across = (first[f] * Math.PI) / (patch.toM[0] - patch.fromM[0]);
      const sigma2 = step * step + across * across;
      const scale = (2 * shown[second[f]]) / (lengthM * Math.sqrt(sigma2));
      for (let g = 0; g < count; g++) {
        if (first[g] !== first[f]) continue;
        const product = scale * shown[second[g]];
        rest[f * count + g] += product;
        rise[f * count + g] += product / (2 * sigma2);
      }
    }
  }
  return { rest, rise };
};

/**
 * What an end leaves out. Of the functions carried, the orders beyond: their sum as an integral from x0 on, (2 / pi kappa) atan(kappa / x0).
 * Of the functions not carried, 1 / sqrt(kappa^2 - k^2), as from a screen s on it continues, (kappa^2 + s^2)^-1/2 and its slope over
 * k^2: those of a rectangle that has the walls nearest to the patch, all of them, less those of the section that are carried.
 */
export const endTails = (
  { geometry, lambda, size, orders }: Section,
  patch: PrismPatch,
  own: FunctionsOfPatch,
  parts: readonly Float64Array[],
): PatchTails => {
  const x0 = ((orders - 0.5) * Math.PI) / geometry.lengthM;
  const count = parts.length;
  const { rest, rise } = rectangleSums(geometry, patch, own, RECTANGLE_REACH * Math.sqrt(lambda[size - 1]));
  const beyond = Float64Array.from({ length: 2 * size }, (_, i) => {
    const square = Math.max(0, lambda[i >> 1]);
    return (i % 2 === 0 ? ordersBeyond : riseBeyond)(Math.sqrt(square), x0) - screenedAnswer(square, i % 2 === 1);
  });
  for (let f = 0; f < count; f++) {
    for (let g = 0; g < count; g++) {
      const [a, b] = [parts[f], parts[g]];
      let [sum, slope] = [0, 0];
      for (let i = 0; i < size; i++) {
        const product = a[i] * b[i];
        sum += product * beyond[2 * i];
        slope += product * beyond[2 * i + 1];
      }
      rest[f * count + g] += sum;
      rise[f * count + g] += slope;
    }
  }
  return { rest, rise };
};

/** The sum of 2 / L / (kappa^2 + (n pi / L)^2) over orders from x0 on, as an integral; ... */
const ordersBeyond = (kappa: number, x0: number): number =>
  kappa < SMALL * x0 ? 2 / (Math.PI * x0) : (2 * Math.atan(kappa / x0)) / (Math.PI * kappa);

/** ... and how it rises with k^2. */
const riseBeyond = (kappa: number, x0: number): number =>
  kappa < SMALL * x0
    ? 2 / (3 * Math.PI * x0 ** 3)
    : (Math.atan(kappa / x0) - (kappa * x0) / (kappa * kappa + x0 * x0)) / (Math.PI * kappa ** 3);

/** 1 / sqrt(kappa^2 - k^2) at k = 0 as its line from the screen on has it, or that line's slope over k^2. */
const screenedAnswer = (square: number, isSlope: boolean): number => {
  const inverse = 1 / (square + SCREEN_PER_M * SCREEN_PER_M);
  const slope = (Math.sqrt(inverse) * inverse) / 2;
  return isSlope ? slope : Math.sqrt(inverse) + SCREEN_PER_M * SCREEN_PER_M * slope;
};

/** Sums of products of a patch's functions, as the rigid modes of the rectangle about it show them, times their answers. */
const rectangleSums = (
  geometry: PrismGeometry,
  { fromM, toM }: PrismPatch,
  { orders, first, second }: FunctionsOfPatch,
  far: number,
): PatchTails => {
  const walls = wallsAbout(geometry, fromM, toM);
  const [u, v] = ([0, 1] as const).map((which) => {
    const [start, end] = walls[which];
    const modes = Math.floor(((end - start) * far) / Math.PI) + 1;
    const place = [fromM[which] - start, toM[which] - start] as const;
    const shown = rigidIntegrals(place[0], place[1], orders[which], end - start, far, modes);
    return { modes, step: Math.PI / (end - start), shown };
  });
  const count = first.length;
  const rest = new Float64Array(count * count);
  const rise = new Float64Array(count * count);
  const rows = new Float64Array(2 * u.modes);
  for (let q = 0; q < orders[1]; q++) {
    for (let r = 0; r < orders[1]; r++) {
      rows.fill(0);
      for (let m = 0; m < u.modes; m++) {
        for (let n = 0; n < v.modes; n++) {
          const square = (m * u.step) ** 2 + (n * v.step) ** 2;
          if (square > far * far) break;
          const product = v.shown[q * v.modes + n] * v.shown[r * v.modes + n];
          rows[2 * m] += product * screenedAnswer(square, false);
          rows[2 * m + 1] += product * screenedAnswer(square, true);
        }
      }
      for (let f = 0; f < count; f++) {
        if (second[f] !== q) continue;
        for (let g = 0; g < count; g++) {
          if (second[g] !== r) continue;
          for (let m = 0; m < u.modes; m++) {
            const product = u.shown[first[f] * u.modes + m] * u.shown[first[g] * u.modes + m];
            rest[f * count + g] += product * rows[2 * m];
            rise[f * count + g] += product * rows[2 * m + 1];
          }
        }
      }
    }
  }
  return { rest, rise };
};

/** Where walls lie to both sides of the middle of a patch, along both axes of the section; no nearer than the patch reaches. */
const wallsAbout = (
  { corners }: PrismGeometry,
  fromM: readonly [number, number],
  toM: readonly [number, number],
): readonly (readonly [number, number])[] =>
  [0, 1].map((which) => {
    const other = 1 - which;
    const at = (fromM[which] + toM[which]) / 2;
    const across = (fromM[other] + toM[other]) / 2;
    let [below, above] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
    corners.forEach((a, i) => {
      const b = corners[(i + 1) % corners.length];
      if (a[other] > across === b[other] > across) return;
      const crossing = a[which] + ((across - a[other]) / (b[other] - a[other])) * (b[which] - a[which]);
      if (crossing <= at) below = Math.max(below, crossing);
      else above = Math.min(above, crossing);
    });
    const reach = SCREEN_PER_M;
    return [
      Math.min(fromM[which], Number.isFinite(below) ? below : fromM[which] - reach),
      Math.max(toM[which], Number.isFinite(above) ? above : toM[which] + reach),
    ] as const;
  });
