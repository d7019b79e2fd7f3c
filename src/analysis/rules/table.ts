import type { Rule } from './rule.ts';
import { layoutRules } from './table-layout.ts';
import { placeRules } from './table-place.ts';
import { sightRules } from './table-sight.ts';
import { soundRules } from './table-sound.ts';

/** Every rule by its id. The verdicts' numbers stand here and, for layouts, in engines/loudspeakers, and nowhere else. */
export const rules = { ...layoutRules, ...sightRules, ...soundRules, ...placeRules };

export type RuleId = keyof typeof rules;

export const ruleOf = (id: RuleId): Rule => rules[id];

export const ruleIds = Object.keys(rules) as RuleId[];

export const isRuleId = (id: string): id is RuleId => Object.hasOwn(rules, id);
