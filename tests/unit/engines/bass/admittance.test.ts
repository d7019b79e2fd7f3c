import { describe, expect, it } from 'vitest';
import {
  admittanceFromDiffuse,
  admittanceFromNormal,
  BEST_BETA,
  diffuseAbsorption,
  MOST_DIFFUSE,
  normalAbsorption,
} from '../../../../src/engines/bass/admittance.ts';

/** Paris' integral 2 int alpha(mu) mu dmu over mu = cos theta, alpha(mu) = 4 beta mu / (mu + beta)^2, by Simpson's rule. */
const integrated = (beta: number): number => {
  const steps = 20_000;
  let sum = 0;
  for (let i = 0; i <= steps; i++) {
    const mu = i / steps;
    const weight = i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2;
    sum += weight * 2 * mu * ((4 * beta * mu) / (mu + beta) ** 2);
  }
  return sum / (3 * steps);
};

describe('absorption from admittance', () => {
  it.each([0.01, 0.05, 0.2, 0.64, 1, 3, 50])('diffuse incidence, beta %d: the integral over angles', (beta) => {
    expect(diffuseAbsorption(beta)).toBeCloseTo(integrated(beta), 7);
  });

  it('small beta: eight times beta; normal incidence: four times', () => {
    expect(Math.abs(diffuseAbsorption(1e-5) / 8e-5 - 1)).toBeLessThanOrEqual(5e-4);
    expect(Math.abs(normalAbsorption([1e-5, 0]) / 4e-5 - 1)).toBeLessThanOrEqual(1e-4);
  });

  it('the most a real admittance absorbs is 0.951, near beta 0.64', () => {
    expect(Math.abs(MOST_DIFFUSE - 0.951)).toBeLessThanOrEqual(5e-4);
    expect(Math.abs(BEST_BETA - 0.64)).toBeLessThanOrEqual(0.01);
  });

  it('joins its series for very soft walls without a step', () => {
    expect(Math.abs(diffuseAbsorption(1000.001) / diffuseAbsorption(1000) - 1)).toBeLessThanOrEqual(2e-6);
    expect(Math.abs(diffuseAbsorption(1e9) / (8 / 3e9) - 1)).toBeLessThanOrEqual(1e-8);
  });

  it('normal incidence: 1 - |r|^2, also for complex admittance', () => {
    expect(normalAbsorption([1, 0])).toBeCloseTo(1, 12);
    expect(normalAbsorption([0, 2])).toBe(0);
    // r = (1 - b) / (1 + b) = (0.8 - 0.5j) / (1.2 + 0.5j): |r|^2 = 0.89 / 1.69
    expect(normalAbsorption([0.2, 0.5])).toBeCloseTo(1 - 0.89 / 1.69, 12);
  });
});

describe('admittance from absorption', () => {
  it.each([0, 0.01, 0.1, 0.3, 0.6, 0.9, 0.95])('diffuse %d and back', (alpha) => {
    const { beta, clamped } = admittanceFromDiffuse(alpha);
    expect(clamped).toBe(false);
    expect(diffuseAbsorption(beta[0])).toBeCloseTo(alpha, 10);
    expect(beta[0]).toBeLessThanOrEqual(BEST_BETA);
  });

  it.each([0.952, 0.98, 1, 1.2])('diffuse %d: clamped, and says so', (alpha) => {
    expect(admittanceFromDiffuse(alpha)).toEqual({ beta: [BEST_BETA, 0], clamped: true });
  });

  it.each([0, 0.2, 0.75, 1])('normal %d and back', (alpha) => {
    const { beta, clamped } = admittanceFromNormal(alpha);
    expect(clamped).toBe(false);
    expect(normalAbsorption(beta)).toBeCloseTo(alpha, 12);
  });

  it('normal 0.75 is beta 1 / 3', () => {
    expect(admittanceFromNormal(0.75).beta[0]).toBeCloseTo(1 / 3, 12);
  });
});
