import { AXES, type BoxGeometry } from '../box-state.ts';
import { termsWithin } from '../transverse-terms.ts';
import type { BoxPatch } from './box-patches.ts';
import { type Stretch, stretchOf } from './gauss.ts';
import type { NearLoads } from './near-loads.ts';
import { type PatchFunctions, PER_RADIAN, patchFunctions } from './patch-functions.ts';
import { type RigidModes, rigidModesOf, type StaticTail, staticTails } from './static-tail.ts';
import { systemWork } from './system-work.ts';

/** What depends on room, patches and roughly on the wavenumber: functions, quadrature, truncation. */
export interface PatchLayout {
  readonly functions: PatchFunctions;
  /** Per patch, its two axes. */
  readonly stretches: readonly (readonly [Stretch, Stretch])[];
  /** Transverse terms per closed axis. */
  readonly counts: readonly number[];
  /** Orders those terms need per axis. */
  readonly orders: readonly number[];
  /** What the terms beyond add to the couplings on one wall. */
  readonly tails: readonly StaticTail[];
  readonly rigid: RigidModes;
  /** Static parts of the loads of points near patches, by point (near-loads.ts). */
  readonly near: Map<string, NearLoads>;
}

export interface Fineness {
  readonly reachPerM: number;
  readonly perRadian: number;
}

/**
 * Transverse sums that end in a patch are cut at sqrt(k^2 + reach^2): the integrals over a patch fall with every order, and
 * what couplings on one wall still lack is added as a static tail.
 */
const RESPONSES: Fineness = { reachPerM: 8, perRadian: PER_RADIAN };
/** Frequencies and decays of modes ask for less. */
export const MODES: Fineness = { reachPerM: 5, perRadian: 0.75 };
/** In the largest rooms sums end at this already: levels then move by some 0.02 dB, 0.06 dB at most (a hall of 30 m with 160 patches). */
const LEAST_REACH_PER_M = 3;
/** Steps of work that a frequency may take before they do, some 50 ms; judged at a wavenumber in the middle of the bass. */
const MOST_WORK = 12e6;
const JUDGED_PER_M = 2;
/** Layouts are made for wavenumbers in steps of this, 27 Hz. */
const STEP_PER_M = 0.5;

/** Where transverse sums are cut, 1/m. */
export const reachOf = (k: number, { reachPerM }: Fineness): number => Math.sqrt(k * k + reachPerM * reachPerM);

/** How fine responses are: as RESPONSES says unless that would take too long, which grows with the square of the reach. */
const finenessFor = ({ sizeM }: BoxGeometry, patches: readonly BoxPatch[]): Fineness => {
  const functions = patchFunctions(patches, JUDGED_PER_M, RESPONSES.perRadian);
  const work = systemWork(sizeM, patches, functions, reachOf(JUDGED_PER_M, RESPONSES));
  const reachPerM = RESPONSES.reachPerM * Math.min(1, Math.sqrt(MOST_WORK / work));
  return { ...RESPONSES, reachPerM: Math.max(LEAST_REACH_PER_M, reachPerM) };
};

/** The layout for a wavenumber, from those made before. */
export const createLayouts = (
  geometry: BoxGeometry,
  patches: readonly BoxPatch[],
  fineness = finenessFor(geometry, patches),
): ((kRe: number) => PatchLayout) => {
  const made = new Map<number, PatchLayout>();
  return (kRe) => {
    const k = STEP_PER_M * Math.max(1, Math.ceil(kRe / STEP_PER_M));
    let layout = made.get(k);
    if (layout === undefined) {
      layout = layOut(geometry, patches, k, fineness);
      made.set(k, layout);
    }
    return layout;
  };
};

const layOut = (geometry: BoxGeometry, patches: readonly BoxPatch[], k: number, fineness: Fineness): PatchLayout => {
  const functions = patchFunctions(patches, k, fineness.perRadian);
  const cut = Math.min(Math.sqrt(geometry.cutK2), reachOf(k, fineness));
  const stretches = patches.map(({ fromM, toM }, i): [Stretch, Stretch] => {
    const [first, second] = functions.patches[i].orders;
    return [stretchOf(fromM[0], toM[0], first, cut), stretchOf(fromM[1], toM[1], second, cut)];
  });
  const counts = AXES.map((axis) => termsWithin(geometry.terms(axis), cut * cut));
  const orders = AXES.map((axis) => Math.floor((geometry.sizeM[axis] * cut) / Math.PI) + 1);
  const rigid = rigidModesOf(geometry, patches, functions, cut);
  const tails = staticTails(geometry, patches, functions, rigid);
  return { functions, stretches, counts, orders, tails, rigid, near: new Map() };
};
