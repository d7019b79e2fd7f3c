import type { WallSources } from '../box-slice.ts';
import { type BoxGeometry, type BoxState, readyTerms } from '../box-state.ts';
import { BOTH, pointFactors } from '../closed-axis.ts';
import type { SlicePlane } from '../room-field.ts';
import { termsWithin } from '../transverse-terms.ts';
import { cutKappa2, newCut, setCut } from '../truncation.ts';
import type { BoxPatch } from './box-patches.ts';
import { answerOfPatches } from './coupled-system.ts';
import { patchLoads } from './patch-loads.ts';
import type { PatchState, PatchStates } from './patch-state.ts';
import { createStandingSlices, spreadStrength } from './standing-slice.ts';

/** Relative error aimed at between a patch and a plane: ln(1 / 1e-4). */
const REACH = Math.log(1e4);
const cut = newCut();
let planeFactors = new Float64Array(0);
let spread = new Float64Array(0);

/**
 * The patches of a box as sources of a slice: the field is that of the even box less the sum over patch functions of y_a
 * times the integral of phi_a G0 (coupled-system.ts), whose coefficient at a term (m, n) across the plane is a product of
 * integrals over the patch. Walls that stand on the plane are summed another way (standing-slice.ts). The
 * grid's points go without the static part of near-loads.ts: up to 4 % of the rms in an opening, nothing from 0.7 m on.
 */
export const createPatchSources = (
  geometry: BoxGeometry,
  patches: readonly BoxPatch[],
  states: PatchStates,
): WallSources => {
  let loads = new Float64Array(0);
  /** Minus 4 pi y of all sources together. */
  let strength = new Float64Array(0);
  let own: PatchState | null = null;
  const standing = createStandingSlices(geometry, patches);

  const prepare: WallSources['prepare'] = (state, plane, sources, weights) => {
    own = states.at(state);
    const { count } = own.layout.functions;
    const sourceCount = sources.length / 3;
    if (loads.length !== 2 * count * sourceCount) loads = new Float64Array(2 * count * sourceCount);
    if (strength.length !== 2 * count) strength = new Float64Array(2 * count);
    strength.fill(0);
    if (own.coupled === null) return 0;
    patchLoads(geometry, state, patches, own, sources, loads);
    for (let s = 0; s < sourceCount; s++) {
      const re = -4 * Math.PI * weights[2 * s];
      const im = -4 * Math.PI * weights[2 * s + 1];
      for (let a = 0, i = 2 * count * s; a < 2 * count; a += 2, i += 2) {
        strength[a] += re * loads[i] - im * loads[i + 1];
        strength[a + 1] += re * loads[i + 1] + im * loads[i];
      }
    }
    answerOfPatches(own.coupled, strength);
    return termsNeeded(geometry, state, patches, own, plane);
  };

  const addTerms: WallSources['addTerms'] = (state, plane, count, sums) => {
    if (count === 0 || own === null || own.coupled === null || own.walls[plane.normal] === null) return;
    const { normal, atM } = plane;
    const terms = Math.min(count, own.layout.counts[normal]);
    readyTerms(geometry, state, normal, terms);
    if (planeFactors.length < 4 * terms) planeFactors = new Float64Array(4 * terms);
    pointFactors(
      state.closed[normal],
      0,
      terms,
      atM,
      state.walls[normal],
      geometry.sizeM[normal],
      true,
      BOTH,
      planeFactors,
    );
    for (const [i, patch] of patches.entries())
      if (patch.normal === normal) addParallel(geometry, own, patch, i, terms, strength, sums);
  };

  const addField: WallSources['addField'] = (state, plane, re, im) => {
    if (own === null || own.coupled === null) return;
    standing.add(state, own, plane, strength, re, im);
  };
  return { prepare, addTerms, addField };
};

/** As many terms as the nearest parallel wall with patches needs; none where there is no such wall. */
const termsNeeded = (
  geometry: BoxGeometry,
  state: BoxState,
  patches: readonly BoxPatch[],
  own: PatchState,
  { normal, atM }: SlicePlane,
): number => {
  let gap = Number.POSITIVE_INFINITY;
  for (const patch of patches) {
    if (patch.normal !== normal) continue;
    gap = Math.min(gap, Math.abs(atM - (patch.side === 0 ? 0 : geometry.sizeM[normal])));
  }
  if (gap === Number.POSITIVE_INFINITY) return 0;
  setCut(geometry, state, normal, cut);
  const needed = termsWithin(geometry.terms(normal), cutKappa2(cut, REACH / Math.max(gap, 1e-9)));
  return Math.min(own.layout.counts[normal], needed);
};

/** A patch whose wall is parallel to the plane. */
const addParallel = (
  geometry: BoxGeometry,
  own: PatchState,
  patch: BoxPatch,
  i: number,
  count: number,
  strength: Float64Array,
  sums: Float64Array,
): void => {
  const { normal, side } = patch;
  const wall = own.walls[normal];
  if (wall === null) return;
  if (spread.length < 2 * count) spread = new Float64Array(2 * count);
  spread.fill(0, 0, 2 * count);
  spreadStrength(geometry, own, patch, i, count, strength, spread);
  const half = wall.plain[side];
  for (let t = 0; t < count; t++) {
    // wall at 0: L(0) (R D)(plane); far wall: (L D)(plane) R(a)
    const w = 4 * t + 2 * side;
    const p = 4 * t + 2 - 2 * side;
    const gRe = half[w] * planeFactors[p] - half[w + 1] * planeFactors[p + 1];
    const gIm = half[w] * planeFactors[p + 1] + half[w + 1] * planeFactors[p];
    sums[2 * t] += gRe * spread[2 * t] - gIm * spread[2 * t + 1];
    sums[2 * t + 1] += gRe * spread[2 * t + 1] + gIm * spread[2 * t];
  }
};
