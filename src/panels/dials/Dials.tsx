import { folder, LevaPanel, useControls, useCreateStore } from 'leva';
import { useEffect, useMemo, useState } from 'react';
import type { Project } from '../../model/project.ts';
import type { Refusal } from '../../model/refusal.ts';
import { useView } from '../../state/view.tsx';
import { stepFor } from '../../words/quantities.ts';
import { refusalText } from '../../words/refusals.ts';
import { applyInBurst } from '../burst.ts';
import { useUnits } from '../hooks.ts';
import type { Control } from '../parameters/controls.ts';
import { controlsOf, type Section } from '../parameters/form.ts';
import { type DialValue, dial } from './dial.tsx';
import { DIALS_THEME } from './theme.ts';
import './dials.css';

const heldBy = (control: Control, project: Project): DialValue => {
  const value = control.read(project);
  return typeof value === 'number' || typeof value === 'string' || typeof value === 'boolean' ? value : null;
};

const labelOf = ({ field: { label } }: Control): string => `Change ${label.charAt(0).toLowerCase()}${label.slice(1)}`;

const keyAt = (index: number): string => `dial${index}`;

/** Where Leva keeps each control: its folder's title, then its key. */
const pathsOf = (sections: readonly Section[]): ReadonlyMap<string, Control> => {
  let index = 0;
  return new Map(
    sections.flatMap((section) =>
      controlsOf([section]).map((control) => [`${section.title}.${keyAt(index++)}`, control] as const),
    ),
  );
};

/**
 * The form's fields as Leva's panel. Leva holds no truth: what is turned goes to the document as a command, its edit's
 * start and end are the gesture's mark and commit, and what the document then says is what the panel shows.
 */
const DialsOf = ({ sections }: { readonly sections: readonly Section[] }) => {
  const { document } = useView();
  const units = useUnits();
  const store = useCreateStore();
  const [says, setSays] = useState<string | null>(null);
  const paths = useMemo(() => pathsOf(sections), [sections]);

  useControls(
    () => {
      const { project } = document.getState();
      const told = (refusal: Refusal | null) =>
        setSays(refusal ? refusalText(refusal, units, document.getState().project) : null);
      const inputOf = (control: Control) =>
        dial({
          held: heldBy(control, project),
          label: control.field.label,
          control,
          units,
          usual: control.usual(project),
          say: setSays,
          step(by: number) {
            const value = control.read(document.getState().project) ?? control.usual(document.getState().project);
            if (typeof value !== 'number') return;
            const { min = value, max = value } = control.field;
            const next = Number((value + by * stepFor(control.field, units)).toFixed(6));
            const kept = Math.min(Math.max(next, min), max);
            told(applyInBurst(document, labelOf(control), (from) => control.set(from, kept)));
          },
          onChange(value: DialValue, _path: string, { initial, fromPanel }: { initial: boolean; fromPanel: boolean }) {
            if (initial || !fromPanel) return;
            told(document.actions.apply(labelOf(control), (from) => control.set(from, value ?? undefined)));
          },
          onEditStart: () => document.actions.mark(labelOf(control)),
          onEditEnd: () => document.actions.commit(),
        });
      let index = 0;
      return Object.fromEntries(
        sections.map((section) => [
          section.title,
          folder(Object.fromEntries(controlsOf([section]).map((control) => [keyAt(index++), inputOf(control)]))),
        ]),
      );
    },
    { store },
    [sections, units],
  );

  useEffect(() => {
    const show = () => {
      const { project } = document.getState();
      const changed = [...paths].flatMap(([path, control]) => {
        const value = heldBy(control, project);
        const shown: unknown = store.get(path);
        return shown === value ? [] : [[path, value] as const];
      });
      if (changed.length > 0) store.set(Object.fromEntries(changed), false);
    };
    show();
    const off = document.subscribe(show);
    return () => off();
  }, [document, paths, store]);
  useEffect(() => () => store.dispose(), [store]);

  return (
    <div className="dials">
      <LevaPanel store={store} theme={DIALS_THEME} fill flat titleBar={false} hideCopyButton />
      {says !== null && <p role="alert">{says}</p>}
    </div>
  );
};

/** A store a form: one whose fields came or went begins anew. */
export const Dials = ({ sections, name }: { readonly sections: readonly Section[]; readonly name: string }) => (
  <DialsOf key={name} sections={sections} />
);
