import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Edit } from '../model/commands/edit.ts';
import {
  apply,
  cancel,
  commit,
  futureLabels,
  type History,
  load,
  mark,
  pastLabels,
  redo,
  redoLabel,
  undo,
  undoLabel,
} from '../model/history.ts';
import type { Project } from '../model/project.ts';
import type { Refusal } from '../model/refusal.ts';

/** A pure edit: the next document, or why not (data; words are made where it is shown). */
export type Command = (project: Project) => Edit;

export interface DocumentState {
  readonly variant: string;
  /** Grows with every change of the project, undo, redo and loading included. */
  readonly revision: number;
  readonly project: Project;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  readonly undoLabel: string | null;
  readonly redoLabel: string | null;
  /** The last step that was taken back or done again, and the revision it led to; null before the first. */
  readonly stepped: { readonly way: 'undone' | 'redone'; readonly label: string; readonly revision: number } | null;
  /** A gesture is open: pointer down, not yet released. */
  readonly gestureOpen: boolean;
  /** When the project was last saved by itself, milliseconds since 1970; null before the first time. */
  readonly savedAtMs: number | null;
  /** The room is open for change in another tab: here it is only shown, and every edit is refused in words. */
  readonly readOnly: boolean;
}

const ONLY_SHOWN: Refusal = { field: 'file', holds: undefined, allowed: { kind: 'otherTab' } };

export interface DocumentActions {
  /** Opens a gesture: everything applied until commit() is one undo. */
  mark(label: string): void;
  /** Applies one command; outside a gesture it is a gesture of its own. */
  apply(label: string, command: Command): Refusal | null;
  commit(): void;
  cancel(): void;
  undo(): void;
  redo(): void;
  /** What was done, the last first, and what can be done again, the next first: told when asked, not at every move. */
  steps(): { readonly past: readonly string[]; readonly future: readonly string[] };
  load(project: Project): void;
}

export type DocumentStore = StoreApi<DocumentState> & { readonly actions: DocumentActions };

/** The store around the pure history: one object that holds the gesture, the past and the future. */
export const createDocumentStore = (project: Project, variant = 'main'): DocumentStore => {
  let history = load(project);
  const faceOf = () => ({
    project: history.present,
    revision: history.revision,
    canUndo: history.past.length > 0,
    canRedo: history.future.length > 0,
    undoLabel: undoLabel(history) ?? null,
    redoLabel: redoLabel(history) ?? null,
    gestureOpen: history.gesture !== undefined,
  });
  const store = createStore<DocumentState>()(() => ({
    variant,
    savedAtMs: null,
    readOnly: false,
    stepped: null,
    ...faceOf(),
  }));
  const show = (next: History, more: Partial<DocumentState> = {}) => {
    if (next === history) return;
    history = next;
    store.setState({ ...faceOf(), ...more });
  };
  const step = (way: 'undone' | 'redone', next: History, label: string | undefined) => {
    if (store.getState().readOnly) return;
    show(
      next,
      label === undefined || next.revision === history.revision
        ? {}
        : { stepped: { way, label, revision: next.revision } },
    );
  };
  const unlessShown = (change: (now: History) => History) => {
    if (!store.getState().readOnly) show(change(history));
  };
  const actions: DocumentActions = {
    mark: (label) => unlessShown((now) => mark(now, label)),
    apply(label, command) {
      if (store.getState().readOnly) return ONLY_SHOWN;
      const answer = command(history.present);
      if (!answer.ok) return answer.reason;
      show(apply(history, answer.project, label));
      return null;
    },
    commit: () => show(commit(history)),
    cancel: () => show(cancel(history)),
    undo: () => step('undone', undo(history), history.gesture?.label ?? undoLabel(history)),
    redo: () => step('redone', redo(history), redoLabel(history)),
    steps: () => ({ past: pastLabels(history), future: futureLabels(history) }),
    load: (next) => show(load(next, history.revision + 1)),
  };
  return Object.assign(store, { actions });
};
