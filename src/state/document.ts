import type { createStore } from 'zustand/vanilla';
import type { Project } from '../model/project.ts';

/** What a command answers: the next document, or why not (data; words are made where it is shown). */
export interface Refusal {
  readonly field: string;
  readonly holds: string;
  readonly allowed: string;
}
export type Command = (project: Project) => { ok: true; project: Project } | { ok: false; reason: Refusal };

export interface DocumentState {
  readonly variant: string;
  /** Grows with every change of the project, undo, redo and loading included. */
  readonly revision: number;
  readonly project: Project;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  readonly undoLabel: string | null;
  readonly redoLabel: string | null;
  /** A gesture is open: pointer down, not yet released. */
  readonly gestureOpen: boolean;
  /** When the project was last saved by itself, milliseconds since 1970; null before the first time. */
  readonly savedAtMs: number | null;
}

export interface DocumentActions {
  /** Opens a gesture: everything applied until commit() is one undo. */
  mark(label: string): void;
  /** Applies one command; outside a gesture it is a gesture of its own. */
  apply(label: string, command: Command): Refusal | null;
  commit(): void;
  cancel(): void;
  undo(): void;
  redo(): void;
  load(project: Project): void;
}

export type DocumentStore = ReturnType<typeof createStore<DocumentState>> & { readonly actions: DocumentActions };
