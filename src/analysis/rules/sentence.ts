import type { Finding } from '../types.ts';
import { layoutSentences } from './sentences-layout.ts';
import { placeSentences } from './sentences-place.ts';
import { sightSentences } from './sentences-sight.ts';
import { soundSentences } from './sentences-sound.ts';
import type { Speak } from './speak.ts';
import { isRuleId, type RuleId } from './table.ts';

/** What a rule says of one finding: what is, what is wanted, what helps. Short, plain, the number in the reader's units. */
export type Sentence = (finding: Finding, say: Speak) => string;

const sentences: Readonly<Record<RuleId, Sentence>> = {
  ...layoutSentences,
  ...sightSentences,
  ...soundSentences,
  ...placeSentences,
};

/** The finding in words. */
export const sentenceOf = (finding: Finding, say: Speak): string => {
  if (!isRuleId(finding.rule)) throw new RangeError(`no rule "${finding.rule}"`);
  return sentences[finding.rule](finding, say);
};
