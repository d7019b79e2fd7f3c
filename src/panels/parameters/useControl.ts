import { useMemo, useState } from 'react';
import { useDocument, useView } from '../../state/view.tsx';
import { formatQuantity, isNumberQuantity, readInput, stepFor } from '../../words/quantities.ts';
import type { UnitSystem } from '../../words/quantities-length.ts';
import { refusalText } from '../../words/refusals.ts';
import { applyInBurst } from '../burst.ts';
import { useUnits } from '../hooks.ts';
import type { Control } from './controls.ts';

/** A control's value, and the ways to change it: each shows why not when it is refused. */
export interface Handled {
  readonly control: Control;
  readonly units: UnitSystem;
  readonly value: unknown;
  /** The number it counts as: the value, or what is usual where none stands. */
  readonly number: number | undefined;
  /** As it is written. */
  readonly written: string;
  /** Why the last change was not taken; null when it was. */
  readonly says: string | null;
  say(says: string | null): void;
  put(value: unknown): void;
  /** Takes what a person wrote. */
  take(text: string): void;
  /** So many steps on; a run of them is one undo. */
  step(by: number): void;
  /** So many steps on from where a gesture began that is open already. */
  stepFrom(start: number, by: number): void;
}

export const writtenValue = ({ field }: Control, value: unknown, units: UnitSystem): string =>
  typeof value === 'number' && isNumberQuantity(field.quantity)
    ? formatQuantity(value, field.quantity, units)
    : String(value ?? '');

const clamped = ({ field: { min, max } }: Control, value: number): number =>
  Math.min(max ?? value, Math.max(min ?? value, value));

/** A number so many steps from another, on the steps' own grid where it stands on it. */
const stepped = (control: Control, from: number, by: number, units: UnitSystem): number =>
  clamped(control, Number((from + by * stepFor(control.field, units)).toFixed(6)));

export const useControl = (control: Control): Handled => {
  const { document } = useView();
  const units = useUnits();
  const value = useDocument((state) => control.read(state.project));
  const usual = useDocument((state) => control.usual(state.project));
  const [says, say] = useState<string | null>(null);
  return useMemo(() => {
    const { field } = control;
    const label = `Change ${field.label.charAt(0).toLowerCase()}${field.label.slice(1)}`;
    const told = (refusal: ReturnType<typeof document.actions.apply>) =>
      say(refusal ? refusalText(refusal, units, document.getState().project) : null);
    const put = (next: unknown) => told(document.actions.apply(label, (project) => control.set(project, next)));
    const number = typeof value === 'number' ? value : usual;
    const written = writtenValue(control, value, units);
    return {
      control,
      units,
      value,
      number,
      written,
      says,
      say,
      put,
      take(text) {
        if (text === written) return say(null);
        if (text.trim() === '' && field.optional) return put(undefined);
        if (!isNumberQuantity(field.quantity)) return put(text);
        const read = readInput(text, field, units);
        return read.ok ? put(read.value) : say(read.says);
      },
      step(by) {
        if (number === undefined) return;
        const next = stepped(control, number, by, units);
        told(applyInBurst(document, label, (project) => control.set(project, next)));
      },
      stepFrom(start, by) {
        told(document.actions.apply(label, (project) => control.set(project, stepped(control, start, by, units))));
      },
    };
  }, [control, document, units, value, usual, says]);
};
