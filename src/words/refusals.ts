import type { Field } from '../model/fields/field.ts';
import { fieldFor } from '../model/fields/registry.ts';
import type { Refusal } from '../model/refusal.ts';
import { allowedText, held } from './faults.ts';
import { formatQuantity, isNumberQuantity } from './quantities.ts';
import type { UnitSystem } from './quantities-length.ts';

const valueText = (value: unknown, field: Field | undefined, units: UnitSystem): string =>
  typeof value === 'number' && field && isNumberQuantity(field.quantity)
    ? formatQuantity(value, field.quantity, units)
    : held(value);

const isPoint = (value: unknown): value is number[] =>
  Array.isArray(value) && value.length === 3 && value.every((entry) => typeof entry === 'number');

const pointText = (point: readonly number[], units: UnitSystem): string =>
  point.map((value) => formatQuantity(value, 'length', units)).join(', ');

const insideText = (minM: readonly number[], maxM: readonly number[], units: UnitSystem): string =>
  ['across', 'up', 'from the front wall']
    .map((axis, index) => {
      const [low, high] = [minM[index], maxM[index]].map((value) => formatQuantity(value, 'length', units));
      return `${low} to ${high} ${axis}`;
    })
    .join(', ');

const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;

/** Why an edit was not taken, in a sentence and in the person's units. */
export const refusalText = (refusal: Refusal, units: UnitSystem): string => {
  const { allowed, holds, aside, lead } = refusal;
  const field = fieldFor(refusal.field);
  const name = field?.label ?? refusal.field;
  if (allowed.kind === 'inside') {
    const place = isPoint(holds) ? pointText(holds, units) : held(holds);
    const what = lead === undefined ? place : `${lead} ${place}`;
    return sentence(`${name}: ${what} is outside the room. Inside is ${insideText(allowed.minM, allowed.maxM, units)}`);
  }
  if (allowed.kind === 'notYet') return sentence(`${name}: ${allowed.what} are not computed yet`);
  const { min, max } = allowed.kind === 'range' ? allowed : {};
  const range = min !== undefined && max !== undefined && field && isNumberQuantity(field.quantity);
  const allows = range ? `${valueText(min, field, units)} to ${valueText(max, field, units)}` : allowedText(allowed);
  const value = [lead, valueText(holds, field, units)].filter((part) => part !== undefined).join(' ');
  return sentence(`${name}: ${value}${aside === undefined ? '' : `, ${aside}`}. Allowed: ${allows}`);
};
