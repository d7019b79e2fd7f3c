import { describe, expect, it } from 'vitest';
import { gaussRule, legendreAt, stretchOf } from '../../../../../src/engines/bass/patches/gauss.ts';

describe('Gauss-Legendre rules', () => {
  it('the rules of two and three points as handbooks print them (Abramowitz and Stegun, table 25.4; memory)', () => {
    const [two, three] = [gaussRule(2), gaussRule(3)];
    for (const [got, expected] of [
      [two.nodes[1], 0.5773502691896257],
      [two.weights[0], 1],
      [three.nodes[2], 0.7745966692414834],
      [three.weights[0], 5 / 9],
      [three.weights[1], 8 / 9],
    ])
      expect(Math.abs(got - expected)).toBeLessThan(1e-14);
  });

  it.each([1, 2, 5, 12, 40, 90])('%i points: weights sum to 2, degree 2 n - 2 is exact, nodes ascend', (count) => {
    const { nodes, weights } = gaussRule(count);
    let sum = 0;
    let power = 0;
    for (let i = 0; i < count; i++) {
      sum += weights[i];
      power += weights[i] * nodes[i] ** (2 * count - 2);
      if (i > 0) expect(nodes[i]).toBeGreaterThan(nodes[i - 1]);
    }
    expect(Math.abs(sum - 2)).toBeLessThan(1e-12);
    expect(Math.abs(power - 2 / (2 * count - 1))).toBeLessThan(1e-12);
  });

  it('P_4(0.5) = (35 t^4 - 30 t^2 + 3) / 8', () => {
    const values = new Float64Array(7);
    legendreAt(0.5, 5, values, 2);
    expect(Math.abs(values[6] - (35 / 16 - 30 / 4 + 3) / 8)).toBeLessThan(1e-15);
    expect([values[0], values[1]]).toEqual([0, 0]);
  });
});

describe('a stretch', () => {
  it('its polynomials are orthonormal under its own quadrature', () => {
    const { weighted, atM, orders } = stretchOf(1.3, 3.9, 6, 6);
    const scaled = (p: number, j: number): number => {
      const values = new Float64Array(6);
      legendreAt((2 * (atM[j] - 1.3)) / 2.6 - 1, 6, values, 0);
      return Math.sqrt((2 * p + 1) / 2.6) * values[p];
    };
    for (let p = 0; p < orders; p++)
      for (let q = 0; q < orders; q++) {
        let sum = 0;
        for (let j = 0; j < atM.length; j++) sum += weighted[p * atM.length + j] * scaled(q, j);
        expect(Math.abs(sum - (p === q ? 1 : 0))).toBeLessThan(1e-12);
      }
  });

  it.each([
    [0.1, 0.4],
    [0, 6.1],
    [2, 2.05],
  ])('from %f to %f m: cosines up to kappa 12 / m integrate as in closed form', (fromM, toM) => {
    const { weighted, atM } = stretchOf(fromM, toM, 1, 12);
    for (const kappa of [0.5, 3, 7, 12]) {
      let sum = 0;
      for (let j = 0; j < atM.length; j++) sum += weighted[j] * Math.cos(kappa * atM[j]);
      const exact = (Math.sin(kappa * toM) - Math.sin(kappa * fromM)) / (kappa * Math.sqrt(toM - fromM));
      expect(Math.abs(sum - exact)).toBeLessThan(1e-5);
    }
  });
});
