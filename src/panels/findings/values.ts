import type { Finding } from '../../analysis/types.ts';
import type { UnitSystem } from '../../words/quantities-length.ts';
import { count, decibels, degrees, hertz, length, millimetres, milliseconds, type Shown, share } from '../figures.ts';

/** As fine as the sentences are, so that number and sentence agree. */
const PER_INCH = 4;

/** A finding's number in the person's units. Units it does not know are written as they came, with one decimal. */
export const shownIn = (value: number, unit: string, units: UnitSystem): Shown => {
  switch (unit) {
    case 'deg':
    case '°':
      return degrees(value);
    case 'dB':
      return decibels(value);
    case 'Hz':
      return hertz(value);
    case 'ms':
      return milliseconds(value);
    case 'm':
      return length(value, units, PER_INCH);
    case 'mm':
      return millimetres(value, units, PER_INCH);
    case '%':
      return count(value, 0, '%');
    case 'share':
    case 'fraction':
    case '1':
      return share(value);
    default:
      return count(value, 1, unit);
  }
};

const written = (value: number, unit: string, units: UnitSystem): string => {
  const { text, unit: sign } = shownIn(value, unit, units);
  if (sign === '') return text;
  return sign === '°' ? `${text}°` : `${text} ${sign}`;
};

/** "120 mm or more", "22° to 32°", "at most 3 dB"; empty when both ends are open. */
export const rangeText = ([low, high]: Finding['range'], unit: string, units: UnitSystem): string => {
  if (low !== null && high !== null) return `${written(low, unit, units)} to ${written(high, unit, units)}`;
  if (low !== null) return `${written(low, unit, units)} or more`;
  if (high !== null) return `at most ${written(high, unit, units)}`;
  return '';
};
