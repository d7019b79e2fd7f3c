import type { Refusal } from '../model/refusal.ts';
import type { Command, DocumentStore } from '../state/document.ts';

/** A run of key presses rests this long before it counts as done. */
const REST_MS = 700;

/** Key presses that belong together: one mark at the first, one commit when they rest, so one undo. */
class Burst {
  private readonly document: DocumentStore;
  private readonly off = new AbortController();
  private timer = 0;
  readonly label: string;

  constructor(document: DocumentStore, label: string) {
    this.document = document;
    this.label = label;
    document.actions.mark(label);
    const { signal } = this.off;
    const end = () => this.end();
    window.addEventListener('pointerdown', end, { signal, capture: true });
    window.addEventListener('focusin', end, { signal, capture: true });
    window.addEventListener('blur', end, { signal });
    // Undo, redo, save and the like are about what was done: the run is done before they are heard.
    window.addEventListener('keydown', ({ ctrlKey, metaKey }) => (ctrlKey || metaKey) && end(), {
      signal,
      capture: true,
    });
    this.wait();
  }

  wait(): void {
    window.clearTimeout(this.timer);
    this.timer = window.setTimeout(() => this.end(), REST_MS);
  }

  end(): void {
    if (this.off.signal.aborted) return;
    window.clearTimeout(this.timer);
    this.off.abort();
    running.delete(this.document);
    this.document.actions.commit();
  }
}

const running = new WeakMap<DocumentStore, Burst>();

/** Applies a command as part of the run of presses with this label; the first press of a run begins it. */
export const applyInBurst = (document: DocumentStore, label: string, command: Command): Refusal | null => {
  const open = running.get(document);
  if (open && open.label !== label) open.end();
  const mine = running.get(document);
  // Someone else's gesture is under the hand: the press is then a part of it.
  if (!mine && document.getState().gestureOpen) return document.actions.apply(label, command);
  if (mine) mine.wait();
  else running.set(document, new Burst(document, label));
  return document.actions.apply(label, command);
};

/** Ends the run of presses that is open, if one is. */
export const endBurst = (document: DocumentStore): void => running.get(document)?.end();
