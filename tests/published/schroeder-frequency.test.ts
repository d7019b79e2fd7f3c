// Schroeder 1962 and 1996: f = 2000 sqrt(T / V) (remembered); the worked values and the damping figures of Kuttruff, Room
// Acoustics (delta = 6.908 / T, width 2.2 / T), derived.
import { describe, expect, it } from 'vitest';
import { decayConstant, modeBandwidthHz, schroederHz } from '../../src/engines/acoustics/schroeder.ts';

describe('Schroeder frequency', () => {
  it.each([
    [0.5, 50, 200],
    [0.4, 60, 163.3],
    [0.4, 85, 137.2],
    [0.3, 60, 141.4],
    [1.8, 12_000, 24.5],
  ])('T %d s, V %d m3: %d Hz', (time, volume, hz) => {
    expect(Math.abs(schroederHz(time, volume) - hz)).toBeLessThanOrEqual(0.1);
  });

  it('stands where three modes share one width: sqrt(c^3 / (4 ln 10)) = 2093 at 343 m/s, rounded down in use', () => {
    // Density of modes 4 pi V f^2 / c^3 times width 2.2 / T is 3 at f = k sqrt(T / V). Derived.
    const exact = Math.sqrt((3 * 343 ** 3) / (4 * Math.PI * modeBandwidthHz(1)));
    expect(exact).toBeCloseTo(Math.sqrt(343 ** 3 / (4 * Math.log(10))), 6);
    expect(Math.abs(exact - 2093)).toBeLessThanOrEqual(0.5);
    expect(Math.abs(schroederHz(1, 1) / exact - 1)).toBeLessThanOrEqual(0.05);
  });
});

describe('damping of a mode', () => {
  it.each([
    [0.3, 7.33],
    [0.4, 5.5],
    [0.5, 4.4],
    [0.6, 3.67],
  ])('T %d s: %d Hz wide', (time, width) => {
    expect(Math.abs(modeBandwidthHz(time) - width)).toBeLessThanOrEqual(0.01);
  });

  it('decay constant 6.908 / T, so that 60 dB take T', () => {
    expect(Math.abs(decayConstant(1) - 6.908)).toBeLessThanOrEqual(0.001);
    expect(20 * Math.log10(Math.exp(-decayConstant(0.4) * 0.4))).toBeCloseTo(-60, 9);
  });
});
