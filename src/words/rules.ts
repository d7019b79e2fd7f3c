import { type SourceId, sources } from '../analysis/rules/sources.ts';
import { isRuleId, type RuleId, ruleOf } from '../analysis/rules/table.ts';
import { whys } from './rules-why.ts';

/** A rule's short name; the id itself for a rule this version does not know. */
export const ruleTitle = (rule: string): string => (isRuleId(rule) ? ruleOf(rule).title : rule);

/** Why the rule is there, in one or two plain sentences; empty for a rule this version does not know. */
export const whyText = (rule: string): string => (isRuleId(rule) ? whys[rule as RuleId] : '');

const isSourceId = (id: string): id is SourceId => Object.hasOwn(sources, id);

/** A source and how well it is founded: "ITU-R BS.2051 ... (read)". */
export const sourceText = (id: string): string =>
  isSourceId(id) ? `${sources[id].text} (${sources[id].standing})` : id;
