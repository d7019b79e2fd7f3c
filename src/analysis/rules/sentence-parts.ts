import type { Finding } from '../types.ts';
import { honestDecimals, rangeText, type Speak } from './speak.ts';

export const amountOf = ({ value }: Finding): number => value ?? 0;
/** The seat a finding is about, in the middle of a sentence. */
export const seatOf = ({ seat }: Finding, say: Speak): string => say.seat(seat ?? '');
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
export const textFact = ({ facts }: Finding, name: string): string => String(facts[name] ?? '');
export const numberFact = ({ facts }: Finding, name: string): number => Number(facts[name] ?? 0);

/** The value as an angle with as many decimals as its verdict needs. */
export const angleOf = (finding: Finding, say: Speak): string => say.angle(amountOf(finding), honestDecimals(finding));

/** The value in metres, or a share, with as many decimals beyond the centimetre or the hundredth as its verdict needs. */
export const lengthOf = (finding: Finding, say: Speak): string =>
  say.length(amountOf(finding), honestDecimals(finding, 0.01));
export const shareOf = (finding: Finding, say: Speak): string =>
  say.share(amountOf(finding), honestDecimals(finding, 0.01));

/** " Wanted: 22 to 32 degrees." after a value that is not met; nothing after one that is. */
export const wantedAngle = (finding: Finding, say: Speak): string => {
  const text = rangeText(finding.range, (value) => say.angle(value, Number.isInteger(value) ? 0 : 1));
  return finding.verdict === 'met' || text === null ? '' : ` Wanted: ${text}.`;
};

/** A hint given only where something is to be done. */
export const advice = (finding: Finding, text: string): string => (finding.verdict === 'met' ? '' : ` ${text}`);
