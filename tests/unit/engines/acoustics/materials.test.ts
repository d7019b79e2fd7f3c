import { describe, expect, it } from 'vitest';
import { byBandName, exactMidbandHz, octaveBandsHz } from '../../../../src/engines/acoustics/bands.ts';
import {
  absorptionBand,
  absorptionOf,
  finishAbsorption,
  finishAbsorptions,
} from '../../../../src/engines/acoustics/materials.ts';
import { FINISHES } from '../../../../src/model/finishes.ts';

describe('finishes', () => {
  it('gives every finish of the model an absorption, and no other', () => {
    expect(finishAbsorptions.map((f) => f.id).sort()).toEqual(FINISHES.map((f) => f.id).sort());
  });

  it('holds coefficients above 0 and below 1, six to a table, each with a source', () => {
    for (const { id, tables } of finishAbsorptions) {
      expect(tables.length, id).toBeGreaterThan(0);
      for (const { values, source } of tables) {
        expect(values.length, id).toBe(6);
        expect(source.length).toBeGreaterThan(5);
        for (const v of values) expect(v > 0 && v < 1, `${id} ${v}`).toBe(true);
      }
    }
  });

  it('bounds plasterboard by the handbooks that contradict one another', () => {
    const board = finishAbsorption('plasterboard-on-studs');
    expect(board).not.toBeNull();
    if (!board) return;
    expect(absorptionOf(board)[0]).toBe(0.29);
    expect(absorptionBand(board).low).toEqual([0.1, 0.08, 0.05, 0.03, 0.03, 0.03]);
    expect(absorptionBand(board).high).toEqual([0.29, 0.1, 0.06, 0.05, 0.07, 0.09]);
  });

  it('gives a finish of one table a band of no width, and null for an unknown id', () => {
    const brick = finishAbsorption('brick');
    expect(brick && absorptionBand(brick)).toEqual({ low: brick?.tables[0].values, high: brick?.tables[0].values });
    expect(finishAbsorption('velvet-lining')).toBeNull();
  });
});

describe('bands', () => {
  it('stand at the nominal centres, exact midbands within 1 % of them', () => {
    octaveBandsHz.forEach((hz, i) => {
      expect(Math.abs(exactMidbandHz(i) / hz - 1)).toBeLessThan(0.01);
    });
    expect(exactMidbandHz(3)).toBe(1000);
  });

  it('are named by their centres', () => {
    expect(byBandName([1, 2, 3, 4, 5, 6])).toEqual({ 125: 1, 250: 2, 500: 3, 1000: 4, 2000: 5, 4000: 6 });
  });
});
