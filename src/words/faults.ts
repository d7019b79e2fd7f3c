import { escapeText } from '../model/paths.ts';
import type { Allowed, Refusal } from '../model/refusal.ts';

/** One thing wrong with a file, in words. Where `says` is given it is the whole of what is said. */
export interface Fault {
  /** The field's path, or the place in the text, or `file`. */
  readonly path: string;
  readonly holds: string;
  readonly allowed: string;
  readonly says?: string;
}

const LONGEST_VALUE = 60;
const LONGEST_LIST = 4;

const shorten = (text: string): string => (text.length > LONGEST_VALUE ? `${text.slice(0, LONGEST_VALUE - 1)}…` : text);

/** A value from a file on one short line, whatever it is. */
export const held = (value: unknown): string => {
  if (value === undefined) return 'nothing';
  if (Number.isNaN(value)) return 'what is no number';
  if (typeof value === 'number') return Number.isFinite(value) ? String(value) : 'a number beyond 1.8e308';
  if (typeof value === 'string') return shorten(escapeText(JSON.stringify(value.slice(0, LONGEST_VALUE + 1))));
  if (Array.isArray(value)) {
    const short = value.length <= LONGEST_LIST && value.every((entry) => typeof entry !== 'object' || entry === null);
    return short ? shorten(`[${value.map(held).join(', ')}]`) : `a list of ${value.length}`;
  }
  return typeof value === 'object' && value !== null ? 'an object' : String(value);
};

const numberText = (value: number): string => String(Number(value.toFixed(3)));

const rangeText = (min: number | undefined, max: number | undefined, whole: boolean | undefined): string => {
  const numbers = whole ? 'whole numbers ' : '';
  const low = min !== undefined && Number.isFinite(min);
  const high = max !== undefined && Number.isFinite(max);
  if (low && high) return `${numbers}${min} to ${max}`;
  if (low) return `${numbers}${min} or more`;
  return high ? `${numbers}${max} or less` : `${whole ? 'a whole' : 'a'} number`;
};

/** What is allowed, in the file's own units. */
export const allowedText = (allowed: Allowed): string => {
  switch (allowed.kind) {
    case 'range':
      return rangeText(allowed.min, allowed.max, allowed.whole);
    case 'choice':
      return allowed.values
        .map((value) => (typeof value === 'string' ? JSON.stringify(value) : String(value)))
        .join(', ');
    case 'count':
      return `${rangeText(allowed.min, allowed.max, false)} ${allowed.of}`;
    case 'inside': {
      if (allowed.past === 'walls') return 'a place within the walls of the plan';
      if (allowed.past) return `a place below the ceiling, which is ${numberText(allowed.past.ceilingM)} up there`;
      const sides = ['x', 'y', 'z'].map(
        (axis, index) => `${axis} ${numberText(allowed.minM[index])} to ${numberText(allowed.maxM[index])}`,
      );
      return `inside the room, ${sides.join(', ')}`;
    }
    case 'words':
      return allowed.words;
    case 'otherTab':
      return 'nothing while the room is open in another tab';
  }
};

const heldText = ({ holds, lead, aside, allowed }: Refusal): string => {
  const rounded =
    allowed.kind === 'inside' && Array.isArray(holds)
      ? `[${holds.map((value) => numberText(Number(value))).join(', ')}]`
      : held(holds);
  const value = lead === undefined ? rounded : `${lead} ${rounded}`;
  return aside === undefined ? value : `${value}, ${aside}`;
};

export const faultOf = (refusal: Refusal): Fault => ({
  path: refusal.field,
  holds: heldText(refusal),
  allowed: allowedText(refusal.allowed),
});

/** A fault as the one line that is printed for it. */
export const faultLine = ({ path, holds, allowed, says }: Fault): string =>
  says === undefined ? `${path}: holds ${holds}; allowed: ${allowed}` : `${path}: ${says}`;

export const MOST_FAULTS = 50;

/** Refusals in words: the first fifty, then one line that says how many more there are. */
export const faultsOf = (refusals: readonly Refusal[]): Fault[] => {
  const faults = refusals.slice(0, MOST_FAULTS).map(faultOf);
  const more = refusals.length - faults.length;
  return more > 0 ? [...faults, { path: 'file', holds: '', allowed: '', says: `${more} more like these` }] : faults;
};
