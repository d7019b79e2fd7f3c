export type Key = string | number;

const PLAIN_KEY = /^[A-Za-z_][A-Za-z0-9_-]*$/;
const LONGEST_KEY = 40;

/** A key from a file may hold anything: quoted, escaped and cut short when it is not a plain name. */
const keyText = (key: string): string => {
  const short = key.length > LONGEST_KEY ? `${key.slice(0, LONGEST_KEY)}…` : key;
  return PLAIN_KEY.test(short) ? short : `[${escapeText(JSON.stringify(short))}]`;
};

/** Escapes what would break a line, hide text or turn its direction; JSON.stringify leaves these as they are. */
export const escapeText = (text: string): string =>
  text.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, (character) => {
    const code = character.codePointAt(0)!.toString(16).padStart(4, '0');
    return code.length > 4 ? `\\u{${code}}` : `\\u${code}`;
  });

/** ['rows', 0, 'seats', 1, 'xM'] as `rows[0].seats[1].xM`. */
export const pathText = (keys: readonly Key[]): string =>
  keys
    .map((key, index) => {
      if (typeof key === 'number') return `[${key}]`;
      const text = keyText(key);
      return index === 0 || text.startsWith('[') ? text : `.${text}`;
    })
    .join('');

/** The keys of a path such as `rows[0].seats[1].xM` or `maxOutput.bandsDb["31.5"]`; undefined when the text is no path. */
export const pathKeys = (path: string): Key[] | undefined => {
  const keys: Key[] = [];
  const part = /\[(\d{1,6})\]|\["([^"\\]{1,40})"\]|\.?([A-Za-z][A-Za-z0-9_-]*)/y;
  while (part.lastIndex < path.length) {
    const found = part.exec(path);
    if (!found) return undefined;
    keys.push(found[1] !== undefined ? Number(found[1]) : (found[2] ?? found[3]));
  }
  return keys.length > 0 ? keys : undefined;
};

/** What stands at the end of the keys, or undefined. Own properties only. */
export const valueAt = (from: unknown, keys: readonly Key[]): unknown => {
  let value = from;
  for (const key of keys) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
    value = (value as Record<Key, unknown>)[key];
  }
  return value;
};
