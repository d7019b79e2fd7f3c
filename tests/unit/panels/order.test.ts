import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../src/analysis/types.ts';
import { type Alike, orderFindings, worstAtSeat } from '../../../src/panels/findings/order.ts';

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
  const ids = (alike: readonly Alike[]) => alike.map(({ worst, others }) => [worst.id, ...others.map(({ id }) => id)]);

  it('opens with three different rules, so that one fault at many seats is one thing to fix', () => {
    expect(ids(orderFindings(ALL).first)).toEqual([['d', 'c'], ['e'], ['b']]);
  });

  it('goes on worst first and keeps what is met apart, losing nothing', () => {
    const { first, rest, met } = orderFindings(ALL);
    expect(ids(rest)).toEqual([['f']]);
    expect(met.map(({ id }) => id)).toEqual(['a']);
    expect([...ids(first), ...ids(rest)].flat().length + met.length).toBe(ALL.length);
  });

  it('puts nothing that is close before anything that is missed, however much it weighs', () => {
    const given = [
      finding('light', 'surround', 'missed', 10, 's1'),
      finding('light too', 'surround', 'missed', 10, 's2'),
      finding('light and close', 'surround', 'close', 10, 's3'),
      finding('heavy', 'sight', 'close', 99, 's1'),
    ];
    const { first, rest } = orderFindings(given);
    expect(ids(first)).toEqual([['light', 'light too'], ['heavy']]);
    // The third thing is another rule or none: the close seat has the fault that is named already.
    expect(ids(rest)).toEqual([['light and close']]);
  });

  it('names of one rule the seat that is farthest from what is asked for', () => {
    const share = (id: string, value: number): Finding => ({
      ...finding(id, 'sight', 'missed', 90, id),
      value,
      range: [0.99, null],
    });
    expect(ids(orderFindings([share('s1', 0.9), share('s2', 0.4), share('s3', 0.7)]).first)).toEqual([
      ['s2', 's1', 's3'],
    ]);
    const upTo = (id: string, value: number): Finding => ({
      ...finding(id, 'top', 'close', 50, id),
      value,
      range: [null, 15],
    });
    expect(ids(orderFindings([upTo('s1', 16), upTo('s2', 21)]).first)).toEqual([['s2', 's1']]);
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
