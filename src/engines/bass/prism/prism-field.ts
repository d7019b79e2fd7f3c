import { createPlanBasis } from '../plan/create-plan-basis.ts';
import { PLAN_DETAIL } from '../plan/element-choice.ts';
import type { EdgePart, PlanBasis } from '../plan/plan-basis.ts';
import type { Detail, PrismSpec, RoomField } from '../room-field.ts';
import { BASIS_SIZE, basisTopHz, weylTopHz } from './basis-size.ts';
import { createPrismPatches } from './patch-coupling.ts';
import { type DividedPrism, dividePrism, spreadExcess, spreadPatches } from './patch-division.ts';
import { intoPrism, type PrismGeometry, prismGeometry } from './prism-geometry.ts';
import { prismModes, prismShapes } from './prism-modes.ts';
import { createPrismResponses } from './prism-responses.ts';
import { createPrismSlices } from './prism-slice.ts';
import { createPrismStates } from './prism-state.ts';
import { createSection, type Section } from './section.ts';
import { SCREEN_PER_M } from './source-images.ts';
import { createSourceShelf } from './source-shelf.ts';

/** Bytes of factorised systems kept per room. */
const STATE_LIMIT_BYTES = 8e6;

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
 * (at 200 Hz, in 26 m2, 0.25 dB); walls of admittance 1 within some 0.5 dB, and more near them. Within 0.3 m of an inward corner a
 * source's near field is rougher (5 % of the field at 190 Hz). Source and seat may change places within 0.3 % of the field. "first" is a
 * picture: half of the points within 0.05 dB, 95 % within 0.7 dB to 160 Hz. `modes` takes patches that do not reach over the whole even axis
 * as spread over their walls (the same absorption in all): eigenfrequencies are rigid and unaffected, single decays rougher.
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
  return {
    modes: (maxHz) => {
      const even = modesSection(spec, geometry, divided, maxHz);
      return prismModes(even, even.basis.rigid, maxHz);
    },
    unitResponses: (sourcesM, receiversM, frequenciesHz, growthPerS = 0) =>
      responses.at(sourcesM, receiversM, frequenciesHz, growthPerS),
    slice: (plane, sourcesM, weights, frequencyHz) => slices.at(plane, sourcesM, weights, frequencyHz),
    modeShapes: (maxHz, pointsM) => {
      const even = modesSection(spec, geometry, divided, maxHz);
      return prismShapes(even, even.basis.rigid, maxHz, intoPrism(geometry, pointsM));
    },
    warmUp: (frequenciesHz) => {
      for (const hz of frequenciesHz) states.at(hz, 0);
      states.trim();
    },
  };
};

const BASES_KEPT = 2;
/** The bases made last: they depend on the plan alone, so that other dampings of the same room share one. */
const bases = new Map<string, PlanBasis>();

const basisFor = (geometry: PrismGeometry, divided: DividedPrism, detail: Detail, topHz: number): PlanBasis => {
  const parts = partsOf(geometry, divided);
  const perEdge = Math.floor(BASIS_SIZE[detail].mostLoads / (geometry.edges.length + parts.length));
  const wallFunctions = Math.min(BASIS_SIZE[detail].wallFunctions, Math.max(1, perEdge));
  const key = JSON.stringify([geometry.corners, geometry.soundSpeed, detail, topHz, wallFunctions, parts]);
  let basis = bases.get(key);
  if (basis === undefined) {
    basis = meshed(geometry, detail, topHz, { wallFunctions, parts });
  } else bases.delete(key);
  bases.set(key, basis);
  for (const oldest of bases.keys()) {
    if (bases.size <= BASES_KEPT) break;
    bases.delete(oldest);
  }
  return basis;
};

/**
 * With more corners than this elements shrink less towards them: modes of 40 to 64 corners in 25 m2 stay within 7e-4, in a fifth of the
 * time. In a plan beyond LARGE_M2 that has so many they hardly shrink, which leaves some 4e-3 at the highest modes.
 */
const MANY_CORNERS = 16;
const LARGE_M2 = 100;
const cornerShareOf = ({ corners, areaM2 }: PrismGeometry, usual: number): number =>
  corners.length <= MANY_CORNERS ? usual : Math.max(usual, areaM2 > LARGE_M2 ? 0.3 : 0.02);

/** Where more modes than this are wanted elements of higher order take less time. */
const LARGE_MODES = 220;
/** Lengths of elements are tried in these proportions: an unlucky plan that one mesh cannot cut another can. */
const SIDES = [1, 0.85, 1.2, 0.7];
/** Corners are taken to the nanometre: a wall that is askew by rounding alone is straight. */
const rounded = (x: number): number => Math.round(x * 1e9) / 1e9;

const meshed = (
  geometry: PrismGeometry,
  detail: Detail,
  topHz: number,
  loads: { readonly wallFunctions: number; readonly parts: readonly EdgePart[] },
): PlanBasis => {
  const { corners, soundSpeed } = geometry;
  const isLarge = topHz > weylTopHz(geometry, LARGE_MODES);
  const plan = corners.map(([x, y]) => [rounded(x), rounded(y)] as const);
  const elements = PLAN_DETAIL[isLarge ? 'large' : detail];
  const sideM = (elements.sideOverWavelength * soundSpeed) / topHz;
  const make = (share: number): PlanBasis =>
    createPlanBasis(plan, {
      ...elements,
      cornerShare: cornerShareOf(geometry, elements.cornerShare),
      ...loads,
      maxHz: topHz,
      soundSpeed,
      meshM: share * sideM,
      enrichTopHz: (SCREEN_PER_M * soundSpeed) / (2 * Math.PI),
    });
  for (const share of SIDES) {
    try {
      return make(share);
    } catch (fault) {
      if (!(fault instanceof RangeError) || share === SIDES[SIDES.length - 1]) throw fault;
    }
  }
  return make(1);
};

/** Stretches that are not whole edges, and the patches on edges: each gets loads of its own. */
const partsOf = ({ edges }: PrismGeometry, { stretches, patches }: DividedPrism): EdgePart[] => {
  const parts = [
    ...stretches.filter(({ edge, fromM, toM }) => toM - fromM < edges[edge].lengthM - 1e-6),
    ...patches
      .filter(({ wall }) => wall >= 0)
      .map(({ wall, fromM, toM }) => ({ edge: wall, fromM: fromM[0], toM: toM[0] })),
  ].map(({ edge, fromM, toM }): EdgePart => ({ edge, fromM, toM }));
  const seen = new Set<string>();
  return parts.filter(({ edge, fromM, toM }) => {
    const key = `${edge}/${fromM.toFixed(6)}/${toM.toFixed(6)}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
};

/** The section for modes to `maxHz`, complete to there whatever the field itself needs, patches spread over their walls. */
const modesSection = (spec: PrismSpec, geometry: PrismGeometry, divided: DividedPrism, maxHz: number): Section => {
  const topHz = Math.max(maxHz, basisTopHz(geometry, 'fine'));
  const basis = basisFor(geometry, divided, 'fine', topHz);
  const spread = spreadPatches(spec, geometry);
  const spreadGeometry = prismGeometry(spread);
  return createSection(spreadGeometry, basis, dividePrism(spread, spreadGeometry).stretches, topHz);
};
