import { aboveFreeFieldRmsDb, CREST_DB } from '../../engines/bass/output.ts';
import type { Project, Subwoofer } from '../../model/project.ts';
import { facesOf, treatmentId } from '../inputs/boundary.ts';
import { asStated } from '../inputs/stated-times.ts';
import { clampedAbsorption, defaultFinish } from '../inputs/treatment.ts';
import type { BassReadout } from '../types.ts';
import { type Context, seatRef } from './context.ts';
import type { Measurement } from './rule.ts';

type BassRule = 'bass-spread' | 'bass-level-reached' | 'bass-sealed' | 'bass-absorption';

/** Peak level of full scale in the low-frequency channel at cinema reference, its 10 dB of gain included. */
export const REFERENCE_BASS_PEAK_DB = 115;

type MaxOutput = NonNullable<Subwoofer['maxOutput']>;

/** A subwoofer's greatest output in one band as peak free-field pressure at 1 m; null where the file does not say. */
export const peakFreeFieldDb = (output: MaxOutput, band: string): number | null => {
  const stated = output.bandsDb[band];
  return stated === undefined ? null : stated - aboveFreeFieldRmsDb(output) + CREST_DB;
};

/** Mean level (of energy) over a third of an octave about `hz`; null where the readout has nothing there. */
const bandLevelDb = (bass: BassReadout, seatIndex: number, hz: number): number | null => {
  const { levelDb } = bass.seats[seatIndex];
  let energy = 0;
  let count = 0;
  bass.frequenciesHz.forEach((f, index) => {
    if (Math.abs(Math.log2(f / hz)) > 1 / 6) return;
    energy += 10 ** (levelDb[index] / 10);
    count += 1;
  });
  return count === 0 ? null : 10 * Math.log10(energy / count);
};

/**
 * The programme level at which the first subwoofer of the set reaches its limit in a band: all get the same programme
 * through their own gains, so the least of (greatest output less gain) over them holds for the set.
 */
const commonLimitDb = (subwoofers: readonly Subwoofer[], band: string): number | null => {
  let least = Number.POSITIVE_INFINITY;
  for (const { maxOutput, gainDb } of subwoofers) {
    const peak = maxOutput ? peakFreeFieldDb(maxOutput, band) : null;
    if (peak === null) return null;
    least = Math.min(least, peak - gainDb);
  }
  return Number.isFinite(least) ? least : null;
};

/** Peaks of all subwoofers together at the reference seat against those asked for, one finding a band. */
const reached = (context: Context, bass: BassReadout): Measurement<BassRule>[] => {
  const { project, reference } = context;
  const seatIndex = bass.seats.findIndex(({ id }) => id === reference.id);
  const bands = Object.keys(project.subwoofers[0]?.maxOutput?.bandsDb ?? {}).sort((a, b) => Number(a) - Number(b));
  const askedDb = REFERENCE_BASS_PEAK_DB + project.listening.reReferenceDb;
  const causes = project.subwoofers.map(({ id }) => ({ kind: 'subwoofer' as const, id }));
  return bands.flatMap((band) => {
    const limitDb = commonLimitDb(project.subwoofers, band);
    const roomDb = seatIndex < 0 ? null : bandLevelDb(bass, seatIndex, Number(band));
    if (limitDb === null || roomDb === null || Number(band) > project.bass.lfeLimitHz) return [];
    const maxDb = limitDb + roomDb;
    return [
      {
        rule: 'bass-level-reached' as const,
        seat: reference.id,
        item: null,
        part: `${band} Hz`,
        value: maxDb - askedDb,
        causes: [...causes, seatRef(reference.id)],
        facts: { bandHz: Number(band), maxDb, askedDb, referenceDb: REFERENCE_BASS_PEAK_DB },
      },
    ];
  });
};

const spread = (context: Context, { meanSpreadDb }: BassReadout): Measurement<BassRule>[] => {
  if (meanSpreadDb === null) return [];
  const causes = context.project.subwoofers.map(({ id }) => ({ kind: 'subwoofer' as const, id }));
  return [{ rule: 'bass-spread', seat: null, item: null, value: meanSpreadDb, causes }];
};

/** The surfaces softer than a plain wall can be, each once however many walls are made like it. */
const softSurfaces = (given: Project): { readonly id: string; readonly absorption: number }[] => {
  const project = asStated(given);
  const found = new Map<string, number>();
  for (const face of facesOf(project)) {
    const absorption = clampedAbsorption(face.treatment, defaultFinish(face.surface));
    if (absorption !== null) found.set(treatmentId(project, face), absorption);
  }
  return [...found].map(([id, absorption]) => ({ id, absorption }));
};

/** Where the room as described is not the room that is computed: open to another, or softer than a plain wall can be. */
const limits = ({ project }: Context): Measurement<BassRule>[] => [
  ...project.room.openings
    .filter(({ kind, leaf }) => kind === 'opening' || leaf !== 'closed')
    .map(({ id }) => ({
      rule: 'bass-sealed' as const,
      seat: null,
      item: id,
      value: null,
      causes: [{ kind: 'opening' as const, id }],
    })),
  ...softSurfaces(project).map(({ id, absorption }) => ({
    rule: 'bass-absorption' as const,
    seat: null,
    item: id,
    value: absorption,
    causes: [{ kind: 'surface' as const, id }],
  })),
];

/** Evenness and reach of the bass (neither while it is being computed), and where its model ends. */
export const measureBass = (context: Context): Measurement<BassRule>[] => [
  ...(context.bass ? [...spread(context, context.bass), ...reached(context, context.bass)] : []),
  ...limits(context),
];
