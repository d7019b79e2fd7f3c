import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../src/analysis/types.ts';
import { decibels, degrees, length, millimetres, share } from '../../../src/panels/figures.ts';
import { rangeText, shownIn, shownOf } from '../../../src/panels/findings/values.ts';

// Expected texts are typed by hand from look.md's rules: one decimal for degrees and decibels, centimetres for metres,
// feet and inches written "8 ft 1 1/4 in"; 1 in = 25.4 mm exactly.
describe('figures', () => {
  it('gives degrees and decibels one decimal, a true minus and never minus nought', () => {
    expect(degrees(-104.949).text).toBe('−104.9');
    expect(degrees(48.25).unit).toBe('°');
    expect(decibels(-0.04)).toMatchObject({ text: '0.0', value: 0 });
    expect(Object.is(decibels(-0.04).value, -0)).toBe(false);
  });

  it('gives metres to the centimetre, or feet and inches, and keeps the metres for the page', () => {
    expect(length(2.4749, 'metric')).toMatchObject({ text: '2.47', unit: 'm', value: 2.47, step: 0.01 });
    // 97.25 in = 8 ft 1 1/4 in = 2.47015 m
    expect(length(2.47015, 'imperial')).toMatchObject({ text: '8 ft 1 1/4 in', unit: '', value: 2.47 });
    expect(millimetres(-118.2, 'metric')).toMatchObject({ text: '−118', unit: 'mm', value: -118 });
  });

  it('shows shares in per cent and keeps them as shares', () => {
    expect(share(0.942)).toMatchObject({ text: '94', unit: '%', value: 0.94, step: 0.01 });
  });
});

describe('ranges in words', () => {
  it('says both ends, one end or nothing', () => {
    expect(rangeText([22, 32], 'deg', 'metric')).toBe('22.0° to 32.0°');
    expect(rangeText([120, null], 'mm', 'metric')).toBe('120 mm or more');
    expect(rangeText([null, 2], 'dB', 'metric')).toBe('at most 2.0 dB');
    expect(rangeText([null, null], 'dB', 'metric')).toBe('');
  });

  it('turns lengths into feet and inches to the quarter, as the sentences do', () => {
    // 0.36 m = 14.173 in
    expect(shownIn(0.36, 'm', 'imperial').text).toBe('1 ft 2 1/4 in');
  });

  it('have a second decimal only where one would show them on the edge they miss', () => {
    const finding = { unit: '°', range: [30, 43], verdict: 'close' } as unknown as Finding;
    expect(shownOf({ ...finding, value: 29.99 }, 'metric')?.text).toBe('29.99');
    expect(shownOf({ ...finding, value: 29.9 }, 'metric')?.text).toBe('29.9');
    expect(shownOf({ ...finding, value: 30, verdict: 'met' }, 'metric')?.text).toBe('30.0');
    expect(shownOf({ ...finding, value: null }, 'metric')).toBeNull();
  });
});
