import { sentenceOf } from '../analysis/rules/sentence.ts';
import { metric, type Speak } from '../analysis/rules/speak.ts';
import type { Finding } from '../analysis/types.ts';
import type { Project } from '../model/project.ts';
import { formatImperial, type UnitSystem } from './quantities-length.ts';
import { thingName } from './things.ts';

/**
 * Parts of an inch: a quarter is finer than a hand holds a tape; sixteenths and sixty-fourths only where the verdict beside
 * the number would not show without them.
 */
const perInch = [4, 16, 64] as const;

const imperial: Speak = { ...metric, length: (m, decimals = 0) => formatImperial(m, perInch[Math.min(decimals, 2)]) };

const speakers: Readonly<Record<UnitSystem, Speak>> = { metric, imperial };

/**
 * What a finding says, made from its rule and values in the person's units. Seats and rows go by their place in `project`,
 * as everywhere a person reads; without one by their ids, which in metric is the report's own text.
 */
export const findingSentence = (finding: Finding, units: UnitSystem, project?: Project): string =>
  sentenceOf(
    finding,
    project
      ? {
          ...speakers[units],
          seat: (id) => thingName(project, { kind: 'seat', id }),
          row: (id) => thingName(project, { kind: 'row', id }),
        }
      : speakers[units],
  );
