import { defaultFinish, octaveAbsorption, wallAdmittance } from '../../analysis/inputs/treatment.ts';
import type { Acoustics } from '../../model/fields/switch.ts';
import { FINISHES } from '../../model/finishes.ts';
import type { Key } from '../../model/paths.ts';
import { SURFACES } from '../../model/schema/room.ts';

const OCTAVES = ['125', '250', '500', '1000', '2000', '4000'] as const;

/** What a surface is taken to be made of where the file says nothing; a patch then leaves its surface as it is. */
const fallbackOf = (keys: readonly Key[]): string =>
  defaultFinish(SURFACES.find((surface) => surface === keys.at(-1)) ?? 'front');

const rounded = (value: number, decimals: number): number => Number(value.toFixed(decimals)) + 0;

/** The engines' tables of surfaces, for switching from one way of stating a surface to another. */
export const acoustics: Acoustics = {
  absorption(treatment, keys) {
    const values = octaveAbsorption(treatment, fallbackOf(keys));
    return Object.fromEntries(OCTAVES.map((octave, index) => [octave, rounded(values[index], 2)]));
  },
  admittance(treatment, keys) {
    const [real, imaginary] = wallAdmittance(treatment, fallbackOf(keys));
    return [rounded(real, 4), rounded(imaginary, 4)];
  },
  finish(treatment, keys) {
    if (treatment?.finish !== undefined) return treatment.finish;
    const wanted = octaveAbsorption(treatment, fallbackOf(keys));
    const away = (id: string): number =>
      octaveAbsorption({ finish: id }, '').reduce((sum, value, index) => sum + (value - wanted[index]) ** 2, 0);
    const ids = FINISHES.map(({ id }) => id);
    return ids.reduce((best, id) => (away(id) < away(best) ? id : best));
  },
};
