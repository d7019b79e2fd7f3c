import { describe, expect, it } from 'vitest';
import { dividedFinely, smoothed } from '../../../../src/engines/bass/curve.ts';

describe('values between even steps', () => {
  it('keeps the given ones and is exact for a cubic', () => {
    const cubic = (x: number) => 0.3 * x ** 3 - 2 * x * x + x - 4;
    const fine = dividedFinely(
      Float64Array.from({ length: 7 }, (_, i) => cubic(i)),
      4,
    );
    expect(fine.length).toBe(25);
    for (const [i, value] of fine.entries()) expect(value).toBeCloseTo(cubic(i / 4), 9);
  });

  it('finds a dip that lies between two points, as levels between them do not', () => {
    // A zero at 3.5 steps between two points of equal level: real part through zero, a small imaginary part.
    const re = dividedFinely(
      Float64Array.from({ length: 8 }, (_, i) => i - 3.5),
      2,
    );
    const im = dividedFinely(new Float64Array(8).fill(0.02), 2);
    expect(20 * Math.log10(Math.hypot(re[7], im[7]))).toBeCloseTo(20 * Math.log10(0.02), 6);
    expect(20 * Math.log10(Math.hypot(re[6], im[6]))).toBeGreaterThan(-7);
  });

  it('is straight where there are too few points for a cubic', () => {
    expect([...dividedFinely(Float64Array.of(1, 3), 2)]).toEqual([1, 2, 3]);
    expect([...dividedFinely(Float64Array.of(5), 4)]).toEqual([5]);
  });
});

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
