import { smoothed } from '../engines/bass/curve.ts';
import type { UnitResponses } from '../engines/bass/room-field.ts';
import { levelsDb, superpose } from '../engines/bass/superpose.ts';
import type { Project } from '../model/project.ts';
import { seatPoses } from '../model/seating.ts';
import { drivesOf } from './inputs/drives.ts';
import { defaultFrequenciesHz } from './inputs/frequencies.ts';
import type { BassCurves } from './types.ts';

/** Points of a curve between one of the report's frequencies and the next. */
const DIVIDED = 4;
const FROM_HZ = 20;
const STEPS_PER_OCTAVE = 96;

/** A curve's frequencies: 20 x 2^(i/96) to the report's last; every fourth is one of the report's. */
export const curveFrequenciesHz = (): Float64Array =>
  Float64Array.from(
    { length: (defaultFrequenciesHz().length - 1) * DIVIDED + 1 },
    (_, i) => FROM_HZ * 2 ** (i / STEPS_PER_OCTAVE),
  );

/** Unit responses of one room by damping on the report's frequencies, and (fine) on the curves'. */
export interface CurveUnits {
  readonly nominal: UnitResponses;
  readonly low: UnitResponses | null;
  readonly high: UnitResponses | null;
  readonly fine: UnitResponses | null;
}

/** How far the damping band reaches from the nominal level on the report's frequencies, index seat * frequencies + frequency. */
const reach = (
  levels: Float64Array,
  ends: readonly Float64Array[] | null,
  pick: (...values: number[]) => number,
): Float64Array | null => ends && levels.map((level, i) => pick(level, ...ends.map((end) => end[i])) - level);

/**
 * Every seat's level as a curve to be drawn: on the report's frequencies, or (fine) on four times as many, so that narrow
 * dips are as deep as they are. At the report's frequencies it is the report's; between them the damping band keeps its
 * distance from the curve. (Between coarse points neither level nor complex field can be had by interpolation: a cubic
 * through the field was no nearer to the truth than straight levels, and had dips where there are none.)
 */
export const bassCurves = (project: Project, { nominal, low, high, fine }: CurveUnits): BassCurves => {
  const drives = drivesOf(project);
  const coarseHz = defaultFrequenciesHz();
  const frequenciesHz = fine ? curveFrequenciesHz() : coarseHz;
  const driven = (units: UnitResponses, hz: Float64Array) => levelsDb(superpose(units, drives, hz));
  const coarse = driven(nominal, coarseHz);
  const levels = fine ? driven(fine, frequenciesHz) : coarse;
  const ends = low && high && [driven(low, coarseHz), driven(high, coarseHz)];
  const [down, up] = [reach(coarse, ends, Math.min), reach(coarse, ends, Math.max)];
  const count = frequenciesHz.length;
  const steps = fine ? DIVIDED : 1;
  const seats = seatPoses(project).map(({ seat }, index) => {
    const levelDb = levels.slice(index * count, (index + 1) * count);
    const moved = (by: Float64Array | null) => {
      if (!by) return null;
      const own = by.subarray(index * coarseHz.length, (index + 1) * coarseHz.length);
      return levelDb.map((level, i) => {
        const at = Math.floor(i / steps);
        const next = Math.min(at + 1, own.length - 1);
        return level + own[at] + (i / steps - at) * (own[next] - own[at]);
      });
    };
    return { id: seat.id, levelDb, lowDb: moved(down), highDb: moved(up) };
  });
  return { frequenciesHz, seats, fine: fine !== null };
};

export interface LevelsAtSeats {
  readonly id: string;
  readonly levelDb: Float64Array;
}

/** Levels that come without a damping band, as curves. */
export const bassCurvesOf = (frequenciesHz: Float64Array, seats: readonly LevelsAtSeats[]): BassCurves => ({
  frequenciesHz,
  seats: seats.map(({ id, levelDb }) => ({ id, levelDb, lowDb: null, highDb: null })),
  fine: false,
});

/** The same curves smoothed over 1/n octave by their energy (engines/bass/curve.ts); null leaves them raw. */
export const smoothedCurves = (curves: BassCurves, n: number | null): BassCurves => {
  if (n === null) return curves;
  const smooth = (levels: Float64Array) => smoothed(curves.frequenciesHz, levels, n);
  return {
    ...curves,
    seats: curves.seats.map(({ id, levelDb, lowDb, highDb }) => ({
      id,
      levelDb: smooth(levelDb),
      lowDb: lowDb && smooth(lowDb),
      highDb: highDb && smooth(highDb),
    })),
  };
};
