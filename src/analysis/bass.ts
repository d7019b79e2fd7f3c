import type { UnitResponses } from '../engines/bass/room-field.ts';
import type { Project } from '../model/project.ts';
import { seatPoses } from '../model/seating.ts';
import { deviationAt, receiverLevels, spreadFigures } from './bass/levels.ts';
import { drivesOf } from './inputs/drives.ts';
import { opensWithSpreadGrid, SPREAD_GRID_LENGTH, spreadGridHz } from './inputs/frequencies.ts';
import type { BassReadout, SeatBass } from './types.ts';

/** Unit responses from every subwoofer to every ear (see inputs: sourceTriples, earTriples) at the same frequencies. */
export interface UnitSet {
  readonly frequenciesHz: Float64Array;
  readonly nominal: UnitResponses;
  /** The same with less and with more damping; null while the background computes them. */
  readonly low: UnitResponses | null;
  readonly high: UnitResponses | null;
}

const bound = (solves: readonly Float64Array[], pick: (a: number, b: number) => number): Float64Array =>
  solves[0].map((first, f) => solves.reduce((best, solve) => pick(best, solve[f]), first));

/**
 * Bass at every seat from unit responses and the document's drives. `lowDb` and `highDb` are the least and the greatest of
 * the three solves. The spread figures are always those of the fixed grid (20 to 80 Hz, 49 points): `grid` holds the nominal
 * responses there and may be null when the frequencies open with that grid, as the default ones do.
 */
export const bassReadout = (project: Project, units: UnitSet, grid: UnitResponses | null = null): BassReadout => {
  const { frequenciesHz, nominal, low, high } = units;
  const drives = drivesOf(project);
  if (nominal.sources !== drives.length) throw new RangeError('the responses are of another set of subwoofers');
  if (!grid && !opensWithSpreadGrid(frequenciesHz)) throw new RangeError('no responses on the grid of the spread');
  const levels = receiverLevels(nominal, drives, frequenciesHz);
  const lowDamping = low && receiverLevels(low, drives, frequenciesHz);
  const highDamping = high && receiverLevels(high, drives, frequenciesHz);
  const seats = seatPoses(project).map(({ seat }, index): SeatBass => {
    const solves = lowDamping && highDamping ? [levels[index], lowDamping[index], highDamping[index]] : null;
    return {
      id: seat.id,
      levelDb: levels[index],
      lowDb: solves && bound(solves, Math.min),
      highDb: solves && bound(solves, Math.max),
    };
  });
  const several = seats.length > 1 && drives.length > 0;
  return {
    frequenciesHz,
    seats,
    spreadDb: several ? frequenciesHz.map((_, f) => deviationAt(levels, f)) : null,
    ...spreadFigures(grid ? receiverLevels(grid, drives, spreadGridHz()) : levels, SPREAD_GRID_LENGTH),
  };
};
