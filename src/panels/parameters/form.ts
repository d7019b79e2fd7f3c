import { type Field, patternKeys } from '../../model/fields/field.ts';
import { ROW_FIGURES } from '../../model/fields/figures.ts';
import { FIELDS, fieldAt } from '../../model/fields/registry.ts';
import type { Switch } from '../../model/fields/switch.ts';
import { DAMPING_SWITCHES } from '../../model/fields/switches-damping.ts';
import { SHAPE_SWITCHES } from '../../model/fields/switches-shape.ts';
import { THING_SWITCHES } from '../../model/fields/switches-things.ts';
import { TABLES, type Table } from '../../model/fields/tables.ts';
import { isEdge, keysOf } from '../../model/items.ts';
import { type Key, pathText, valueAt } from '../../model/paths.ts';
import type { ItemKind, ItemRef, Project } from '../../model/project.ts';
import {
  type Control,
  fieldControl,
  figureControl,
  isShown,
  nameControl,
  referenceControl,
  switchControl,
} from './controls.ts';
import { overridesTable } from './overrides.ts';
import { HEADING_ORDER, headingOf } from './sections.ts';

/** A table of the form: lines of the same few controls, with their keys so that one can be taken away. */
export interface PlacedTable {
  readonly table: Table;
  readonly keys: readonly Key[];
  readonly lines: readonly { readonly key: Key; readonly name: string; readonly controls: readonly Control[] }[];
}

export interface Section {
  readonly title: string;
  readonly controls: readonly Control[];
  readonly tables: readonly PlacedTable[];
}

const PATTERN: Readonly<Record<Exclude<ItemKind, 'surface'>, string>> = {
  row: 'rows[]',
  seat: 'rows[].seats[]',
  loudspeaker: 'loudspeakers[]',
  subwoofer: 'subwoofers[]',
  opening: 'room.openings[]',
  patch: 'room.patches[]',
  object: 'room.objects[]',
  picture: 'picture',
};

