import { describe, expect, it } from 'vitest';
import { crownAboveEye, eyeAboveSeat, shortPerson, tallPerson } from '../../../../src/engines/sight/people.ts';

describe('body measures', () => {
  it('put a tall man before a short woman in the worst case', () => {
    expect(tallPerson.eyeAbovePanM).toBe(0.855);
    expect(shortPerson.eyeAbovePanM).toBe(0.705);
    expect(tallPerson.crownAboveEyeM).toBeCloseTo(0.11, 9);
    expect(shortPerson.crownAboveEyeM).toBeCloseTo(0.105, 9);
  });

  it('rise with the percentile', () => {
    for (const sex of ['men', 'women'] as const) {
      const p = eyeAboveSeat[sex];
      expect(p.p5 < p.p50 && p.p50 < p.p95).toBe(true);
      for (const v of Object.values(crownAboveEye[sex])) {
        expect(v).toBeGreaterThan(0.1);
        expect(v).toBeLessThan(0.12);
      }
    }
  });
});
