// Rigid-box eigenfrequencies. Kuttruff, Room Acoustics, table 3.1 (remembered, all twenty confirmed by derivation);
// Handbook for Sound Engineers, ch. 6, table 6-4 (read; needs c = 1130 ft/s); Everest, Master Handbook of Acoustics
// (dimensions and first values remembered, reproduced with 1130 ft/s); Rindel's example room (dimensions read, values
// derived); exact mode counts of Kuttruff's room derived by counting.
import { describe, expect, it } from 'vitest';
import { createBoxField } from '../../src/engines/bass/box-field.ts';
import type { BoxMode } from '../../src/engines/bass/room-field.ts';

const RIGID = Array.from({ length: 6 }, () => [0, 0] as const);
const FOOT = 0.3048;

/** The handbooks order their indices length, width, height; ours are width (x), height (y), length (z). */
const rigidModes = (length: number, width: number, height: number, soundSpeed: number, maxHz: number): BoxMode[] =>
  createBoxField({ sizeM: [width, height, length], soundSpeed, admittance: RIGID }).modes(maxHz);

const handbookOrder = ({ order: [x, y, z] }: BoxMode): string => `${z}${x}${y}`;

const expectTable = (modes: BoxMode[], table: string, tolerance: number): void => {
  const rows = table.split(' ').map((entry) => /^([\d.]+)(?:\((\d+)\))?$/.exec(entry));
  expect(modes.length).toBeGreaterThanOrEqual(rows.length);
  for (const [i, row] of rows.entries()) {
    if (row === null) throw new Error(`row ${i} of the table cannot be read`);
    expect(Math.abs(modes[i].hz - Number(row[1])), `mode ${i + 1}`).toBeLessThanOrEqual(tolerance);
    if (row[2] !== undefined) expect(handbookOrder(modes[i])).toBe(row[2]);
  }
};

describe('Kuttruff, 4.7 x 4.1 x 3.1 m, c = 340 m/s', () => {
  const modes = rigidModes(4.7, 4.1, 3.1, 340, 300);

  it('first twenty, and the next four (derived), to 0.01 Hz', () => {
    expectTable(
      modes,
      '36.17(100) 41.46(010) 54.84(001) 55.02(110) 65.69(101) 68.75(011) 72.34(200) 77.68(111) 82.93(020) 83.38(210) ' +
        '90.47(120) 90.78(201) 99.42(021) 99.80(211) 105.79(121) 108.51(300) 109.68(002) 110.05(220) 115.49(102) ' +
        '116.16(310) 117.25(012) 121.58(301) 122.71(112) 122.95(221)',
      0.01,
    );
  });

  it.each([
    [50, 2],
    [100, 14],
    [150, 37],
    [200, 81],
    [300, 233],
  ])('up to %d Hz: exactly %d', (hz, count) => {
    expect(modes.filter((mode) => mode.hz <= hz)).toHaveLength(count);
  });

  it.each([
    [50, 3.25],
    [100, 14.44],
    [150, 38.34],
    [200, 79.73],
    [300, 234.07],
  ])('and the smooth count at %d Hz, %d, lies within two modes of it', (hz, smooth) => {
    expect(Math.abs(modes.filter((mode) => mode.hz <= hz).length - smooth)).toBeLessThan(2);
  });
});

describe('Handbook for Sound Engineers', () => {
  it('16 x 12 x 8 ft: axial rows and the degenerate frequencies, to 0.01 Hz', () => {
    const modes = rigidModes(16 * FOOT, 12 * FOOT, 8 * FOOT, 1130 * FOOT, 215);
    const hz = (order: string): number => modes.find((mode) => handbookOrder(mode) === order)?.hz ?? Number.NaN;
    for (const [order, value] of [
      ['100', 35.31],
      ['200', 70.63],
      ['300', 105.94],
      ['010', 47.08],
      ['020', 94.17],
      ['030', 141.25],
      ['001', 70.63],
      ['002', 141.25],
      ['003', 211.88],
    ] as const) {
      expect(Math.abs(hz(order) - value), order).toBeLessThanOrEqual(0.01);
    }
    const at = (value: number) => modes.filter((mode) => Math.abs(mode.hz - value) <= 0.01).map(handbookOrder);
    expect(at(70.63).sort()).toEqual(['001', '200']);
    expect(at(141.25)).toEqual(expect.arrayContaining(['002', '030', '400']));
  });

  it('23 x 17 x 9 ft: first ten (derived) to 0.01 Hz', () => {
    expectTable(
      rigidModes(23 * FOOT, 17 * FOOT, 9 * FOOT, 1130 * FOOT, 90),
      '24.57 33.24 41.33 49.13 59.32 62.78 66.47 67.41 70.86 71.03',
      0.01,
    );
  });
});

it('Everest, 12.46 x 11.42 x 7.90 ft, to 0.1 Hz', () => {
  expectTable(
    rigidModes(12.46 * FOOT, 11.42 * FOOT, 7.9 * FOOT, 1130 * FOOT, 150),
    '45.3(100) 49.5(010) 67.1(110) 71.5(001) 84.7(101) 87.0(011) 90.7(200) 98.1(111) 98.9(020) 103.3(210) 108.8(120) ' +
      '115.5(201) 122.1(021) 125.6(211) 130.2(121) 134.2(220) 136.0(300) 143.0(002) 144.8(310) 148.4(030)',
    0.1,
  );
});

it('Rindel, 6.36 x 4.44 x 3.00 m at 343 m/s, to 0.01 Hz', () => {
  expectTable(
    rigidModes(6.36, 4.44, 3, 343, 100),
    '26.97 38.63 47.11 53.93 57.17 63.21 66.34 68.99 74.08 77.25 78.59 80.90 81.82 87.57 89.64',
    0.01,
  );
});

it('8 x 5 x 3 m at 343 m/s: 21.44 Hz first (read)', () => {
  expect(Math.abs(rigidModes(8, 5, 3, 343, 60)[0].hz - 21.44)).toBeLessThanOrEqual(0.01);
});
