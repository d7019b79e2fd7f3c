import type { Sentence } from './sentence.ts';
import { advice, amountOf, capital, lengthOf, numberFact, seatOf, textFact } from './sentence-parts.ts';
import type { placeRules } from './table-place.ts';

const codes = 'Local codes govern.';

export const placeSentences: Readonly<Record<keyof typeof placeRules, Sentence>> = {
  'riser-step': (finding, say) => {
    const steps = numberFact(finding, 'steps');
    const up = `${capital(say.row(finding.item ?? ''))} is ${lengthOf(finding, say)} up`;
    if (finding.verdict === 'met') return `${up} in one step.`;
    const rise = say.length(numberFact(finding, 'stepM'));
    const many = steps === 1 ? `a step of ${rise}` : `${steps} steps of ${rise} each`;
    const limits = `A step may rise ${say.length(0.197, 1)}; it goes at least ${say.length(numberFact(finding, 'leastGoingM'), 1)} deep.`;
    if (finding.verdict === 'close') {
      const going = say.length(numberFact(finding, 'goingM'));
      return `${up}: ${many} between ${steps === 1 ? 'is' : 'are'} needed and drawn here, ${going} deep. ${limits} Keep rises equal and edges lit. ${codes}`;
    }
    const chairs = finding.causes.filter(({ kind }) => kind === 'seat').map(({ id }) => say.seat(id));
    const names = [...chairs, textFact(finding, 'inTheWay')].filter((name) => name !== '').join(', ');
    const why = names === '' ? '' : ` (in the way: ${names})`;
    return `${up}: ${many} between ${steps === 1 ? 'is' : 'are'} needed and there is no room before it${why}. ${limits} ${codes}`;
  },
  'riser-headroom': (finding, say) =>
    `There is ${lengthOf(finding, say)} of headroom over the riser of ${say.row(finding.item ?? '')}.${advice(finding, `At least ${say.length(2.03)} is wanted. ${codes}`)}`,
  'riser-window': (finding, say) =>
    `The sill of ${finding.item} is only ${say.length(Math.max(0, amountOf(finding)))} above the riser under it.${advice(finding, `Below ${say.length(0.91)} it wants a guard and safety glass. ${codes}`)}`,
  'door-clear': (finding, say) => {
    const text =
      finding.verdict === 'met'
        ? `The way through ${finding.item} is clear.`
        : `Only ${lengthOf(finding, say)} is clear in front of ${finding.item}.`;
    return `${text}${advice(finding, `At least ${say.length(0.91)} keeps the way out open. ${codes}`)}`;
  },
  'chairs-overlap': (finding, say) =>
    `The chairs of ${seatOf(finding, say)} and ${say.seat(finding.item ?? '')} stand ${lengthOf(finding, say)} into one another.`,
  'things-overlap': (finding, say) =>
    `${textFact(finding, 'name')} and ${textFact(finding, 'other')} stand ${lengthOf(finding, say)} into one another.`,
  'outside-room': (finding, say) =>
    `${finding.seat === null ? textFact(finding, 'name') : `The chair of ${seatOf(finding, say)}`} reaches ${lengthOf(finding, say)} through a wall, the floor or the ceiling.`,
  'picture-fits': (finding, say) => {
    const [width, height] = ['widthM', 'heightM'].map((name) => say.length(numberFact(finding, name)));
    return `The picture, ${width} wide and ${height} high, reaches ${lengthOf(finding, say)} through a wall or the ceiling.${advice(finding, 'Make it smaller, or hang it elsewhere.')}`;
  },
  'caution-overhead': (finding) => {
    const count = numberFact(finding, 'loudspeakers');
    const things = [
      ...(count > 0 ? [count === 1 ? 'one loudspeaker' : `${count} loudspeakers`] : []),
      ...(numberFact(finding, 'projector') > 0 ? ['the projector'] : []),
    ].join(' and ');
    return `Overhead: ${things}. Fix each to the structure and secure it a second time; know what is behind the board before cutting.`;
  },
};
