import type { Project } from './project.ts';

/** How many steps can be undone; a step costs only what it changed, since documents share the rest. */
export const MOST_STEPS = 200;

interface Step {
  readonly label: string;
  /** The document on the other side of the step: before it among the past, after it among the future. */
  readonly project: Project;
}

/** The document with its past and future. Documents are kept as they were, so undo gives back the same object. */
export interface History {
  readonly present: Project;
  /** Counts every change of `present`, undo and redo included, and never goes back. */
  readonly revision: number;
  /** The oldest first. */
  readonly past: readonly Step[];
  /** The next to redo last. */
  readonly future: readonly Step[];
  /** The gesture in hand: what the document was at its mark. */
  readonly gesture?: Step;
}

/** A document just opened: nothing to undo. */
export const load = (project: Project, revision = 0): History => ({ present: project, revision, past: [], future: [] });

const show = (history: History, present: Project): History =>
  present === history.present ? history : { ...history, present, revision: history.revision + 1 };

const push = (history: History, step: Step): History => ({
  ...history,
  past: [...history.past, step].slice(-MOST_STEPS),
  future: [],
});

const released = ({ gesture: _done, ...history }: History): History => history;

/** Begins a gesture, committing one that was left open. All that is applied until its commit is one step. */
export const mark = (history: History, label: string): History => {
  const settled = commit(history);
  return { ...settled, gesture: { label, project: settled.present } };
};

/** Takes a command's document. Inside a gesture it is squashed to the mark; outside it is a step of its own. */
export const apply = (history: History, project: Project, label: string): History => {
  if (project === history.present) return history;
  if (history.gesture) return show(history, project);
  return show(push(history, { label, project: history.present }), project);
};

/** Ends the gesture: one step, or none when nothing came of it. */
export const commit = (history: History): History => {
  const { gesture } = history;
  if (!gesture) return history;
  const settled = released(history);
  return gesture.project === history.present ? settled : push(settled, gesture);
};

/** Goes back to the mark as if the gesture had not been. */
export const cancel = (history: History): History => {
  const { gesture } = history;
  return gesture ? show(released(history), gesture.project) : history;
};

/** Takes the last step back; in the middle of a gesture, the gesture. */
export const undo = (history: History): History => {
  if (history.gesture) return cancel(history);
  const step = history.past.at(-1);
  if (!step) return history;
  const future = [...history.future, { label: step.label, project: history.present }];
  return show({ ...history, past: history.past.slice(0, -1), future }, step.project);
};

/** Does again what was last undone. Nothing happens in the middle of a gesture. */
export const redo = (history: History): History => {
  const step = history.future.at(-1);
  if (!step || history.gesture) return history;
  const past = [...history.past, { label: step.label, project: history.present }];
  return show({ ...history, past, future: history.future.slice(0, -1) }, step.project);
};

export const undoLabel = (history: History): string | undefined => history.past.at(-1)?.label;
export const redoLabel = (history: History): string | undefined => history.future.at(-1)?.label;

/** What was done, the last first; and what can be done again, the next first. */
export const pastLabels = (history: History): readonly string[] => history.past.map(({ label }) => label).reverse();
export const futureLabels = (history: History): readonly string[] => history.future.map(({ label }) => label).reverse();
