import { defaultFrequenciesHz } from '../analysis/inputs.ts';
import { REFERENCE_BASS_PEAK_DB } from '../analysis/rules/measure-bass.ts';
import { type EqualiserFit, equaliserDb, fitEqualiser } from '../engines/bass/equaliser-fit.ts';
import type { PeakFilter } from '../engines/bass/filters.ts';
import { chainWeights, type DrivenSubwoofer, greatestPeaks } from '../engines/bass/headroom.ts';
import { spreadOf } from '../engines/bass/metrics.ts';
import { freeFieldRms } from '../engines/bass/output.ts';
import type { UnitResponses } from '../engines/bass/room-field.ts';
import { type Cure, fillDip, lossDb, throughCrossover, togetherDb } from '../engines/bass/through-crossover.ts';
import type { Vec3 } from '../math/vec3.ts';
import type { Project } from '../model/project.ts';
import { seatPoses } from '../model/seating.ts';
import { type RoomResponses, type StudyProgress, warmUp } from './responses.ts';
import { joined } from './subwoofers/arrangements.ts';

/** The chain's frequencies: 20 to 196 Hz in steps of 1/24 octave. */
export const CHAIN_FREQUENCIES_HZ = defaultFrequenciesHz();

/** Third-octave bands that headroom is stated in (IEC 61260's nominal centres). */
export const HEADROOM_BANDS_HZ = [20, 25, 31.5, 40, 50, 63, 80, 100, 125] as const;

export interface Dip {
  readonly hz: number;
  readonly db: number;
}

export interface SeatThrough {
  readonly id: string;
  /** Centre and subwoofers together, before and after the cure, over CHAIN_FREQUENCIES_HZ. */
  readonly beforeDb: Float64Array;
  readonly afterDb: Float64Array;
  /** Mean loss within half an octave of the crossover, dB (0 is none), before and after. */
  readonly lossDb: number;
  readonly lossAfterDb: number;
  /** Deepest hole there against the mean of 40 to 160 Hz, before and after. A null of the room stays what it is. */
  readonly dip: Dip;
  readonly dipAfter: Dip;
}

export interface CrossoverReadout {
  readonly loudspeaker: string;
  readonly crossoverHz: number;
  /** What the subwoofers were turned up by to match the centre, dB. */
  readonly trimDb: number;
  readonly seats: readonly SeatThrough[];
  readonly cure: Cure;
}

export interface HeadroomReadout {
  /** Peak level asked for, dB. */
  readonly askedDb: number;
  readonly bandsHz: readonly number[];
  /** Greatest peak less the one asked for, dB, by seat and band. */
  readonly seats: readonly { readonly id: string; readonly marginDb: readonly number[] }[];
}

export interface EqualiserReadout {
  readonly fit: EqualiserFit;
  /** The seats' mean level over `frequenciesHz`, plain, with the document's filters, and with those fitted. */
  readonly frequenciesHz: Float64Array;
  readonly plainDb: Float64Array;
  readonly storedDb: Float64Array;
  readonly fittedDb: Float64Array;
}

export interface ChainReadout {
  readonly revision: number;
  /** Null without a centre loudspeaker or without subwoofers. */
  readonly crossover: CrossoverReadout | null;
  /** Null where a subwoofer's greatest output is not stated. */
  readonly headroom: HeadroomReadout | null;
  readonly equaliser: EqualiserReadout | null;
}

const FILTERS = 6;
/** A common delay beyond a period and a half at 80 Hz tells the ear that the bass is late. Common practice, no source. */
const MOST_SHIFT_MS = 15;

/** The document's subwoofers as the engine drives them. */
export const drivenOf = ({ subwoofers }: Project): DrivenSubwoofer[] =>
  subwoofers.map(({ gainDb, delayMs, inverted, highPassHz, maxOutput }) => ({
    gainDb,
    delayMs,
    inverted,
    highPassHz,
    output: maxOutput ? freeFieldRms(maxOutput) : null,
  }));

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

const crossoverOf = (
  project: Project,
  loudspeaker: string,
  centre: UnitResponses,
  unit: UnitResponses,
): CrossoverReadout => {
  const grid = CHAIN_FREQUENCIES_HZ;
  const { crossoverHz } = project.bass;
  const split = throughCrossover(centre, unit, drivenOf(project), crossoverHz, grid);
  const leastMs = -Math.min(...project.subwoofers.map(({ delayMs }) => delayMs));
  const cure = fillDip(split, grid, crossoverHz, leastMs, MOST_SHIFT_MS);
  const before = togetherDb(split, grid, { delayMs: 0, inverted: false });
  const after = togetherDb(split, grid, cure);
  const count = grid.length;
  const near = Array.from(grid.keys()).filter((f) => Math.abs(Math.log2(grid[f] / crossoverHz)) <= 0.5);
  const wide = Array.from(grid.keys()).filter((f) => grid[f] >= 40 && grid[f] <= 160);
  const lost = lossDb(split, grid, { delayMs: 0, inverted: false });
  const lostAfter = lossDb(split, grid, cure);
  const dipOf = (levels: Float64Array): Dip => {
    const at = near.reduce((deepest, f) => (levels[f] < levels[deepest] ? f : deepest), near[0]);
    return { hz: grid[at], db: levels[at] - mean(wide.map((f) => levels[f])) };
  };
  const seats = seatPoses(project).map(({ seat }, index): SeatThrough => {
    const from = index * count;
    const beforeDb = before.slice(from, from + count);
    const afterDb = after.slice(from, from + count);
    return {
      id: seat.id,
      beforeDb,
      afterDb,
      lossDb: mean(near.map((f) => lost[from + f])),
      lossAfterDb: mean(near.map((f) => lostAfter[from + f])),
      dip: dipOf(beforeDb),
      dipAfter: dipOf(afterDb),
    };
  });
  return { loudspeaker, crossoverHz, trimDb: split.trimDb, seats, cure };
};

