import { describe, expect, it } from 'vitest';
import { createBoxField } from '../../../../../src/engines/bass/box-field.ts';
import { divideBox } from '../../../../../src/engines/bass/patches/box-patches.ts';
import { MOST_FUNCTIONS, patchFunctions } from '../../../../../src/engines/bass/patches/patch-functions.ts';
import { createPatchedBoxField } from '../../../../../src/engines/bass/patches/patched-box-field.ts';
import type { Admittance, BoxSpec, WallPatch } from '../../../../../src/engines/bass/room-field.ts';

const box: BoxSpec = {
  sizeM: [5.2, 3.9, 2.5],
  soundSpeed: 343.2,
  admittance: [0.02, 0.03, 0.01, 0.04, 0.02, 0.03].map((re): Admittance => [re, 0]),
};

describe('modes of a box with patches', () => {
  it('a wall covered by two pieces decays as that wall does, within 0.3 %', () => {
    const patches: WallPatch[] = [
      { wall: 0, fromM: [0, 0], toM: [1.7, 2.5], admittance: [0.12, 0.03] },
      { wall: 0, fromM: [1.7, 0], toM: [3.9, 2.5], admittance: [0.12, 0.03] },
    ];
    const lined: Admittance[] = [[0.12, 0.03], ...box.admittance.slice(1)];
    const expected = createBoxField({ ...box, admittance: lined }).modes(110);
    const found = createPatchedBoxField({ ...box, patches }).modes(110);
    expect(found.length).toBe(expected.length);
    expect(found.length).toBeGreaterThan(15);
    for (const [i, mode] of found.entries()) {
      expect(mode.order).toEqual(expected[i].order);
      expect(mode.hz).toBe(expected[i].hz);
      expect(Math.abs(mode.dampedHz / expected[i].dampedHz - 1)).toBeLessThan(2e-4);
      expect(Math.abs(mode.decayS / expected[i].decayS - 1)).toBeLessThan(3e-3);
    }
  });

  it('a slight patch adds what first order says: delta = (c / 2 V) sum of eps psi^2 beta over it', () => {
    const rigid: BoxSpec = { ...box, admittance: box.admittance.map((): Admittance => [0, 0]) };
    const patches: WallPatch[] = [{ wall: 4, fromM: [0.4, 0.6], toM: [1.9, 2.3], admittance: [1e-3, 0] }];
    const modes = createPatchedBoxField({ ...rigid, patches }).modes(90);
    const integral = (n: number, from: number, to: number, lengthM: number): number =>
      n === 0
        ? to - from
        : (to - from) / 2 +
          (Math.sin((2 * n * Math.PI * to) / lengthM) - Math.sin((2 * n * Math.PI * from) / lengthM)) *
            (lengthM / (4 * n * Math.PI));
    for (const { order, decayS } of modes) {
      const eps = order.reduce((product, n) => product * (n === 0 ? 1 : 2), 1);
      const over = integral(order[0], 0.4, 1.9, 5.2) * integral(order[1], 0.6, 2.3, 3.9);
      const delta = (343.2 / 2) * (eps / (5.2 * 3.9 * 2.5)) * 1e-3 * over;
      expect(Math.abs((decayS * delta) / (3 * Math.LN10) - 1)).toBeLessThan(5e-3);
    }
  });

  it('a cube with a patch, whose modes the patch ties together: all finite, damped and in their order', () => {
    const cube: BoxSpec = { ...box, sizeM: [3, 3, 3] };
    const patches: WallPatch[] = [{ wall: 1, fromM: [0.3, 0], toM: [1.6, 2.1], admittance: [0.4, 0.2] }];
    const modes = createPatchedBoxField({ ...cube, patches }).modes(150);
    expect(modes.map(({ order }) => order.join())).toEqual(
      createBoxField(cube)
        .modes(150)
        .map(({ order }) => order.join()),
    );
    for (const { decayS, dampedHz, hz } of modes) {
      expect(decayS).toBeGreaterThan(0.02);
      expect(decayS).toBeLessThan(2);
      expect(Math.abs(dampedHz / hz - 1)).toBeLessThan(0.1);
    }
  });
});

describe('dividing a box into even walls and patches', () => {
  const many: WallPatch[] = Array.from({ length: 200 }, (_, i) => ({
    wall: 4,
    fromM: [0.05 + 0.25 * (i % 20), 0.05 + 0.35 * Math.floor(i / 20)],
    toM: [0.25 + 0.25 * (i % 20), 0.3 + 0.35 * Math.floor(i / 20)],
    admittance: [0.05 + 0.001 * i, 0],
  }));

  it('spreads what is too much over its wall and keeps the whole loss', () => {
    const { even, patches, spread } = divideBox({ ...box, patches: many });
    expect(spread).toBe(40);
    expect(patches.length).toBe(MOST_FUNCTIONS);
    const before = many.reduce((sum, { admittance }) => sum + (admittance[0] - 0.02) * 0.2 * 0.25, 0.02 * 5.2 * 3.9);
    const after = patches.reduce(
      (sum, { delta, fromM, toM }) => sum + delta[0] * (toM[0] - fromM[0]) * (toM[1] - fromM[1]),
      even.admittance[4][0] * 5.2 * 3.9,
    );
    // the kept patches' difference is counted from the new mean, so that the wall between them carries the rest
    expect(Math.abs(after / before - 1)).toBeLessThan(0.15);
  });

  it('never takes more functions than stated, never none for a patch', () => {
    for (const k of [0.5, 3, 11]) {
      const { count, patches } = patchFunctions(divideBox({ ...box, patches: many }).patches, k);
      expect(count).toBeLessThanOrEqual(MOST_FUNCTIONS);
      for (const { first, second, orders } of patches) {
        expect(first.length).toBeGreaterThan(0);
        expect(first.length).toBe(second.length);
        expect(orders[0]).toBe(Math.max(...first) + 1);
      }
    }
  });
});
