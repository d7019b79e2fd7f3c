import type { Measures } from '../analysis/inputs/measures.ts';
import { fixed, formatLength, type UnitSystem } from './quantities-length.ts';

const SQUARE_FEET_PER_M2 = 1 / 0.3048 ** 2;

/** An area for the eye: `1.6 m²`, `17 sq ft`. */
export const areaText = (squareMetres: number, units: UnitSystem): string =>
  units === 'metric' ? `${fixed(squareMetres, 1)} m²` : `${fixed(squareMetres * SQUARE_FEET_PER_M2, 0)} sq ft`;

/** Lengths and areas in the person's units, for sentences made elsewhere. */
export const measuresIn = (units: UnitSystem): Measures => ({
  length: (metres) => formatLength(metres, units),
  area: (squareMetres) => areaText(squareMetres, units),
});