/** What belongs to the room and the project as a whole, shown while nothing is chosen. */
const WHOLE =
  /^(?:name|notes|display|air|listening|targets|people|bass|referenceSeat|room\.plan|room\.ceiling|room\.reverberationS)(?:[.[]|$)/;

const SWITCHES: readonly Switch[] = [...SHAPE_SWITCHES, ...DAMPING_SWITCHES, ...THING_SWITCHES];

interface Template {
  readonly fields: readonly { readonly field: Field; readonly rest: readonly Key[] }[];
  readonly switches: readonly { readonly way: Switch; readonly rest: readonly Key[] }[];
  readonly tables: readonly { readonly table: Table; readonly rest: readonly Key[] }[];
}

const isOpen = (rest: readonly Key[]): boolean => rest.includes('[]') || rest.includes('{}');

const templateOf = (belongs: (pattern: string) => boolean, restOf: (pattern: string) => readonly Key[]): Template => ({
  fields: FIELDS.filter(({ pattern }) => belongs(pattern))
    .map((field) => ({ field, rest: restOf(field.pattern) }))
    .filter(({ rest }) => !isOpen(rest)),
  switches: SWITCHES.filter(({ pattern }) => belongs(pattern))
    .map((way) => ({ way, rest: restOf(way.pattern) }))
    .filter(({ rest }) => !isOpen(rest)),
  tables: TABLES.filter(({ pattern }) => belongs(pattern))
    .map((table) => ({ table, rest: restOf(table.pattern) }))
    .filter(({ rest }) => !isOpen(rest)),
});

const templates = new Map<string, Template>();

const templateFor = (prefix: string): Template => {
  const known = templates.get(prefix);
  if (known) return known;
  const below = (pattern: string) => pattern.startsWith(prefix) && /^(?:$|[.[{])/.test(pattern.slice(prefix.length));
  const made = templateOf(below, (pattern) => patternKeys(pattern.slice(prefix.length)));
  templates.set(prefix, made);
  return made;
};

const wholeTemplate = templateOf((pattern) => WHOLE.test(pattern), patternKeys);

const prefixOf = ({ kind, id }: ItemRef): string => {
  if (kind !== 'surface') return PATTERN[kind];
  return isEdge(id) ? 'room.surfaces.walls{}' : `room.surfaces.${id}`;
};

/** Bands by frequency, the lowest first; entries of a list in their order. */
const lineKeys = (value: unknown): readonly Key[] => {
  if (Array.isArray(value)) return value.map((_, index) => index);
  if (typeof value !== 'object' || value === null) return [];
  return Object.keys(value).sort((a, b) => Number(a) - Number(b));
};

const placedTable = (project: Project, table: Table, keys: readonly Key[]): PlacedTable | null => {
  const value = valueAt(project, keys);
  if (value === undefined) return null;
  const lines = lineKeys(value).map((key) => {
    const cells =
      table.of === 'record' ? [[...keys, key]] : table.columns.map((at) => [...keys, key, ...patternKeys(at)]);
    const name = table.of === 'record' ? `${key} ${table.entry}` : `${table.entry} ${Number(key) + 1}`;
    const controls = cells.flatMap((cell) => {
      const field = fieldAt(cell);
      return field ? [fieldControl({ ...field, label: `${name}: ${field.label.toLowerCase()}` }, cell)] : [];
    });
    return { key, name, controls };
  });
  return { table, keys, lines };
};

interface Placed {
  readonly heading: string;
  readonly control?: Control;
  readonly table?: PlacedTable;
}

const placedParts = (project: Project, template: Template, base: readonly Key[], item: ItemRef | null): Placed[] => {
  const controlOf = (field: Field, keys: readonly Key[]): Control => {
    if (field.pattern === 'referenceSeat') return referenceControl(project);
    return item && keys.at(-1) === 'id' ? nameControl(field, base, item) : fieldControl(field, keys);
  };
  const fields = template.fields
    .map(({ field, rest }) => ({ field, keys: [...base, ...rest] }))
    .filter(({ keys }) => isShown(project, keys))
    .map(({ field, keys }) => ({ heading: headingOf(field.pattern), control: controlOf(field, keys) }));
  const figures = item?.kind === 'row' ? ROW_FIGURES.filter(({ read }) => read(project, base) !== undefined) : [];
  // A way of stating stands before what it brings about, or last where it brings about nothing just now.
  const below = ({ pattern }: Switch, field: Field) =>
    field.pattern.startsWith(pattern) && /^[.[{]/.test(field.pattern.slice(pattern.length));
  const switches = template.switches.map(({ way, rest }) => ({
    heading: headingOf(way.pattern),
    control: switchControl(way, [...base, ...rest]),
    before: fields.findIndex(({ control }) => below(way, control.field)),
  }));
  const ordered = fields.flatMap((placed, index) => [...switches.filter(({ before }) => before === index), placed]);
  return [
    ...figures.map((figure) => ({ heading: headingOf(figure.field.pattern), control: figureControl(figure, base) })),
    ...ordered,
    ...switches.filter(({ before }) => before < 0),
    ...template.tables.flatMap(({ table, rest }) => {
      const placed = placedTable(project, table, [...base, ...rest]);
      return placed ? [{ heading: headingOf(table.pattern), table: placed }] : [];
    }),
    ...(item === null ? [{ heading: headingOf('targets.overrides'), table: overridesTable(project) }] : []),
  ];
};

/** The form of the chosen thing, or of the room when nothing is chosen; empty when it is not in the document. */
export const formOf = (project: Project, item: ItemRef | null): readonly Section[] => {
  const base = item ? keysOf(project, item) : [];
  if (!base) return [];
  const template = item ? templateFor(prefixOf(item)) : wholeTemplate;
  const parts = placedParts(project, template, base, item);
  return HEADING_ORDER.flatMap((title) => {
    const mine = parts.filter(({ heading }) => heading === title);
    if (mine.length === 0) return [];
    return [
      {
        title,
        controls: mine.flatMap(({ control }) => (control ? [control] : [])),
        tables: mine.flatMap(({ table }) => (table ? [table] : [])),
      },
    ];
  });
};

/** Every control of a form, the tables' included. */
export const controlsOf = (sections: readonly Section[]): readonly Control[] =>
  sections.flatMap(({ controls, tables }) => [
    ...controls,
    ...tables.flatMap(({ lines }) => lines.flatMap((line) => line.controls)),
  ]);

const markOf = ({ path, field: { pattern, choices } }: Control): string =>
  pattern === 'referenceSeat' ? `${path} of ${choices?.join()}` : path;

/** One word for the form's make-up: as long as it is the same, every control stands where it stood. */
export const signatureOf = (sections: readonly Section[]): string =>
  sections.map(({ title, ...section }) => `${title}|${controlsOf([{ title, ...section }]).map(markOf)}`).join('\n');

export const tablePath = ({ keys }: PlacedTable): string => pathText(keys);
