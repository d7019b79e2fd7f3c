import { type Field, patternKeys } from '../../model/fields/field.ts';
import { FIELDS } from '../../model/fields/registry.ts';
import { keysOf } from '../../model/items.ts';
import type { Key } from '../../model/paths.ts';
import type { ItemKind, ItemRef, Project } from '../../model/project.ts';

/** A field of the registry at its place in this document. */
export interface PlacedField {
  readonly field: Field;
  readonly keys: readonly Key[];
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
const WHOLE = /^(?:name|display|air|listening|targets|people|bass|room\.plan|room\.ceiling|room\.surfaces)(?:\.|$)/;

const wholeFields: readonly PlacedField[] = FIELDS.filter(({ pattern }) => WHOLE.test(pattern)).map((field) => ({
  field,
  keys: patternKeys(field.pattern),
}));

/** Fields below a prefix with the keys that follow it: the registry never changes, so neither do these. */
const below = new Map<string, readonly { readonly field: Field; readonly rest: readonly Key[] }[]>();

const fieldsBelow = (prefix: string) => {
  const known = below.get(prefix);
  if (known) return known;
  const made = FIELDS.filter(({ pattern }) => pattern.startsWith(prefix) && /^[.[]/.test(pattern.slice(prefix.length)))
    .map((field) => ({ field, rest: patternKeys(field.pattern.slice(prefix.length)) }))
    .filter(({ rest }) => !rest.includes('[]') && rest[0] !== 'id');
  below.set(prefix, made);
  return made;
};

/** The fields of the chosen thing, or of the room when nothing is chosen; empty when it is not in the document. */
export const placedFields = (project: Project, item: ItemRef | null): readonly PlacedField[] => {
  if (item === null) return wholeFields;
  const base = keysOf(project, item);
  if (!base) return [];
  const prefix = item.kind === 'surface' ? `room.surfaces.${item.id}` : PATTERN[item.kind];
  return fieldsBelow(prefix).map(({ field, rest }) => ({ field, keys: [...base, ...rest] }));
};
