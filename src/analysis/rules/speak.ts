import type { Finding } from '../types.ts';
import { judge } from './rule.ts';

/**
 * How quantities are said: in one person's units. `decimals` is what one asks for beyond the whole degree, decibel,
 * centimetre or hundredth.
 */
export interface Speak {
  /** Metres in; "97 cm", "2.47 m" or "8 ft 1 1/4 in" out. */
  length(m: number, decimals?: number): string;
  angle(deg: number, decimals?: number): string;
  level(db: number, decimals?: number): string;
  share(fraction: number, decimals?: number): string;
  /** A seat and a row by their ids, in the middle of a sentence. */
  seat(id: string): string;
  row(id: string): string;
}

const whole = (value: number, decimals: number): string => {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? (0).toFixed(decimals) : text;
};

/** Plain numbers with a unit; the same in every language of units. */
export const angleText = (deg: number, decimals = 0): string =>
  `${whole(deg, decimals)} ${whole(Math.abs(deg), decimals) === whole(1, decimals) ? 'degree' : 'degrees'}`;
export const levelText = (db: number, decimals = 0): string => `${whole(db, decimals)} dB`;

/** Nine tenths of a hundredth must not read as all: only what is whole is called 100 %. */
export const shareText = (fraction: number, decimals = 0): string => {
  const percent = whole(fraction * 100, decimals);
  if (Number(percent) === 100 && fraction < 1) return 'nearly all';
  return Number(percent) === 0 && fraction > 0 ? 'under 1 %' : `${percent} %`;
};

/** As the report speaks. The metric system: centimetres below a metre, metres with two decimals from there; things by their ids. */
export const metric: Speak = {
  length: (m, decimals = 0) => (Math.abs(m) < 0.995 ? `${whole(m * 100, decimals)} cm` : `${whole(m, 2 + decimals)} m`),
  angle: angleText,
  level: levelText,
  share: shareText,
  seat: (id) => `seat ${id}`,
  row: (id) => `row ${id}`,
};

/**
 * The fewest decimals, none to two, with which the rounded value still earns the verdict that is printed beside it.
 * `wholeStep` is what no decimals round to, in the finding's unit: a degree, a decibel, 0.01 m, 0.01 of a share.
 */
export const honestDecimals = ({ value, range, closeRange, verdict }: Finding, wholeStep = 1): number => {
  if (value === null) return 0;
  const shown = (decimals: number): number => Number((value / wholeStep).toFixed(decimals)) * wholeStep;
  return [0, 1, 2].find((decimals) => judge(shown(decimals), { range, closeRange }) === verdict) ?? 2;
};

/** "22 to 32 degrees", "at least 1.20 m", "at most 15 degrees": a range in words; null where both ends are open. */
export const rangeText = ([low, high]: Finding['range'], say: (value: number) => string): string | null => {
  if (low !== null && high !== null) return low === high ? say(low) : `${bare(say(low))} to ${say(high)}`;
  if (low !== null) return `at least ${say(low)}`;
  return high !== null ? `at most ${say(high)}` : null;
};

/** The number of a plain quantity ("22 degrees" as "22"); a length keeps its unit, which may differ from its neighbour's. */
const bare = (text: string): string => text.replace(/ (degrees?|dB)$/, '');
