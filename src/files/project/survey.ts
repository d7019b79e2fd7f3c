import { type Key, pathText } from '../../model/paths.ts';
import type { Refusal } from '../../model/refusal.ts';
import { type AnySchema, childOf, listOf, recordOf, shapeOf } from '../../model/schema/describe.ts';

/** Names kept for later versions: carried through unchanged and not worth a notice (contract). */
export const RESERVED_NAMES: ReadonlySet<string> = new Set([
  'alternatives',
  'walk',
  'measurements',
  'equaliser',
  'equipment',
  'outlets',
  'budget',
  'survey',
]);

/** A record has one entry a band or a wall: more than a hundred are no bands. */
const LARGEST_RECORD = 100;
const LISTED_PATHS = 20;

export interface Survey {
  /** Lists and records far over their limit; the validator would complain about each entry of them. */
  readonly refusals: readonly Refusal[];
  /** Paths of the first keys the schema does not know. */
  readonly unknown: readonly string[];
  readonly unknownCount: number;
}

/** Goes over a file's value beside the schema, before it is validated. Stays out of what the schema does not describe. */
export const surveyValue = (root: AnySchema, value: unknown): Survey => {
  const refusals: Refusal[] = [];
  const unknown: string[] = [];
  let unknownCount = 0;
  const keys: Key[] = [];

  const noteUnknown = (key: string): void => {
    if (keys.length === 0 && RESERVED_NAMES.has(key)) return;
    unknownCount++;
    if (unknown.length < LISTED_PATHS) unknown.push(pathText([...keys, key]));
  };
  const tooMany = (found: number, max: number, min = 0): boolean => {
    if (found <= max) return false;
    const allowed = { kind: 'count', of: 'entries', min, max } as const;
    refusals.push({ field: pathText(keys), holds: found, lead: 'entries:', allowed });
    return true;
  };
  const visitChild = (schema: AnySchema | undefined, key: Key, child: unknown): void => {
    if (!schema || typeof child !== 'object' || child === null) return;
    keys.push(key);
    visit(schema, child);
    keys.pop();
  };
  const visit = (schema: AnySchema, at: object): void => {
    if (Array.isArray(at)) {
      const list = listOf(schema);
      const isTuple = !list && childOf(schema, 0, at) !== undefined;
      if (tooMany(at.length, list ? list.max : isTuple ? LARGEST_RECORD : Number.POSITIVE_INFINITY, list?.min)) return;
      if (list) for (let i = 0; i < at.length; i++) visitChild(list.element, i, at[i]);
      return;
    }
    const entries = at as Record<string, unknown>;
    const names = Object.keys(entries);
    const record = recordOf(schema);
    if (record) {
      if (!tooMany(names.length, LARGEST_RECORD)) for (const name of names) visitChild(record, name, entries[name]);
      return;
    }
    const shape = shapeOf(schema, at);
    if (!shape || Object.keys(shape).length === 0) return;
    for (const name of names) {
      if (Object.hasOwn(shape, name)) visitChild(shape[name], name, entries[name]);
      else noteUnknown(name);
    }
  };
  if (typeof value === 'object' && value !== null) visit(root, value);
  return { refusals, unknown, unknownCount };
};
