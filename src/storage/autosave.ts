import { readProjectText } from '../files/project/read.ts';
import { writeProject } from '../files/project/write.ts';
import { planSketch } from '../model/plan-sketch.ts';
import type { Project } from '../model/project.ts';
import type { DocumentStore } from '../state/document.ts';
import type { Shelf } from './shelf.ts';

/** What came of looking for a kept room. */
export type Recovered =
  | { readonly status: 'found'; readonly project: Project; readonly savedAtMs: number }
  | { readonly status: 'none' }
  /** It is there, and stays there, but this version cannot read it. */
  | { readonly status: 'unreadable' };

/** A room kept from last time, read with the care a file gets. A browser that refuses to look has none. */
export const recoverRoom = async (shelf: Shelf, id: string | undefined): Promise<Recovered> => {
  try {
    const kept = id === undefined ? undefined : await shelf.read(id);
    if (!kept) return { status: 'none' };
    const read = readProjectText(kept.text);
    return read.ok ? { status: 'found', project: read.project, savedAtMs: kept.savedAtMs } : { status: 'unreadable' };
  } catch {
    return { status: 'none' };
  }
};

/** Why the browser did not keep a room. */
export type KeepTrouble = 'full' | 'refused';

const troubleOf = (fault: unknown): KeepTrouble =>
  fault instanceof DOMException && fault.name === 'QuotaExceededError' ? 'full' : 'refused';

export interface AutosaveHooks {
  /** The room the document is kept as. */
  roomId(): string;
  clockMs(): number;
  onKept(id: string): void;
  /** Hears once, until a later write succeeds, that the browser did not keep the room. Work goes on. */
  onTrouble(trouble: KeepTrouble): void;
}

export interface Autosave {
  /** Writes what stands now, and resolves when the last write is done. */
  flush(): Promise<void>;
  stop(): void;
}

/** Writes the project at every commit: never in the middle of a gesture, one write at a time, the latest last. */
export const autosave = (document: DocumentStore, shelf: Shelf, hooks: AutosaveHooks): Autosave => {
  let seen = document.getState().revision;
  let again = false;
  let writing: Promise<void> | null = null;
  let told = false;

  const writeOnce = async () => {
    const { project } = document.getState();
    const id = hooks.roomId();
    const savedAtMs = hooks.clockMs();
    try {
      await shelf.write({
        id,
        name: project.name,
        text: writeProject(project),
        savedAtMs,
        sketch: planSketch(project),
      });
      await shelf.writeLast(id);
      told = false;
      document.setState({ savedAtMs });
      hooks.onKept(id);
    } catch (fault) {
      if (!told) hooks.onTrouble(troubleOf(fault));
      told = true;
    }
  };
  const drain = async () => {
    do {
      again = false;
      await writeOnce();
    } while (again);
    writing = null;
  };
  const flush = (): Promise<void> => {
    if (writing) again = true;
    writing ??= drain();
    return writing;
  };

  const stop = document.subscribe(({ revision, gestureOpen, readOnly }) => {
    if (gestureOpen || revision === seen) return;
    seen = revision;
    if (!readOnly) void flush();
  });
  return { flush, stop };
};
