import type { Project } from '../../model/project.ts';
import type { Ranges } from './rule.ts';
import { isRuleId, type RuleId } from './table.ts';

const least = (a: number | null, b: number | null) => (a === null || b === null ? null : Math.min(a, b));
const most = (a: number | null, b: number | null) => (a === null || b === null ? null : Math.max(a, b));

/**
 * The project's own ranges by rule id: `targets.overrides`, { "rule": { "range": [low, high], "closeRange": [low, high] } },
 * null an open end. Without a close range nothing is close. A rule this version does not know is passed over.
 */
export const overridesOf = (project: Project): ReadonlyMap<RuleId, Ranges> => {
  const found = new Map<RuleId, Ranges>();
  for (const [id, { range, closeRange }] of Object.entries(project.targets.overrides ?? {})) {
    if (!isRuleId(id)) continue;
    const close = closeRange && ([least(range[0], closeRange[0]), most(range[1], closeRange[1])] as const);
    found.set(id, { range, closeRange: close ?? range });
  }
  return found;
};
