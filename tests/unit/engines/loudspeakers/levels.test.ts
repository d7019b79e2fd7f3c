import { describe, expect, it } from 'vitest';
import {
  bipolePressure,
  boxPressure,
  dipolePressure,
  directivityIndexDb,
  patternGainDb,
} from '../../../../src/engines/loudspeakers/directivity.ts';
import {
  alignmentDelaysMs,
  distanceGainDb,
  levelDb,
  levelSpread,
  maxLevelDb,
  trimsDb,
} from '../../../../src/engines/loudspeakers/levels.ts';

const angles = Array.from({ length: 181 }, (_, i) => i);

describe('patterns', () => {
  it.each(['box', 'omni', 'dipole', 'bipole'] as const)('%s is 0 dB on axis and never above', (pattern) => {
    expect(patternGainDb(pattern, 0)).toBeCloseTo(0, 12);
    for (const a of angles) expect(patternGainDb(pattern, a)).toBeLessThanOrEqual(1e-12);
  });

  it('box falls all the way round, by a step of at most 0.2 dB a degree', () => {
    for (const a of angles.slice(1)) {
      const step = patternGainDb('box', a - 1) - patternGainDb('box', a);
      expect(step).toBeGreaterThan(0);
      expect(step).toBeLessThan(0.2);
    }
    expect(patternGainDb('box', 180)).toBeCloseTo(20 * Math.log10(0.2), 9);
  });

  it('dipole and bipole are the same before and behind; the dipole turns its phase', () => {
    for (const a of angles) {
      expect(patternGainDb('dipole', 180 - a)).toBeCloseTo(patternGainDb('dipole', a), 9);
      expect(patternGainDb('bipole', 180 - a)).toBeCloseTo(patternGainDb('bipole', a), 9);
    }
    expect(dipolePressure(180)).toBeCloseTo(-1, 12);
  });

  it('dipole: -3.01 dB at 45, -6.02 at 60 degrees, floored at -15', () => {
    expect(patternGainDb('dipole', 45)).toBeCloseTo(-3.0103, 4);
    expect(patternGainDb('dipole', 60)).toBeCloseTo(-6.0206, 4);
    expect(patternGainDb('dipole', 90)).toBe(-15);
    expect(patternGainDb('dipole', 81)).toBe(-15);
    expect(patternGainDb('dipole', 79)).toBeGreaterThan(-15);
  });

  it('bipole stays within 2 dB all round', () => {
    expect(patternGainDb('bipole', 90)).toBeCloseTo(20 * Math.log10(Math.hypot(0.6, 0.6) / Math.hypot(1, 0.2)), 9);
    expect(Math.min(...angles.map((a) => patternGainDb('bipole', a)))).toBeGreaterThan(-2);
    expect(bipolePressure(0)).toBeCloseTo(1, 12);
  });

  it('directivity index of the first-order box law: 10 log10 of 1 / (a^2 + b^2 / 3) with a = 0.6, b = 0.4', () => {
    expect(directivityIndexDb(boxPressure)).toBeCloseTo(-10 * Math.log10(0.36 + 0.16 / 3), 4);
    expect(directivityIndexDb(() => 1)).toBeCloseTo(0, 12);
  });
});

describe('levels', () => {
  it('is distance plus pattern, and the greatest adds sensitivity and watts', () => {
    expect(levelDb(2, 'omni', 40)).toBeCloseTo(-6.0206, 4);
    expect(levelDb(2, 'dipole', 60)).toBeCloseTo(-12.0412, 4);
    expect(maxLevelDb(-10, 88, 100)).toBeCloseTo(98, 12);
  });

  it('counts distances under 0.1 m as 0.1 m', () => {
    expect(distanceGainDb(0)).toBe(20);
    expect(distanceGainDb(0.1)).toBe(20);
  });

  it('spread over seats', () => {
    expect(levelSpread([])).toBeNull();
    expect(levelSpread([-9])).toEqual({ maxMinDb: 0, deviationDb: null });
    const spread = levelSpread([-10, -12, -11, -13]);
    expect(spread?.maxMinDb).toBeCloseTo(3, 12);
    expect(spread?.deviationDb).toBeCloseTo(Math.sqrt(5 / 3), 12);
  });

  it('delays all to the farthest and trims all to the quietest', () => {
    const delays = alignmentDelaysMs([3, 2, 2.5], 343);
    expect(delays[0]).toBe(0);
    expect(delays[1]).toBeCloseTo(2.9155, 4);
    expect(delays[2]).toBeCloseTo(1.4577, 4);
    expect(trimsDb([-9, -6, -7.5])).toEqual([0, -3, -1.5]);
    expect(alignmentDelaysMs([], 343)).toEqual([]);
  });
});
