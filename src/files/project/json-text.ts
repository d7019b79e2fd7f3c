/** Why a text is not JSON, and where (counted from 0). */
export interface JsonTrouble {
  readonly at: number;
  readonly holds: string;
  readonly allowed: string;
}

export const DEEPEST_NESTING = 32;

/** Lists, objects and keys in one file. Far more than a room needs; a parser would take seconds over what 5 MB can hold. */
export const MOST_PARTS = 250_000;

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const LITERAL = /true|false|null/y;
const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9A-Fa-f]{4})/y;
/** What cannot follow a whole number or word: it began as one and went on wrongly. */
const UNFINISHED_ALLOWED = 'a whole word, or a number such as 0.5, -2 or 1e3';
const UNFINISHED = /[\w.+-]/;
const WORD = /[\w$+\-.]{1,20}/y;

const OBJECT = 1;
const LIST = 0;

type State = 'value' | 'first value' | 'key' | 'first key' | 'colon' | 'after';

const ALLOWED: Record<State, string> = {
  value: 'a number, text, true, false, null, a list or an object',
  'first value': 'a value or ]',
  key: 'a key in double quotes',
  'first key': 'a key in double quotes or }',
  colon: 'a colon',
  after: 'a comma or the closing bracket',
};

const matchLength = (pattern: RegExp, text: string, at: number): number => {
  pattern.lastIndex = at;
  return pattern.test(text) ? pattern.lastIndex - at : 0;
};

const isBlank = (code: number): boolean => code === 32 || code === 10 || code === 13 || code === 9;

/** What stands at a place, for a person: a word, one character, or the end. */
const standing = (text: string, at: number): string => {
  if (at >= text.length) return 'the end of the file';
  const length = matchLength(WORD, text, at);
  const piece = length > 0 ? text.slice(at, at + length) : String.fromCodePoint(text.codePointAt(at)!);
  const code = piece.charCodeAt(0);
  return code < 32 || code === 0x7f || code > 0x7e ? `the character U+${hex(piece.codePointAt(0)!)}` : piece;
};

const hex = (code: number): string => code.toString(16).toUpperCase().padStart(4, '0');

/** The place after the string that opens at `at`, or what is wrong with it. */
const stringEnd = (text: string, at: number): number | JsonTrouble => {
  for (let i = at + 1; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code === 34) return i + 1;
    if (code < 32) {
      const allowed = 'text that ends with a double quote on its own line, control characters written as \\u00..';
      return { at: i, holds: `the character U+${hex(code)} inside text`, allowed };
    }
    if (code === 92) {
      const length = matchLength(ESCAPE, text, i);
      if (length === 0)
        return { at: i, holds: `a backslash before ${standing(text, i + 1)}`, allowed: 'a JSON escape' };
      i += length - 1;
    }
  }
  return { at: text.length, holds: 'the end of the file inside text', allowed: 'a closing double quote' };
};

/**
 * Reads through a JSON text (RFC 8259) without building anything, in one pass and without recursion, so that a hostile file
 * is refused before a parser meets it and with the same words in every engine. Undefined when the text is good.
 */
export const jsonTrouble = (text: string): JsonTrouble | undefined => {
  const containers = new Uint8Array(DEEPEST_NESTING);
  let depth = 0;
  let parts = 0;
  let state: State = 'value';
  let at = 0;
  for (;;) {
    while (isBlank(text.charCodeAt(at))) at++;
    if (state === 'after' && depth === 0) {
      return at >= text.length ? undefined : { at, holds: standing(text, at), allowed: 'nothing after the project' };
    }
    const code = text.charCodeAt(at);
    const takesValue: boolean = state === 'value' || state === 'first value';
    const takesKey: boolean = state === 'key' || state === 'first key';
    const opens = code === 123 || code === 91;
    const closes = code === (containers[depth - 1] === OBJECT ? 125 : 93) && depth > 0;
    if (closes && (state === 'after' || state === 'first value' || state === 'first key')) {
      depth--;
      at++;
      state = 'after';
    } else if (state === 'after' && code === 44) {
      at++;
      state = containers[depth - 1] === OBJECT ? 'key' : 'value';
    } else if (state === 'colon' && code === 58) {
      at++;
      state = 'value';
    } else if (code === 34 && (takesKey || takesValue)) {
      const end = stringEnd(text, at);
      if (typeof end !== 'number') return end;
      at = end;
      state = takesKey ? 'colon' : 'after';
      if (takesKey && ++parts > MOST_PARTS) return tooMany(at);
    } else if (opens && takesValue) {
      if (depth === DEEPEST_NESTING) {
        return { at, holds: `nesting ${depth + 1} deep`, allowed: `nesting up to ${DEEPEST_NESTING}` };
      }
      if (++parts > MOST_PARTS) return tooMany(at);
      containers[depth++] = code === 123 ? OBJECT : LIST;
      at++;
      state = code === 123 ? 'first key' : 'first value';
    } else {
      const length = takesValue ? scalarLength(text, at) : 0;
      if (length === 0) return { at, holds: standing(text, at), allowed: ALLOWED[state] };
      if (UNFINISHED.test(text.charAt(at + length))) {
        return { at, holds: standing(text, at), allowed: UNFINISHED_ALLOWED };
      }
      at += length;
      state = 'after';
    }
  }
};

const tooMany = (at: number): JsonTrouble => ({
  at,
  holds: 'one part too many',
  allowed: `up to ${MOST_PARTS} lists, objects and keys in all`,
});

/** The length of a number, true, false or null; 0 where none stands. */
const scalarLength = (text: string, at: number): number => {
  const code = text.charCodeAt(at);
  const digit = code > 48 && code <= 57;
  const next = text.charCodeAt(at + 1);
  // One digit alone is the cheapest number to write and so the commonest in a hostile file.
  if (digit && (next === 44 || next === 93)) return 1;
  if (digit || code === 48 || code === 45) return matchLength(NUMBER, text, at);
  return matchLength(LITERAL, text, at);
};

/** Line and column of a place in a text, both counted from 1. */
export const lineAndColumn = (text: string, at: number): { line: number; column: number } => {
  let line = 1;
  let start = 0;
  for (let next = text.indexOf('\n'); next >= 0 && next < at; next = text.indexOf('\n', next + 1)) {
    line++;
    start = next + 1;
  }
  return { line, column: at - start + 1 };
};
