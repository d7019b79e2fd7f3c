import { useMemo } from 'react';
import { bassNotes } from '../../analysis/bass-notes.ts';
import { useDocument } from '../../state/view.tsx';

/** What the bass leaves out in this room, under what it shows; nothing where it leaves out nothing. */
export const BassNotes = () => {
  const project = useDocument((state) => state.project);
  const notes = useMemo(() => bassNotes(project), [project]);
  if (notes.length === 0) return null;
  return (
    <aside className="bass-notes" aria-label="What the bass leaves out">
      {notes.map((note) => (
        <p key={note} className="plot-note">
          {note}
        </p>
      ))}
    </aside>
  );
};
