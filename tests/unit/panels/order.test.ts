import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../src/analysis/types.ts';
import { orderFindings, worstAtSeat } from '../../../src/panels/findings/order.ts';

const finding = (
  id: string,
  rule: string,
  verdict: Finding['verdict'],
  weight: number,
  seat: string | null,
): Finding => ({
  id,
  rule,
  verdict,
  weight,
  seat,
  set: 'living',
  item: null,
  value: null,
  unit: '',
  range: [null, null],
  closeRange: [null, null],
  text: '',
  source: '',
  causes: [],
  facts: {},
});

const ALL = [
  finding('a', 'sight', 'met', 90, 's1'),
  finding('b', 'bass', 'close', 60, null),
  finding('c', 'sight', 'missed', 70, 's2'),
  finding('d', 'sight', 'missed', 80, 's3'),
  finding('e', 'step', 'missed', 50, 's2'),
  finding('f', 'angle', 'close', 40, 's1'),
];

describe('order of findings', () => {
  it('opens with the worst of three different rules, so that one fault at many seats is one thing to fix', () => {
    expect(orderFindings(ALL).first.map(({ id }) => id)).toEqual(['d', 'e', 'b']);
  });

  it('goes on worst first and keeps what is met apart, losing nothing', () => {
    const { first, rest, met } = orderFindings(ALL);
    expect(rest.map(({ id }) => id)).toEqual(['c', 'f']);
    expect(met.map(({ id }) => id)).toEqual(['a']);
    expect(first.length + rest.length + met.length).toBe(ALL.length);
  });

  it('leaves what it was given as it was', () => {
    const given = [...ALL];
    orderFindings(given);
    expect(given).toEqual(ALL);
  });

  it('gives a seat its own worst verdict and none where nothing was judged', () => {
    expect(worstAtSeat(ALL, 's1')).toBe('close');
    expect(worstAtSeat(ALL, 's2')).toBe('missed');
    expect(worstAtSeat(ALL, 's9')).toBeNull();
  });
});
