import { type Stretch, stretchOf } from '../patches/gauss.ts';
import { type PatchFunctions, patchFunctions } from '../patches/patch-functions.ts';
import type { PlanBasis } from '../plan/plan-basis.ts';
import { addRows } from '../plan/row-products.ts';
import { NEAR_END, type PrismPatch } from './patch-division.ts';
import { edgeTails, endTails, type PatchTails } from './patch-tails.ts';
import { liesWithin } from './prism-geometry.ts';
import type { Section } from './section.ts';

/**
 * The functions that stand for the pressure on patches (patches/coupled-system.ts), each a function of the section times one
 * of the even axis: on an edge polynomials along it and along the axis, on an end polynomials of both its axes at one place of
 * the axis.
 */
export interface PrismPatchLayout {
  readonly functions: PatchFunctions;
  /** Integrals of the section's part times phi_i, one row of `size` per distinct part. */
  readonly section: readonly Float64Array[];
  /** The same function by function, the last one first: phi_i and part m at (size - 1 - i) * parts + m. */
  readonly byFunction: Float64Array;
  /** Per function: its section part and its part along the axis. */
  readonly sectionOf: Int32Array;
  readonly alongOf: Int32Array;
  /** Parts along the axis: places and weights. */
  readonly along: readonly { readonly atM: Float64Array; readonly weights: Float64Array }[];
  /** Addition to W from what modes and orders leave out, row by row: at rest, and what k^2 adds (patch-tails.ts). */
  readonly tail: PatchTails;
  /** Quadrature places on the patches with every function's weight there: for a source's own near field. */
  readonly places: readonly PatchPlaces[];
}

export interface PatchPlaces {
  readonly start: number;
  readonly count: number;
  /** x, y, z per place. */
  readonly pointsM: Float64Array;
  /** phi_i at the places. */
  readonly values: Float64Array;
  /** Weight times function per place and function of the patch: place * count + function. */
  readonly weighted: Float64Array;
}

/** Layouts are made for wavenumbers in steps of this, 55 Hz. */
const STEP_PER_M = 1;
/** Places along a side are taken for waves as short as this rate. */
const RATE_PER_M = 9;

const LAYOUTS_KEPT = 6;
/** The layouts made last on a basis: other dampings of the same room mostly take the same functions and share all but their deltas. */
const shelves = new WeakMap<PlanBasis, Map<string, PrismPatchLayout>>();

export const createPatchLayouts = (
  section: Section,
  patches: readonly PrismPatch[],
): ((kRe: number) => PrismPatchLayout) => {
  const made = new Map<number, PrismPatchLayout>();
  return (kRe) => {
    const k = STEP_PER_M * Math.max(1, Math.ceil(kRe / STEP_PER_M));
    let layout = made.get(k);
    if (layout === undefined) {
      layout = sharedLayout(section, patches, patchFunctions(patches, k));
      made.set(k, layout);
    }
    return layout;
  };
};

const sharedLayout = (
  section: Section,
  patches: readonly PrismPatch[],
  functions: PatchFunctions,
): PrismPatchLayout => {
  const { basis, orders, geometry } = section;
  const shelf = shelves.get(basis) ?? new Map<string, PrismPatchLayout>();
  shelves.set(basis, shelf);
  const areas = patches.map(({ wall, fromM, toM }) => [wall, fromM, toM]);
  const products = functions.patches.map(({ first, second }) => [[...first], [...second]]);
  const key = JSON.stringify([orders, geometry.axis, geometry.lengthM, areas, products]);
  const known = shelf.get(key);
  shelf.delete(key);
  const layout = known === undefined ? layOut(section, patches, functions) : { ...known, functions };
  shelf.set(key, layout);
  for (const oldest of shelf.keys()) {
    if (shelf.size <= LAYOUTS_KEPT) break;
    shelf.delete(oldest);
  }
  return layout;
};

