import type { Finding } from '../types.ts';
import type { Sentence } from './sentence.ts';
import { advice, amountOf, lengthOf, numberFact, seatOf, shareOf } from './sentence-parts.ts';
import { honestDecimals, rangeText, type Speak } from './speak.ts';
import type { soundRules } from './table-sound.ts';

const levelOf = (finding: Finding, say: Speak): string => say.level(amountOf(finding), honestDecimals(finding));

const wantedLevel = (finding: Finding, say: Speak): string => {
  const text = rangeText(finding.range, (value) => say.level(value, Number.isInteger(value) ? 0 : 1));
  return finding.verdict === 'met' || text === null ? '' : ` Wanted: ${text}.`;
};

const wantedLength = (finding: Finding, say: Speak): string => {
  const text = rangeText(finding.range, say.length);
  return finding.verdict === 'met' || text === null ? '' : ` Wanted: ${text}.`;
};

/** How a level stands to the one asked for. */
const against = (finding: Finding, say: Speak): string => {
  const gap = amountOf(finding);
  const size = say.level(Math.abs(gap), honestDecimals(finding));
  return gap < 0 ? `${size} short of` : `${size} more than`;
};

/** The level asked for, and how far that is from the cinema's own. */
const asked = (finding: Finding, say: Speak): string => {
  const below = numberFact(finding, 'referenceDb') - numberFact(finding, 'askedDb');
  const name = below > 0 ? ` (${say.level(below)} under full cinema reference)` : '';
  return `the ${say.level(numberFact(finding, 'askedDb'))} asked for${name}`;
};

const spread: Sentence = (finding, say) =>
  `${finding.item} is ${levelOf(finding, say)} louder at one seat than at another.${wantedLevel(finding, say)}`;

export const soundSentences: Readonly<Record<keyof typeof soundRules, Sentence>> = {
  'nearest-loudspeaker': (finding, say) => {
    const hint = 'So near, it draws attention to itself.';
    const text = `${finding.item} is ${lengthOf(finding, say)} from the ears of ${seatOf(finding, say)}, the nearest loudspeaker there.`;
    return `${text}${wantedLength(finding, say)}${advice(finding, hint)}`;
  },
  'front-level-spread': spread,
  'surround-level-spread': spread,
  'level-reached': (finding, say) =>
    `${finding.item} reaches ${say.level(numberFact(finding, 'maxDb'))} peak at ${seatOf(finding, say)}, ${against(finding, say)} ${asked(finding, say)}.`,
  'bass-level-reached': (finding, say) =>
    `Around ${numberFact(finding, 'bandHz')} Hz the subwoofers reach ${say.level(numberFact(finding, 'maxDb'))} peak at ${seatOf(finding, say)}, ${against(finding, say)} ${asked(finding, say)}.`,
  'bass-spread': (finding, say) => {
    const hint = 'Other places for the subwoofers, or more of them, make the seats more alike.';
    const text = `Between 20 and 80 Hz the bass differs by ${levelOf(finding, say)} from seat to seat (standard deviation).`;
    return `${text}${wantedLevel(finding, say)}${advice(finding, hint)}`;
  },
  'seat-half-length': (finding, say) => {
    const hint = 'There half of the room’s deep notes are missing.';
    const text = `The ears of ${seatOf(finding, say)} are ${lengthOf(finding, say)} from the middle of the room’s length.`;
    return `${text}${wantedLength(finding, say)}${advice(finding, hint)}`;
  },
  'back-wall': (finding, say) => {
    const hint = 'Near a wall the bass swells and the surrounds cannot open out.';
    const text = `The ears of ${seatOf(finding, say)} are ${lengthOf(finding, say)} from the wall behind.`;
    return `${text}${wantedLength(finding, say)}${advice(finding, hint)}`;
  },
  'bass-sealed': ({ item }) =>
    `The bass is worked out for a closed room, but ${item} is open: the deepest notes will be weaker than shown, and differ more.`,
  'bass-absorption': (finding, say) =>
    `The ${finding.item} surface absorbs ${shareOf(finding, say)} at low frequency; the bass is worked out with 95 %, the most a plain wall can take.`,
  'caution-loud': (finding, say) =>
    `The room is designed for peaks of ${say.level(amountOf(finding))}. Loud sound harms hearing, level and time together; bass crosses party walls at night.`,
};
