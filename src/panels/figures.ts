import { fixed, formatImperial, type UnitSystem } from '../words/quantities-length.ts';

/** A figure as it is shown, and the same number in the report's unit rounded just as far. */
export interface Shown {
  readonly text: string;
  readonly unit: string;
  /** In the report's unit, rounded as shown; written into the page so that page and report can be compared. */
  readonly value: number;
  /** The rounding step in the report's unit. */
  readonly step: number;
}

const rounded = (value: number, decimals: number): number => Number(value.toFixed(decimals)) + 0;

const shown = (value: number, decimals: number, unit: string): Shown => ({
  text: fixed(value, decimals),
  unit,
  value: rounded(value, decimals),
  step: 10 ** -decimals,
});

export const degrees = (deg: number): Shown => shown(deg, 1, '°');
export const decibels = (db: number): Shown => shown(db, 1, 'dB');
/** A difference with its sign, where there is one to speak of. */
export const signed = (db: number): string => (rounded(db, 1) > 0 ? `+${fixed(db, 1)}` : fixed(db, 1));
export const hertz = (hz: number): Shown => shown(hz, 1, 'Hz');
export const milliseconds = (ms: number): Shown => shown(ms, 1, 'ms');
export const count = (value: number, decimals: number, unit: string): Shown => shown(value, decimals, unit);

/** A share of 1 in per cent; the report keeps the share. */
export const share = (fraction: number): Shown => ({
  text: fixed(fraction * 100, 0),
  unit: '%',
  value: rounded(fraction, 2),
  step: 0.01,
});

/** Metres to the centimetre, or feet and inches to the eighth or to another part of an inch. */
export const length = (metres: number, units: UnitSystem, perInch = 8): Shown =>
  units === 'metric'
    ? shown(metres, 2, 'm')
    : { text: formatImperial(metres, perInch), unit: '', value: rounded(metres, 2), step: 0.01 };

/** Millimetres, or inches likewise. */
export const millimetres = (mm: number, units: UnitSystem, perInch = 8): Shown =>
  units === 'metric'
    ? shown(mm, 0, 'mm')
    : { text: formatImperial(mm / 1000, perInch), unit: '', value: rounded(mm, 0), step: 1 };
