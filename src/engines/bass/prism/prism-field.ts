import { finish } from '../finish.ts';
import type { Detail, PrismSpec, RoomField, RoomMode } from '../room-field.ts';
import { basisFor, prepareBasis } from './basis-shelf.ts';
import { basisTopHz } from './basis-size.ts';
import { createPrismPatches } from './patch-coupling.ts';
import { type DividedPrism, dividePrism, spreadExcess, spreadPatches } from './patch-division.ts';
import { intoPrism, type PrismGeometry, prismGeometry } from './prism-geometry.ts';
import { prismModes, prismShapes } from './prism-modes.ts';
import { createPrismResponses } from './prism-responses.ts';
import { createPrismSlices } from './prism-slice.ts';
import { createPrismStates } from './prism-state.ts';
import { createSection, type Section } from './section.ts';
import { createSourceShelf } from './source-shelf.ts';

/** Bytes of factorised systems kept per room. */
const STATE_LIMIT_BYTES = 4e6;
/** What sources' terms and the images of a slice take at most (source-shelf.ts, slice-grid.ts). */
const SHELVES_BYTES = 12e6;

/**
 * The field of a room with straight walls and one even direction, locally reacting walls:
 *
 *   H = 4 pi sum over n of Z_n(z) Z_n(z0) c_n . phi(r) + what the modes do not show of the source
 *
 * Z_n the exact damped modes of the even axis, phi the rigid modes of the cross-section and the answers of its walls to even
 * loads, c_n by Galerkin's method with the walls fully coupled (section.ts), the source's near field in closed form (near-field.ts).
 * Derived; the method is that of the engine notes, section 7, with the source taken out of the basis.
 *
 * Valid ("fine"): to 200 Hz, in plans up to about 45 m2 (larger ones to `prismHoldsToHz`). There 95 % of points agree
 * with finite and spectral elements within 0.02 dB for admittances to 0.1 and 0.1 dB to 0.3, mixed walls and |dz| of nothing included
 * (at 200 Hz, in 26 m2, 0.25 dB); walls of admittance 1 within some 0.4 dB, and more near them
 * (a subwoofer in their very corner 95 % within 0.7 dB, 1.6 dB where little is left); stiffness, which guides waves along
 * its wall, of 0.5 within 0.15 dB and of 1 within 0.9 dB;
 * with patches of 0.4 by inward corners 95 % within 0.05 dB, 0.6 m before one 0.2 dB. Within 0.3 m of an inward corner a
 * source's near field is rougher (5 % of the field at 190 Hz). Decays beside absorbers and openings are right to 0.2 % up to 145 Hz, half
 * of them to 0.03 %; those of openings to some 2 % at 200 Hz. Source and seat may change places within 0.3 % of the field. "first" is a
 * picture: half of the points within 0.05 dB, 95 % within 0.7 dB to 160 Hz, and its modes take patches as spread over their walls.
 */
export const createPrismField = (asked: PrismSpec, detail: Detail): RoomField => {
  const spec = spreadExcess(asked, prismGeometry(asked));
  const geometry = prismGeometry(spec);
  const divided = dividePrism(spec, geometry);
  const topHz = basisTopHz(geometry, detail);
  const basis = basisFor(geometry, divided, detail, topHz);
  const section = createSection(geometry, basis, divided.stretches, topHz);
  const states = createPrismStates(section, STATE_LIMIT_BYTES);
  const shelf = createSourceShelf(section);
  const patches = divided.patches.length > 0 ? createPrismPatches(section, states, divided.patches) : null;
  const responses = createPrismResponses(section, states, shelf, patches);
  const slices = createPrismSlices(section, states, shelf, patches);
  function* modesInSteps(maxHz: number): Generator<void, RoomMode[]> {
    const own = modesSection(geometry, divided, maxHz);
    yield;
    const { rigid } = own.basis;
    return detail === 'first'
      ? yield* prismModes(spreadSection(spec, own), [], rigid, maxHz)
      : yield* prismModes(own, divided.patches, rigid, maxHz);
  }
  return {
    modes: (maxHz) => finish(modesInSteps(maxHz)),
    modesInSteps,
    unitResponses: (sourcesM, receiversM, frequenciesHz, growthPerS = 0) =>
      responses.at(sourcesM, receiversM, frequenciesHz, growthPerS),
    slice: (plane, sourcesM, weights, frequencyHz) => slices.at(plane, sourcesM, weights, frequencyHz),
    modeShapes: (maxHz, pointsM) => {
      const own = modesSection(geometry, divided, maxHz);
      return prismShapes(own, own.basis.rigid, maxHz, intoPrism(geometry, pointsM));
    },
    bytes: () =>
      SHELVES_BYTES +
      8 * (section.atPlaces.length + 2 * section.wallRe.length) +
      states.bytes() +
      responses.bytes() +
      (patches?.bytes() ?? 0),
    warmUp: (frequenciesHz) => {
      for (const hz of frequenciesHz) states.at(hz, 0);
      states.trim();
    },
  };
};

/** The same room with its patches spread over their walls. */
const spreadSection = (spec: PrismSpec, { geometry, basis, orders }: Section): Section => {
  const spread = spreadPatches(spec, geometry);
  const even = prismGeometry(spread);
  return createSection(
    even,
    basis,
    dividePrism(spread, even).stretches,
    ((orders - 0.5) * even.soundSpeed) / (2 * even.lengthM),
  );
};

/** The section for modes to `maxHz`, complete to there whatever the field itself needs. */
const modesSection = (geometry: PrismGeometry, divided: DividedPrism, maxHz: number): Section => {
  const topHz = modesTopHz(geometry, maxHz);
  return createSection(geometry, basisFor(geometry, divided, 'fine', topHz), divided.stretches, topHz);
};

const modesTopHz = (geometry: PrismGeometry, maxHz: number): number => Math.max(maxHz, basisTopHz(geometry, 'fine'));

/**
 * Makes the plan's modes and functions, most of what a prism takes at first, bit by bit: each step some 10 to 50 ms. With
 * `modesToHz` those that `modes` needs to there. A field made after the last step finds them.
 */
export function* preparePrism(asked: PrismSpec, detail: Detail, modesToHz = 0): Generator<void, void> {
  const spec = spreadExcess(asked, prismGeometry(asked));
  const geometry = prismGeometry(spec);
  const divided = dividePrism(spec, geometry);
  if (modesToHz === 0) yield* prepareBasis(geometry, divided, detail, basisTopHz(geometry, detail));
  else yield* prepareBasis(geometry, divided, 'fine', modesTopHz(geometry, modesToHz));
}
