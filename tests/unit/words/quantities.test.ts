import { describe, expect, it } from 'vitest';
import { fieldOf } from '../../../src/model/fields/registry.ts';
import { formatQuantity, parseQuantity, rangeText, readInput } from '../../../src/words/quantities.ts';
import { formatImperial, formatLength, parseLength } from '../../../src/words/quantities-length.ts';

// The inch is 25.4 mm exactly (international yard and pound agreement, 1959; memory). Expected metres are worked by hand.
describe('lengths as people type them', () => {
  it.each([
    ['3.8 m', 3.8],
    ['3,8 m', 3.8],
    ['3,800 m', 3.8],
    ['380 cm', 3.8],
    ['380cm', 3.8],
    ['3800 mm', 3.8],
    ['3 m 80 cm', 3.8],
    ['3m80cm', 3.8],
    ['3\u2009800 mm', undefined],
    ['3.8\u00a0m', 3.8],
    ['3.8\u2009metres', 3.8],
    ['.5 m', 0.5],
    ['12\'6"', 3.81],
    ["12'6", 3.81],
    ['12\' 6"', 3.81],
    ['12\'-6"', 3.81],
    ['12\u2032 6\u2033', 3.81],
    ['12\u20196\u201d', 3.81],
    ["12'6''", 3.81],
    ['12 ft 6 in', 3.81],
    ['12ft6in', 3.81],
    ['12 FT. 6 IN.', 3.81],
    ['12 feet, 6 inches', 3.81],
    ['12 ft 6 1/2 in', 3.8227],
    ['12\'6½"', 3.8227],
    ['12\' 6-1/2"', 3.8227],
    ['12 ft ½ in', 3.6703],
    ['150"', 3.81],
    ['150 in', 3.81],
    ['8\' 1 1/4"', 2.47015],
    ['8\'1-1/4"', 2.47015],
    ['8ft 1.25in', 2.47015],
    ['8ft 1 1/4', 2.47015],
    ['8 ft 1¼ in', 2.47015],
    ['97 1/4"', 2.47015],
    ['2470 mm', 2.47],
    ['2470mm', 2.47],
    ['247 cm', 2.47],
    ['2,47 m', 2.47],
    ['12.5 ft', 3.81],
    ['12,5 ft', 3.81],
    ['12½ ft', 3.81],
    ['12 1/2 ft', 3.81],
    ['12 ft', 3.6576],
    ['6 1/4"', 0.15875],
    ['3⁄4"', 0.01905],
    ['-1.36 m', -1.36],
    ['\u22121.36 m', -1.36],
    ['\u20131.36 m', -1.36],
    ['- 4 ft 6 in', -1.3716],
    ['+2 m', 2],
    ['0 m', 0],
    ['-0 m', 0],
  ])('%s', (text, metres) => {
    for (const units of ['metric', 'imperial'] as const) {
      const value = parseLength(text, units);
      if (metres === undefined) expect(value).toBeUndefined();
      else expect(value).toBeCloseTo(metres, 9);
    }
  });

  it('takes a bare number in the unit that is shown', () => {
    expect(parseLength('3.8', 'metric')).toBe(3.8);
    expect(parseLength('3,8', 'metric')).toBe(3.8);
    expect(parseLength('12.5', 'imperial')).toBeCloseTo(3.81, 9);
    expect(parseLength('12 1/2', 'imperial')).toBeCloseTo(3.81, 9);
    expect(parseLength('12½', 'imperial')).toBeCloseTo(3.81, 9);
  });

  it.each([
    '',
    ' ',
    'm',
    'three',
    '3 km',
    '3 yd',
    '3.8.1 m',
    '3,8,1 m',
    '1.234,5 m',
    '3,800 mm',
    '3 cm 2 m',
    '12\'6"3',
    '1/0"',
    "12''6'",
    '3 m 4',
    '--3',
    '1e3',
    'Infinity',
    'NaN',
    '0x10',
    '/',
    '1/',
    "'",
    '"',
    `${'9'.repeat(70)} m`,
  ])('does not guess at %j', (text) => {
    expect(parseLength(text, 'metric')).toBeUndefined();
    expect(parseLength(text, 'imperial')).toBeUndefined();
  });
});

