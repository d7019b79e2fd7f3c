import { useMemo, useRef } from 'react';
import { useDocument, useSession } from '../../state/view.tsx';
import { itemTitle } from '../naming.ts';
import { FieldRow } from './FieldRow.tsx';
import { formOf, type Section, signatureOf, tablePath } from './form.ts';
import { ItemActions } from './ItemActions.tsx';
import { SurfaceParts } from './SurfaceParts.tsx';
import { TableEditor } from './TableEditor.tsx';
import './parameters.css';

/** The form of what is chosen. It is the same one until a field comes or goes: a dragged number leaves it alone. */
export const useForm = (): readonly Section[] => {
  const project = useDocument((state) => state.project);
  const selection = useSession((state) => state.selection);
  const last = useRef<{ readonly signature: string; readonly sections: readonly Section[] } | null>(null);
  return useMemo(() => {
    const sections = formOf(project, selection);
    const signature = `${selection?.kind}:${selection?.id}\n${signatureOf(sections)}`;
    if (last.current?.signature !== signature) last.current = { signature, sections };
    return last.current.sections;
  }, [project, selection]);
};

const SectionRows = ({ section }: { readonly section: Section }) => (
  <fieldset className="section">
    <legend>{section.title}</legend>
    {section.controls.map((control) => (
      <FieldRow key={control.path} control={control} />
    ))}
    {section.tables.map((placed) => (
      <TableEditor key={tablePath(placed)} placed={placed} />
    ))}
  </fieldset>
);

/** The numbers of the chosen thing, or of the room when nothing is chosen, as a plain form. */
export const Parameters = () => {
  const project = useDocument((state) => state.project);
  const selection = useSession((state) => state.selection);
  const sections = useForm();
  return (
    <section className="parameters scrolls" aria-label="Parameters">
      <header className="parameters-head">
        <h2 className="column-title">{selection ? itemTitle(project, selection) : 'Room'}</h2>
        {selection && <ItemActions item={selection} />}
      </header>
      {sections.map((section) => (
        <SectionRows key={section.title} section={section} />
      ))}
      {selection?.kind === 'surface' && <SurfaceParts surface={selection.id} />}
    </section>
  );
};
