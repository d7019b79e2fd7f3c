import twoRow from '../model/presets/two-row.json';
import type { Project } from '../model/project.ts';
import { projectSchema } from '../model/schema/project.ts';
import { type Recovered, recoverRoom } from '../storage/autosave.ts';
import { recall } from '../storage/flags.ts';
import type { Shelf } from '../storage/shelf.ts';

export interface FirstRoom {
  readonly id: string;
  readonly project: Project;
  readonly savedAtMs: number | null;
  /** What was kept is there but cannot be read, so that the demo is shown instead. */
  readonly unreadableId: string | null;
}

const demo = (newId: () => string, unreadableId: string | null): FirstRoom => ({
  id: newId(),
  project: projectSchema.parse(twoRow),
  savedAtMs: null,
  unreadableId,
});

/** The room the page begins with: this tab's own after a reload, else the one kept last, else the demo. */
export const firstRoom = async (shelf: Shelf, newId: () => string): Promise<FirstRoom> => {
  const id = recall('room') ?? (await shelf.readLast().catch(() => undefined));
  const found: Recovered = await recoverRoom(shelf, id);
  if (id === undefined || found.status === 'none') return demo(newId, null);
  if (found.status === 'unreadable') return demo(newId, id);
  return { id, project: found.project, savedAtMs: found.savedAtMs, unreadableId: null };
};
