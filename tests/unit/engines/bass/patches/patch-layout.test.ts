import { describe, expect, it } from 'vitest';
import { boxGeometry } from '../../../../../src/engines/bass/box-state.ts';
import { divideBox } from '../../../../../src/engines/bass/patches/box-patches.ts';
import { createLayouts } from '../../../../../src/engines/bass/patches/patch-layout.ts';
import { systemWork } from '../../../../../src/engines/bass/patches/system-work.ts';
import type { Admittance, WallPatch } from '../../../../../src/engines/bass/room-field.ts';

/** Both walls across x covered by columns of ten patches. */
const roomOf = (sizeM: readonly [number, number, number], columns: number) => {
  const [, high, long] = sizeM;
  const patches = Array.from({ length: 20 * columns }, (_, i): WallPatch => {
    const row = (i >> 1) % 10;
    const column = Math.floor(i / 20);
    const fromM = [(high * row) / 10, (long * column) / columns] as const;
    const toM = [fromM[0] + high / 20, fromM[1] + long / columns / 2] as const;
    return { wall: i & 1, fromM, toM, admittance: [0.5, 0.1] };
  });
  const admittance = Array.from({ length: 6 }, (): Admittance => [0.02, 0]);
  const divided = divideBox({ sizeM, soundSpeed: 343.2, admittance, patches });
  return { geometry: boxGeometry(divided.even), patches: divided.patches };
};

describe('how far the sums over modes reach', () => {
  it('8 per metre besides the wavenumber in rooms of a home, whatever their patches', () => {
    for (const columns of [1, 4]) {
      const { geometry, patches } = roomOf([5, 2.7, 6], columns);
      const { orders } = createLayouts(geometry, patches)(2);
      expect(orders).toEqual([5, 2.7, 6].map((m) => Math.floor((m * Math.sqrt(68)) / Math.PI) + 1));
    }
  });

  it('less in the largest, so that a frequency takes little there too', () => {
    const { geometry, patches } = roomOf([30, 10, 30], 8);
    const { functions, orders } = createLayouts(geometry, patches)(2);
    const cut = ((orders[0] - 0.5) * Math.PI) / 30;
    expect(cut).toBeGreaterThan(3);
    expect(systemWork(geometry.sizeM, patches, functions, cut)).toBeLessThan(40e6);
    expect(systemWork(geometry.sizeM, patches, functions, Math.sqrt(68))).toBeGreaterThan(60e6);
  });
});
