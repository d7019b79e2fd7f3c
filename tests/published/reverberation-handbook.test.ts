// Reverberation times: two teaching examples (read) and two of Everest's Master Handbook of Acoustics, p. 236 and p. 188 (areas,
// coefficients and the constant 0.049 V = 182.7 read; times derived from them). A printed constant is met by the speed of
// sound that it stands for, so that the rounding of the print is not taken for an error.
import { describe, expect, it } from 'vitest';
import type { OctaveValues } from '../../src/engines/acoustics/bands.ts';
import { absorptionOf, finishAbsorption } from '../../src/engines/acoustics/materials.ts';
import { type AbsorbingArea, eyringS, reverberation, sabineS } from '../../src/engines/acoustics/reverberation.ts';

const foot = 0.3048;
const speedOfConstant = (constant: number): number => (24 * Math.log(10)) / constant;
const speedOfFeetConstant = (constant: number): number => speedOfConstant(constant / foot);

const near = (actual: number, expected: number, tolerance: number, what: string): void => {
  expect(Math.abs(actual - expected), `${what}: ${actual} against ${expected}`).toBeLessThanOrEqual(tolerance);
};

describe('lecture hall 15 x 8 x 3 m, mean absorption 0.3: Sabine 0.51 s, Eyring 0.43 s (read)', () => {
  const volume = 360;
  const surface = 2 * (15 * 8 + 15 * 3 + 8 * 3);
  it('as printed, at 20 degrees Celsius', () => {
    near(sabineS(volume, 0.3 * surface, 343.2), 0.51, 0.005, 'Sabine');
    near(eyringS(volume, surface, 0.3, 343.2), 0.43, 0.005, 'Eyring');
  });
  it.each([
    [0.162, 0.5143, 0.4326],
    [0.161, 0.5111, 0.4299],
  ])('with the constant %d (derived)', (constant, sabine, eyring) => {
    near(sabineS(volume, 0.3 * surface, speedOfConstant(constant)), sabine, 0.0001, 'Sabine');
    near(eyringS(volume, surface, 0.3, speedOfConstant(constant)), eyring, 0.0001, 'Eyring');
  });
});

it('hall 40 x 30 x 20 ft, mean absorption 0.15, T = 0.05 V / A: 1.54 s (read)', () => {
  const volume = 24_000 * foot ** 3;
  const surface = 5200 * foot ** 2;
  near(sabineS(volume, 0.15 * surface, speedOfFeetConstant(0.05)), 1.54, 0.01, 'Sabine');
});

describe('Everest: 23.3 x 16 x 10 ft', () => {
  const gypsum: OctaveValues = [0.29, 0.1, 0.05, 0.04, 0.07, 0.09];
  const concrete: OctaveValues = [0.01, 0.01, 0.015, 0.02, 0.02, 0.02];
  const tile: OctaveValues = [0.09, 0.28, 0.78, 0.84, 0.73, 0.64];
  const area = (squareFeet: number, absorption: OctaveValues): AbsorbingArea => ({
    areaM2: squareFeet * foot ** 2,
    absorption,
  });
  const bare = [area(373, concrete), area(1159, gypsum)];
  const solve = (areas: AbsorbingArea[]) =>
    reverberation({ volumeM3: 3728 * foot ** 3, areas, speedMS: speedOfFeetConstant(0.049) });

  it('example 1: concrete and gypsum board', () => {
    const room = solve(bare);
    [339.8, 119.6, 63.6, 53.9, 88.6, 111.8].forEach((sabins, i) => {
      near(room.equivalentAreaM2[i] / foot ** 2, sabins, 0.1, `sabins, band ${i}`);
    });
    [0.54, 1.53, 2.87, 3.39, 2.06, 1.63].forEach((seconds, i) => {
      near(room.sabineS[i], seconds, 0.01, `time, band ${i}`);
    });
  });

  it('example 2: with 340 square feet of tile', () => {
    const room = solve([...bare, area(340, tile)]);
    // The book rounds each row to 0.1 before it adds three of them.
    [370.4, 214.8, 328.8, 339.5, 336.8, 329.4].forEach((sabins, i) => {
      near(room.equivalentAreaM2[i] / foot ** 2, sabins, 0.15, `sabins, band ${i}`);
    });
    [0.49, 0.85, 0.56, 0.54, 0.54, 0.55].forEach((seconds, i) => {
      near(room.sabineS[i], seconds, 0.01, `time, band ${i}`);
    });
  });

  it('stands on the same coefficients as the table of finishes', () => {
    const used = (id: string): OctaveValues | null => {
      const found = finishAbsorption(id);
      return found && absorptionOf(found);
    };
    expect(used('plasterboard-on-studs')).toEqual(gypsum);
    expect(used('concrete')).toEqual(concrete);
    expect(used('acoustic-tile')).toEqual(tile);
  });
});
