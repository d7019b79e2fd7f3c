import { describe, expect, it } from 'vitest';
import { bassReadout } from '../../../src/analysis/bass.ts';
import { bassCurves, curveFrequenciesHz, smoothedCurves } from '../../../src/analysis/curves.ts';
import { defaultFrequenciesHz, earTriples, sourceTriples } from '../../../src/analysis/inputs.ts';
import { createBoxField } from '../../../src/engines/bass/box-field.ts';
import { boxSpec } from './even-box.ts';
import { demo } from './rooms.ts';

const project = demo();
const coarseHz = defaultFrequenciesHz();
const fineHz = curveFrequenciesHz();

/** The demo's room with the same even walls, so many times as absorbing. */
const units = (times: number, frequenciesHz: Float64Array) =>
  createBoxField(boxSpec(project, times)).unitResponses(sourceTriples(project), earTriples(project), frequenciesHz);

describe('curves to be drawn', () => {
  const nominal = units(1, coarseHz);
  const [low, high] = [units(1 / Math.sqrt(3), coarseHz), units(Math.sqrt(3), coarseHz)];
  const exact = units(1, fineHz);
  const quick = bassCurves(project, { nominal, low, high, fine: null });
  const fine = bassCurves(project, { nominal, low, high, fine: exact });
  const readout = bassReadout(project, { frequenciesHz: coarseHz, nominal, low, high });

  it('are the report’s at the report’s frequencies, band and all', () => {
    for (const curves of [quick, fine])
      for (const [s, seat] of curves.seats.entries())
        for (const i of coarseHz.keys()) {
          const at = curves.fine ? 4 * i : i;
          expect(curves.frequenciesHz[at]).toBeCloseTo(coarseHz[i], 9);
          expect(seat.levelDb[at]).toBeCloseTo(readout.seats[s].levelDb[i], 6);
          expect(seat.lowDb?.[at]).toBeCloseTo(readout.seats[s].lowDb?.[i] ?? Number.NaN, 6);
          expect(seat.highDb?.[at]).toBeCloseTo(readout.seats[s].highDb?.[i] ?? Number.NaN, 6);
        }
  });

  it('never leave their band', () => {
    for (const { levelDb, lowDb, highDb } of [...quick.seats, ...fine.seats])
      for (const i of levelDb.keys()) {
        expect(lowDb?.[i]).toBeLessThanOrEqual(levelDb[i] + 1e-9);
        expect(highDb?.[i]).toBeGreaterThanOrEqual(levelDb[i] - 1e-9);
      }
  });

  it('say whether they are worked out between the report’s frequencies', () => {
    expect([quick.fine, quick.frequenciesHz.length, fine.fine, fine.frequenciesHz.length]).toEqual([
      false,
      80,
      true,
      317,
    ]);
    // At 96 steps an octave a dip is found that the report's frequencies step over.
    const least = (levels: Float64Array) => levels.reduce((a, b) => Math.min(a, b));
    expect(fine.seats.some((seat, s) => least(seat.levelDb) < least(quick.seats[s].levelDb) - 3)).toBe(true);
  });

  it('are smoothed as a whole, and left alone where nothing is asked for', () => {
    expect(smoothedCurves(fine, null)).toBe(fine);
    const smooth = smoothedCurves(fine, 3);
    const rough = (levels: Float64Array) =>
      levels.reduce((sum, level, i) => (i === 0 ? 0 : sum + Math.abs(level - levels[i - 1])), 0);
    for (const [s, { levelDb, lowDb }] of smooth.seats.entries()) {
      expect(rough(levelDb)).toBeLessThan(0.6 * rough(fine.seats[s].levelDb));
      expect(lowDb).not.toBeNull();
    }
  });
});
