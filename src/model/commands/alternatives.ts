import {
  type Alternative,
  type AlternativePart,
  alternativeEntries,
  alternativesOf,
  variantOf,
} from '../alternatives.ts';
import { isLocked } from '../items.ts';
import { valueAt } from '../paths.ts';
import type { Project, Subwoofer } from '../project.ts';
import { alternative, equaliser } from '../schema/choices.ts';
import { accept, type Edit, refuse, refuseWords, setValue, withValue } from './edit.ts';
import { lockedEdit } from './move.ts';

export const MOST_ALTERNATIVES = 12;

const noSuch = (id: string): Edit => refuseWords('alternatives', id, 'the id of a stored alternative');

const sameJson = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** A locked subwoofer has to be in the new list as it is. */
const heldBack = (project: Project, next: readonly Subwoofer[]): Edit | null => {
  const held = project.subwoofers.find(
    (one) => isLocked(project, { kind: 'subwoofer', id: one.id }) && !next.some((other) => sameJson(one, other)),
  );
  return held ? lockedEdit(project, { kind: 'subwoofer', id: held.id }) : null;
};

/** Puts other subwoofers in place of those there are: one edit, so one undo. Locked ones have to stay as they are. */
export const setSubwoofers = (project: Project, subwoofers: readonly Subwoofer[]): Edit => {
  if (sameJson(project.subwoofers, subwoofers)) return { ok: true, project };
  const held = heldBack(project, subwoofers);
  return held ?? setValue(project, ['subwoofers'], [...subwoofers]);
};

const freeAlternativeId = (project: Project): string => {
  const used = new Set((alternativeEntries(project) ?? []).map((entry) => valueAt(entry, ['id'])));
  let number = 1;
  while (used.has(`alternative-${number}`)) number += 1;
  return `alternative-${number}`;
};

/** The parts of a document by their keys, without those it does not have. */
const partsOf = (project: Project, keys: readonly AlternativePart[]): Pick<Alternative, 'parts'> => {
  const parts = Object.fromEntries(keys.filter((key) => project[key] !== undefined).map((key) => [key, project[key]]));
  return keys.length === 0 ? {} : { parts };
};

export interface ToStore {
  readonly name: string;
  /** The document's own when left out. */
  readonly subwoofers?: readonly Subwoofer[];
  /** Which other parts of the document go with it. */
  readonly keep?: readonly AlternativePart[];
}

/** Stores an arrangement beside the document under a name. */
export const storeAlternative = (project: Project, { name, subwoofers, keep = [] }: ToStore): Edit => {
  const entries = alternativeEntries(project);
  if (!entries)
    return refuseWords('alternatives', project.alternatives, 'a list; this file keeps something else there');
  if (entries.length >= MOST_ALTERNATIVES) {
    const allowed = { kind: 'count', of: 'alternatives', min: 0, max: MOST_ALTERNATIVES } as const;
    return refuse({ field: 'alternatives', holds: entries.length + 1, allowed });
  }
  const id = freeAlternativeId(project);
  const entry = { id, name: name.trim(), subwoofers: subwoofers ?? project.subwoofers, ...partsOf(project, keep) };
  const parsed = alternative.safeParse(entry);
  if (!parsed.success) return refuseWords(`alternatives[${entries.length}]`, name, 'a name of 1 to 200 characters');
  return accept({ ...project, alternatives: [...entries, parsed.data] });
};

/** The place in the file's list of an alternative that is understood; -1 where there is none. */
const placeOf = (project: Project, id: string): number =>
  alternativesOf(project).some((one) => one.id === id)
    ? (alternativeEntries(project) ?? []).findIndex(
        (entry) => valueAt(entry, ['id']) === id && alternative.safeParse(entry).success,
      )
    : -1;

/** Takes a stored alternative away; the key goes with the last one. */
export const removeAlternative = (project: Project, id: string): Edit => {
  const at = placeOf(project, id);
  if (at < 0) return noSuch(id);
  const left = (alternativeEntries(project) ?? []).filter((_, index) => index !== at);
  return accept(withValue(project, ['alternatives'], left.length > 0 ? left : undefined) as Project);
};

/** Gives a stored alternative another name. */
export const renameAlternative = (project: Project, id: string, name: string): Edit => {
  const at = placeOf(project, id);
  if (at < 0) return noSuch(id);
  const wanted = name.trim();
  if (wanted.length < 1 || wanted.length > 200)
    return refuseWords(`alternatives[${at}].name`, name, 'a name of 1 to 200 characters');
  return accept(withValue(project, ['alternatives', at, 'name'], wanted) as Project);
};

/**
 * Puts a stored alternative in the document's place and stores what the document had in its stead, under `presentName`:
 * nothing is lost, and doing it again brings all back. Refused where it does not fit the room as it is now.
 */
export const swapAlternative = (project: Project, id: string, presentName: string): Edit => {
  const at = placeOf(project, id);
  const stored = alternativesOf(project).find((one) => one.id === id);
  if (at < 0 || !stored) return noSuch(id);
  const variant = variantOf(project, stored);
  if (!variant) return refuseWords(`alternatives[${at}]`, stored.name, 'one that fits the room as it is now');
  const held = heldBack(project, variant.subwoofers);
  if (held) return held;
  const keys = Object.keys(stored.parts ?? {}) as AlternativePart[];
  const { parts: _old, ...others } = stored;
  const outgoing = { ...others, name: presentName, subwoofers: project.subwoofers, ...partsOf(project, keys) };
  return accept(withValue(variant, ['alternatives', at], outgoing) as Project);
};

/** Sets the peak filters common to all subwoofers, keeping what else the file holds there; an empty list takes them away. */
export const setEqualiser = (
  project: Project,
  filters: readonly { readonly frequencyHz: number; readonly gainDb: number; readonly q: number }[],
): Edit => {
  const held = project.equaliser;
  if (held !== undefined && (typeof held !== 'object' || held === null || Array.isArray(held)))
    return refuseWords('equaliser', held, 'filters; this file keeps something else there');
  const parsed = equaliser.safeParse({ ...held, filters });
  if (!parsed.success)
    return refuseWords('equaliser.filters', filters.length, 'up to 24 filters of 5 to 500 Hz, at most +12 dB');
  if (sameJson(held, parsed.data)) return { ok: true, project };
  const alone = filters.length === 0 && Object.keys(parsed.data).length === 1;
  return accept(withValue(project, ['equaliser'], alone ? undefined : parsed.data) as Project);
};
