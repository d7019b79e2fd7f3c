import { isListed, itemsOf, keysOf } from './items.ts';
import type { ItemRef, Project } from './project.ts';

/**
 * A thing after the document changed under it: itself while it is there, the one that stands at its place under a new name
 * when it was renamed, null when it is gone.
 */
export const followed = (before: Project, after: Project, ref: ItemRef): ItemRef | null => {
  if (keysOf(after, ref)) return ref;
  const { kind } = ref;
  if (!(kind === 'seat' || isListed(kind))) return null;
  const was = itemsOf(before, kind);
  const now = itemsOf(after, kind);
  const at = was.findIndex(({ id }) => id === ref.id);
  if (at < 0 || was.length !== now.length) return null;
  const id = now[at].id;
  return was.some((one) => one.id === id) ? null : { kind, id };
};
