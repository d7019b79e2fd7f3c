import { dividePrism } from '../prism/patch-division.ts';
import { prismGeometry } from '../prism/prism-geometry.ts';
import type { BoxSpec, PrismSpec } from '../room-field.ts';
import { divideBox } from './box-patches.ts';
import { followsStiff, type PatchArea } from './patch-functions.ts';

const STEP_HZ = 10;

/** The highest step of frequency, Hz, to `topHz` to which the waves before stiff patches are followed; 0 where nowhere. */
const stiffHoldsToHz = (areas: readonly PatchArea[], soundSpeed: number, topHz: number): number => {
  let hz = topHz;
  while (hz > 0 && !followsStiff(areas, (2 * Math.PI * hz) / soundSpeed)) hz -= STEP_HZ;
  return Math.max(0, hz);
};

/** The frequency to which levels in a box with stiff patches are exact, looked for from `topHz` down. */
export const stiffBoxHoldsToHz = (spec: BoxSpec, topHz: number): number =>
  stiffHoldsToHz(divideBox(spec).patches, spec.soundSpeed, topHz);

/** The same for a prism. */
export const stiffPrismHoldsToHz = (spec: PrismSpec, topHz: number): number =>
  stiffHoldsToHz(dividePrism(spec, prismGeometry(spec)).patches, spec.soundSpeed, topHz);
