import { describe, expect, it } from 'vitest';
import { lineValues, triangleElement } from '../../../../../src/engines/bass/plan/triangle-element.ts';
import { envelopeOf } from './rectangle-space.ts';

const factorial = (n: number): number => (n <= 1 ? 1 : n * factorial(n - 1));

describe.each([1, 2, 3, 4, 5, 7])('triangle of order %i', (order) => {
  const element = triangleElement(order);
  const place = (i: number): number[] => Array.from(element.lattice.subarray(3 * i, 3 * i + 3), (n) => n / order);

  it('has (p + 1)(p + 2) / 2 nodes, each polynomial 1 at its own and 0 at the others', () => {
    expect(element.nodes).toBe(((order + 1) * (order + 2)) / 2);
    const values = new Float64Array(element.nodes);
    for (let i = 0; i < element.nodes; i++) {
      element.valuesAt(place(i)[1], place(i)[2], values);
      for (let j = 0; j < element.nodes; j++)
        expect(Math.abs(values[j] - (i === j ? 1 : 0))).toBeLessThanOrEqual(1e-12);
    }
  });

  // int L0^a L1^b L2^c dA = 2 A a! b! c! / (a + b + c + 2)! (Zienkiewicz and Taylor, The Finite Element Method; from memory)
  it('integrates monomials times monomials as the closed form does', () => {
    for (let b = 0; b <= order; b++) {
      for (let c = 0; b + c <= order; c++) {
        const f = Array.from({ length: element.nodes }, (_, i) => place(i)[1] ** b * place(i)[2] ** c);
        let sum = 0;
        for (let i = 0; i < f.length; i++)
          for (let j = 0; j < f.length; j++) sum += f[i] * f[j] * element.mass[i * element.nodes + j];
        const closed = (2 * factorial(2 * b) * factorial(2 * c)) / factorial(2 * b + 2 * c + 2);
        expect(Math.abs(sum - closed)).toBeLessThanOrEqual(1e-12);
      }
    }
  });

  it('has the slopes of L1^b L2^c: int (d/dL1)^2 over area in closed form', () => {
    for (let b = 1; b <= order; b++) {
      for (let c = 0; b + c <= order; c++) {
        const f = Array.from({ length: element.nodes }, (_, i) => place(i)[1] ** b * place(i)[2] ** c);
        const [s11, s12] = element.stiffness;
        let [one, two] = [0, 0];
        for (let i = 0; i < f.length; i++) {
          for (let j = 0; j < f.length; j++) {
            one += f[i] * f[j] * s11[i * element.nodes + j];
            two += f[i] * f[j] * s12[i * element.nodes + j];
          }
        }
        const m = (p: number, q: number): number => (2 * factorial(p) * factorial(q)) / factorial(p + q + 2);
        expect(Math.abs(one - b * b * m(2 * b - 2, 2 * c))).toBeLessThanOrEqual(1e-10);
        expect(Math.abs(two - (c === 0 ? 0 : 2 * b * c * m(2 * b - 1, 2 * c - 1)))).toBeLessThanOrEqual(1e-10);
      }
    }
  });

  it('leaves the polynomials of a line on its sides', () => {
    const values = new Float64Array(element.nodes);
    const line = new Float64Array(order + 1);
    element.valuesAt(0.3, 0, values);
    lineValues(order, 0.3, line);
    expect(Math.abs(values[0] - line[0])).toBeLessThanOrEqual(1e-13);
    expect(Math.abs(values[1] - line[order])).toBeLessThanOrEqual(1e-13);
    for (let k = 1; k < order; k++) expect(Math.abs(values[2 + k] - line[k])).toBeLessThanOrEqual(1e-13);
  });
});

describe('envelope factor', () => {
  it('solves: the residual is rounding', () => {
    const { size, product, factor } = envelopeOf(3);
    const x = Float64Array.from({ length: size }, (_, i) => Math.sin(1 + i * i));
    const right = product(x, 3);
    factor(3).solve(right);
    for (let i = 0; i < size; i++) expect(Math.abs(right[i] - x[i])).toBeLessThanOrEqual(1e-9);
  });

  it('counts the modes of a 6 x 4 m rectangle below a bound by its negative pivots', () => {
    const { factor } = envelopeOf(4);
    for (const bound of [0.1, 0.27, 0.28, 0.61, 0.62, 0.9, 2, 3.3]) {
      let count = 0;
      for (let m = 0; m < 9; m++)
        for (let n = 0; n < 9; n++) if (((m * Math.PI) / 6) ** 2 + ((n * Math.PI) / 4) ** 2 < bound) count++;
      expect(factor(-bound).negative).toBe(count);
    }
  });
});
