import { type KeyboardEvent, useEffect, useId, useRef, useState } from 'react';
import { useDocument, useView } from '../../state/view.tsx';

/** More steps than this are not listed: they are reached by undoing. */
const MOST_LISTED = 12;

interface Entry {
  readonly key: string;
  readonly label: string;
  readonly note: string;
  readonly again: boolean;
  /** How many steps lead there. */
  readonly steps: number;
}

/** The last to be done again at the top, the first to be undone under it: time runs upwards. */
const entriesOf = ({
  past,
  future,
}: {
  readonly past: readonly string[];
  readonly future: readonly string[];
}): Entry[] => {
  const again = future.slice(0, MOST_LISTED).map((label, index): Entry => {
    return { key: `again-${future.length - index}`, label, note: 'redo', again: true, steps: index + 1 };
  });
  const back = past.slice(0, MOST_LISTED).map((label, index): Entry => {
    const note = index === 0 ? 'undo' : `undo ${index + 1} steps`;
    return { key: `back-${past.length - index}`, label, note, again: false, steps: index + 1 };
  });
  return [...again.reverse(), ...back];
};

/** What was done to the room by name, and the way back to before any of it. */
export const HistoryMenu = () => {
  const id = useId();
  const { document } = useView();
  const [open, setOpen] = useState(false);
  const some = useDocument((state) => state.canUndo || state.canRedo);
  const revision = useDocument((state) => state.revision);
  const button = useRef<HTMLButtonElement>(null);
  const list = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (!open) return;
    const away = ({ target }: PointerEvent) => {
      if (target instanceof Node && !list.current?.contains(target) && !button.current?.contains(target))
        setOpen(false);
    };
    window.addEventListener('pointerdown', away, { capture: true });
    return () => window.removeEventListener('pointerdown', away, { capture: true });
  }, [open]);
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== 'Escape' || !open) return;
    event.preventDefault();
    event.stopPropagation();
    setOpen(false);
    button.current?.focus();
  };
  const times = (count: number, step: () => void) => {
    for (let i = 0; i < count; i += 1) step();
  };
  const entries = open ? entriesOf(document.actions.steps()) : [];
  const { undo, redo } = document.actions;
  return (
    <fieldset className="history" onKeyDown={onKeyDown} data-revision={revision}>
      <legend className="unseen">What was done</legend>
      <button
        ref={button}
        type="button"
        className="word-button"
        disabled={!some}
        aria-expanded={open}
        aria-controls={open ? id : undefined}
        onClick={() => setOpen((now) => !now)}
      >
        History
      </button>
      {open && (
        <div id={id} ref={list} className="add-menu scrolls">
          <ol>
            {entries.map(({ key, label, note, again, steps }) => (
              <li key={key}>
                <button type="button" onClick={() => times(steps, again ? redo : undo)}>
                  {label} <small>{note}</small>
                </button>
              </li>
            ))}
          </ol>
        </div>
      )}
    </fieldset>
  );
};
