import type { BoxSpec } from '../room-field.ts';
import { type BoxPatch, divideBox } from './box-patches.ts';
import { TIED_HZ } from './free-roots.ts';
import { patchFunctions } from './patch-functions.ts';
import { MODES, reachOf } from './patch-layout.ts';
import { systemWork } from './system-work.ts';

/** What the work depends on of a box with patches. */
export interface BoxToTie extends Pick<BoxSpec, 'sizeM' | 'soundSpeed'> {
  readonly patches: readonly BoxPatch[];
}

/** Oscillations are looked for to this far above the highest mode wanted: patches move modes down. */
export const ABOVE_HZ = 10;
/** With more modes than this so near, stretches would have to be narrower than 2 Hz (free-roots.ts) and roots go missing. */
const MOST_NEAR = 280;
/** The systems of patches that one root takes, its share of the search for where it may be included: 2 to 5 in rooms of all sizes. */
const SYSTEMS_PER_MODE = 4;
/** Steps of work that are too many; some 250e6 are done in a second. */
const MOST_WORK = 4e9;
/** Work of a system is estimated for bands this wide. */
const BAND_HZ = 10;
/** How many modes a rigid box has up to a wavenumber, by Weyl's estimate with its surface term: V k^3 / 6 pi^2 + S k^2 / 16 pi. */
const modesBelow = ([x, y, z]: readonly number[], k: number): number => {
  const surfaceM2 = 2 * (x * y + y * z + z * x);
  return (x * y * z * k ** 3) / (6 * Math.PI ** 2) + (surfaceM2 * k ** 2) / (16 * Math.PI);
};

/**
 * The frequency to which the decays of modes of a box take its patches as they act together, Hz, looked for up to `topHz`; above
 * it each is taken by itself, in first order. By an estimate of the work before any is done, so that no room takes more than
 * some 20 s; 0 where there is time for none.
 */
export const tiesToHz = (box: BoxToTie, topHz: number): number => {
  const perHz = (2 * Math.PI) / box.soundSpeed;
  const below = (hz: number): number => modesBelow(box.sizeM, Math.max(0, hz) * perHz);
  const bandWork = (from: number, to: number): number => {
    const k = to * perHz;
    const functions = patchFunctions(box.patches, k, MODES.perRadian);
    const own = systemWork(box.sizeM, box.patches, functions, reachOf(k, MODES));
    return SYSTEMS_PER_MODE * (1 + below(to) - below(from)) * own;
  };
  let work = bandWork(0, ABOVE_HZ);
  for (let hz = 0; hz < topHz; hz += BAND_HZ) {
    const to = hz + BAND_HZ;
    work += bandWork(hz + ABOVE_HZ, to + ABOVE_HZ);
    if (work > MOST_WORK || below(to + TIED_HZ) - below(to - TIED_HZ) > MOST_NEAR) return hz;
  }
  return topHz;
};

/** The same for a room as it is given; `topHz` where it has no patches. */
export const boxTiedToHz = (spec: BoxSpec, topHz: number): number => {
  const { even, patches } = divideBox(spec);
  return patches.length === 0 ? topHz : tiesToHz({ ...even, patches }, topHz);
};
