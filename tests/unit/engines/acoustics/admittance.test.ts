import { describe, expect, it } from 'vitest';
import {
  admittanceFromDiffuse,
  diffuseAbsorption,
  greatestDiffuse,
} from '../../../../src/engines/acoustics/admittance.ts';

/** The defining integral by Simpson's rule: shares nothing with the closed form. */
const bySimpson = (real: number, imaginary: number, n = 20_000): number => {
  const f = (mu: number): number => (2 * mu * 4 * real * mu) / ((mu + real) ** 2 + imaginary ** 2);
  let sum = f(0) + f(1);
  for (let i = 1; i < n; i += 1) sum += f(i / n) * (i % 2 ? 4 : 2);
  return sum / (3 * n);
};

describe('diffuse absorption of an admittance', () => {
  it.each([
    [0.005, 0],
    [0.01, 0],
    [0.02, 0],
    [0.05, 0],
    [0.1, 0],
    [0.2, 0],
    [0.64, 0],
    [1, 0],
    [3, 0],
    [50, 0],
    [0.02, 0.05],
    [0.02, -0.05],
    [0.3, 0.8],
    [0.1, 1e-9],
    // the softest walls a document may give
    [10, 0],
    [10, 10],
    [10, -10],
  ])('agrees with the integral at %d + j %d', (real, imaginary) => {
    // Simpson's error at the sharpest case (0.005, 20 000 intervals) is below 1e-7.
    expect(diffuseAbsorption(real, imaginary)).toBeCloseTo(bySimpson(real, imaginary), 6);
  });

  it('is greatest at 0.951 near 0.64 (derived in the engine notes)', () => {
    expect(greatestDiffuse.absorption).toBeCloseTo(0.951, 3);
    expect(greatestDiffuse.admittance).toBeCloseTo(0.64, 2);
  });

  it('is 8 times the admittance of a hard wall, to first order (derived)', () => {
    expect(Math.abs(diffuseAbsorption(1e-5) / 8e-5 - 1)).toBeLessThanOrEqual(5e-4);
  });

  it('is 8 / 3 of the impedance of a very soft wall, to first order (derived)', () => {
    // 8 b int mu^2 / (mu + b)^2 dmu = 8 / (3 b) - 4 / b^2 + ...
    expect(Math.abs(diffuseAbsorption(200) / (8 / 600 - 4 / 40_000) - 1)).toBeLessThanOrEqual(1e-4);
  });

  it('is 0 for a wall that takes no energy', () => {
    expect(diffuseAbsorption(0, 0.3)).toBe(0);
    expect(diffuseAbsorption(-0.1)).toBe(0);
  });
});

describe('admittance from absorption', () => {
  it.each([0.01, 0.05, 0.1, 0.29, 0.3, 0.6, 0.9, 0.95])('inverts at %d, on the hard side', (absorption) => {
    const { admittance, clamped } = admittanceFromDiffuse(absorption);
    expect(clamped).toBe(false);
    expect(diffuseAbsorption(admittance)).toBeCloseTo(absorption, 10);
    expect(admittance).toBeLessThanOrEqual(greatestDiffuse.admittance);
  });

  it('is an eighth of the absorption for hard walls', () => {
    expect(admittanceFromDiffuse(0.001).admittance / 0.000125).toBeCloseTo(1, 2);
  });

  it('says when no real admittance absorbs so much', () => {
    for (const most of [0.952, 0.98, 0.99, 1, 1.2])
      expect(admittanceFromDiffuse(most)).toEqual({ admittance: greatestDiffuse.admittance, clamped: true });
    expect(admittanceFromDiffuse(0)).toEqual({ admittance: 0, clamped: false });
    expect(admittanceFromDiffuse(-0.1)).toEqual({ admittance: 0, clamped: true });
  });
});
