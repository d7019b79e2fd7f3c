import type { Sentence } from './sentence.ts';
import {
  advice,
  amountOf,
  angleOf,
  capital,
  numberFact,
  seatOf,
  shareOf,
  textFact,
  wantedAngle,
} from './sentence-parts.ts';
import { honestDecimals } from './speak.ts';
import type { sightRules } from './table-sight.ts';

export const sightSentences: Readonly<Record<keyof typeof sightRules, Sentence>> = {
  'picture-in-view': (finding, say) => {
    const share = amountOf(finding);
    if (share >= 1) return `${capital(seatOf(finding, say))} sees the whole picture.`;
    if (share === 0) return `${capital(seatOf(finding, say))} sees nothing of the picture.`;
    const sitter = textFact(finding, 'hiderSeat');
    const hider = sitter === '' ? textFact(finding, 'hider') : `who sits in ${say.seat(sitter)}`;
    const seen = `${capital(seatOf(finding, say))} sees ${shareOf(finding, say)} of the picture`;
    if (hider === '') return `${seen}; heads, chairs or things hide the rest.`;
    return `${seen}. In the way: ${hider}.${advice(finding, 'Move it, or the seat.')}`;
  },
  'picture-angle': (finding, say) => {
    const small = finding.range[0] !== null && amountOf(finding) < finding.range[0];
    const hint = small ? 'A larger picture or a nearer seat helps.' : 'A seat farther back or a smaller picture helps.';
    const text = `The picture is ${angleOf(finding, say)} wide from ${seatOf(finding, say)}.`;
    return `${text}${wantedAngle(finding, say)}${advice(finding, hint)}`;
  },
  'picture-top': (finding, say) => {
    const deg = amountOf(finding);
    const where = deg < 0 ? `${say.angle(-deg)} below` : `${angleOf(finding, say)} above`;
    const hint =
      finding.verdict === 'close'
        ? 'It tires the neck in time: lower the picture.'
        : 'Lower the picture or move the seat back.';
    const text = `The top of the picture is ${where} the eyes of ${seatOf(finding, say)}.`;
    return `${text}${wantedAngle(finding, say)}${advice(finding, hint)}`;
  },
  'picture-off-axis': (finding, say) =>
    `${capital(seatOf(finding, say))} looks at the picture ${angleOf(finding, say)} from straight on.${wantedAngle(finding, say)}`,
  'picture-pixels': (finding, say) => {
    const pixels = Math.round(amountOf(finding));
    const seen = finding.verdict === 'met' ? 'too fine to see' : 'coarse enough to be seen by sharp eyes';
    return `From ${seatOf(finding, say)} there are ${pixels} pixels to a degree, ${seen}; 60 is the limit of normal sight.`;
  },
  sightline: (finding, say) => {
    const mm = amountOf(finding);
    const size = say.length(Math.abs(mm) / 1000, honestDecimals(finding, 10));
    const over = mm < 0 ? `${size} below` : `${size} above`;
    const text = `${capital(seatOf(finding, say))}’s line to the bottom of the picture passes ${over} the eyes of ${say.row(finding.item ?? '')}`;
    if (finding.verdict === 'met') return `${text}, clear of the heads.`;
    const between = textFact(finding, 'staggered') === 'yes' ? ', between the heads' : ', so heads hide part of it';
    const raise = say.length(Math.ceil(numberFact(finding, 'raiseM') * 100 - 1e-6) / 100);
    return `${text}${between}. ${say.length(0.12)} just clears a head. Raise the row by ${raise}, or raise the picture.`;
  },
  'worst-case-view': (finding, say) =>
    amountOf(finding) >= 1
      ? `Even a short person in ${seatOf(finding, say)} behind tall ones sees the whole picture.`
      : `A short person in ${seatOf(finding, say)} behind tall ones sees ${say.share(amountOf(finding))} of the picture.`,
};
