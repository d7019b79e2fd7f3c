import type { Finding } from '../../analysis/types.ts';
import type { UnitSystem } from '../../words/quantities-length.ts';
import { fixed } from '../../words/quantities-length.ts';
import { count, decibels, degrees, hertz, length, millimetres, milliseconds, type Shown, share } from '../figures.ts';

/** As fine as the sentences are, so that number and sentence agree. */
const PER_INCH = 4;
/** Units that are written with one decimal. */
const FINER: ReadonlySet<string> = new Set(['deg', '°', 'dB']);

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

/**
 * A finding's number, with a second decimal where the first would show it on the edge of the range that it misses.
 */
export const shownOf = ({ value, unit, range, verdict }: Finding, units: UnitSystem): Shown | null => {
  if (value === null) return null;
  const shown = shownIn(value, unit, units);
  const onEdge = range.some(
    (edge) => edge !== null && edge !== value && shownIn(edge, unit, units).text === shown.text,
  );
  return verdict !== 'met' && onEdge && FINER.has(unit) ? { ...shown, text: fixed(value, 2) } : shown;
};

/** "120 mm or more", "22° to 32°", "at most 3 dB"; empty when both ends are open. */
export const rangeText = ([low, high]: Finding['range'], unit: string, units: UnitSystem): string => {
  if (low !== null && high !== null) return `${written(low, unit, units)} to ${written(high, unit, units)}`;
  if (low !== null) return `${written(low, unit, units)} or more`;
  if (high !== null) return `at most ${written(high, unit, units)}`;
  return '';
};
