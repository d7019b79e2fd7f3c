import type { Allowed } from '../refusal.ts';
import type { z } from './values.ts';

/** What the schema says about itself: one source for limits in messages, in fields and in the survey of a file. */
export type AnySchema = z.core.$ZodType;

const defOf = (schema: AnySchema) => (schema as z.core.$ZodTypes)._zod.def;

/** The schema under its defaults and optional marks. */
export const bare = (schema: AnySchema): AnySchema => {
  const def = defOf(schema);
  return def.type === 'default' || def.type === 'prefault' || def.type === 'optional' ? bare(def.innerType) : schema;
};

/** Whether nothing may stand there; what has a default is never absent. */
export const isAbsent = (schema: AnySchema): boolean => defOf(schema).type === 'optional';

/** Of the shapes a union offers, the one this value says it is; undefined when it says none of them. */
const chosen = (def: z.core.$ZodUnionDef, value: unknown): AnySchema | undefined => {
  const key = 'discriminator' in def ? String(def.discriminator) : undefined;
  if (key === undefined) return def.options.find((option) => defOf(option).type === 'tuple');
  if (typeof value !== 'object' || value === null) return undefined;
  const label: unknown = Object.hasOwn(value, key) ? (value as Record<string, unknown>)[key] : undefined;
  return def.options.find((option) => {
    const shape = shapeOf(option);
    const literal = shape && defOf(shape[key]);
    return literal?.type === 'literal' && literal.values.some((allowed) => allowed === label);
  });
};

/** An object's known keys, or undefined when the schema is no object. `value` chooses among a union's shapes. */
export const shapeOf = (schema: AnySchema, value?: unknown): Readonly<Record<string, AnySchema>> | undefined => {
  const def = defOf(bare(schema));
  if (def.type === 'object') return def.shape;
  if (def.type !== 'union') return undefined;
  const option = chosen(def, value);
  return option && shapeOf(option);
};

/** Every object a schema may be: one, or each of a union's. */
export const shapesOf = (schema: AnySchema): readonly Readonly<Record<string, AnySchema>>[] => {
  const def = defOf(bare(schema));
  if (def.type === 'object') return [def.shape];
  return def.type === 'union' ? def.options.flatMap(shapesOf) : [];
};

/** The schema of a list's entries, with how many there may be. */
export const listOf = (schema: AnySchema): { element: AnySchema; min: number; max: number } | undefined => {
  const def = defOf(bare(schema));
  return def.type === 'array' ? { element: def.element, ...lengths(def) } : undefined;
};

/** The schema of a record's values. */
export const recordOf = (schema: AnySchema): AnySchema | undefined => {
  const def = defOf(bare(schema));
  return def.type === 'record' ? def.valueType : undefined;
};

/** The schema of what stands under `key`, `value` being the container's value. */
export const childOf = (schema: AnySchema, key: string | number, value: unknown): AnySchema | undefined => {
  const def = defOf(bare(schema));
  if (def.type === 'array') return def.element;
  if (def.type === 'record') return def.valueType;
  if (def.type === 'tuple') return def.items[Number(key)];
  const shape = shapeOf(schema, value);
  if (shape) return Object.hasOwn(shape, key) ? shape[key] : undefined;
  const option = def.type === 'union' ? chosen(def, value) : undefined;
  return option && childOf(option, key, value);
};

interface Checked {
  readonly checks?: readonly z.core.$ZodCheck<never>[];
}

const checksOf = (def: Checked) => (def.checks ?? []).map((check) => (check as z.core.$ZodChecks)._zod.def);

const lengths = (def: Checked): { min: number; max: number } => {
  let min = 0;
  let max = Number.POSITIVE_INFINITY;
  for (const check of checksOf(def)) {
    if (check.check === 'min_length') min = check.minimum;
    if (check.check === 'max_length') max = check.maximum;
  }
  return { min, max };
};

/** The limits of a number field, or undefined when the schema is no number. */
export const limitsOf = (schema: AnySchema): { min: number; max: number; whole: boolean } | undefined => {
  const def = defOf(bare(schema));
  if (def.type !== 'number') return undefined;
  let min = Number.NEGATIVE_INFINITY;
  let max = Number.POSITIVE_INFINITY;
  const checks = checksOf(def);
  for (const check of checks) {
    if (check.check === 'greater_than') min = Number(check.value);
    if (check.check === 'less_than') max = Number(check.value);
  }
  const whole = checks.some((check) => check.check === 'number_format') || 'format' in def;
  return { min, max, whole };
};

/** What the schema accepts, as data. */
export const allowedBy = (schema: AnySchema): Allowed => {
  const def = defOf(bare(schema));
  switch (def.type) {
    case 'number': {
      const { min, max, whole } = limitsOf(schema)!;
      return { kind: 'range', min, max, whole };
    }
    case 'string':
      return { kind: 'count', of: 'characters of text', ...lengths(def) };
    case 'array':
      return { kind: 'count', of: 'entries in a list', ...lengths(def) };
    case 'boolean':
      return { kind: 'choice', values: [true, false] };
    case 'enum':
      return { kind: 'choice', values: Object.values(def.entries) };
    case 'literal':
      return { kind: 'choice', values: def.values.filter((value) => value !== null).map((value) => String(value)) };
    case 'tuple':
      return { kind: 'words', words: `a list of ${def.items.length} numbers` };
    case 'union':
      return { kind: 'words', words: unionWords(def) };
    default:
      return { kind: 'words', words: 'an object { ... }' };
  }
};

const unionWords = (def: z.core.$ZodUnionDef): string =>
  def.options
    .map((option) => {
      const inner = defOf(option);
      if (inner.type === 'literal') return inner.values.map((value) => JSON.stringify(value)).join(' or ');
      return inner.type === 'tuple' ? `a list of ${inner.items.length} numbers` : 'an object { ... }';
    })
    .filter((words, index, all) => all.indexOf(words) === index)
    .join(' or ');
