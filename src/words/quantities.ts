import type { Field, Quantity } from '../model/fields/field.ts';
import {
  decimalPoints,
  fixed,
  formatLength,
  LONGEST_INPUT,
  NO_NUMBER,
  parseLength,
  plainText,
  type UnitSystem,
} from './quantities-length.ts';

/** How a number of each quantity is written: decimals, and what follows it. Lengths have a way of their own. */
const STYLES: Readonly<Record<Exclude<NumberQuantity, 'length'>, { decimals: number; suffix: string }>> = {
  angle: { decimals: 1, suffix: '°' },
  decibel: { decimals: 1, suffix: ' dB' },
  time: { decimals: 1, suffix: ' ms' },
  seconds: { decimals: 2, suffix: ' s' },
  frequency: { decimals: 1, suffix: ' Hz' },
  ratio: { decimals: 2, suffix: '' },
  admittance: { decimals: 4, suffix: '' },
  temperature: { decimals: 1, suffix: ' °C' },
  power: { decimals: 0, suffix: ' W' },
  light: { decimals: 0, suffix: ' lm' },
  count: { decimals: 0, suffix: '' },
};

export type NumberQuantity = Exclude<Quantity, 'choice' | 'text' | 'flag'>;

export const isNumberQuantity = (quantity: Quantity): quantity is NumberQuantity =>
  quantity === 'length' || Object.hasOwn(STYLES, quantity);

/** Units a person may write after a number, and what they are worth in the stored unit. */
const UNITS: Readonly<Record<Exclude<NumberQuantity, 'length'>, Readonly<Record<string, number>>>> = {
  angle: { '°': 1, deg: 1, degree: 1, degrees: 1 },
  decibel: { db: 1, decibel: 1, decibels: 1 },
  time: { ms: 1, s: 1000 },
  seconds: { s: 1, ms: 0.001 },
  frequency: { hz: 1, hertz: 1, khz: 1000 },
  ratio: { '%': 0.01 },
  admittance: {},
  temperature: { '°c': 1, c: 1, '°': 1 },
  power: { w: 1, watt: 1, watts: 1, kw: 1000 },
  light: { lm: 1, lumen: 1, lumens: 1 },
  count: {},
};

/** A value for the eye, in the person's units: `2.47 m`, `8 ft 1 1/4 in`, `30.0°`, `−3.5 dB`. */
export const formatQuantity = (value: number, quantity: NumberQuantity, units: UnitSystem): string => {
  if (quantity === 'length') return formatLength(value, units);
  const { decimals, suffix } = STYLES[quantity];
  return Number.isFinite(value) ? `${fixed(value, decimals)}${suffix}` : NO_NUMBER;
};

/** How far a value may be from what its text says: half the last place shown. */
export const shownStep = (quantity: NumberQuantity, units: UnitSystem): number => {
  if (quantity === 'length') return units === 'metric' ? 0.01 : 0.0254 / 8;
  return 10 ** -STYLES[quantity].decimals;
};

/** Half an inch: what a tape in inches moves by where one in metres moves by a centimetre. */
const IMPERIAL_STEP_M = 0.0127;

/** What one press of an arrow key moves a thing by. */
export const nudgeStepM = (units: UnitSystem): number => (units === 'imperial' ? IMPERIAL_STEP_M : 0.01);

/** What one press of an arrow key adds to a field, in its stored unit. */
export const stepFor = ({ quantity, step }: Field, units: UnitSystem): number =>
  quantity === 'length' && units === 'imperial' ? IMPERIAL_STEP_M : (step ?? 1);

const PLAIN_NUMBER = /^([-+]?) ?(\d+(?:\.\d+)?|\.\d+) ?([^\d\s.]*)$/;
const PROPORTION = /^(\d+(?:\.\d+)?) ?[:/] ?(\d+(?:\.\d+)?)$/;

const parsePlain = (input: string, quantity: Exclude<NumberQuantity, 'length'>): number | undefined => {
  if (input.length > LONGEST_INPUT) return undefined;
  const text = decimalPoints(plainText(input));
  if (text === undefined) return undefined;
  const proportion = quantity === 'ratio' ? PROPORTION.exec(text) : null;
  if (proportion) return Number(proportion[2]) > 0 ? Number(proportion[1]) / Number(proportion[2]) : undefined;
  const found = PLAIN_NUMBER.exec(text);
  if (!found) return undefined;
  const [, sign, digits, unit] = found;
  const worth = unit === '' ? 1 : Object.hasOwn(UNITS[quantity], unit) ? UNITS[quantity][unit] : undefined;
  if (worth === undefined) return undefined;
  const value = Number(digits) * worth;
  return sign === '-' && value !== 0 ? -value : value;
};

/** What a person typed, in the stored unit, or undefined where it cannot be read as this quantity. */
export const parseQuantity = (input: string, quantity: NumberQuantity, units: UnitSystem): number | undefined =>
  quantity === 'length' ? parseLength(input, units) : parsePlain(input, quantity);

export type FieldInput = { readonly ok: true; readonly value: number } | { readonly ok: false; readonly says: string };

const EXAMPLES: Readonly<Record<UnitSystem, string>> = {
  metric: 'for example 3.8 m or 380 cm',
  imperial: `for example 12'6" or 12 ft 6 1/2 in`,
};

/** The range a field allows, in the person's units. */
export const rangeText = ({ min, max, quantity }: Field, units: UnitSystem): string => {
  if (min === undefined || max === undefined || !isNumberQuantity(quantity)) return 'anything';
  return `${formatQuantity(min, quantity, units)} to ${formatQuantity(max, quantity, units)}`;
};

/** Half the last place of the range as it was shown: what a person copies from it is taken as the limit itself. */
const atLimit = (value: number, limit: number, tolerance: number): boolean => Math.abs(value - limit) <= tolerance / 2;

/** What a person typed into a field: its value, or a sentence that says what would do. */
export const readInput = (input: string, field: Field, units: UnitSystem): FieldInput => {
  const { quantity, label, min, max } = field;
  if (!isNumberQuantity(quantity)) return { ok: false, says: `${label} is no number.` };
  const value = parseQuantity(input, quantity, units);
  if (value === undefined) {
    const example = quantity === 'length' ? `, ${EXAMPLES[units]}` : '';
    return { ok: false, says: `This cannot be read. Allowed: ${rangeText(field, units)}${example}.` };
  }
  const tolerance = shownStep(quantity, units);
  if (min !== undefined && value < min && atLimit(value, min, tolerance)) return { ok: true, value: min };
  if (max !== undefined && value > max && atLimit(value, max, tolerance)) return { ok: true, value: max };
  if ((min !== undefined && value < min) || (max !== undefined && value > max)) {
    return {
      ok: false,
      says: `${formatQuantity(value, quantity, units)} is out of range. Allowed: ${rangeText(field, units)}.`,
    };
  }
  return { ok: true, value };
};
