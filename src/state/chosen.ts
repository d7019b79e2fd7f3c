import { isLocked, keysOf } from '../model/items.ts';
import type { ItemRef, Project } from '../model/project.ts';
import type { SessionState } from './session.ts';

export const sameItem = (a: ItemRef | null, b: ItemRef | null): boolean =>
  a === b || (a !== null && b !== null && a.kind === b.kind && a.id === b.id);

/** Everything that is chosen and in the document, the leading thing first. */
export const chosenItems = (
  project: Project,
  { selection, alsoSelected }: Pick<SessionState, 'selection' | 'alsoSelected'>,
): readonly ItemRef[] =>
  selection
    ? [selection, ...alsoSelected.filter((ref) => !sameItem(ref, selection))].filter((ref) => keysOf(project, ref))
    : [];

type Chosen = Pick<SessionState, 'selection' | 'alsoSelected'>;

export const chosenOnly = (refs: readonly ItemRef[]): Chosen => ({
  selection: refs[0] ?? null,
  alsoSelected: refs.slice(1),
});

/** With one thing more, or, if it was among them, one less. What is drawn on surfaces of the room itself stays alone. */
export const toggled = ({ selection, alsoSelected }: Chosen, ref: ItemRef): Chosen => {
  const all = selection ? [selection, ...alsoSelected] : [];
  if (all.some((one) => sameItem(one, ref))) return chosenOnly(all.filter((one) => !sameItem(one, ref)));
  return chosenOnly([...all.filter(({ kind }) => kind !== 'surface'), ref]);
};

export const anyLocked = (project: Project, refs: readonly ItemRef[]): boolean =>
  refs.some((ref) => isLocked(project, ref));
