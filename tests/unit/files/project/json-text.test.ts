import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jsonTrouble, lineAndColumn } from '../../../../src/files/project/json-text.ts';
import { sampleText } from './samples.ts';

const parses = (text: string): boolean => {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
};

describe('jsonTrouble', () => {
  // Texts after the productions of RFC 8259 (read): each is named by what the grammar says of it.
  const good = [
    '0',
    '-0',
    '1e5',
    '-1.5E-3',
    '""',
    '"\\u00e9\\n\\/"',
    '[]',
    '{}',
    ' [ 1 , 2 ] ',
    '{"a":{"b":[null,true,false]}}',
    '"\u2028"',
  ];
  const bad = [
    '',
    '01',
    '1.',
    '.5',
    '+1',
    '1e',
    '- 1',
    "'a'",
    '"a',
    '"\\x"',
    '"\\u12g4"',
    '"\t"',
    '[1,]',
    '[,1]',
    '{"a"}',
    '{"a":}',
    '{"a":1,}',
    '{a:1}',
    '[1 2]',
    '[}',
    '{]',
    'tru',
    'nul',
    '[1]]',
    '1 2',
    '\u00a01',
    '/*x*/1',
  ];

  it.each(good)('finds nothing wrong with %s', (text) => {
    expect(jsonTrouble(text)).toBeUndefined();
  });

  it.each(bad)('finds what is wrong with %s', (text) => {
    expect(jsonTrouble(text)).toMatchObject({ holds: expect.any(String), allowed: expect.any(String) });
  });

  it('agrees with the engine about texts of a few telling pieces', () => {
    const piece = fc.constantFrom(
      '{',
      '}',
      '[',
      ']',
      ',',
      ':',
      '"',
      '"a"',
      '1',
      '-',
      '.',
      'e',
      '0',
      ' ',
      '\\',
      'true',
      '\n',
      '\u0001',
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 12 }), (pieces) => {
        const text = pieces.join('');
        return (jsonTrouble(text) === undefined) === parses(text);
      }),
      { numRuns: 5000 },
    );
  });

  it('agrees with the engine about the sample with one character changed', () => {
    fc.assert(
      fc.property(
        fc.nat(sampleText.length - 1),
        fc.constantFrom('{', '}', ']', ',', ':', '"', '0', 'x', '\\'),
        (at, character) => {
          const text = sampleText.slice(0, at) + character + sampleText.slice(at + 1);
          return (jsonTrouble(text) === undefined) === parses(text);
        },
      ),
      { numRuns: 1000 },
    );
  });

  it('accepts 32 levels and refuses 33', () => {
    expect(jsonTrouble('['.repeat(32) + ']'.repeat(32))).toBeUndefined();
    expect(jsonTrouble('['.repeat(33) + ']'.repeat(33))).toMatchObject({ at: 32 });
  });

  it('points at the character', () => {
    const trouble = jsonTrouble('{\n  "a": 1\n  "b": 2\n}');
    expect(trouble).toMatchObject({ holds: '"', allowed: 'a comma or the closing bracket' });
    expect(lineAndColumn('{\n  "a": 1\n  "b": 2\n}', trouble!.at)).toEqual({ line: 3, column: 3 });
  });

  it('names characters that cannot be seen', () => {
    expect(jsonTrouble('\u00a01')?.holds).toBe('the character U+00A0');
    expect(jsonTrouble('[\u{1f600}]')?.holds).toBe('the character U+1F600');
  });
});
