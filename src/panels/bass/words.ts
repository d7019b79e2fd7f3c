import type { BassSlice } from '../../analysis/types.ts';
import type { UnitSystem } from '../../words/quantities-length.ts';
import { hertz, length } from '../figures.ts';

/** Half of what lengths are rounded to: nearer than this to the middle is on it. */
const MIDDLE_M = 0.005;

/** Where a slice lies, for its legend. */
const placeWords = ({ cut }: BassSlice, units: UnitSystem): string => {
  const { text, unit } = length(Math.abs(cut.atM), units);
  const at = `${text} ${unit}`.trim();
  if (cut.normal === 'y') return `${at} above the floor`;
  if (cut.normal === 'z') return `standing ${at} from the front`;
  if (Math.abs(cut.atM) < MIDDLE_M) return 'standing on the middle line';
  return `standing ${at} ${cut.atM < 0 ? 'left' : 'right'} of the middle`;
};

/** What a slice's colours say, for its legend. */
export const kindWords = (slice: BassSlice, alone: boolean): string => {
  if (slice.as === 'pressure') return 'Pressure, moving in phase';
  return slice.as === 'difference' ? 'Against the seats’ mean' : alone ? 'Level, own scale' : 'Level';
};

/** Frequency or band, and where. */
export const sliceWords = (slice: BassSlice, units: UnitSystem): string => {
  const over = slice.bandHz
    ? `mean of ${slice.bandHz[0]} to ${slice.bandHz[1]} Hz`
    : `${hertz(slice.frequencyHz).text} Hz`;
  return `${over}, ${placeWords(slice, units)}`;
};

/** A mode's order along width, length and height; a dash where the room is no box. */
export const orderWords = (order: readonly number[] | null): string => (order ? order.join('\u2009·\u2009') : '–');
