import { get, set } from 'idb-keyval';
import { readProjectText } from '../files/project/read.ts';
import { writeProject } from '../files/project/write.ts';
import type { Project } from '../model/project.ts';
import type { DocumentStore } from '../state/document.ts';

const KEY = 'parterre/autosave/main';

interface Saved {
  readonly text: string;
  readonly savedAtMs: number;
}

/** Where the browser keeps things; tests pass their own. */
export interface Shelf {
  read(): Promise<unknown>;
  write(saved: Saved): Promise<void>;
}

export const browserShelf: Shelf = {
  read: () => get(KEY),
  write: (saved) => set(KEY, saved),
};

const isSaved = (value: unknown): value is Saved =>
  typeof value === 'object' && value !== null && typeof (value as Saved).text === 'string';

/** The project kept from last time, read with the care a file gets; null when there is none that can be read. */
export const recoverProject = async (shelf: Shelf): Promise<{ project: Project; savedAtMs: number } | null> => {
  try {
    const saved = await shelf.read();
    if (!isSaved(saved)) return null;
    const read = readProjectText(saved.text);
    return read.ok ? { project: read.project, savedAtMs: saved.savedAtMs } : null;
  } catch {
    return null;
  }
};

/**
 * Writes the project at every commit: never in the middle of a gesture, one write at a time, the latest last.
 * `onTrouble` hears once when the browser refuses; work goes on and a later success is silent.
 */
export const autosave = (
  document: DocumentStore,
  shelf: Shelf,
  clockMs: () => number,
  onTrouble: () => void,
): (() => void) => {
  let seen = document.getState().revision;
  let writing = false;
  let again = false;
  let told = false;

  const write = async () => {
    if (writing) {
      again = true;
      return;
    }
    writing = true;
    do {
      again = false;
      const savedAtMs = clockMs();
      try {
        await shelf.write({ text: writeProject(document.getState().project), savedAtMs });
        document.setState({ savedAtMs });
      } catch {
        if (!told) onTrouble();
        told = true;
      }
    } while (again);
    writing = false;
  };

  return document.subscribe(({ revision, gestureOpen }) => {
    if (gestureOpen || revision === seen) return;
    seen = revision;
    void write();
  });
};
