// Inverse distance law and directivity indices of first-order sources: textbook acoustics, all values derived.
import { describe, expect, it } from 'vitest';
import { dipolePressure, directivityIndexDb, patternGainDb } from '../../src/engines/loudspeakers/directivity.ts';
import { distanceGainDb, levelDb } from '../../src/engines/loudspeakers/levels.ts';

describe('inverse distance', () => {
  it.each([
    [1, 0],
    [1.5, -3.52],
    [2, -6.02],
    [3, -9.54],
    [4, -12.04],
    [5, -13.98],
    [8, -18.06],
  ])('%d m: %d dB', (distance, level) => {
    expect(Math.abs(distanceGainDb(distance) - level)).toBeLessThanOrEqual(0.01);
    expect(Math.abs(levelDb(distance, 'omni', 123) - level)).toBeLessThanOrEqual(0.01);
  });

  it('seats at 2 : 1 differ by 6.02 dB wherever they are', () => {
    expect(distanceGainDb(1.7) - distanceGainDb(3.4)).toBeCloseTo(6.0206, 4);
  });
});

describe('directivity index', () => {
  it('dipole: 4.77 dB, Q 3, with the law that has no floor', () => {
    expect(Math.abs(directivityIndexDb(dipolePressure) - 4.77)).toBeLessThanOrEqual(0.002);
    expect(10 ** (directivityIndexDb(dipolePressure) / 10)).toBeCloseTo(3, 3);
  });

  it.each([
    ['cardioid', 0.5, 0.5, 4.77],
    ['supercardioid', 0.366, 0.634, 5.72],
    ['hypercardioid', 0.25, 0.75, 6.02],
  ])('the integral itself, on %s', (_name, a, b, index) => {
    const pressure = (deg: number): number => a + b * Math.cos((deg * Math.PI) / 180);
    // Two decimals of print, and 0.366 rounded.
    expect(Math.abs(directivityIndexDb(pressure) - index)).toBeLessThanOrEqual(0.006);
  });

  it('the floor of the dipole changes nothing above it: within 10 degrees of the null only', () => {
    for (let deg = 0; deg <= 180; deg += 1) {
      const law = 20 * Math.log10(Math.abs(dipolePressure(deg)));
      if (Math.abs(deg - 90) > 10.3) expect(patternGainDb('dipole', deg)).toBe(law);
      else if (Math.abs(deg - 90) < 10) expect(patternGainDb('dipole', deg)).toBe(-15);
    }
  });
});
