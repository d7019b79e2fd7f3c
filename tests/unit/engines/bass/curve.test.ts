import { describe, expect, it } from 'vitest';
import { smoothed } from '../../../../src/engines/bass/curve.ts';

describe('smoothing over a part of an octave', () => {
  const frequenciesHz = Float64Array.from({ length: 317 }, (_, i) => 20 * 2 ** (i / 96));

  it('leaves an even level as it is, and everything where none is asked for', () => {
    const even = new Float64Array(317).fill(7.5);
    for (const n of [3, 6, 12]) for (const db of smoothed(frequenciesHz, even, n)) expect(db).toBeCloseTo(7.5, 9);
    expect(smoothed(frequenciesHz, even, null)).toBe(even);
  });

  it('has of an energy that grows with frequency its mean over the band by hand', () => {
    // |H|^2 = f: the mean over log f from a to b is (b - a) / ln(b / a).
    const rising = frequenciesHz.map((hz) => 10 * Math.log10(hz));
    for (const n of [3, 6, 12]) {
      const i = 150;
      const [a, b] = [frequenciesHz[i] * 2 ** (-0.5 / n), frequenciesHz[i] * 2 ** (0.5 / n)];
      const expected = 10 * Math.log10((b - a) / Math.log(b / a));
      // The energy is taken as straight over log f between points: the step squared over twelve, 4e-6 of it.
      expect(Math.abs(smoothed(frequenciesHz, rising, n)[i] - expected)).toBeLessThan(1e-4);
    }
  });

  it('spreads one peak evenly over the band’s width', () => {
    const peak = new Float64Array(317).fill(-300);
    peak[160] = 0;
    const out = smoothed(frequenciesHz, peak, 3);
    // A triangle one step high and two wide in 32 steps of a 96th of an octave: energy 1 / 32.
    expect(out[160]).toBeCloseTo(-10 * Math.log10(32), 6);
    expect(out[170]).toBeCloseTo(-10 * Math.log10(32), 6);
    expect(out[120]).toBeLessThan(-200);
  });
});
