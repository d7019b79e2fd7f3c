import { TIED_HZ } from '../patches/free-roots.ts';
import { isStiff, patchFunctions } from '../patches/patch-functions.ts';
import type { PrismSpec } from '../room-field.ts';
import { weylTopHz } from './basis-size.ts';
import { dividePrism, type PrismPatch, spreadExcess } from './patch-division.ts';
import { type PrismGeometry, prismGeometry } from './prism-geometry.ts';
import { prismSystemWork } from './system-work.ts';

/** With more modes than this within TIED_HZ the work, which grows with the cube of their number, is too much: first order stands in. */
const MOST_NEAR = 120;
/** Functions of the plan up to this multiple of the highest wavenumber wanted take part. */
export const REACH = 1.35;
/** With more of them than this (plans above some 120 m2) every mode is damped by itself, to first order. */
export const MOST_COUPLED = 260;

/** The systems of patches that one root takes, its share of the search for where it may be included; more where modes move far. */
const SYSTEMS_PER_MODE = 5;
const SYSTEMS_PER_STIFF_MODE = 12;
/** Steps of work (system-work.ts) that are too many. */
const MOST_WORK = 2e10;

const STEP_HZ = 5;

/** Modes of the room below a frequency, by Weyl's estimate with its surface term: V k^3 / 6 pi^2 + S k^2 / 16 pi. */
const modesBelow = ({ areaM2, lengthM, edges, soundSpeed }: PrismGeometry, hz: number): number => {
  const k = (2 * Math.PI * Math.max(hz, 0)) / soundSpeed;
  const perimeterM = edges.reduce((sum, edge) => sum + edge.lengthM, 0);
  const surfaceM2 = 2 * areaM2 + perimeterM * lengthM;
  return (areaM2 * lengthM * k ** 3) / (6 * Math.PI ** 2) + (surfaceM2 * k ** 2) / (16 * Math.PI);
};

/**
 * The frequency to which the decays of a prism's modes take its patches as they act together, Hz, looked for up to `topHz`;
 * above it, each is taken by itself, in first order. By counts of modes and an estimate of the work before any is done, so that no
 * room takes more than some 30 s: 0 where the plan is too large for any.
 */
export const tiesPrismToHz = (geometry: PrismGeometry, patches: readonly PrismPatch[], topHz: number): number => {
  if (weylTopHz(geometry, MOST_COUPLED) < REACH * topHz) return 0;
  const perMode = patches.some(isStiff) ? SYSTEMS_PER_STIFF_MODE : SYSTEMS_PER_MODE;
  let work = 0;
  for (let hz = 0; hz < topHz; hz += STEP_HZ) {
    const to = hz + STEP_HZ;
    const functions = patchFunctions(patches, (2 * Math.PI * to) / geometry.soundSpeed);
    const modes = modesBelow(geometry, to) - modesBelow(geometry, hz);
    work += perMode * modes * prismSystemWork(geometry, patches, functions);
    const near = modesBelow(geometry, to + TIED_HZ) - modesBelow(geometry, to - TIED_HZ);
    if (work > MOST_WORK || near > MOST_NEAR) return hz;
  }
  return topHz;
};

/** The same for a room as it is given; `topHz` where it has no patches. */
export const prismTiedToHz = (asked: PrismSpec, topHz: number): number => {
  const spec = spreadExcess(asked, prismGeometry(asked));
  const geometry = prismGeometry(spec);
  const { patches } = dividePrism(spec, geometry);
  return patches.length === 0 ? topHz : tiesPrismToHz(geometry, patches, topHz);
};
