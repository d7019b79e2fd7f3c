import { checkProject } from './checks/project.ts';
import type { Project } from './project.ts';
import { alternative, equaliser, type peakFilter } from './schema/choices.ts';
import { projectSchema } from './schema/project.ts';
import type { z } from './schema/values.ts';

export type Alternative = z.output<typeof alternative>;
export type PeakFilterEntry = z.output<typeof peakFilter>;

/** Parts of a document that an alternative may hold besides its subwoofers. */
export const ALTERNATIVE_PARTS = [
  'room',
  'picture',
  'people',
  'rows',
  'referenceSeat',
  'loudspeakers',
  'bass',
  'listening',
  'equaliser',
] as const;
export type AlternativePart = (typeof ALTERNATIVE_PARTS)[number];

/** Whatever the file holds under the key, entry by entry; null where it is no list. */
export const alternativeEntries = (project: Project): readonly unknown[] | null => {
  const held = project.alternatives;
  if (held === undefined) return [];
  return Array.isArray(held) ? held : null;
};

/** The stored alternatives this version understands, in the file's order; the rest is carried through unseen. */
export const alternativesOf = (project: Project): Alternative[] => {
  const seen = new Set<string>();
  return (alternativeEntries(project) ?? []).flatMap((entry) => {
    const parsed = alternative.safeParse(entry);
    if (!parsed.success || seen.has(parsed.data.id)) return [];
    seen.add(parsed.data.id);
    return [parsed.data];
  });
};

/** The document as it would be with an alternative in place of what it has; null where that no longer fits the room. */
export const variantOf = (project: Project, { subwoofers, parts = {} }: Alternative): Project | null => {
  const taken = Object.fromEntries(
    ALTERNATIVE_PARTS.filter((key) => Object.hasOwn(parts, key)).map((key) => [key, parts[key]]),
  );
  const parsed = projectSchema.safeParse({ ...project, ...taken, subwoofers });
  return parsed.success && checkProject(parsed.data).length === 0 ? parsed.data : null;
};

/** The peak filters common to all subwoofers; none where the file holds something else. */
export const equaliserOf = (project: Project): readonly PeakFilterEntry[] => {
  const parsed = equaliser.safeParse(project.equaliser);
  return parsed.success ? parsed.data.filters : [];
};
