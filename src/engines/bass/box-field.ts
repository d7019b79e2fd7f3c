import { boxModes } from './box-modes.ts';
import { createBoxResponses } from './box-responses.ts';
import { boxShapes } from './box-shapes.ts';
import { createBoxSlices } from './box-slice.ts';
import { boxGeometry } from './box-state.ts';
import type { BoxMode, BoxSpec, RoomField } from './room-field.ts';
import { createStateCache } from './state-cache.ts';

/** A room's field that knows its modes by their orders. */
export interface BoxField extends RoomField {
  modes(maxHz: number): BoxMode[];
}

/** Bytes of axes, closed-axis terms and receiver tables kept per room. */
const CACHE_LIMIT_BYTES = 48e6;

/**
 * The field of a rectangular room with locally reacting walls, two axes as sums over their damped modes, the third in
 * closed form:
 *
 *   H = 4 pi sum over m, n of Y_m(y) Y_m(y0) Z_n(z) Z_n(z0) g(x, x0; k^2 - w_m / Ly^2 - w_n / Lz^2)
 *
 * with Y and Z of bilinear norm 1 (axis-modes.ts) and g of closed-axis.ts. Exact but for the truncation, eps = 5e-5 of the
 * least attenuated term (truncation.ts). Derived: separation of variables in the box, as Morse and Ingard, Theoretical
 * Acoustics, ch. 9, carry it out with three sums (from memory). Positions outside the walls are brought onto them.
 */
export const createBoxField = (spec: BoxSpec): BoxField => {
  const geometry = boxGeometry(spec);
  const cache = createStateCache(geometry, CACHE_LIMIT_BYTES);
  const responses = createBoxResponses(geometry, cache);
  const slices = createBoxSlices(geometry, cache);
  return {
    modes: (maxHz) => boxModes(geometry, maxHz),
    modeShapes: (maxHz, pointsM) => boxShapes(geometry, maxHz, pointsM),
    unitResponses: (sourcesM, receiversM, frequenciesHz, growthPerS = 0) =>
      responses.at(sourcesM, receiversM, frequenciesHz, growthPerS),
    slice: (plane, sourcesM, weights, frequencyHz) => slices.at(plane, sourcesM, weights, frequencyHz),
    bytes: () => cache.bytes(responses.bytesFor),
    warmUp: (frequenciesHz) => {
      for (const hz of frequenciesHz) cache.at(hz, 0);
      cache.trim(responses.bytesFor);
    },
  };
};
