import { roomReadout } from '../../analysis/geometry/room.ts';
import { defaultFinish, octaveAbsorption, wallAdmittance } from '../../analysis/inputs/treatment.ts';
import { fieldOf } from '../../model/fields/registry.ts';
import type { Acoustics } from '../../model/fields/switch.ts';
import { FINISHES } from '../../model/finishes.ts';
import type { Key } from '../../model/paths.ts';
import { SURFACES } from '../../model/schema/room.ts';

const OCTAVES = ['125', '250', '500', '1000', '2000', '4000'] as const;

/** What a surface is taken to be made of where the file says nothing; a patch then leaves its surface as it is. */
const fallbackOf = (keys: readonly Key[]): string =>
  defaultFinish(SURFACES.find((surface) => surface === keys.at(-1)) ?? 'front');

/** A room in which nothing absorbs rings for ever, one that is open all round not at all: neither can be stated. */
const within = (timeS: number): number => {
  const { min = 0, max = timeS } = fieldOf('room.reverberationS{}');
  return Math.min(max, Math.max(min, timeS));
};

const rounded = (value: number, decimals: number): number => Number(value.toFixed(decimals)) + 0;

/** The engines' tables of surfaces, for switching from one way of stating surfaces or the room's damping to another. */
export const acoustics: Acoustics = {
  absorption(treatment, keys) {
    const values = octaveAbsorption(treatment, fallbackOf(keys));
    return Object.fromEntries(OCTAVES.map((octave, index) => [octave, rounded(values[index], 2)]));
  },
  admittance(treatment, keys) {
    const [real, imaginary] = wallAdmittance(treatment, fallbackOf(keys));
    return [rounded(real, 4), rounded(imaginary, 4)];
  },
  times(project) {
    const { rt60S } = roomReadout(project);
    return Object.fromEntries(OCTAVES.map((octave) => [octave, rounded(within(rt60S[octave]), 2)]));
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
