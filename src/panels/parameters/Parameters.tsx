import { lazy, Suspense, useEffect, useMemo, useRef, useState } from 'react';
import { isLocked } from '../../model/items.ts';
import { useRestingProject } from '../../state/steady-project.ts';
import { useSession } from '../../state/view.tsx';
import { itemTitle } from '../naming.ts';
import { Choice, type Option } from '../top/Choice.tsx';
import { FieldRow } from './FieldRow.tsx';
import { formOf, type Section, signatureOf, tablePath } from './form.ts';
import { ItemActions } from './ItemActions.tsx';
import { SurfaceParts } from './SurfaceParts.tsx';
import { TableEditor } from './TableEditor.tsx';
import './parameters.css';

/** The form of what is chosen. It is the same one until a field comes or goes: a dragged number leaves it alone. */
const useForm = (): { readonly sections: readonly Section[]; readonly name: string } => {
  const project = useRestingProject();
  const selection = useSession((state) => state.selection);
  const last = useRef<{ readonly name: string; readonly sections: readonly Section[] } | null>(null);
  return useMemo(() => {
    const sections = formOf(project, selection);
    const name = `${selection?.kind}:${selection?.id}\n${signatureOf(sections)}`;
    if (last.current?.name !== name) last.current = { name, sections };
    return last.current;
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

/** The expert's panel comes with a library of its own: fetched when it is asked for. */
const Dials = lazy(async () => ({ default: (await import('../dials/Dials.tsx')).Dials }));

type Way = 'form' | 'dials';
const WAYS: readonly Option<Way>[] = [
  { value: 'form', word: 'Form' },
  { value: 'dials', word: 'Dials' },
];

/** The numbers of the chosen thing, or of the room when nothing is chosen, as a plain form. */
export const Parameters = () => {
  const project = useRestingProject();
  const selection = useSession((state) => state.selection);
  // What is done with several at once is offered beside them, not beside the form of the first.
  const several = useSession(({ alsoSelected, gathering }) => gathering || alsoSelected.length > 0);
  const { sections, name } = useForm();
  const [way, setWay] = useState<Way>('form');
  const box = useRef<HTMLElement>(null);
  const chosen = selection && `${selection.kind}:${selection.id}`;
  const begunFor = useRef(chosen);
  // Another thing's form is read from its beginning.
  useEffect(() => {
    if (begunFor.current === chosen) return;
    begunFor.current = chosen;
    box.current?.scrollTo(0, 0);
  }, [chosen]);
  const moves = selection !== null && selection.kind !== 'surface' && !isLocked(project, selection);
  return (
    <section className="parameters scrolls" aria-label="Parameters" ref={box}>
      <header className="parameters-head">
        <h2 className="column-title">{selection ? itemTitle(project, selection) : 'Room'}</h2>
        <div className="way">
          <Choice quiet label="Parameters as" options={WAYS} value={way} onChoose={(next) => setWay(next)} />
        </div>
        {selection && !several && <ItemActions item={selection} />}
        {moves && (
          <p className="moves-by-keys">
            In the outline, Alt with the arrow keys moves it; with Shift ten times as far.
          </p>
        )}
      </header>
      {way === 'dials' ? (
        <Suspense fallback={null}>
          <Dials name={name} sections={sections} />
        </Suspense>
      ) : (
        sections.map((section) => <SectionRows key={section.title} section={section} />)
      )}
      {selection?.kind === 'surface' && <SurfaceParts surface={selection.id} />}
    </section>
  );
};
