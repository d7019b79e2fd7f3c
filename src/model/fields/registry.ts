import { pathKeys } from '../paths.ts';
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

/**
 * Numbers of the schema that are no fields, and why: whole treatments are set by finish, curves and corners by tools of
 * their own, and shapes that are not computed yet are not offered.
 */
export const NOT_FIELDS: readonly string[] = [
  'version',
  'room.plan.cornersM[][0]',
  'room.plan.cornersM[][1]',
  'room.ceiling.startHeightM',
  'room.ceiling.endHeightM',
  'room.ceiling.pointsM[][0]',
  'room.ceiling.pointsM[][1]',
  'loudspeakers[].aim[0]',
  'loudspeakers[].aim[1]',
  'loudspeakers[].aim[2]',
  'subwoofers[].maxOutput.bandsDb{}',
  ...['room.surfaces.front', 'room.surfaces.back', 'room.surfaces.left', 'room.surfaces.right', 'room.surfaces.floor']
    .concat('room.surfaces.ceiling', 'room.surfaces.walls{}', 'room.patches[]')
    .flatMap((surface) => [`${surface}.absorption{}`, `${surface}.admittance[0]`, `${surface}.admittance[1]`]),
];

const byPattern = new Map(FIELDS.map((field) => [field.pattern, field]));

const outlineOf = (path: string): string => path.replaceAll(/\[\d*\]/g, '');

/** Fields by their path with every index taken away, so that a path finds its few candidates at once. */
const byOutline = new Map<string, Field[]>();
for (const field of FIELDS) {
  const outline = outlineOf(field.pattern);
  byOutline.set(outline, [...(byOutline.get(outline) ?? []), field]);
}

/** The field at a path such as `loudspeakers[3].atM[0]`, or undefined. */
export const fieldFor = (path: string): Field | undefined => {
  const keys = pathKeys(path);
  if (!keys) return undefined;
  return byOutline.get(outlineOf(path))?.find(({ pattern }) => {
    const wanted = patternKeys(pattern);
    return (
      wanted.length === keys.length &&
      wanted.every((key, index) => (key === '[]' ? typeof keys[index] === 'number' : key === keys[index]))
    );
  });
};

/** The field with exactly this pattern, for callers that know it. */
export const fieldOf = (pattern: string): Field => {
  const field = byPattern.get(pattern);
  if (!field) throw new TypeError(`no field has the pattern ${pattern}`);
  return field;
};

/** The fields of one thing: those whose pattern begins with `prefix`, which ends where a key does. */
export const fieldsUnder = (prefix: string): readonly Field[] =>
  FIELDS.filter(({ pattern }) => pattern.startsWith(prefix) && /^(?:$|[.[])/.test(pattern.slice(prefix.length)));
