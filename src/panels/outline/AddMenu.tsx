import { type KeyboardEvent, type Ref, useEffect, useId, useImperativeHandle, useRef, useState } from 'react';
import { useRestingProject } from '../../state/steady-project.ts';
import { useSession } from '../../state/view.tsx';
import { useItemActions } from '../useItemActions.ts';
import { type Addition, additionsFor } from './adding.ts';

export interface MenuHandle {
  open(): void;
}

interface MenuProps {
  readonly ref?: Ref<MenuHandle>;
  /** Something was added: where the eye should go next. */
  onAdded(): void;
}

/** A button and the menu of all that can be added to the room. */
export const AddMenu = ({ ref, onAdded }: MenuProps) => {
  const id = useId();
  const project = useRestingProject();
  const chosen = useSession((state) => state.selection);
  const actions = useItemActions();
  const [open, setOpen] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const menu = useRef<HTMLDivElement>(null);
  useImperativeHandle(ref, () => ({ open: () => setOpen(true) }), []);

  useEffect(() => {
    if (!open) return;
    menu.current?.querySelector<HTMLElement>('[role="menuitem"]')?.focus();
    const away = ({ target }: PointerEvent) => {
      if (target instanceof Node && !menu.current?.contains(target) && !button.current?.contains(target))
        setOpen(false);
    };
    window.addEventListener('pointerdown', away, { capture: true });
    return () => window.removeEventListener('pointerdown', away, { capture: true });
  }, [open]);

  const close = () => {
    setOpen(false);
    button.current?.focus();
  };
  const pick = ({ word, label = word.toLowerCase(), add }: Addition) => {
    setOpen(false);
    const made = actions.add(`Add ${label}`, add);
    if (made) onAdded();
    else button.current?.focus();
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const items = [...(menu.current?.querySelectorAll<HTMLElement>('[role="menuitem"]') ?? [])];
    const at = items.findIndex((item) => item.contains(document.activeElement));
    const goes: Readonly<Record<string, number>> = {
      ArrowDown: (at + 1) % items.length,
      ArrowUp: (at - 1 + items.length) % items.length,
      Home: 0,
      End: items.length - 1,
    };
    event.stopPropagation();
    if (event.key === 'Escape' || event.key === 'Tab') {
      if (event.key === 'Escape') event.preventDefault();
      close();
    } else if (Object.hasOwn(goes, event.key)) {
      event.preventDefault();
      items[goes[event.key]].focus();
    }
  };

  return (
    <div className="add">
      <button
        ref={button}
        type="button"
        className="word-button is-brass"
        aria-haspopup="menu"
        aria-expanded={open}
        aria-controls={open ? id : undefined}
        onClick={() => setOpen((now) => !now)}
      >
        Add
      </button>
      {open && (
        <div id={id} ref={menu} className="add-menu scrolls" role="menu" aria-label="Add" onKeyDown={onKeyDown}>
          {additionsFor(project, chosen).map(({ title, additions }) => (
            <fieldset key={title} aria-label={title} className="add-group">
              <small className="add-title" aria-hidden="true">
                {title}
              </small>
              {additions.map((addition) => (
                <button
                  key={addition.id}
                  type="button"
                  role="menuitem"
                  data-add={addition.id}
                  onClick={() => pick(addition)}
                >
                  {addition.word}
                  {addition.note && <small>{addition.note}</small>}
                </button>
              ))}
            </fieldset>
          ))}
        </div>
      )}
    </div>
  );
};