/** Margins over the level asked for in third-octave bands (mean of energy), by seat; null where output is not stated. */
export const headroomOf = (project: Project, unit: UnitResponses): HeadroomReadout | null => {
  const driven = drivenOf(project);
  if (driven.length === 0 || driven.some(({ output }) => output === null)) return null;
  const grid = CHAIN_FREQUENCIES_HZ;
  const peaks = greatestPeaks(unit, driven, grid);
  const askedDb = REFERENCE_BASS_PEAK_DB + project.listening.reReferenceDb;
  const bandMean = (seat: number, hz: number): number => {
    const energies = Array.from(grid.keys())
      .filter((f) => Math.abs(Math.log2(grid[f] / hz)) <= 1 / 6)
      .map((f) => 10 ** (peaks[seat * grid.length + f] / 10));
    return 10 * Math.log10(mean(energies));
  };
  const bandsHz = HEADROOM_BANDS_HZ.filter(
    (hz) => hz <= project.bass.lfeLimitHz * 1.05 && !Number.isNaN(bandMean(0, hz)),
  );
  if (bandsHz.length === 0) return null;
  return {
    askedDb,
    bandsHz,
    seats: seatPoses(project).map(({ seat }, index) => ({
      id: seat.id,
      marginDb: bandsHz.map((hz) => bandMean(index, hz) - askedDb),
    })),
  };
};

const equaliserOf = (project: Project, unit: UnitResponses, stored: readonly PeakFilter[]): EqualiserReadout => {
  const driven = drivenOf(project);
  const highest = Math.max(...driven.map(({ highPassHz }) => highPassHz));
  const picked = Array.from(CHAIN_FREQUENCIES_HZ.keys()).filter(
    (f) => CHAIN_FREQUENCIES_HZ[f] >= highest * 0.999 && CHAIN_FREQUENCIES_HZ[f] <= project.bass.lfeLimitHz * 1.001,
  );
  const frequenciesHz = Float64Array.from(picked, (f) => CHAIN_FREQUENCIES_HZ[f]);
  const { receivers, frequencies } = unit;
  const levels = new Float64Array(receivers * picked.length);
  const weights = new Float64Array(2 * driven.length);
  for (const [to, f] of picked.entries()) {
    chainWeights(driven, CHAIN_FREQUENCIES_HZ[f], weights);
    for (let r = 0; r < receivers; r += 1) {
      let re = 0;
      let im = 0;
      for (let s = 0; s < driven.length; s += 1) {
        const at = (s * receivers + r) * frequencies + f;
        re += unit.re[at] * weights[2 * s] - unit.im[at] * weights[2 * s + 1];
        im += unit.re[at] * weights[2 * s + 1] + unit.im[at] * weights[2 * s];
      }
      levels[r * picked.length + to] = 10 * Math.log10(Math.max(1e-30, re * re + im * im));
    }
  }
  const plainDb = frequenciesHz.map((_, f) =>
    mean(Array.from({ length: receivers }, (_seat, r) => levels[r * picked.length + f])),
  );
  const spreadDb = spreadOf(levels, receivers, picked.length)?.spreadDb ?? new Float64Array(picked.length);
  const fit = fitEqualiser({ frequenciesHz, meanDb: plainDb, spreadDb, most: FILTERS });
  const withFilters = (filters: readonly PeakFilter[]) =>
    plainDb.map((db, f) => db + equaliserDb(filters, frequenciesHz[f]));
  return { fit, frequenciesHz, plainDb, storedDb: withFilters(stored), fittedDb: withFilters(fit.filters) };
};

/** The centre loudspeaker by its label; undefined where there is none. */
export const centreOf = ({ loudspeakers }: Project) => loudspeakers.find(({ channel }) => channel === 'M+000');

/**
 * Everything after the room: centre and subwoofers through the crossover at every seat with the cure of its dip, headroom by
 * seat and band, and an equaliser fitted to the seats' mean. `stored` are the document's own filters.
 */
export function* studyChain(
  project: Project,
  revision: number,
  stored: readonly PeakFilter[],
  responses: RoomResponses,
): Generator<StudyProgress, ChainReadout> {
  if (project.subwoofers.length === 0) return { revision, crossover: null, headroom: null, equaliser: null };
  yield* warmUp(responses, CHAIN_FREQUENCIES_HZ, ['nominal'], 0, 0.5);
  const columns: UnitResponses[] = [];
  for (const { atM } of project.subwoofers) {
    columns.push(responses([atM as Vec3], CHAIN_FREQUENCIES_HZ));
    yield { share: 0.5 + (0.3 * columns.length) / project.subwoofers.length, doing: 'places' };
  }
  const unit = joined(columns);
  const centre = centreOf(project);
  const centreUnit = centre && responses([centre.atM as Vec3], CHAIN_FREQUENCIES_HZ);
  yield { share: 0.9, doing: 'figures' };
  return {
    revision,
    crossover: centre && centreUnit ? crossoverOf(project, centre.id, centreUnit, unit) : null,
    headroom: headroomOf(project, unit),
    equaliser: equaliserOf(project, unit, stored),
  };
}
