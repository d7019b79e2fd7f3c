import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { METRIC_FREQUENCIES_HZ } from '../../src/analysis/inputs.ts';
import { drivenFigures, pickSources } from '../../src/engines/bass/arrangement-figures.ts';
import { createBoxField } from '../../src/engines/bass/box-field.ts';
import { createPlacementSearch } from '../../src/engines/bass/placement-search.ts';
import { superpose } from '../../src/engines/bass/superpose.ts';
import { fillDip, meanLossDb, throughCrossover } from '../../src/engines/bass/through-crossover.ts';

// Random boxes with random places and seats; fast-check prints seed and counterexample of a failure.
const share = fc.double({ min: 0.03, max: 0.97, noNaN: true });
/** Sources low, ears high: at least 0.4 m apart, since the engine moves a nearer ear out along x, which is no mirror's way. */
const source = fc.tuple(share, fc.double({ min: 0.03, max: 0.2, noNaN: true }), share);
const ear = fc.tuple(share, fc.double({ min: 0.4, max: 0.97, noNaN: true }), share);
const side = fc.double({ min: 2.2, max: 8, noNaN: true });
const beta = fc.double({ min: 0.01, max: 0.3, noNaN: true });
const drive = fc.record({
  gainDb: fc.double({ min: -12, max: 6, noNaN: true }),
  delayMs: fc.double({ min: 0, max: 20, noNaN: true }),
  inverted: fc.boolean(),
});
const scene = fc.record({
  sizeM: fc.tuple(side, fc.double({ min: 2, max: 3.5, noNaN: true }), side),
  admittance: fc.array(fc.tuple(beta, fc.constant(0)), { minLength: 6, maxLength: 6 }),
  sources: fc.array(source, { minLength: 5, maxLength: 7 }),
  seats: fc.array(ear, { minLength: 2, maxLength: 5 }),
});
type Scene = {
  sizeM: [number, number, number];
  admittance: [number, number][];
  sources: number[][];
  seats: number[][];
};
const RUNS = { numRuns: 25, endOnFailure: true };
const GRID = METRIC_FREQUENCIES_HZ.filter((_, i) => i % 6 === 0);
const PLAIN = { gainDb: 0, delayMs: 0, inverted: false };

const responses = ({ sizeM, admittance, sources, seats }: Scene) => {
  const at = (shares: number[][]) =>
    Float64Array.from(shares.flatMap((point) => point.map((x, axis) => x * sizeM[axis])));
  return createBoxField({ sizeM, admittance, soundSpeed: 343.2 }).unitResponses(at(sources), at(seats), GRID);
};
/** The same room seen in a mirror across x. */
const mirrored = ({ sizeM, admittance, sources, seats }: Scene): Scene => ({
  sizeM,
  admittance: [admittance[1], admittance[0], ...admittance.slice(2)],
  sources: sources.map(([x, y, z]) => [1 - x, y, z]),
  seats: seats.map(([x, y, z]) => [1 - x, y, z]),
});
const whole = (
  unit: ReturnType<typeof responses>,
  choose: number,
  base: ReturnType<typeof superpose> | null = null,
) => {
  const search = createPlacementSearch({ candidates: unit, base, choose });
  while (!search.step(5));
  return search;
};
/** Single precision over a handful of frequencies, and nulls of small rooms: see the kernel's own test. */
const CLOSE_DB = 5e-4;

describe('arrangements of random rooms', () => {
  it('the order of the subwoofers makes no difference', () => {
    fc.assert(
      fc.property(scene, fc.array(drive, { minLength: 5, maxLength: 5 }), (one, drives) => {
        const unit = responses(one as Scene);
        const order = [3, 0, 4, 1, 2];
        const a = drivenFigures(pickSources(unit, [0, 1, 2, 3, 4]), drives, GRID);
        const b = drivenFigures(
          pickSources(unit, order),
          order.map((s) => drives[s]),
          GRID,
        );
        expect(b.spreadDb).toBeCloseTo(a.spreadDb ?? Number.NaN, 6);
        expect(b.flatnessDb).toBeCloseTo(a.flatnessDb, 6);
        expect(b.levelDb).toBeCloseTo(a.levelDb, 6);
      }),
      RUNS,
    );
  });

  it('a mirrored room has the same scores in the same order', () => {
    fc.assert(
      fc.property(scene, (one) => {
        const a = whole(responses(one as Scene), 2);
        const b = whole(responses(mirrored(one as Scene)), 2);
        for (let i = 0; i < a.total; i++) expect(Math.abs(a.spreadDb[i] - b.spreadDb[i])).toBeLessThanOrEqual(CLOSE_DB);
      }),
      RUNS,
    );
  });

  it('what is best is what trying every choice in double precision finds', () => {
    fc.assert(
      fc.property(scene, fc.integer({ min: 1, max: 4 }), (one, choose) => {
        const unit = responses(one as Scene);
        const search = whole(unit, choose);
        let least = Number.POSITIVE_INFINITY;
        for (let i = 0; i < search.total; i++) {
          const chosen = search.combination(i);
          const { spreadDb } = drivenFigures(
            pickSources(unit, chosen),
            chosen.map(() => PLAIN),
            GRID,
          );
          expect(Math.abs(search.spreadDb[i] - (spreadDb ?? Number.NaN))).toBeLessThanOrEqual(CLOSE_DB);
          least = Math.min(least, spreadDb ?? Number.POSITIVE_INFINITY);
        }
        expect(Math.abs(Math.min(...search.spreadDb) - least)).toBeLessThanOrEqual(CLOSE_DB);
      }),
      RUNS,
    );
  });

  it('a locked one with its own drive sounds with every choice', () => {
    fc.assert(
      fc.property(scene, drive, (one, held) => {
        const unit = responses(one as Scene);
        const locked = pickSources(unit, [0]);
        const rest = Array.from({ length: unit.sources - 1 }, (_, s) => s + 1);
        const search = whole(pickSources(unit, rest), 1, superpose(locked, [held], GRID));
        for (const [i, s] of rest.entries()) {
          const { spreadDb } = drivenFigures(pickSources(unit, [0, s]), [held, PLAIN], GRID);
          expect(Math.abs(search.spreadDb[i] - (spreadDb ?? Number.NaN))).toBeLessThanOrEqual(CLOSE_DB);
        }
      }),
      RUNS,
    );
  });

  it('the cure of a dip never loses more than no cure, and a delay given to all beforehand is found again', () => {
    fc.assert(
      fc.property(scene, fc.integer({ min: 0, max: 60 }), (one, tenths) => {
        const unit = responses(one as Scene);
        const chain = { ...PLAIN, highPassHz: 20, output: null };
        const late = tenths / 10;
        const field = (delayMs: number) =>
          throughCrossover(
            pickSources(unit, [0]),
            pickSources(unit, [1, 2]),
            [1, 2].map(() => ({ ...chain, delayMs })),
            60,
            GRID,
          );
        const plain = fillDip(field(0), GRID, 60, 0, 12);
        expect(plain.afterDb).toBeGreaterThanOrEqual(plain.beforeDb);
        const again = meanLossDb(field(late), GRID, 60, { delayMs: plain.delayMs - late, inverted: plain.inverted });
        expect(again).toBeCloseTo(plain.afterDb, 6);
      }),
      RUNS,
    );
  });
});
