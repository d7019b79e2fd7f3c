import { sentenceOf } from '../analysis/rules/sentence.ts';
import { metric, type Speak } from '../analysis/rules/speak.ts';
import type { Finding } from '../analysis/types.ts';
import { formatImperial, type UnitSystem } from './quantities-length.ts';

/** A sentence needs no eighths: a quarter of an inch is finer than a hand holds a tape. */
const PER_INCH = 4;

const imperial: Speak = { ...metric, length: (m) => formatImperial(m, PER_INCH) };

const speakers: Readonly<Record<UnitSystem, Speak>> = { metric, imperial };

/** What a finding says, made from its rule and values in the person's units. In metric it is the report's own text. */
export const findingSentence = (finding: Finding, units: UnitSystem): string => sentenceOf(finding, speakers[units]);
