import type { BoxField } from '../box-field.ts';
import { createBoxResponses } from '../box-responses.ts';
import { boxShapes } from '../box-shapes.ts';
import { createBoxSlices } from '../box-slice.ts';
import { boxGeometry } from '../box-state.ts';
import { finish } from '../finish.ts';
import type { BoxSpec } from '../room-field.ts';
import { createStateCache } from '../state-cache.ts';
import { divideBox } from './box-patches.ts';
import { createLayouts, MODES } from './patch-layout.ts';
import { patchModes } from './patch-modes.ts';
import { createPatchResponses } from './patch-responses.ts';
import { createPatchSources } from './patch-slice.ts';
import { createPatchStates } from './patch-state.ts';

/** Bytes of states, tables and factorised systems kept: 80 frequencies of a room full of patches; three patches take 20e6. */
const CACHE_LIMIT_BYTES = 72e6;

/**
 * The field of a rectangular room whose walls carry rectangles of another admittance, by full coupling: the even-walled
 * field of box-field.ts is the background, and the pressure on the patches solves a Galerkin system with products of
 * Legendre polynomials (coupled-system.ts, patch-functions.ts). A factorised system is kept per frequency, so that a moved
 * source costs its even field and one back-substitution. Within 0.02 dB of spectral-element solutions with absorbers, a door,
 * a reactive panel and an opening (tests/published/patched-box.test.ts).
 * Large stiff patches, which guide waves slower than in air, take more functions (patch-functions.ts). Above MOST_FUNCTIONS functions (with stiff
 * patches twice as many) the finer ones are left out, above that many patches the least are spread over their walls.
 * Near field: on a patch 0.05 dB, in an opening and for a source 0.2 m before one 0.2 dB (against itself with far more
 * functions and terms). Positions outside the walls are brought onto them.
 */
export const createPatchedBoxField = (spec: BoxSpec): BoxField => {
  const { even, patches } = divideBox(spec);
  const geometry = boxGeometry(even);
  const cache = createStateCache(geometry, CACHE_LIMIT_BYTES);
  const states = createPatchStates(geometry, patches);
  const responses = createPatchResponses(geometry, cache, createBoxResponses(geometry, cache), patches, states);
  const slices = createBoxSlices(geometry, cache, createPatchSources(geometry, patches, states), responses.bytesFor);
  const layoutFor = createLayouts(geometry, patches, MODES);
  const modesInSteps = (maxHz: number) => patchModes({ geometry, patches }, layoutFor, maxHz);
  return {
    modes: (maxHz) => finish(modesInSteps(maxHz)),
    modesInSteps,
    modeShapes: (maxHz, pointsM) => boxShapes(geometry, maxHz, pointsM),
    unitResponses: (sourcesM, receiversM, frequenciesHz, growthPerS = 0) =>
      responses.at(sourcesM, receiversM, frequenciesHz, growthPerS),
    slice: (plane, sourcesM, weights, frequencyHz) => slices.at(plane, sourcesM, weights, frequencyHz),
    bytes: () => cache.bytes(responses.bytesFor),
    warmUp: (frequenciesHz) => {
      for (const hz of frequenciesHz) states.at(cache.at(hz, 0));
      cache.trim(responses.bytesFor);
    },
  };
};
