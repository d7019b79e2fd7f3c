import { useMemo } from 'react';
import { bassNotes } from '../../analysis/bass-notes.ts';
import { useDocument } from '../../state/view.tsx';
import { measuresIn } from '../../words/measures.ts';
import { useUnits } from '../hooks.ts';

/** What the bass leaves out in this room, under what it shows; nothing where it leaves out nothing. */
export const BassNotes = () => {
  const project = useDocument((state) => state.project);
  const units = useUnits();
  const notes = useMemo(() => bassNotes(project, measuresIn(units)), [project, units]);
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
