import { checkProject } from '../checks/project.ts';
import { type Key, pathText, valueAt } from '../paths.ts';
import type { Project } from '../project.ts';
import type { Refusal } from '../refusal.ts';
import { type AnySchema, childOf, listOf } from '../schema/describe.ts';
import { refusalsOf } from '../schema/issues.ts';
import { projectSchema } from '../schema/project.ts';
import { z } from '../schema/values.ts';

/** What a command answers: the next document, or why there is none. */
export type Edit = { readonly ok: true; readonly project: Project } | { readonly ok: false; readonly reason: Refusal };

export const refuse = (reason: Refusal): Edit => ({ ok: false, reason });

export const refuseWords = (field: string, holds: unknown, words: string): Edit =>
  refuse({ field, holds, allowed: { kind: 'words', words } });

/** What has to hold between the parts of a document after an edit. */
export type Check = (project: Project) => readonly Refusal[];

/**
 * A document that passed its schema where it was touched: accepted when its parts still agree with one another. An edit
 * that can only upset some of them, as a drag does, names the check that is enough.
 */
export const accept = (project: Project, check: Check = checkProject): Edit => {
  const [reason] = check(project);
  return reason ? refuse(reason) : { ok: true, project };
};

/** The document with another value at the end of the keys; undefined takes the key away. All else keeps its identity. */
export const withValue = (from: unknown, keys: readonly Key[], value: unknown): unknown => {
  if (keys.length === 0) return value;
  const [key, ...rest] = keys;
  if (Array.isArray(from)) {
    const list = [...from];
    list[Number(key)] = withValue(from[Number(key)], rest, value);
    return list;
  }
  const entries = (from ?? {}) as Record<Key, unknown>;
  const inner = withValue(entries[key], rest, value);
  if (inner !== undefined) return { ...entries, [key]: inner };
  const { [key]: _gone, ...others } = entries;
  return others;
};

/** Whether a value can have an entry under a key: a list by its places, anything else by names; what is not there, both. */
const mayHold = (value: unknown, key: Key): boolean => {
  if (value === undefined) return true;
  if (Array.isArray(value)) return typeof key === 'number' && key >= 0 && key < value.length;
  return typeof key === 'string' && typeof value === 'object';
};

/** The schema of what stands, or could stand, at the keys of this project; undefined where nothing can. */
export const schemaAt = (project: Project, keys: readonly Key[]): AnySchema | undefined => {
  let schema: AnySchema | undefined = projectSchema;
  let value: unknown = project;
  for (const key of keys) {
    schema = schema && mayHold(value, key) ? childOf(schema, key, value) : undefined;
    value = (value as Record<Key, unknown> | undefined)?.[key];
  }
  return schema;
};

/** A new entry at the end of a list, validated by itself: the entries that stand there keep their identity. */
export const appendTo = (project: Project, keys: readonly Key[], entry: unknown): Edit => {
  const schema = schemaAt(project, keys);
  const list = schema && listOf(schema);
  const before = valueAt(project, keys);
  if (!list || !Array.isArray(before)) return refuseWords(pathText(keys), undefined, 'a list of this project');
  if (before.length >= list.max) {
    const allowed = { kind: 'count', of: 'entries in a list', min: list.min, max: list.max } as const;
    return refuse({ field: pathText(keys), holds: before.length + 1, lead: 'entries:', allowed });
  }
  const parsed = z.safeParse(list.element, entry);
  const candidate = withValue(project, keys, [...before, parsed.success ? parsed.data : entry]);
  if (parsed.success) return accept(candidate as Project);
  return refuse(refusalsOf(projectSchema, candidate, parsed.error.issues, [...keys, before.length])[0]);
};

const sameValue = (a: unknown, b: unknown): boolean =>
  Object.is(a, b) || (typeof a === 'object' && typeof b === 'object' && JSON.stringify(a) === JSON.stringify(b));

/**
 * Sets one value, validated by the schema that stands there and by the checks between fields. `undefined` puts an optional
 * or defaulted value back to what it is when the file says nothing. Setting what is already there changes nothing at all.
 */
export const setValue = (project: Project, keys: readonly Key[], value: unknown, check?: Check): Edit => {
  const schema = schemaAt(project, keys);
  if (!schema) return refuseWords(pathText(keys), undefined, 'a field of this project');
  // Inside something the file leaves out, the whole of it has to come about at once, with what else it needs.
  const missing = keys.findIndex((_, index) => valueAt(project, keys.slice(0, index)) === undefined);
  if (missing > 0) {
    const whole = withValue(undefined, keys.slice(missing), value);
    return value === undefined ? { ok: true, project } : setValue(project, keys.slice(0, missing), whole, check);
  }
  const parsed = z.safeParse(schema, value);
  if (!parsed.success) {
    const candidate = withValue(project, keys, value);
    return refuse(refusalsOf(projectSchema, candidate, parsed.error.issues, keys)[0]);
  }
  if (sameValue(valueAt(project, keys), parsed.data)) return { ok: true, project };
  return accept(withValue(project, keys, parsed.data) as Project, check);
};
