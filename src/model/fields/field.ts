import type { Key } from '../paths.ts';
import {
  type AnySchema,
  allowedBy,
  bare,
  childOf,
  isAbsent,
  limitsOf,
  listOf,
  recordOf,
  shapesOf,
} from '../schema/describe.ts';
import { projectSchema } from '../schema/project.ts';

export type Quantity =
  | 'length'
  | 'angle'
  | 'decibel'
  | 'time'
  | 'seconds'
  | 'frequency'
  | 'ratio'
  | 'admittance'
  | 'temperature'
  | 'power'
  | 'light'
  | 'choice'
  | 'text'
  | 'flag'
  | 'count';

/** The unit a quantity is stored in, as it is written after a number. */
export const UNIT_OF: Readonly<Record<Quantity, string>> = {
  length: 'm',
  angle: '°',
  decibel: 'dB',
  time: 'ms',
  seconds: 's',
  frequency: 'Hz',
  ratio: '',
  admittance: '',
  temperature: '°C',
  power: 'W',
  light: 'lm',
  choice: '',
  text: '',
  flag: '',
  count: '',
};

/** One value of the document that a person may edit. Limits come from the schema, everything else is written here. */
export interface Field {
  /** Its path with `[]` for any entry of a list and `{}` for any key of a record: `loudspeakers[].atM[0]`. */
  readonly pattern: string;
  readonly label: string;
  readonly quantity: Quantity;
  readonly unit: string;
  /** For numbers the limits, for text the number of characters. */
  readonly min?: number;
  readonly max?: number;
  /** What one press of an arrow key adds, in the stored unit. */
  readonly step?: number;
  readonly choices?: readonly string[];
  /** Whether the file may leave it out, so that it can be put back to nothing. */
  readonly optional: boolean;
  /** Whether nothing at all may stand there, rather than a default. */
  readonly absent: boolean;
  /** Whether it says where something stands: refused while that thing is locked. */
  readonly place: boolean;
  readonly help: string;
}

type Numeric = Exclude<Quantity, 'choice' | 'text' | 'flag'>;

interface Details {
  readonly step?: number;
  readonly place?: boolean;
}

const DEFAULT_STEP: Readonly<Record<Numeric, number>> = {
  length: 0.01,
  angle: 1,
  decibel: 0.5,
  time: 0.1,
  seconds: 0.05,
  frequency: 1,
  ratio: 0.01,
  admittance: 0.01,
  temperature: 1,
  power: 10,
  light: 100,
  count: 1,
};

/** The keys of a pattern: `[]` and `{}` are kept as whichever entry of a list or record, `[0]` is a place in a fixed list. */
export const patternKeys = (pattern: string): Key[] =>
  Array.from(pattern.matchAll(/\[(\d*)\]|(\{\})|([A-Za-z]+)/g), ([, index, record, name]) => {
    if (name !== undefined) return name;
    if (record !== undefined) return record;
    return index === '' ? '[]' : Number(index);
  });

/** The schema a key of a pattern leads to: of the shapes a union may have, the first that knows the key. */
const stepInto = (schema: AnySchema, key: Key): AnySchema | undefined => {
  if (key === '[]') return listOf(schema)?.element;
  if (key === '{}') return recordOf(schema);
  if (typeof key === 'number') return childOf(schema, key, undefined);
  return shapesOf(schema).find((shape) => Object.hasOwn(shape, key))?.[key];
};

/** The schema a pattern leads to. Throws on a pattern that leads nowhere: the registry is made once, when it loads. */
const schemaOf = (pattern: string): AnySchema => {
  let at: AnySchema | undefined = projectSchema;
  for (const key of patternKeys(pattern)) at = at && stepInto(at, key);
  if (!at) throw new TypeError(`no field stands at ${pattern}`);
  return at;
};

const common = (pattern: string, label: string, quantity: Quantity, help: string, { step, place }: Details) => ({
  pattern,
  label,
  quantity,
  unit: UNIT_OF[quantity],
  optional: bare(schemaOf(pattern)) !== schemaOf(pattern),
  absent: isAbsent(schemaOf(pattern)),
  place: place ?? false,
  help,
  step,
});

export const numberField = (
  pattern: string,
  label: string,
  quantity: Numeric,
  help: string,
  details: Details = {},
): Field => {
  const limits = limitsOf(schemaOf(pattern));
  if (!limits) throw new TypeError(`${pattern} is no number`);
  const { min, max } = limits;
  return { ...common(pattern, label, quantity, help, { step: DEFAULT_STEP[quantity], ...details }), min, max };
};

/** Where something stands along one axis. */
export const placeField = (pattern: string, label: string, help: string): Field =>
  numberField(pattern, label, 'length', help, { place: true });

export const textField = (pattern: string, label: string, help: string, choices?: readonly string[]): Field => {
  const allowed = allowedBy(schemaOf(pattern));
  if (allowed.kind !== 'count') return { ...common(pattern, label, 'text', help, {}), choices };
  return { ...common(pattern, label, 'text', help, {}), min: allowed.min, max: allowed.max, choices };
};

export const choiceField = (pattern: string, label: string, help: string): Field => {
  const allowed = allowedBy(schemaOf(pattern));
  if (allowed.kind !== 'choice') throw new TypeError(`${pattern} offers no choice`);
  return { ...common(pattern, label, 'choice', help, {}), choices: allowed.values.map(String) };
};

export const flagField = (pattern: string, label: string, help: string): Field =>
  common(pattern, label, 'flag', help, {});
