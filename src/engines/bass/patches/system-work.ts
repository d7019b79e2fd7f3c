import { ACROSS } from '../box-state.ts';
import type { Axis } from '../room-field.ts';
import type { BoxPatch } from './box-patches.ts';
import { placesOf } from './gauss.ts';
import type { FunctionsOfPatch, PatchFunctions } from './patch-functions.ts';

/** Work in steps of the innermost sums: an entry of a table of the closed axis, a place in one. */
const PER_ENTRY = 5;
const PER_PLACE = 12;
/** What a system takes however few its patches are: the modes of the axes, the eigenvectors of those tied. */
const LEAST_WORK = 1e5;
/** Loads of modes that are tied in a system, on average. */
const LOADS = 40;

/**
 * Steps of work that the system of the patches takes: couplings, tables of the closed axes, factorisation, loads; some 250e6 are done in
 * a second. `cut` is where transverse sums end, 1/m.
 */
export const systemWork = (
  sizeM: readonly number[],
  patches: readonly BoxPatch[],
  functions: PatchFunctions,
  cut: number,
): number => {
  const termsAcross = ACROSS.map(
    ([u, v]) => (sizeM[u] * sizeM[v] * cut * cut) / (4 * Math.PI) + ((sizeM[u] + sizeM[v]) * cut) / (2 * Math.PI),
  );
  const has = [0, 1, 2].map((axis) => patches.some(({ normal }) => normal === axis));
  let work = LEAST_WORK + (functions.count ** 2 * (functions.count + 6 * LOADS)) / 6;
  for (const [i, a] of patches.entries()) {
    const own = functions.patches[i];
    for (const [which, axis] of a.axes.entries()) {
      const orders = own.orders[which];
      const places = placesOf(orders, (cut * (a.toM[which] - a.fromM[which])) / 2);
      if (has[axis]) work += termsAcross[axis] * places * (PER_PLACE + 4 * orders);
    }
    for (let j = 0; j <= i; j++) work += pairWork(a, own, patches[j], functions.patches[j], termsAcross);
  }
  return work;
};

const pairWork = (
  a: BoxPatch,
  own: FunctionsOfPatch,
  b: BoxPatch,
  other: FunctionsOfPatch,
  termsAcross: readonly number[],
): number => {
  const terms = termsAcross[a.normal];
  const rows = own.first.length * other.first.length * Math.sqrt(terms);
  if (a.normal === b.normal) return terms * (PER_ENTRY + own.orders[1] * other.orders[1]) + rows;
  const ordersOf = (patch: BoxPatch, { orders }: FunctionsOfPatch, axis: Axis): number =>
    orders[patch.axes[0] === axis ? 0 : 1];
  const shared = ([0, 1, 2] as const).find((axis) => axis !== a.normal && axis !== b.normal) ?? 0;
  const sums = ordersOf(a, own, shared) * ordersOf(b, other, shared);
  return ordersOf(b, other, a.normal) * terms * (PER_ENTRY + sums) + rows;
};
