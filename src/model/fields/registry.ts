import { type Key, pathKeys } from '../paths.ts';
import { choiceField, type Field, numberField, patternKeys, textField } from './field.ts';
import { PICTURE_FIELDS } from './picture.ts';
import { ROOM_FIELDS } from './room.ts';
import { SEATING_FIELDS } from './seating.ts';
import { SOURCE_FIELDS } from './sources.ts';

/** Every value of the document that a person may edit, whatever panel or form shows it. */
export const FIELDS: readonly Field[] = [
  textField('name', 'Project', 'What the room or the job is called.'),
  textField('notes', 'Notes', 'Anything worth keeping with the project.'),
  choiceField('display.units', 'Units', 'Metres, or feet and inches. Only what is shown changes.'),
  numberField('air.temperatureC', 'Air temperature', 'temperature', 'Sound travels faster in warm air.'),
  numberField(
    'listening.reReferenceDb',
    'Level asked for',
    'decibel',
    'How loud the room shall play, against full cinema reference level. Loud sound harms hearing: level and time together.',
  ),
  choiceField('targets.set', 'Targets', 'Which ranges the layout is judged by.'),
  ...ROOM_FIELDS,
  ...PICTURE_FIELDS,
  ...SEATING_FIELDS,
  ...SOURCE_FIELDS,
];

/** Numbers of the schema that are no fields: the version is the program's, not the person's. */
export const NOT_FIELDS: readonly string[] = ['version'];

const byPattern = new Map(FIELDS.map((field) => [field.pattern, field]));

/** Fields by their last name, so that a path finds its few candidates at once. */
const byEnding = new Map<string, Field[]>();
const endingOf = (keys: readonly Key[]): string =>
  String(keys.findLast((key) => typeof key === 'string' && key !== '{}' && key !== '[]'));
for (const field of FIELDS) {
  const ending = endingOf(patternKeys(field.pattern));
  byEnding.set(ending, [...(byEnding.get(ending) ?? []), field]);
}

const fits = (pattern: readonly Key[], keys: readonly Key[]): boolean =>
  pattern.length === keys.length &&
  pattern.every((wanted, index) => {
    const key = keys[index];
    if (wanted === '[]') return typeof key === 'number';
    return wanted === '{}' ? typeof key === 'string' : wanted === key;
  });

/** The field at the end of keys such as `['loudspeakers', 3, 'atM', 0]`, or undefined. */
export const fieldAt = (keys: readonly Key[]): Field | undefined => {
  // A record's own keys are names too: the field's is then the name before.
  const candidates = [keys, keys.slice(0, -1)].flatMap((each) => byEnding.get(endingOf(each)) ?? []);
  return candidates.find(({ pattern }) => fits(patternKeys(pattern), keys));
};

/** The field at a path such as `loudspeakers[3].atM[0]`, or undefined. */
export const fieldFor = (path: string): Field | undefined => {
  const keys = pathKeys(path);
  return keys && fieldAt(keys);
};

/** The field with exactly this pattern, for callers that know it. */
export const fieldOf = (pattern: string): Field => {
  const field = byPattern.get(pattern);
  if (!field) throw new TypeError(`no field has the pattern ${pattern}`);
  return field;
};

/** The fields of one thing: those whose pattern begins with `prefix`, which ends where a key does. */
export const fieldsUnder = (prefix: string): readonly Field[] =>
  FIELDS.filter(({ pattern }) => pattern.startsWith(prefix) && /^(?:$|[.[{])/.test(pattern.slice(prefix.length)));
