import { describe, expect, it } from 'vitest';
import { escapeText, pathKeys, pathText, valueAt } from '../../../src/model/paths.ts';

describe('paths', () => {
  it('are written as a person would read them', () => {
    expect(pathText(['rows', 0, 'seats', 11, 'xM'])).toBe('rows[0].seats[11].xM');
    expect(pathText(['subwoofers', 2, 'maxOutput', 'bandsDb', '31.5'])).toBe('subwoofers[2].maxOutput.bandsDb["31.5"]');
  });

  it('quote, escape and shorten odd keys', () => {
    expect(pathText(['a b', 'c"\n'])).toBe('["a b"]["c\\"\\n"]');
    expect(pathText(['x'.repeat(500)]).length).toBeLessThan(50);
    expect(pathText([''])).toBe('[""]');
  });

  it('are read back to their keys', () => {
    const keys = ['loudspeakers', 3, 'atM', 0];
    expect(pathKeys(pathText(keys))).toEqual(keys);
    for (const bad of ['', 'a..b', 'a[', 'a[x]', 'a b', '__proto__', 'a]']) expect(pathKeys(bad)).toBeUndefined();
  });

  it('find only what is an object’s own', () => {
    expect(valueAt({ a: [{ b: 1 }] }, ['a', 0, 'b'])).toBe(1);
    expect(valueAt({}, ['constructor'])).toBeUndefined();
    expect(valueAt({ a: 1 }, ['a', 'toFixed'])).toBeUndefined();
    expect(valueAt(null, ['a'])).toBeUndefined();
  });

  it('escapes what cannot be seen, beyond the first plane too', () => {
    expect(escapeText('a\u200bb\u0085\u{e0041}é')).toBe('a\\u200bb\\u0085\\u{e0041}é');
  });
});
