import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Project } from '../model/project.ts';
import type { Refusal } from '../model/refusal.ts';

/** A pure edit: the next document, or why not (data; words are made where it is shown). */
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

export type DocumentStore = StoreApi<DocumentState> & { readonly actions: DocumentActions };

interface Step {
  readonly label: string;
  readonly project: Project;
}

export const createDocumentStore = (project: Project, variant = 'main'): DocumentStore => {
  let past: Step[] = [];
  let future: Step[] = [];
  let open: Step | null = null;
  const store = createStore<DocumentState>()(() => ({
    variant,
    revision: 0,
    project,
    canUndo: false,
    canRedo: false,
    undoLabel: null,
    redoLabel: null,
    gestureOpen: false,
    savedAtMs: null,
  }));
  const show = (next: Project) =>
    store.setState((state) => ({
      project: next,
      revision: next === state.project ? state.revision : state.revision + 1,
      canUndo: past.length > 0,
      canRedo: future.length > 0,
      undoLabel: past.at(-1)?.label ?? null,
      redoLabel: future.at(-1)?.label ?? null,
      gestureOpen: open !== null,
    }));
  const current = () => store.getState().project;
  const actions: DocumentActions = {
    mark(label) {
      open ??= { label, project: current() };
      show(current());
    },
    apply(label, command) {
      const answer = command(current());
      if (!answer.ok) return answer.reason;
      if (open === null) {
        past = [...past, { label, project: current() }];
        future = [];
      }
      show(answer.project);
      return null;
    },
    commit() {
      if (open && open.project !== current()) {
        past = [...past, open];
        future = [];
      }
      open = null;
      show(current());
    },
    cancel() {
      const back = open?.project ?? current();
      open = null;
      show(back);
    },
    undo() {
      const step = past.at(-1);
      if (!step) return;
      past = past.slice(0, -1);
      future = [...future, { label: step.label, project: current() }];
      show(step.project);
    },
    redo() {
      const step = future.at(-1);
      if (!step) return;
      future = future.slice(0, -1);
      past = [...past, { label: step.label, project: current() }];
      show(step.project);
    },
    load(next) {
      past = [];
      future = [];
      open = null;
      show(next);
    },
  };
  return Object.assign(store, { actions });
};