const layOut = (section: Section, patches: readonly PrismPatch[], functions: PatchFunctions): PrismPatchLayout => {
  const { geometry, basis, size } = section;
  const parts: Float64Array[] = [];
  const along: { atM: Float64Array; weights: Float64Array }[] = [];
  const shared = new Map<string, number>();
  const sectionOf = new Int32Array(functions.count);
  const alongOf = new Int32Array(functions.count);
  const places: PatchPlaces[] = [];
  const tail = {
    rest: new Float64Array(functions.count * functions.count),
    rise: new Float64Array(functions.count * functions.count),
  };
  patches.forEach((patch, index) => {
    const own = functions.patches[index];
    const u = stretchOf(patch.fromM[0], patch.toM[0], own.orders[0], RATE_PER_M);
    const v = stretchOf(patch.fromM[1], patch.toM[1], own.orders[1], RATE_PER_M);
    const points = pointsOf(section, patch, u, v);
    const values = basis.valuesAt(points.filter((_, i) => i % 3 !== 2));
    const count = own.first.length;
    const weighted = new Float64Array((points.length / 3) * count);
    for (let a = 0; a < u.atM.length; a++) {
      for (let b = 0; b < v.atM.length; b++) {
        const place = a * v.atM.length + b;
        const [x, y] = [points[3 * place], points[3 * place + 1]];
        if (patch.wall < 0 && !liesWithin(geometry, x, y)) continue;
        for (let f = 0; f < count; f++)
          weighted[place * count + f] =
            u.weighted[own.first[f] * u.atM.length + a] * v.weighted[own.second[f] * v.atM.length + b];
      }
    }
    places.push({ start: own.start, count, pointsM: points, values, weighted });
    // patches over and beside one another share their parts
    const stretch = `${patch.wall}/${patch.fromM[0]}/${patch.toM[0]}/${own.orders[0]}`;
    const firstPart = (patch.wall >= 0 ? shared.get(stretch) : undefined) ?? parts.length;
    if (patch.wall >= 0) {
      shared.set(stretch, firstPart);
      // one part of the section per order along the edge, one part along the axis per order there
      for (let p = 0; p < own.orders[0] && firstPart + p === parts.length; p++) {
        const part = new Float64Array(size);
        for (let a = 0; a < u.atM.length; a++) {
          const row = a * v.atM.length * size;
          const weight = u.weighted[p * u.atM.length + a];
          for (let i = 0; i < size; i++) part[i] += weight * values[row + i];
        }
        parts.push(part);
      }
      const firstAlong = along.length;
      for (let q = 0; q < own.orders[1]; q++)
        along.push({ atM: v.atM, weights: v.weighted.slice(q * v.atM.length, (q + 1) * v.atM.length) });
      for (let f = 0; f < count; f++) {
        sectionOf[own.start + f] = firstPart + own.first[f];
        alongOf[own.start + f] = firstAlong + own.second[f];
      }
    } else {
      for (let f = 0; f < count; f++) {
        const part = new Float64Array(size);
        const shares = weighted.filter((_, i) => i % count === f);
        addRows(values, shares.length, size, shares, 0, 1, part, 0);
        sectionOf[own.start + f] = parts.length;
        alongOf[own.start + f] = along.length;
        parts.push(part);
      }
      along.push({ atM: Float64Array.of(patch.wall === NEAR_END ? 0 : geometry.lengthM), weights: Float64Array.of(1) });
    }
    const tails =
      patch.wall >= 0
        ? edgeTails(section, patch, v, own)
        : endTails(section, patch, own, parts.slice(firstPart, firstPart + count));
    for (let f = 0; f < count; f++) {
      const to = (own.start + f) * functions.count + own.start;
      tail.rest.set(tails.rest.subarray(f * count, (f + 1) * count), to);
      tail.rise.set(tails.rise.subarray(f * count, (f + 1) * count), to);
    }
  });
  const byFunction = new Float64Array(size * parts.length);
  for (const [m, part] of parts.entries())
    for (let i = 0; i < size; i++) byFunction[(size - 1 - i) * parts.length + m] = part[i];
  return { functions, section: parts, byFunction, sectionOf, alongOf, along, tail, places };
};

/** Places on a patch as x, y of the section and z along the axis, the first side slowest. */
const pointsOf = ({ geometry }: Section, patch: PrismPatch, u: Stretch, v: Stretch): Float64Array => {
  const points: number[] = [];
  for (const first of u.atM) {
    for (const second of v.atM) {
      if (patch.wall < 0) {
        points.push(first, second, patch.wall === NEAR_END ? 0 : geometry.lengthM);
        continue;
      }
      const { from, along } = geometry.edges[patch.wall];
      points.push(from[0] + first * along[0], from[1] + first * along[1], second);
    }
  }
  return Float64Array.from(points);
};
