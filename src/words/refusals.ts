import { IN_THE_WAY } from '../model/commands/plan.ts';
import type { Quantity } from '../model/fields/field.ts';
import { fieldFor } from '../model/fields/registry.ts';
import { pathKeys, valueAt } from '../model/paths.ts';
import type { ItemKind, Project } from '../model/project.ts';
import type { Refusal } from '../model/refusal.ts';
import { allowedText, held } from './faults.ts';
import { formatQuantity, isNumberQuantity } from './quantities.ts';
import type { UnitSystem } from './quantities-length.ts';
import { thingName } from './things.ts';

const valueText = (value: unknown, quantity: Quantity | undefined, units: UnitSystem): string =>
  typeof value === 'number' && Number.isFinite(value) && quantity && isNumberQuantity(quantity)
    ? formatQuantity(value, quantity, units)
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

/** The id of the innermost thing on the way to a field. */
export const ownerOf = (project: Project, path: string): string | undefined => {
  const keys = pathKeys(path) ?? [];
  for (let depth = keys.length; depth > 0; depth--) {
    const id = valueAt(project, [...keys.slice(0, depth), 'id']);
    if (typeof id === 'string') return id;
  }
  return undefined;
};

/** What a refusal is about, as a person knows it: the thing's id, the field's label, or else its path. */
const subject = (project: Project | undefined, path: string, label: string | undefined): string => {
  const owner = project && ownerOf(project, path);
  const named = [owner, label].filter((part) => part !== undefined).join(', ');
  return named === '' ? path : named;
};

/** What stands in a wall's way, in a few words; null for refusals of another sort. */
export const inTheWayText = ({ lead, holds, aside }: Refusal, project: Project): string | null => {
  if (aside !== IN_THE_WAY || lead === undefined) return null;
  return `${thingName(project, { kind: lead.replace(/^the /, '') as ItemKind, id: String(holds) })} ${aside}`;
};

const ONLY_SHOWN = 'This room is open in another tab, so here it is only shown. Close it there, or work on a copy.';

/** Why an edit was not taken, in a sentence and in the person's units; with the project given, the thing is named. */
export const refusalText = (refusal: Refusal, units: UnitSystem, project?: Project): string => {
  const { allowed, holds, aside, lead } = refusal;
  if (allowed.kind === 'otherTab') return ONLY_SHOWN;
  const barred = project && inTheWayText(refusal, project);
  if (barred) return sentence(barred);
  const field = fieldFor(refusal.field);
  const name = subject(project, refusal.field, field?.label);
  if (allowed.kind === 'inside') {
    const place = isPoint(holds) ? pointText(holds, units) : held(holds);
    const what = lead === undefined ? place : `${lead} ${place}`;
    if (allowed.past === 'walls') return sentence(`${name}: ${what} is outside the room, beyond one of its walls`);
    if (allowed.past) {
      const ceiling = formatQuantity(allowed.past.ceilingM, 'length', units);
      return sentence(`${name}: ${what} is outside the room. The ceiling there is ${ceiling} high`);
    }
    return sentence(`${name}: ${what} is outside the room. Inside is ${insideText(allowed.minM, allowed.maxM, units)}`);
  }
  const quantity = (allowed.kind === 'range' ? allowed.quantity : undefined) ?? field?.quantity;
  const value = [lead, valueText(holds, quantity, units)].filter((part) => part !== undefined).join(' ');
  const allows =
    allowed.kind === 'range' && allowed.min !== undefined && allowed.max !== undefined
      ? `${valueText(allowed.min, quantity, units)} to ${valueText(allowed.max, quantity, units)}`
      : allowedText(allowed);
  return sentence(`${name}: ${value}${aside === undefined ? '' : `, ${aside}`}. Allowed: ${allows}`);
};
