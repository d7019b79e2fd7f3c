import type { Unit } from '../../analysis/rules/rule.ts';
import { isRuleId, type RuleId, ruleIds, ruleOf } from '../../analysis/rules/table.ts';
import { type Edit, setValue } from '../../model/commands/edit.ts';
import type { Field, Quantity } from '../../model/fields/field.ts';
import type { Table } from '../../model/fields/tables.ts';
import { type Key, pathText, valueAt } from '../../model/paths.ts';
import type { Project } from '../../model/project.ts';
import { ruleTitle } from '../../words/rules.ts';
import type { Control } from './controls.ts';
import type { PlacedTable } from './form.ts';

const KEYS: readonly Key[] = ['targets', 'overrides'];

/** How a rule's unit is written and read, and what one of it is worth in the quantity's own unit. */
const QUANTITY: Readonly<Record<Unit, { readonly quantity: Quantity; readonly worth: number }>> = {
  deg: { quantity: 'angle', worth: 1 },
  dB: { quantity: 'decibel', worth: 1 },
  m: { quantity: 'length', worth: 1 },
  mm: { quantity: 'length', worth: 0.001 },
  share: { quantity: 'ratio', worth: 1 },
  'px/deg': { quantity: 'ratio', worth: 1 },
  '': { quantity: 'ratio', worth: 1 },
};

const STEP: Partial<Record<Quantity, number>> = { angle: 1, decibel: 0.5, length: 0.01, ratio: 0.01 };

type Ranges = NonNullable<Project['targets']['overrides']>[string];

const overridesOf = (project: Project): Readonly<Record<string, Ranges>> => project.targets.overrides ?? {};

/** Rules whose ranges a project may state: those that judge by a range at all, and have none of their own yet. */
const free = (project: Project): readonly RuleId[] =>
  ruleIds.filter((id) => ruleOf(id).weight > 0 && !Object.hasOwn(overridesOf(project), id));

/** The range a rule has in the set of targets chosen, to begin from; open at both ends where the layout decides. */
const usualRange = (project: Project, rule: RuleId): Ranges => {
  const ranges = ruleOf(rule).ranges?.[project.targets.set];
  return { range: ranges ? [...ranges.range] : [null, null] };
};

/** An end of a range: a number in the person's units, or nothing for an open end. */
const endControl = (id: string, name: string, end: 0 | 1): Control => {
  const { quantity, worth } = QUANTITY[isRuleId(id) ? ruleOf(id).unit : ''];
  const keys = [...KEYS, id, 'range', end];
  const field: Field = {
    pattern: `targets.overrides{}.range[${end}]`,
    label: `${name}: ${end === 0 ? 'from' : 'to'}`,
    quantity,
    unit: '',
    min: -1000 * worth,
    max: 1000 * worth,
    step: STEP[quantity],
    optional: true,
    absent: true,
    place: false,
    help: 'Nothing leaves this end of the range open.',
  };
  return {
    path: pathText(keys),
    field,
    word: String,
    usual: () => undefined,
    read(project) {
      const value = valueAt(project, keys);
      return typeof value === 'number' ? value * worth : undefined;
    },
    set: (project, value): Edit => setValue(project, keys, typeof value === 'number' ? value / worth : null),
  };
};

/** Which rule a line is about; another rule takes the line's place with its own usual range. */
const ruleControl = (project: Project, id: string, name: string): Control => ({
  path: `${pathText([...KEYS, id])}:rule`,
  field: {
    pattern: 'targets.overrides{}',
    label: `${name}: rule`,
    quantity: 'choice',
    unit: '',
    choices: [id, ...free(project)],
    optional: false,
    absent: false,
    place: false,
    help: 'The rule that is judged by this range here.',
  },
  word: ruleTitle,
  usual: () => undefined,
  read: (now) => (Object.hasOwn(overridesOf(now), id) ? id : undefined),
  set(now, value) {
    const next = String(value);
    if (next === id || !isRuleId(next)) return { ok: true, project: now };
    const { [id]: _gone, ...others } = overridesOf(now);
    return setValue(now, KEYS, { ...others, [next]: usualRange(now, next) });
  },
});

const TABLE: Table = {
  pattern: 'targets.overrides',
  title: 'Ranges of your own',
  entry: 'Range',
  of: 'record',
  columns: [],
  fresh: () => null,
  add(project) {
    const [rule] = free(project);
    if (!rule) return { ok: true, project };
    return setValue(project, KEYS, { ...overridesOf(project), [rule]: usualRange(project, rule) });
  },
};

/** The project's own ranges, one line a rule. */
export const overridesTable = (project: Project): PlacedTable => ({
  table: TABLE,
  keys: KEYS,
  lines: Object.keys(overridesOf(project)).map((id, index) => {
    const name = `Range ${index + 1}`;
    return {
      key: id,
      name,
      controls: [ruleControl(project, id, name), endControl(id, name, 0), endControl(id, name, 1)],
    };
  }),
});
