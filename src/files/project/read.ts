import { checkProject } from '../../model/checks/project.ts';
import { migrate, type RawProject } from '../../model/migrations.ts';
import type { Notice } from '../../model/notice.ts';
import type { Project } from '../../model/project.ts';
import type { Refusal } from '../../model/refusal.ts';
import { refusalsOf } from '../../model/schema/issues.ts';
import { PROJECT_FORMAT, PROJECT_VERSION, projectSchema } from '../../model/schema/project.ts';
import { type Fault, faultsOf } from '../../words/faults.ts';
import { jsonTrouble, lineAndColumn } from './json-text.ts';
import { type Survey, surveyValue } from './survey.ts';
import { decodeText } from './text.ts';
import { forbiddenValues } from './values.ts';

export type ReadResult =
  | { readonly ok: true; readonly project: Project; readonly notices: readonly Notice[] }
  | { readonly ok: false; readonly faults: readonly Fault[] };

const faulty = (...faults: Fault[]): ReadResult => ({ ok: false, faults });
const refused = (refusals: readonly Refusal[]): ReadResult => ({ ok: false, faults: faultsOf(refusals) });

/** A file's bytes as a project with every default filled in, or all that is wrong with it. Nothing is repaired. */
export const readProject = (bytes: Uint8Array): ReadResult => {
  const decoded = decodeText(bytes);
  return decoded.ok ? readProjectText(decoded.text) : faulty(decoded.fault);
};

/** The same from text already decoded. */
export const readProjectText = (text: string): ReadResult => {
  if (text.trim() === '') return faulty({ path: 'file', holds: 'nothing', allowed: 'a project file' });
  const trouble = jsonTrouble(text);
  if (trouble) {
    const { line, column } = lineAndColumn(text, trouble.at);
    return faulty({ path: `line ${line}, column ${column}`, holds: trouble.holds, allowed: trouble.allowed });
  }
  return readProjectValue(JSON.parse(text));
};

const words = (text: string) => ({ kind: 'words', words: text }) as const;

/** Which format and version a value says it is, when that is not one this program can read. */
const identity = (raw: RawProject): Refusal | undefined => {
  const { format, version } = raw;
  if (format !== PROJECT_FORMAT) return { field: 'format', holds: format, allowed: words(`"${PROJECT_FORMAT}"`) };
  const known = PROJECT_VERSION === 1 ? '1' : `1 to ${PROJECT_VERSION}`;
  const newer = typeof version === 'number' && version > PROJECT_VERSION;
  if (newer)
    return { field: 'version', holds: version, allowed: words(`${known} (this file is from a newer Parterre)`) };
  const good = typeof version === 'number' && Number.isInteger(version) && version >= 1;
  return good ? undefined : { field: 'version', holds: version, allowed: words(known) };
};

const LISTED_NOTICES = 10;

const noticesOf = (project: Project, { unknown, unknownCount }: Survey): Notice[] => {
  const notices: Notice[] = [];
  const paths = unknown.slice(0, LISTED_NOTICES);
  if (unknownCount > 0) notices.push({ kind: 'unknown-keys', paths, more: unknownCount - paths.length });
  const { plan, surfaces } = project.room;
  if (plan.shape === 'rectangle' && Object.keys(surfaces.walls ?? {}).length > 0)
    notices.push({ kind: 'walls-without-polygon' });
  return notices;
};

/** The same from a parsed value that came from JSON text nested at most 32 deep. */
const readProjectValue = (value: unknown): ReadResult => {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    return refused([{ field: 'file', holds: value, allowed: words('a project, an object { ... }') }]);
  const forbidden = forbiddenValues(value);
  if (forbidden.length > 0) return refused(forbidden);
  const stranger = identity(value as RawProject);
  if (stranger) return refused([stranger]);
  const raw = migrate(value as RawProject);
  const survey = surveyValue(projectSchema, raw);
  if (survey.refusals.length > 0) return refused(survey.refusals);
  const parsed = projectSchema.safeParse(raw);
  if (!parsed.success) return refused(refusalsOf(projectSchema, raw, parsed.error.issues));
  const refusals = checkProject(parsed.data);
  return refusals.length > 0
    ? refused(refusals)
    : { ok: true, project: parsed.data, notices: noticesOf(parsed.data, survey) };
};
