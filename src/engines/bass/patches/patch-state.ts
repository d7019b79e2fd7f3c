import { AXES, type BoxGeometry, type BoxState, readyTerms } from '../box-state.ts';
import type { BoxPatch } from './box-patches.ts';
import { bytesOfCoupled, type CoupledPatches, couplePatches } from './coupled-system.ts';
import { patchCouplings } from './patch-couplings.ts';
import { allModeIntegrals, type ModeIntegrals, type WallFactors, wallFactors } from './patch-integrals.ts';
import { createLayouts, type PatchLayout } from './patch-layout.ts';

/** What the patches are at one wavenumber. */
export interface PatchState {
  readonly layout: PatchLayout;
  /** Generation of the box state's axes that the integrals were last checked against. */
  generation: number;
  /** Eigenvalues w of the three axes the integrals belong to. */
  readonly roots: readonly Float64Array[];
  readonly integrals: readonly (readonly [ModeIntegrals, ModeIntegrals])[];
  /** For the axes that are the normal of some patch. */
  readonly walls: readonly (WallFactors | null)[];
  readonly coupled: CoupledPatches | null;
  readonly bytes: number;
}

export interface PatchStates {
  /** Patches at the box state's wavenumber, made when first asked for. */
  at(state: BoxState): PatchState;
  /** Layout at the box state's wavenumber. */
  bytesFor(state: BoxState): number;
}

export const createPatchStates = (geometry: BoxGeometry, patches: readonly BoxPatch[]): PatchStates => {
  const layoutFor = createLayouts(geometry, patches);
  const known = new WeakMap<BoxState, PatchState>();
  return {
    at: (state) => {
      const before = known.get(state);
      if (before !== undefined && stillHolds(before, state)) return before;
      const fresh = patchState(geometry, patches, state, layoutFor(state.kRe));
      known.set(state, fresh);
      return fresh;
    },
    bytesFor: (state) => known.get(state)?.bytes ?? 0,
  };
};

/** An axis solved anew for more orders holds the same first modes, unless a surface wave came in below them. */
const stillHolds = (patch: PatchState, state: BoxState): boolean => {
  if (patch.generation === state.generation) return true;
  for (const axis of AXES) {
    const was = patch.roots[axis];
    const is = state.axes[axis].roots.w;
    for (let i = 0; i < was.length; i++) if (Math.abs(was[i] - is[i]) > 1e-6 * (1 + Math.abs(was[i]))) return false;
  }
  patch.generation = state.generation;
  return true;
};

/** Couples the patches at a state; also for states that no cache holds. */
export const patchState = (
  geometry: BoxGeometry,
  patches: readonly BoxPatch[],
  state: BoxState,
  layout: PatchLayout,
): PatchState => {
  for (const axis of AXES) readyTerms(geometry, state, axis, layout.counts[axis]);
  const integrals = allModeIntegrals(state, patches, layout);
  const walls = AXES.map((axis) =>
    patches.some(({ normal }) => normal === axis) ? wallFactors(geometry, state, axis, layout.counts[axis]) : null,
  );
  const { count, delta } = layout.functions;
  const couplings = patchCouplings({ geometry, state, patches, layout, integrals, walls });
  const coupled = couplePatches(count, couplings, delta, state.kRe, state.kIm);
  let bytes = bytesOfCoupled(count) + 1000;
  for (const [u, v] of integrals) bytes += u.byteLength + v.byteLength;
  for (const one of walls) if (one !== null) bytes += 4 * one.plain[0].byteLength;
  const roots = AXES.map((axis) => state.axes[axis].roots.w.slice(0, 2 * layout.orders[axis]));
  for (const one of roots) bytes += one.byteLength;
  return { layout, generation: state.generation, roots, integrals, walls, coupled, bytes };
};
