import { finish } from '../finish.ts';
import { planBasisSteps } from '../plan/create-plan-basis.ts';
import { PLAN_DETAIL } from '../plan/element-choice.ts';
import type { EdgePart, PlanBasis } from '../plan/plan-basis.ts';
import type { Detail } from '../room-field.ts';
import { BASIS_SIZE, weylTopHz } from './basis-size.ts';
import type { DividedPrism } from './patch-division.ts';
import type { PrismGeometry } from './prism-geometry.ts';
import { SCREEN_PER_M } from './source-images.ts';

/**
 * What bases may hold; the newest stays in any case. One of 40 m2 takes 7 MB, with modes to 250 Hz one of 100 m2 13 and one of 300 m2 64,
 * growing as the area squared.
 */
const KEPT_BYTES = 25e6;
/** The bases made last: they depend on the plan alone, so that other dampings of the same room share one. */
const bases = new Map<string, PlanBasis>();

/** The basis for a plan, from the shelf or made now. */
export const basisFor = (geometry: PrismGeometry, divided: DividedPrism, detail: Detail, topHz: number): PlanBasis =>
  finish(prepareBasis(geometry, divided, detail, topHz));

/** The same in small steps: what was begun is thrown away where nobody goes on. */
export function* prepareBasis(
  geometry: PrismGeometry,
  divided: DividedPrism,
  detail: Detail,
  topHz: number,
): Generator<void, PlanBasis> {
  const parts = partsOf(geometry, divided);
  const perEdge = Math.floor(BASIS_SIZE[detail].mostLoads / (geometry.edges.length + parts.length));
  const wallFunctions = Math.min(BASIS_SIZE[detail].wallFunctions, Math.max(1, perEdge));
  const key = JSON.stringify([geometry.corners, geometry.soundSpeed, detail, topHz, wallFunctions, parts]);
  const basis = bases.get(key) ?? (yield* meshed(geometry, detail, topHz, { wallFunctions, parts }));
  bases.delete(key);
  bases.set(key, basis);
  let held = 0;
  for (const one of bases.values()) held += one.bytes;
  for (const [oldest, one] of bases) {
    if (held <= KEPT_BYTES || bases.size === 1) break;
    bases.delete(oldest);
    held -= one.bytes;
  }
  return basis;
}

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

function* meshed(
  geometry: PrismGeometry,
  detail: Detail,
  topHz: number,
  loads: { readonly wallFunctions: number; readonly parts: readonly EdgePart[] },
): Generator<void, PlanBasis> {
  const { corners, soundSpeed } = geometry;
  const isLarge = topHz > weylTopHz(geometry, LARGE_MODES);
  const plan = corners.map(([x, y]) => [rounded(x), rounded(y)] as const);
  const elements = PLAN_DETAIL[isLarge ? 'large' : detail];
  const sideM = (elements.sideOverWavelength * soundSpeed) / topHz;
  for (const share of SIDES) {
    try {
      return yield* planBasisSteps(plan, {
        ...elements,
        cornerShare: cornerShareOf(geometry, elements.cornerShare),
        ...loads,
        maxHz: topHz,
        soundSpeed,
        meshM: share * sideM,
        enrichTopHz: (SCREEN_PER_M * soundSpeed) / (2 * Math.PI),
      });
    } catch (fault) {
      if (!(fault instanceof RangeError) || share === SIDES[SIDES.length - 1]) throw fault;
    }
  }
  throw new RangeError('The plan has no elements.');
}

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
