import { useMemo } from 'react';
import { pathText } from '../../model/paths.ts';
import { useDocument, useSession } from '../../state/view.tsx';
import { itemTitle } from '../naming.ts';
import { FieldRow } from './FieldRow.tsx';
import { placedFields } from './fields.ts';
import './parameters.css';

/** The numbers of the chosen thing, or of the room when nothing is chosen, as a plain form. */
export const Parameters = () => {
  const project = useDocument((state) => state.project);
  const selection = useSession((state) => state.selection);
  const fields = useMemo(() => placedFields(project, selection), [project, selection]);
  return (
    <section className="parameters scrolls" aria-label="Parameters">
      <h2 className="column-title">{selection ? itemTitle(project, selection) : 'Room'}</h2>
      {fields.map((placed) => (
        <FieldRow key={pathText(placed.keys)} placed={placed} />
      ))}
    </section>
  );
};
