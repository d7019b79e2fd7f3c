import type { Detail, PrismSpec } from '../room-field.ts';
import { type PrismGeometry, prismGeometry } from './prism-geometry.ts';

export interface Fineness {
  /** Rigid plan modes to this frequency, as long as they are at most `mostModes` ... */
  readonly topHz: number;
  readonly mostModes: number;
  /** ... and to this one in small plans, as long as they are at most `fewModes`. */
  readonly smallTopHz: number;
  readonly fewModes: number;
  /** Loads on every edge and part, fewer where there are many: `mostLoads` in all. */
  readonly wallFunctions: number;
  readonly mostLoads: number;
}
export const BASIS_SIZE: Readonly<Record<Detail, Fineness>> = {
  first: { topHz: 200, mostModes: 60, smallTopHz: 260, fewModes: 40, wallFunctions: 3, mostLoads: 18 },
  fine: { topHz: 300, mostModes: 160, smallTopHz: 400, fewModes: 90, wallFunctions: 8, mostLoads: 56 },
};

/** The frequency below which a plan has `modes` modes (Weyl's estimate with its edge term). */
export const weylTopHz = ({ areaM2, edges, soundSpeed }: PrismGeometry, modes: number): number => {
  const perimeter = edges.reduce((sum, { lengthM }) => sum + lengthM, 0);
  const k = (-perimeter + Math.sqrt(perimeter * perimeter + 16 * Math.PI * areaM2 * modes)) / (2 * areaM2);
  return (k * soundSpeed) / (2 * Math.PI);
};

/** The frequency to which a plan's rigid modes are carried. */
export const basisTopHz = (geometry: PrismGeometry, detail: Detail): number => {
  const { topHz, mostModes, smallTopHz, fewModes } = BASIS_SIZE[detail];
  return Math.max(Math.min(topHz, weylTopHz(geometry, mostModes)), Math.min(smallTopHz, weylTopHz(geometry, fewModes)));
};

/** Modes to half as much again are what a field is accurate for (engine notes, section 7). */
const REACH = 1.5;

/** The frequency to which a prism's responses are as accurate as prism-field.ts says; beyond, they only show the trend. */
export const prismHoldsToHz = (spec: PrismSpec): number => basisTopHz(prismGeometry(spec), 'fine') / REACH;
