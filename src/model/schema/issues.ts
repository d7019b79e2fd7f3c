import type { Key } from '../paths.ts';
import { pathText, valueAt } from '../paths.ts';
import type { Allowed, Refusal } from '../refusal.ts';
import { type AnySchema, allowedBy, childOf } from './describe.ts';
import type { z } from './values.ts';

/** The schema at the end of the keys and the value it was given. */
const lookUp = (schema: AnySchema, input: unknown, keys: readonly Key[]) => {
  let at: AnySchema | undefined = schema;
  let value = input;
  for (const key of keys) {
    at = at && childOf(at, key, value);
    value = valueAt(value, [key]);
  }
  return { at, value };
};

/** A key that does not read as its record asks: the message stands in the schema, beside the pattern. */
const keyAllowed = (issue: z.core.$ZodIssueInvalidKey): Allowed => ({
  kind: 'words',
  words: issue.issues[0]?.message ?? 'another key',
});

const refusalOf = (schema: AnySchema, input: unknown, issue: z.core.$ZodIssue, below: readonly Key[]): Refusal => {
  const keys = [...below, ...(issue.path as Key[])];
  if (issue.code === 'invalid_key') {
    const key = String(keys.at(-1));
    return { field: pathText(keys.slice(0, -1)), holds: key, lead: 'the key', allowed: keyAllowed(issue) };
  }
  // A union that went by its discriminator complains about the discriminator, whose values it knows itself.
  if (issue.code === 'invalid_union' && 'options' in issue && Array.isArray(issue.options)) {
    const values = issue.options.map((option) => String(option));
    return { field: pathText(keys), holds: valueAt(input, keys), allowed: { kind: 'choice', values } };
  }
  if (issue.code === 'invalid_union') {
    const deeper = issue.errors.flat().find((inner) => inner.path.length > 0);
    if (deeper) return refusalOf(schema, input, deeper, keys);
  }
  const { at, value } = lookUp(schema, input, keys);
  const written = issue.code === 'custom' || issue.code === 'invalid_format';
  const allowed = !at || written ? { kind: 'words' as const, words: issue.message } : allowedBy(at);
  return { field: pathText(keys), holds: value, allowed };
};

/**
 * The validator's complaints about `input` as refusals of ours: path, value found, what the schema allows there. Where only
 * a part was validated, `below` leads to it.
 */
export const refusalsOf = (
  schema: AnySchema,
  input: unknown,
  issues: readonly z.core.$ZodIssue[],
  below: readonly Key[] = [],
): Refusal[] => {
  const seen = new Set<string>();
  return issues
    .map((issue) => refusalOf(schema, input, issue, below))
    .filter(({ field, lead, holds }) => {
      const name = lead === undefined ? field : `${field} ${String(holds)}`;
      return !seen.has(name) && seen.add(name);
    });
};
