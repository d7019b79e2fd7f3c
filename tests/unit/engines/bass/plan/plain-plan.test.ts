// The plain baseline of the bench's plan section, itself against the closed form of a rectangle.
import { describe, expect, it } from 'vitest';
import { plainPlanValues } from '../../../../bench/baselines/plain-plan.ts';

describe('plain quadratic elements', () => {
  it('6 x 4 m without a notch: (m pi / 6)^2 + (n pi / 4)^2 within 3e-3', () => {
    const found = plainPlanValues([6, 4, 0, 0], 0.5, 4, 90);
    const closed: number[] = [];
    for (let m = 0; m < 9; m++)
      for (let n = 0; n < 9; n++) closed.push(((m * Math.PI) / 6) ** 2 + ((n * Math.PI) / 4) ** 2);
    const expected = closed.sort((a, b) => a - b).filter((value) => value <= 3.9);
    expect(found.length).toBeGreaterThanOrEqual(expected.length);
    // quadratic elements: relative error of order (k h)^4 / 720
    for (const [i, value] of expected.entries())
      expect(Math.abs(found[i] - value)).toBeLessThanOrEqual(3e-3 * value + 1e-9);
  });
});
