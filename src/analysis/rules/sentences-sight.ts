import type { Sentence } from './sentence.ts';
import { advice, amountOf, angleOf, numberFact, shareOf, textFact, wantedAngle } from './sentence-parts.ts';
import { honestDecimals } from './speak.ts';
import type { sightRules } from './table-sight.ts';

export const sightSentences: Readonly<Record<keyof typeof sightRules, Sentence>> = {
  'picture-in-view': (finding, say) => {
    const { seat } = finding;
    const share = amountOf(finding);
    if (share >= 1) return `Seat ${seat} sees the whole picture.`;
    if (share === 0) return `Seat ${seat} sees nothing of the picture.`;
    const hider = textFact(finding, 'hider');
    const seen = `Seat ${seat} sees ${shareOf(finding, say)} of the picture`;
    if (hider === '') return `${seen}; heads, chairs or things hide the rest.`;
    return `${seen}. In the way: ${hider}.${advice(finding, 'Move it, or the seat.')}`;
  },
  'picture-angle': (finding, say) => {
    const small = finding.range[0] !== null && amountOf(finding) < finding.range[0];
    const hint = small ? 'A larger picture or a nearer seat helps.' : 'A seat farther back or a smaller picture helps.';
    const text = `The picture is ${angleOf(finding, say)} wide from seat ${finding.seat}.`;
    return `${text}${wantedAngle(finding, say)}${advice(finding, hint)}`;
  },
  'picture-top': (finding, say) => {
    const deg = amountOf(finding);
    const where = deg < 0 ? `${say.angle(-deg)} below` : `${angleOf(finding, say)} above`;
    const hint =
      finding.verdict === 'close'
        ? 'It tires the neck in time: lower the picture.'
        : 'Lower the picture or move the seat back.';
    const text = `The top of the picture is ${where} the eyes of seat ${finding.seat}.`;
    return `${text}${wantedAngle(finding, say)}${advice(finding, hint)}`;
  },
  'picture-off-axis': (finding, say) =>
    `Seat ${finding.seat} looks at the picture ${angleOf(finding, say)} from straight on.${wantedAngle(finding, say)}`,
  'picture-pixels': (finding) => {
    const pixels = Math.round(amountOf(finding));
    const seen = finding.verdict === 'met' ? 'too fine to see' : 'coarse enough to be seen by sharp eyes';
    return `From seat ${finding.seat} there are ${pixels} pixels to a degree, ${seen}; 60 is the limit of normal sight.`;
  },
  sightline: (finding, say) => {
    const mm = amountOf(finding);
    const size = say.length(Math.abs(mm) / 1000, honestDecimals(finding, 10));
    const over = mm < 0 ? `${size} below` : `${size} above`;
    const text = `Seat ${finding.seat}’s line to the bottom of the picture passes ${over} the eyes of row ${finding.item}`;
    if (finding.verdict === 'met') return `${text}, clear of the heads.`;
    const between = textFact(finding, 'staggered') === 'yes' ? ', between the heads' : ', so heads hide part of it';
    const raise = say.length(Math.ceil(numberFact(finding, 'raiseM') * 100 - 1e-6) / 100);
    return `${text}${between}. ${say.length(0.12)} just clears a head. Raise the row by ${raise}, or raise the picture.`;
  },
  'worst-case-view': ({ value, seat }, say) =>
    (value ?? 0) >= 1
      ? `Even a short person in seat ${seat} behind tall ones sees the whole picture.`
      : `A short person in seat ${seat} behind tall ones sees ${say.share(value ?? 0)} of the picture.`,
};
