import { METRIC_FREQUENCIES_HZ, type Spread, spreadOf } from '../engines/bass/metrics.ts';
import type { UnitResponses } from '../engines/bass/room-field.ts';
import { type Drive, levelsDb, superpose } from '../engines/bass/superpose.ts';
import type { Project } from '../model/project.ts';
import { seatPoses } from '../model/seating.ts';
import { drivesOf } from './inputs/drives.ts';
import { opensWithSpreadGrid } from './inputs/frequencies.ts';
import type { BassReadout, SeatBass } from './types.ts';

/** Unit responses from every subwoofer to every ear (see inputs: sourceTriples, earTriples) at the same frequencies. */
export interface UnitSet {
  readonly frequenciesHz: Float64Array;
  readonly nominal: UnitResponses;
  /** The same with less and with more damping; null while the background computes them. */
  readonly low: UnitResponses | null;
  readonly high: UnitResponses | null;
}

const driven = (units: UnitResponses, drives: readonly Drive[], frequenciesHz: Float64Array): Float64Array => {
  if (units.sources !== drives.length || units.frequencies !== frequenciesHz.length)
    throw new RangeError('the responses are of other subwoofers or frequencies');
  return levelsDb(superpose(units, drives, frequenciesHz));
};

const extremes = (solves: readonly Float64Array[], pick: (...values: number[]) => number): Float64Array =>
  solves[0].map((_, index) => pick(...solves.map((solve) => solve[index])));

/** The figures of the fixed grid: from responses there, else from the first frequencies of the levels at hand. */
const gridSpread = (
  levels: Float64Array,
  frequencies: number,
  seats: number,
  grid: Float64Array | null,
): Spread | null => {
  const length = METRIC_FREQUENCIES_HZ.length;
  if (grid) return spreadOf(grid, seats, length);
  const opening = new Float64Array(seats * length);
  for (let seat = 0; seat < seats; seat += 1)
    opening.set(levels.subarray(seat * frequencies, seat * frequencies + length), seat * length);
  return spreadOf(opening, seats, length);
};

/**
 * Bass at every seat from unit responses and the document's drives. `lowDb` and `highDb` are the least and the greatest of
 * the three solves. The spread figures are always those of the fixed grid (20 to 80 Hz, 49 points): `grid` holds the nominal
 * responses there and may be null when the frequencies open with that grid, as the default ones do. Without subwoofers
 * every level is -300 dB, which stands for silence, and there is no spread.
 */
export const bassReadout = (project: Project, units: UnitSet, grid: UnitResponses | null = null): BassReadout => {
  const { frequenciesHz, nominal, low, high } = units;
  if (!grid && !opensWithSpreadGrid(frequenciesHz)) throw new RangeError('no responses on the grid of the spread');
  const drives = drivesOf(project);
  const count = frequenciesHz.length;
  const levels = driven(nominal, drives, frequenciesHz);
  const solves = low && high && [levels, driven(low, drives, frequenciesHz), driven(high, drives, frequenciesHz)];
  const least = solves && extremes(solves, Math.min);
  const greatest = solves && extremes(solves, Math.max);
  const poses = seatPoses(project);
  const seats = poses.map(({ seat }, index): SeatBass => {
    const [from, to] = [index * count, (index + 1) * count];
    return {
      id: seat.id,
      levelDb: levels.slice(from, to),
      lowDb: least?.slice(from, to) ?? null,
      highDb: greatest?.slice(from, to) ?? null,
    };
  });
  const sounding = drives.length > 0;
  const spread = sounding ? spreadOf(levels, poses.length, count) : null;
  const figures = sounding
    ? gridSpread(levels, count, poses.length, grid && driven(grid, drives, METRIC_FREQUENCIES_HZ))
    : null;
  return {
    frequenciesHz,
    seats,
    spreadDb: spread?.spreadDb ?? null,
    meanSpreadDb: figures?.meanSpreadDb ?? null,
    meanVarianceDb2: figures?.meanVarianceDb2 ?? null,
    maxMinDb: figures?.maxMinDb ?? null,
  };
};
