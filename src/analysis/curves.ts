import { dividedFinely, smoothed } from '../engines/bass/curve.ts';
import type { UnitResponses } from '../engines/bass/room-field.ts';
import { type Drive, levelsDb, type SummedField, superpose } from '../engines/bass/superpose.ts';
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

/** Levels on the curves' frequencies of responses there, or on the report's: then the complex sums are interpolated. */
const levelsOn = (units: UnitResponses, drives: readonly Drive[], frequenciesHz: Float64Array): Float64Array => {
  if (units.frequencies === frequenciesHz.length) return levelsDb(superpose(units, drives, frequenciesHz));
  const coarse = defaultFrequenciesHz();
  if (units.frequencies !== coarse.length) throw new RangeError('the responses are of other frequencies');
  const { receivers, frequencies, re, im } = superpose(units, drives, coarse);
  const fine: SummedField = {
    receivers,
    frequencies: frequenciesHz.length,
    re: new Float64Array(receivers * frequenciesHz.length),
    im: new Float64Array(receivers * frequenciesHz.length),
  };
  for (let seat = 0; seat < receivers; seat += 1) {
    const [from, to] = [seat * frequencies, (seat + 1) * frequencies];
    fine.re.set(dividedFinely(re.subarray(from, to), DIVIDED), seat * frequenciesHz.length);
    fine.im.set(dividedFinely(im.subarray(from, to), DIVIDED), seat * frequenciesHz.length);
  }
  return levelsDb(fine);
};

/** Unit responses of one room by damping, on the report's frequencies or (fine) on the curves'. */
export interface CurveUnits {
  readonly nominal: UnitResponses;
  readonly low: UnitResponses | null;
  readonly high: UnitResponses | null;
  readonly fine: UnitResponses | null;
}

/**
 * Every seat's level as a curve to be drawn. On the report's frequencies it is the report's; between them it is worked out
 * (fine) or follows the complex field, so that a narrow dip is as deep as it is.
 */
export const bassCurves = (project: Project, { nominal, low, high, fine }: CurveUnits): BassCurves => {
  const frequenciesHz = curveFrequenciesHz();
  const drives = drivesOf(project);
  const count = frequenciesHz.length;
  const levels = levelsOn(fine ?? nominal, drives, frequenciesHz);
  const bounds = low && high && [levelsOn(low, drives, frequenciesHz), levelsOn(high, drives, frequenciesHz)];
  const bound = (pick: (...values: number[]) => number) =>
    bounds && levels.map((level, i) => pick(level, bounds[0][i], bounds[1][i]));
  const [least, greatest] = [bound(Math.min), bound(Math.max)];
  const seats = seatPoses(project).map(({ seat }, index) => {
    const [from, to] = [index * count, (index + 1) * count];
    return {
      id: seat.id,
      levelDb: levels.slice(from, to),
      lowDb: least?.slice(from, to) ?? null,
      highDb: greatest?.slice(from, to) ?? null,
    };
  });
  return { frequenciesHz, seats, fine: fine !== null };
};

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
