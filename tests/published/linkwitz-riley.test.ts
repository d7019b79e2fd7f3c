// Fourth-order Linkwitz-Riley crossover. Linkwitz, "Active crossover networks for noncoincident drivers", JAES 24(1), 1976
// (standing: from memory); the levels below derive from |LP| = 1 / (1 + (f / fc)^4) and were worked out apart from src.
import { describe, expect, it } from 'vitest';
import { crossoverHigh, crossoverLow, highPassTwo } from '../../src/engines/bass/filters.ts';

const at = (filter: typeof crossoverLow, hz: number, cutHz: number): [number, number] => {
  const out = new Float64Array(2);
  filter(hz, cutHz, out);
  return [out[0], out[1]];
};
const db = ([re, im]: readonly number[]): number => 20 * Math.log10(Math.hypot(re, im));

describe('80 Hz', () => {
  it.each([
    [40, -0.527],
    [63, -2.826],
    [80, -6.021],
    [100, -10.735],
    [120, -15.653],
    [125, -16.853],
    [160, -24.609],
    [320, -48.2],
  ])('low-pass at %d Hz: %d dB, to the last digit printed', (hz, level) => {
    expect(Math.abs(db(at(crossoverLow, hz, 80)) - level)).toBeLessThanOrEqual(0.006);
  });

  it.each([
    [20, -48.199],
    [40, -24.609],
    [80, -6.021],
    [160, -0.527],
  ])('high-pass at %d Hz: %d dB', (hz, level) => {
    expect(Math.abs(db(at(crossoverHigh, hz, 80)) - level)).toBeLessThanOrEqual(0.001);
  });

  it.each([20, 47, 80, 133, 300])('both add up to magnitude 1 and are in phase at %d Hz (1e-6)', (hz) => {
    const [lowRe, lowIm] = at(crossoverLow, hz, 80);
    const [highRe, highIm] = at(crossoverHigh, hz, 80);
    expect(Math.hypot(lowRe + highRe, lowIm + highIm)).toBeCloseTo(1, 6);
    expect(lowRe * highIm - lowIm * highRe).toBeCloseTo(0, 12);
    expect(lowRe * highRe + lowIm * highIm).toBeGreaterThan(0);
  });

  it('their sum is the second-order all-pass (s^2 - sqrt2 s + 1) / (s^2 + sqrt2 s + 1)', () => {
    // at the crossover s = j: (-j sqrt2) / (j sqrt2) = -1
    const [lowRe, lowIm] = at(crossoverLow, 80, 80);
    const [highRe, highIm] = at(crossoverHigh, 80, 80);
    expect(lowRe + highRe).toBeCloseTo(-1, 12);
    expect(lowIm + highIm).toBeCloseTo(0, 12);
  });
});

describe('second-order Butterworth high-pass', () => {
  it('-3.01 dB and +90 degrees at its corner, 12 dB an octave far below', () => {
    const corner = at(highPassTwo, 20, 20);
    expect(db(corner)).toBeCloseTo(-3.0103, 4);
    expect((Math.atan2(corner[1], corner[0]) * 180) / Math.PI).toBeCloseTo(90, 9);
    expect(db(at(highPassTwo, 1, 20)) - db(at(highPassTwo, 0.5, 20))).toBeCloseTo(12.04, 2);
  });
});