describe('lengths as they are shown', () => {
  it.each([
    [2.47, '2.47 m', '8 ft 1 1/4 in'],
    [3.81, '3.81 m', '12 ft 6 in'],
    [2.4384, '2.44 m', '8 ft'],
    [0.165, '0.17 m', '6 1/2 in'],
    [0.0127, '0.01 m', '1/2 in'],
    [0, '0.00 m', '0 in'],
    [-1.36, '\u22121.36 m', '\u22124 ft 5 1/2 in'],
    [-0.001, '0.00 m', '0 in'],
    [0.3047, '0.30 m', '1 ft'],
    [0.3302, '0.33 m', '1 ft 1 in'],
    [0.31115, '0.31 m', '1 ft 1/4 in'],
    [30, '30.00 m', '98 ft 5 1/8 in'],
  ])('%d', (metres, metric, imperial) => {
    expect(formatLength(metres, 'metric')).toBe(metric);
    expect(formatLength(metres, 'imperial')).toBe(imperial);
  });

  it('a dash for what has no finite value', () => {
    expect([Number.NaN, Number.POSITIVE_INFINITY].map((value) => formatLength(value, 'imperial'))).toEqual(['–', '–']);
    expect(formatLength(Number.NaN, 'metric')).toBe('–');
    expect(formatQuantity(Number.NaN, 'decibel', 'metric')).toBe('–');
  });

  it('to another fraction of an inch when asked', () => {
    expect(formatImperial(2.47, 16)).toBe('8 ft 1 1/4 in');
    expect(formatImperial(2.47, 1)).toBe('8 ft 1 in');
    expect(formatImperial(0.3 * 0.0254, 16)).toBe('5/16 in');
  });
});

describe('other quantities', () => {
  it.each([
    [30, 'angle', '30.0°'],
    [-29.96, 'angle', '\u221230.0°'],
    [-3.5, 'decibel', '\u22123.5 dB'],
    [-0.04, 'decibel', '0.0 dB'],
    [80, 'frequency', '80.0 Hz'],
    [7.25, 'time', '7.3 ms'],
    [1.7778, 'ratio', '1.78'],
    [20, 'temperature', '20.0 °C'],
    [2200, 'light', '2200 lm'],
    [7, 'count', '7'],
  ] as const)('%d of %s is shown as %s', (value, quantity, text) => {
    expect(formatQuantity(value, quantity, 'metric')).toBe(text);
    expect(formatQuantity(value, quantity, 'imperial')).toBe(text);
  });

  it.each([
    ['30', 'angle', 30],
    ['30°', 'angle', 30],
    ['\u221230 deg', 'angle', -30],
    ['30,5 degrees', 'angle', 30.5],
    ['\u22123.5 dB', 'decibel', -3.5],
    ['+2dB', 'decibel', 2],
    ['80 Hz', 'frequency', 80],
    ['0.12 kHz', 'frequency', 120],
    ['5 ms', 'time', 5],
    ['0.005 s', 'time', 5],
    ['16:9', 'ratio', 16 / 9],
    ['2.39:1', 'ratio', 2.39],
    ['60 %', 'ratio', 0.6],
    ['20 °C', 'temperature', 20],
    ['200 W', 'power', 200],
    ['7', 'count', 7],
  ] as const)('%s as %s', (text, quantity, value) => {
    expect(parseQuantity(text, quantity, 'metric')).toBeCloseTo(value, 12);
  });

  it.each([
    ['30 m', 'angle'],
    ['5 dB', 'frequency'],
    ['16:0', 'ratio'],
    ['1e3', 'frequency'],
    ['1,000', 'power'],
    ['constructor', 'decibel'],
    ['3 toString', 'decibel'],
    ['', 'count'],
  ] as const)('%j is no %s', (text, quantity) => {
    expect(parseQuantity(text, quantity, 'metric')).toBeUndefined();
  });
});

describe('typing into a field', () => {
  const width = fieldOf('room.plan.widthM');

  it('gives the value in metres', () => {
    expect(readInput('12\'6"', width, 'metric')).toEqual({ ok: true, value: 150 * 0.0254 });
    expect(readInput('3,8', width, 'metric')).toEqual({ ok: true, value: 3.8 });
  });

  it('refuses in the person’s units, with the range', () => {
    expect(readInput('0.4', width, 'metric')).toEqual({
      ok: false,
      says: '0.40 m is out of range. Allowed: 1.50 m to 30.00 m.',
    });
    expect(readInput('3', width, 'imperial')).toEqual({
      ok: false,
      says: '3 ft is out of range. Allowed: 4 ft 11 in to 98 ft 5 1/8 in.',
    });
    expect(readInput('wide', width, 'metric')).toEqual({
      ok: false,
      says: 'This cannot be read. Allowed: 1.50 m to 30.00 m, for example 3.8 m or 380 cm.',
    });
    expect(readInput('loud', fieldOf('subwoofers[].gainDb'), 'metric')).toMatchObject({
      says: 'This cannot be read. Allowed: \u221260.0 dB to 20.0 dB.',
    });
  });

  it('takes the ends of the range as they are shown', () => {
    for (const units of ['metric', 'imperial'] as const) {
      const [low, high] = rangeText(width, units).split(' to ');
      expect(readInput(low, width, units).ok).toBe(true);
      expect(readInput(high, width, units).ok).toBe(true);
    }
    expect(readInput('98 ft 5 1/8 in', width, 'imperial')).toMatchObject({ ok: true });
  });

  it('says so when a field is no number', () => {
    expect(readInput('3', fieldOf('name'), 'metric')).toEqual({ ok: false, says: 'Project is no number.' });
  });
});
