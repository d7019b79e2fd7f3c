import type { Finding } from '../types.ts';
import type { Sentence } from './sentence.ts';
import { advice, amountOf, angleOf, capital, seatOf, shareOf, textFact, wantedAngle } from './sentence-parts.ts';
import type { Speak } from './speak.ts';
import type { layoutRules } from './table-layout.ts';

const azimuth: Sentence = (finding, say) => {
  const side = textFact(finding, 'side');
  const wrong = amountOf(finding) < 0 && side !== 'centre';
  const where = side === 'centre' ? 'off straight ahead' : `to the ${side}`;
  const other = side === 'left' ? 'right' : 'left';
  const stands = wrong
    ? `${say.angle(-amountOf(finding))} to the ${other}, the wrong side`
    : `${angleOf(finding, say)} ${where}`;
  return `From ${seatOf(finding, say)}, ${finding.item} stands ${stands}.${wantedAngle(finding, say)}`;
};

const upOrDown = (finding: Finding, say: Speak): string => {
  const deg = amountOf(finding);
  const text = angleOf(
    deg < 0
      ? { ...finding, value: -deg, range: turned(finding.range), closeRange: turned(finding.closeRange) }
      : finding,
    say,
  );
  return `${text} ${deg < 0 ? 'below' : 'above'} the ears`;
};

const turned = ([low, high]: Finding['range']): Finding['range'] => [
  high === null ? null : -high,
  low === null ? null : -low,
];

/** " Wanted: between 15 degrees below and 10 degrees above." */
const wantedElevation = (finding: Finding, say: Speak): string => {
  const [low, high] = finding.range;
  if (low === null || high === null || low >= 0 || finding.verdict === 'met') return wantedAngle(finding, say);
  const end = (deg: number): string =>
    `${say.angle(Math.abs(deg), Number.isInteger(deg) ? 0 : 1)} ${deg < 0 ? 'below' : 'above'}`;
  return ` Wanted: between ${end(low)} and ${end(high)}.`;
};

const elevation: Sentence = (finding, say) => {
  const [low, high] = finding.range;
  const word = low !== null && high !== null && amountOf(finding) > high ? 'Lower it.' : 'Raise it.';
  const hint = advice(finding, word);
  const text = `From ${seatOf(finding, say)}, ${finding.item} is ${upOrDown(finding, say)}.`;
  return `${text}${wantedElevation(finding, say)}${hint}`;
};

const inView: Sentence = (finding, say) => {
  const { item } = finding;
  const share = amountOf(finding);
  if (share >= 1) return `${item} is in full view from ${seatOf(finding, say)}.`;
  return share === 0
    ? `${capital(seatOf(finding, say))} sees nothing of ${item}.`
    : `${capital(seatOf(finding, say))} sees ${shareOf(finding, say)} of ${item}.`;
};

export const layoutSentences: Readonly<Record<keyof typeof layoutRules, Sentence>> = {
  'centre-in-view': (finding, say) => {
    const hint = 'Voices come from it: nothing but acoustic cloth may stand between it and a head.';
    return `${inView(finding, say)}${advice(finding, hint)}`;
  },
  'loudspeaker-in-view': (finding, say) => {
    const hint = 'Move it, raise it or turn it so that every seat hears it directly.';
    return `${inView(finding, say)}${advice(finding, hint)}`;
  },
  'centre-line': (finding, say) => {
    const deg = amountOf(finding);
    const text = say.angle(Math.abs(deg), finding.verdict === 'met' ? 0 : 1);
    const side = deg < 0 ? 'left' : 'right';
    const where =
      Math.abs(deg) < 0.5 ? 'on the middle line of the picture' : `${text} to the ${side} of the middle of the picture`;
    return `From ${seatOf(finding, say)}, ${finding.item} stands ${where}.${advice(finding, 'Voices should come from the middle.')}`;
  },
  'centre-elevation': elevation,
  'front-azimuth': azimuth,
  'side-azimuth': azimuth,
  'rear-azimuth': azimuth,
  'wide-azimuth': azimuth,
  'height-azimuth': azimuth,
  'other-azimuth': azimuth,
  'front-elevation': elevation,
  'surround-elevation': elevation,
  'height-elevation': elevation,
  'other-elevation': elevation,
  'front-symmetry': (finding, say) =>
    `From ${seatOf(finding, say)}, the angles of ${finding.item} and ${textFact(finding, 'other')} differ by ${angleOf(finding, say)}.${wantedAngle(finding, say)}`,
  'front-picture-edge': (finding, say) => {
    const deg = amountOf(finding);
    const side = textFact(finding, 'side');
    const where = Math.abs(deg) < 0.5 ? 'at' : `${say.angle(Math.abs(deg))} ${deg < 0 ? 'inside' : 'outside'}`;
    const hint =
      deg < 0 ? 'The sound would shrink to the middle of the picture.' : 'Voices and effects would leave the picture.';
    return `From ${seatOf(finding, say)}, ${finding.item} stands ${where} the ${side} edge of the picture.${advice(finding, hint)}`;
  },
  'image-order': (finding, say) =>
    finding.verdict === 'met'
      ? `From ${seatOf(finding, say)}, left, centre and right stand well apart and in order.`
      : `From ${seatOf(finding, say)}, two of left, centre and right are only ${angleOf(finding, say)} apart.${wantedAngle(finding, say)}`,
};
