import { describe, expect, it } from 'vitest';
import { createBoxField } from '../../../../src/engines/bass/box-field.ts';
import type { BoxSpec } from '../../../../src/engines/bass/room-field.ts';

const C = 343.2;
const SIZE: readonly [number, number, number] = [4.3, 2.7, 6.1];
const modesOf = (admittance: BoxSpec['admittance'], maxHz = 150, sizeM = SIZE) =>
  createBoxField({ sizeM: [...sizeM], soundSpeed: C, admittance }).modes(maxHz);
const even = (re: number, im = 0): BoxSpec['admittance'] => Array.from({ length: 6 }, () => [re, im] as const);

describe('modes of a box', () => {
  it('ascend and are complete: as many as lattice points under the limit', () => {
    const modes = modesOf(even(0));
    let count = -1;
    for (let l = 0; l < 20; l++) {
      for (let m = 0; m < 20; m++) {
        for (let n = 0; n < 20; n++) if ((C / 2) * Math.hypot(l / 4.3, m / 2.7, n / 6.1) <= 150) count++;
      }
    }
    expect(modes).toHaveLength(count);
    for (let i = 1; i < count; i++) expect(modes[i].hz).toBeGreaterThanOrEqual(modes[i - 1].hz);
    for (const mode of modes) expect(mode.decayS).toBe(Number.POSITIVE_INFINITY);
  });

  it('light walls: delta = (c / 2) sum eps (beta0 + beta1) / L (first order, derived; Kuttruff ch. 3)', () => {
    const betas = [0.001, 0.002, 0.0005, 0.003, 0.002, 0.0015];
    for (const { order, decayS } of modesOf(betas.map((beta) => [beta, 0] as const))) {
      const delta = SIZE.reduce(
        (sum, length, axis) =>
          sum + ((C / 2) * (order[axis] === 0 ? 1 : 2) * (betas[2 * axis] + betas[2 * axis + 1])) / length,
        0,
      );
      expect(Math.abs(decayS / ((3 * Math.LN10) / delta) - 1), `${order}`).toBeLessThanOrEqual(2e-3);
    }
  });

  it('a duct with one soft pair of ends: e^(-2 j k L) R^2 = 1, so delta = -c ln R / L for any beta', () => {
    // only the ends absorb: axial modes along z stay one-dimensional, k = n pi / L - j ln(R) / L ... exact for any beta < 1
    for (const beta of [0.05, 0.2, 0.5]) {
      const modes = modesOf([
        [0, 0],
        [0, 0],
        [0, 0],
        [0, 0],
        [beta, 0],
        [beta, 0],
      ]);
      const axial = modes.filter(({ order }) => order[0] === 0 && order[1] === 0);
      expect(axial.length).toBeGreaterThanOrEqual(5);
      const delta = (-C * Math.log((1 - beta) / (1 + beta))) / 6.1;
      for (const mode of axial) {
        expect(Math.abs(mode.decayS / ((3 * Math.LN10) / delta) - 1)).toBeLessThanOrEqual(1e-9);
        expect(Math.abs(mode.dampedHz / mode.hz - 1)).toBeLessThanOrEqual(1e-9);
      }
    }
  });

  it('stiff walls raise no damping and lower the frequency, mass-like ones raise it', () => {
    // p leaks into a spring: the room seems longer
    for (const [im, sign] of [
      [0.1, -1],
      [-0.1, 1],
    ]) {
      const mode = modesOf(even(0, im), 40)[0];
      expect(Math.sign(mode.dampedHz - mode.hz)).toBe(sign);
      expect(mode.decayS).toBeGreaterThan(1e6);
    }
  });

  it('walls of beta 1 leave no ringing: finite all the same', () => {
    for (const mode of modesOf(even(1), 100)) {
      expect(mode.decayS).toBeGreaterThan(0);
      expect(mode.decayS).toBeLessThan(0.1);
    }
  });

  it('a cube keeps its equal frequencies apart by order', () => {
    const first = modesOf(even(0.02), 60, [3, 3, 3]).filter(({ hz }) => Math.abs(hz - C / 6) < 1e-9);
    expect(first.map(({ order }) => order.join('')).sort()).toEqual(['001', '010', '100']);
    expect(first[0].decayS).toBeCloseTo(first[2].decayS, 9);
  });
});
