import { expect, it } from 'vitest';
import { readEqualiserCsv, writeEqualiserCsv } from '../../../src/files/equaliser-csv.ts';

const FILTERS = [
  { frequencyHz: 34.5, gainDb: -6.2, q: 4 },
  { frequencyHz: 61, gainDb: 2.5, q: 1.1 },
];

it('writes the agreed columns, lines ended as RFC 4180 ends them', () => {
  expect(writeEqualiserCsv(FILTERS)).toBe('frequencyHz,gainDb,q\r\n34.5,-6.2,4\r\n61,2.5,1.1\r\n');
  expect(writeEqualiserCsv([])).toBe('frequencyHz,gainDb,q\r\n');
});

it('reads back what it wrote and nothing else', () => {
  expect(readEqualiserCsv(writeEqualiserCsv(FILTERS))).toEqual(FILTERS);
  expect(readEqualiserCsv('f,g,q\n1,2,3')).toBeNull();
  expect(readEqualiserCsv('frequencyHz,gainDb,q\n40,-3')).toBeNull();
  expect(readEqualiserCsv('frequencyHz,gainDb,q\n40,-3,wide')).toBeNull();
});
