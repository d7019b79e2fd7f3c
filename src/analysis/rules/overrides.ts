import type { Project } from '../../model/project.ts';
import type { Interval, Ranges } from './rule.ts';
import { isRuleId, type RuleId } from './table.ts';

const intervalOf = (value: unknown): Interval | null => {
  if (!Array.isArray(value) || value.length !== 2) return null;
  const ends: unknown[] = value;
  const good = ends.every((end) => end === null || (typeof end === 'number' && Number.isFinite(end)));
  return good ? [ends[0] as number | null, ends[1] as number | null] : null;
};

const least = (a: number | null, b: number | null) => (a === null || b === null ? null : Math.min(a, b));
const most = (a: number | null, b: number | null) => (a === null || b === null ? null : Math.max(a, b));

const rangesOf = (value: unknown): Ranges | null => {
  if (typeof value !== 'object' || value === null || !('range' in value)) return null;
  const range = intervalOf(value.range);
  if (!range) return null;
  const close = 'closeRange' in value ? intervalOf(value.closeRange) : null;
  return { range, closeRange: close ? [least(range[0], close[0]), most(range[1], close[1])] : range };
};

/**
 * The project's own ranges by rule id: `targets.overrides`, { "rule": { "range": [low, high], "closeRange": [low, high] } },
 * null an open end. Without a close range nothing is close. What is not of this form is passed over, as unknown keys are.
 */
export const overridesOf = (project: Project): ReadonlyMap<RuleId, Ranges> => {
  const { overrides } = project.targets;
  const found = new Map<RuleId, Ranges>();
  if (typeof overrides !== 'object' || overrides === null) return found;
  for (const [id, value] of Object.entries(overrides)) {
    const ranges = rangesOf(value);
    if (ranges && isRuleId(id)) found.set(id, ranges);
  }
  return found;
};
