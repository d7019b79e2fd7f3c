import type { Edit } from '../../model/commands/edit.ts';
import { schemaAt } from '../../model/commands/edit.ts';
import { renameItem } from '../../model/commands/items.ts';
import { setFieldAt } from '../../model/commands/set-field.ts';
import type { Field } from '../../model/fields/field.ts';
import type { Figure } from '../../model/fields/figures.ts';
import { fieldOf } from '../../model/fields/registry.ts';
import type { Switch } from '../../model/fields/switch.ts';
import { type Key, pathText, valueAt } from '../../model/paths.ts';
import type { ItemRef, Project } from '../../model/project.ts';
import { choiceText } from '../../words/choices.ts';
import { seatTitle } from '../naming.ts';
import { acoustics } from './acoustics.ts';

/** One value a person can change, wherever it comes from: a field of the file, a way of stating, a computed figure. */
export interface Control {
  /** Its own among the controls of the document, and the same as long as it stands there. */
  readonly path: string;
  readonly field: Field;
  word(choice: string): string;
  /** What holds while nothing stands there, for a number that may be left out. */
  usual(project: Project): number | undefined;
  read(project: Project): unknown;
  set(project: Project, value: unknown): Edit;
}

const noUsual = (): undefined => undefined;

/** What a number is where the file leaves it out: a seat stands on its row's line and has everyone's body. */
const usualOf =
  (field: Field, keys: readonly Key[]) =>
  (project: Project): number | undefined => {
    const last = keys[keys.length - 1];
    if (!field.absent || field.pattern.startsWith('people')) return undefined;
    if (field.pattern === 'rows[].seats[].eyeZM') return project.rows[Number(keys[1])]?.eyeZM;
    if (field.pattern.startsWith('rows[].seats[].people')) {
      const value = valueAt(project, ['people', last]);
      return typeof value === 'number' ? value : undefined;
    }
    return last === 'facingDeg' || last === 'reclineDeg' ? 0 : undefined;
  };

export const fieldControl = (field: Field, keys: readonly Key[]): Control => ({
  path: pathText(keys),
  field,
  word: choiceText,
  usual: usualOf(field, keys),
  read: (project) => valueAt(project, keys),
  set: (project, value) => setFieldAt(project, keys, value),
});

/** The reference seat is one of the seats there are. */
export const referenceControl = (project: Project): Control => {
  const field = fieldOf('referenceSeat');
  const choices = project.rows.flatMap((row) => row.seats.map(({ id }) => id));
  return { ...fieldControl({ ...field, choices }, ['referenceSeat']), word: (id) => seatTitle(project, id) };
};

/** Another name for a thing: what refers to it follows. */
export const nameControl = (field: Field, keys: readonly Key[], item: ItemRef): Control => ({
  ...fieldControl(field, [...keys, 'id']),
  set: (project, value) =>
    renameItem(project, { ...item, id: String(valueAt(project, [...keys, 'id'])) }, String(value ?? '')),
});

export const switchControl = (way: Switch, keys: readonly Key[]): Control => ({
  path: `${pathText(keys)}:way`,
  field: {
    pattern: way.pattern,
    label: way.label,
    quantity: 'choice',
    unit: '',
    choices: way.ways.map(({ id }) => id),
    optional: false,
    absent: false,
    place: false,
    help: way.help,
  },
  word: (id) => way.ways.find((each) => each.id === id)?.word ?? id,
  usual: noUsual,
  read: (project) => way.read(project, keys),
  set: (project, value) => way.set(project, keys, String(value), acoustics),
});

export const figureControl = ({ field, read, set }: Figure, keys: readonly Key[]): Control => ({
  path: `${pathText(keys)}:${field.label}`,
  field,
  word: choiceText,
  usual: noUsual,
  read: (project) => read(project, keys),
  set: (project, value) => set(project, keys, Number(value)),
});

/** A seat's own body and a surface are there as soon as one of their values is. */
const COMES_ABOUT = /^(?:people|front|back|left|right|floor|ceiling|\d+)$/;

const shown = (container: unknown, keys: readonly Key[]): boolean => {
  const last = keys[keys.length - 1];
  if (container === undefined) {
    const holder = String(keys[keys.length - 2]);
    return COMES_ABOUT.test(holder) && (holder === 'people' || last === 'finish');
  }
  if (typeof last === 'number') return Array.isArray(container) && last < container.length;
  if (typeof container !== 'object' || container === null) return false;
  // Of the ways to state a surface only the one that is used is shown.
  return last !== 'finish' || 'finish' in container || !('absorption' in container || 'admittance' in container);
};

/** A rectangle has one wall of each name: which of several is no question there. */
const idle = ({ room }: Project, keys: readonly Key[]): boolean =>
  room.plan.shape === 'rectangle' && keys.at(-1) === 'wall' && valueAt({ room }, keys) === undefined;

/** Whether a field has a place in this document as it stands: its shape is the one chosen, its part is there. */
export const isShown = (project: Project, keys: readonly Key[]): boolean =>
  shown(valueAt(project, keys.slice(0, -1)), keys) && schemaAt(project, keys) !== undefined && !idle(project, keys);
