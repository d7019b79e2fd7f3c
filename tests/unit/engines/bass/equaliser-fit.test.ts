import { describe, expect, it } from 'vitest';
import { equaliserDb, fitEqualiser, MOST_BOOST_DB } from '../../../../src/engines/bass/equaliser-fit.ts';
import { peakDb } from '../../../../src/engines/bass/filters.ts';

const GRID = Float64Array.from({ length: 62 }, (_, i) => 20 * 2 ** (i / 24));
const shared = new Float64Array(62).fill(1);
const fitted = (meanDb: Float64Array, spreadDb = shared) =>
  fitEqualiser({ frequenciesHz: GRID, meanDb, spreadDb, most: 6 });

describe('equaliser', () => {
  it('leaves a level line alone', () => {
    const { filters, beforeDb, afterDb } = fitted(new Float64Array(62).fill(-3));
    expect(filters).toEqual([]);
    expect(beforeDb).toBe(0);
    expect(afterDb).toBe(0);
  });

  it('takes two peaks made of its own filters away to half a decibel', () => {
    const peaks = [
      { frequencyHz: 34, gainDb: 9, q: 4 },
      { frequencyHz: 71, gainDb: 6, q: 3 },
    ];
    const { filters, beforeDb, afterDb } = fitted(
      GRID.map((hz) => peaks.reduce((sum, one) => sum + peakDb(hz, one), 0)),
    );
    expect(beforeDb).toBeGreaterThan(2);
    expect(afterDb).toBeLessThan(0.5);
    expect(filters.length).toBeLessThanOrEqual(6);
    for (const { frequencyHz, gainDb } of peaks)
      expect(
        filters.some(
          (one) => Math.abs(Math.log2(one.frequencyHz / frequencyHz)) < 1 / 12 && Math.abs(one.gainDb + gainDb) < 2,
        ),
      ).toBe(true);
  });

  it('does not fill a narrow hole, however deep', () => {
    const hole = GRID.map((hz) => -22 * Math.exp(-((Math.log2(hz / 47) / 0.06) ** 2)));
    const { filters, leftAlone } = fitted(hole);
    const at = GRID.findIndex((hz) => hz >= 47);
    expect(leftAlone[at]).toBe(1);
    expect(equaliserDb(filters, GRID[at])).toBeLessThan(0.3);
  });

  it('does not fill a broad dip that the seats do not share, and fills one they share by at most 3 dB', () => {
    const dip = GRID.map((hz) => -6 * Math.exp(-((Math.log2(hz / 45) / 0.35) ** 2)));
    const at = GRID.findIndex((hz) => hz >= 45);
    const apart = fitted(dip, new Float64Array(62).fill(6));
    expect(equaliserDb(apart.filters, GRID[at])).toBeLessThan(0.3);
    const together = fitted(dip);
    const filled = equaliserDb(together.filters, GRID[at]);
    expect(filled).toBeGreaterThan(1);
    for (const hz of GRID) expect(equaliserDb(together.filters, hz)).toBeLessThan(MOST_BOOST_DB + 0.3);
    expect(together.afterDb).toBeLessThan(together.beforeDb);
  });

  it('keeps every filter within its bounds on a ragged line and never makes it worse', () => {
    const ragged = GRID.map((hz, i) => 9 * Math.sin(0.5 * i) + 5 * Math.cos(1.7 * i) - hz / 30);
    const { filters, beforeDb, afterDb } = fitted(ragged);
    expect(filters.length).toBeGreaterThan(0);
    expect(afterDb).toBeLessThan(beforeDb);
    for (const { frequencyHz, gainDb, q } of filters) {
      expect(gainDb).toBeGreaterThanOrEqual(-12);
      expect(gainDb).toBeLessThanOrEqual(3);
      expect(q).toBeGreaterThanOrEqual(0.7);
      expect(q).toBeLessThanOrEqual(gainDb > 0 ? 2 : 10);
      expect(frequencyHz).toBeGreaterThanOrEqual(20);
      expect(frequencyHz).toBeLessThanOrEqual(120);
    }
  });
});
