import { roundedDeep } from './report-rounding.ts';
import { type SourceId, sources } from './rules/sources.ts';
import type { BassReadout, Finding, GeometryReadout, ModeReadout } from './types.ts';

export const REPORT_FORMAT = 'parterre/report';
export const REPORT_VERSION = 1;
export const ENGINE_VERSION = '0.1.0';

export interface ReportParts {
  /** SHA-256 of the file's bytes, hexadecimal. */
  readonly inputSha256: string;
  readonly geometry: GeometryReadout;
  readonly modes: readonly ModeReadout[];
  readonly bass: BassReadout;
  /** What the bass leaves out in this room, in sentences. */
  readonly bassNotes?: readonly string[];
  readonly findings: readonly Finding[];
}

const sourceWords = (id: string): string => {
  const { text, standing } = sources[id as SourceId];
  return `${text} (${standing})`;
};

const seatsOf = ({ seats }: GeometryReadout, bass: BassReadout) =>
  seats.map((seat, index) => {
    const { levelDb, lowDb, highDb } = bass.seats[index];
    return { ...seat, bass: { levelDb, lowDb, highDb } };
  });

const bassOf = ({ frequenciesHz, spreadDb, meanSpreadDb, meanVarianceDb2, maxMinDb }: BassReadout) => ({
  frequenciesHz,
  spreadDb,
  meanSpreadDb,
  meanVarianceDb2,
  maxMinDb,
});

const findingOf = ({ causes: _causes, facts: _facts, source, ...finding }: Finding) => ({
  ...finding,
  source: sourceWords(source),
});

/**
 * The report, version 1, as plain JSON: design/contract.md, "Report". Numbers carry nine decimals (report-rounding). Null
 * stands for what has no finite value: the times of a room in which nothing absorbs, the spread over one seat.
 */
export const makeReport = ({ inputSha256, geometry, modes, bass, bassNotes = [], findings }: ReportParts) => ({
  format: REPORT_FORMAT,
  version: REPORT_VERSION,
  engine: { version: ENGINE_VERSION },
  inputSha256,
  ...roundedDeep({
    room: { ...geometry.room, modes },
    picture: geometry.picture,
    seats: seatsOf(geometry, bass),
    bass: { ...bassOf(bass), notes: bassNotes },
    findings: findings.map(findingOf),
  }),
});

export type Report = ReturnType<typeof makeReport>;
