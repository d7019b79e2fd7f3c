import { boxModes } from './box-modes';
import { createBoxResponses } from './box-responses';
import { createBoxSlices } from './box-slice';
import { boxGeometry } from './box-state';
import type { BoxSpec, RoomField } from './room-field';
import { createStateCache } from './state-cache';

/** Bytes of axes, closed-axis terms and receiver tables kept per room. */
const CACHE_LIMIT_BYTES = 48e6;

/**
 * The field of a rectangular room with locally reacting walls, exact but for truncation (relative 1e-4): two axes as sums
 * over their damped modes, the third in closed form. Positions outside the walls are brought onto them.
 */
export const createBoxField = (spec: BoxSpec): RoomField => {
  const geometry = boxGeometry(spec);
  const cache = createStateCache(geometry, CACHE_LIMIT_BYTES);
  const responses = createBoxResponses(geometry, cache);
  const slices = createBoxSlices(geometry, cache);
  return {
    modes: (maxHz) => boxModes(geometry, maxHz),
    unitResponses: (sourcesM, receiversM, frequenciesHz, growthPerS = 0) =>
      responses.at(sourcesM, receiversM, frequenciesHz, growthPerS),
    slice: (plane, sourcesM, weights, frequencyHz) => slices.at(plane, sourcesM, weights, frequencyHz),
    warmUp: (frequenciesHz) => {
      for (const hz of frequenciesHz) cache.at(hz, 0);
      cache.trim(responses.bytesFor);
    },
  };
};
