import type { BoxField } from '../box-field.ts';
import { boxModes } from '../box-modes.ts';
import { createBoxResponses } from '../box-responses.ts';
import { boxShapes } from '../box-shapes.ts';
import { createBoxSlices } from '../box-slice.ts';
import { boxGeometry } from '../box-state.ts';
import type { BoxSpec } from '../room-field.ts';
import { createStateCache } from '../state-cache.ts';
import { divideBox } from './box-patches.ts';
import { createLayouts, MODES } from './patch-layout.ts';
import { patchModes } from './patch-modes.ts';
import { createPatchResponses } from './patch-responses.ts';
import { createPatchSources } from './patch-slice.ts';
import { createPatchStates } from './patch-state.ts';

const CACHE_LIMIT_BYTES = 96e6;

export const createPatchedBoxField = (spec: BoxSpec): BoxField => {
  const { even, patches } = divideBox(spec);
  const geometry = boxGeometry(even);
  const cache = createStateCache(geometry, CACHE_LIMIT_BYTES);
  const states = createPatchStates(geometry, patches);
  const responses = createPatchResponses(geometry, cache, createBoxResponses(geometry, cache), patches, states);
  const slices = createBoxSlices(geometry, cache, createPatchSources(geometry, patches, states), responses.bytesFor);
  const layoutFor = createLayouts(geometry, patches, MODES);
  return {
    modes: (maxHz) => patchModes(geometry, patches, layoutFor, boxModes(geometry, maxHz)),
    modeShapes: (maxHz, pointsM) => boxShapes(geometry, maxHz, pointsM),
    unitResponses: (sourcesM, receiversM, frequenciesHz, growthPerS = 0) =>
      responses.at(sourcesM, receiversM, frequenciesHz, growthPerS),
    slice: (plane, sourcesM, weights, frequencyHz) => slices.at(plane, sourcesM, weights, frequencyHz),
    warmUp: (frequenciesHz) => {
      for (const hz of frequenciesHz) states.at(cache.at(hz, 0));
      cache.trim(responses.bytesFor);
    },
  };
};
