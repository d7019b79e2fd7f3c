import { describe, expect, it } from 'vitest';
import { bassCurves } from '../../../src/analysis/curves.ts';
import { defaultFrequenciesHz, earTriples, roomSpec, sourceTriples } from '../../../src/analysis/inputs.ts';
import { createRoomField } from '../../../src/engines/bass/create-room-field.ts';
import type { AlternativeLine } from '../../../src/proposals/alternatives.ts';
import { type Beside, besideCurves } from '../../../src/proposals/beside.ts';
import { studyChain } from '../../../src/proposals/chain.ts';
import { boxRoom, engineResponses, finish } from './rooms.ts';

const project = boxRoom();
const field = createRoomField(roomSpec(project), 'fine');
const nominal = field.unitResponses(sourceTriples(project), earTriples(project), defaultFrequenciesHz());
const curves = bassCurves(project, { nominal, low: null, high: null, fine: null });
const chain = finish(studyChain(project, 0, [], engineResponses(project))).result;
const kept: AlternativeLine = {
  id: 'alt-1',
  subwoofers: 2,
  figures: null,
  seats: curves.seats.map(({ id, levelDb }) => ({ id, levelDb: levelDb.map((db) => db + 3) })),
  leastMargin: null,
};
const compared = [{ ...kept, id: 'now' }, kept];
const stored = [{ frequencyHz: 20 * 2 ** (40 / 24), gainDb: -6, q: 8 }];
const over = (beside: Beside, sources = { curves, stored, chain, compared }) => besideCurves(beside, sources);

describe('what is laid over the curves', () => {
  it('filters change every seat alike: by their gain at their frequency (a peak filter’s definition), by nothing far away', () => {
    const filtered = over('filters');
    expect(filtered?.seats.map(({ id }) => id)).toEqual(curves.seats.map(({ id }) => id));
    for (const [s, { levelDb }] of (filtered?.seats ?? []).entries()) {
      expect(levelDb[40] - curves.seats[s].levelDb[40]).toBeCloseTo(-6, 9);
      expect(Math.abs(levelDb[0] - curves.seats[s].levelDb[0])).toBeLessThan(0.1);
    }
    expect(over('filters', { curves, stored: [], chain, compared })).toBeNull();
  });

  it('the filters proposed bring the seats’ mean where the equaliser says they do', () => {
    const proposed = over('proposed');
    const { frequenciesHz, plainDb, fittedDb } = chain.equaliser ?? {};
    if (!proposed || !frequenciesHz || !plainDb || !fittedDb) throw new Error('there are subwoofers');
    const at = frequenciesHz.findIndex((_, f) => Math.abs(fittedDb[f] - plainDb[f]) > 1);
    const from = curves.frequenciesHz.indexOf(frequenciesHz[at]);
    expect([at, from].every((place) => place >= 0)).toBe(true);
    expect(proposed.seats[0].levelDb[from] - curves.seats[0].levelDb[from]).toBeCloseTo(fittedDb[at] - plainDb[at], 9);
  });

  it('with the centre the subwoofers stand where they stood: an octave under the crossover they are all one hears', () => {
    // Linkwitz-Riley, fourth order: 1/(1 + (f/fc)^4) of the subwoofers, and 16 times less of the centre (derived).
    const through = over('centre');
    const f = curves.frequenciesHz.findIndex((hz) => hz >= 39.9);
    const apart = (through?.seats ?? []).map(({ levelDb }, s) => levelDb[f] - curves.seats[s].levelDb[f]);
    expect(apart).toHaveLength(6);
    expect(apart.reduce((sum, db) => sum + db, 0) / 6).toBeGreaterThan(-2.5);
    expect(apart.reduce((sum, db) => sum + db, 0) / 6).toBeLessThan(1.5);
    const [before, after] = [over('centre'), over('filled')].map((shown) => shown?.seats[1].levelDb);
    const change = chain.crossover && chain.crossover.seats[1].afterDb[40] - chain.crossover.seats[1].beforeDb[40];
    expect((after?.[40] ?? 0) - (before?.[40] ?? 0)).toBeCloseTo(change ?? Number.NaN, 9);
  });

  it('a kept arrangement has its own curves; one that is not there has none', () => {
    expect(over('kept:alt-1')?.seats[2].levelDb[10]).toBeCloseTo(curves.seats[2].levelDb[10] + 3, 9);
    expect(over('kept:gone')).toBeNull();
    expect(over('nothing')).toBeNull();
    expect(over('centre', { curves, stored, chain: { ...chain, crossover: null }, compared })).toBeNull();
  });
});
