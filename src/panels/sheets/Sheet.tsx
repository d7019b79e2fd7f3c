import { type ReactNode, useEffect, useRef } from 'react';
import { Icon } from '../marks/Icon.tsx';
import './sheets.css';

/** A sheet of paper over the room. Escape, the cross or a touch beside it puts it away. */
export const Sheet = ({ title, onClose, children }: { title: string; onClose(): void; children: ReactNode }) => {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const sheet = dialog.current;
    if (sheet && !sheet.open) sheet.showModal();
    const beside = (event: MouseEvent) => {
      if (event.target === sheet) sheet?.close();
    };
    sheet?.addEventListener('click', beside);
    return () => sheet?.removeEventListener('click', beside);
  }, []);
  return (
    <dialog className="sheet" ref={dialog} aria-labelledby="sheet-title" onClose={onClose}>
      <div className="sheet-body scrolls">
        <header>
          <h2 id="sheet-title">{title}</h2>
          <button type="button" className="icon-button" aria-label="Close" onClick={() => dialog.current?.close()}>
            <Icon name="close" />
          </button>
        </header>
        {children}
      </div>
    </dialog>
  );
};
