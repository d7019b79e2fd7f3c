import { type KeyboardEvent, useEffect, useId, useState } from 'react';
import { setValue } from '../../model/commands/edit.ts';
import { valueAt } from '../../model/paths.ts';
import { useDocument, useView } from '../../state/view.tsx';
import { formatQuantity, isNumberQuantity, readInput } from '../../words/quantities.ts';
import { refusalText } from '../../words/refusals.ts';
import { useUnits } from '../hooks.ts';
import type { PlacedField } from './fields.ts';

/** Whether an edit of this field was taken; null when it was, else the sentence that says why not. */
type Put = (value: unknown) => string | null;

const usePut = ({ field, keys }: PlacedField): Put => {
  const { document } = useView();
  const units = useUnits();
  return (value) => {
    const refusal = document.actions.apply(field.label, (project) => setValue(project, keys, value));
    return refusal ? refusalText(refusal, units, document.getState().project) : null;
  };
};

interface InputProps {
  readonly placed: PlacedField;
  readonly id: string;
  readonly value: unknown;
  readonly describedBy: string;
  onSays(says: string | null): void;
}

/** A number or a text: taken on Enter or on leaving, put back by Escape, stepped by the arrows. */
const WrittenInput = ({ placed, id, value, describedBy, onSays }: InputProps) => {
  const { field } = placed;
  const units = useUnits();
  const put = usePut(placed);
  const isNumber = isNumberQuantity(field.quantity);
  const written =
    typeof value === 'number' && isNumberQuantity(field.quantity)
      ? formatQuantity(value, field.quantity, units)
      : String(value ?? '');
  const [text, setText] = useState(written);
  useEffect(() => setText(written), [written]);

  const take = () => {
    if (text === written) return onSays(null);
    if (text.trim() === '' && field.optional) return onSays(put(undefined));
    const read = isNumber ? readInput(text, field, units) : ({ ok: true, value: text } as const);
    onSays(read.ok ? put(read.value) : read.says);
  };
  const step = (by: number) => {
    if (!isNumber || typeof value !== 'number') return;
    const next = Number((value + by * (field.step ?? 1)).toFixed(6));
    onSays(put(Math.min(field.max ?? next, Math.max(field.min ?? next, next))));
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Enter') take();
    else if (event.key === 'Escape') {
      setText(written);
      onSays(null);
    } else if (isNumber && (event.key === 'ArrowUp' || event.key === 'ArrowDown')) {
      step((event.key === 'ArrowUp' ? 1 : -1) * (event.shiftKey ? 10 : 1));
    } else return;
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    <input
      id={id}
      type="text"
      className={isNumber ? 'is-number' : undefined}
      autoComplete="off"
      spellCheck={false}
      value={text}
      placeholder={field.optional ? 'as usual' : undefined}
      aria-describedby={describedBy}
      onChange={(event) => setText(event.target.value)}
      onBlur={take}
      onKeyDown={onKeyDown}
    />
  );
};

const ChoiceInput = ({ placed, id, value, describedBy, onSays }: InputProps) => {
  const { field } = placed;
  const put = usePut(placed);
  return (
    <select
      id={id}
      value={String(value ?? '')}
      aria-describedby={describedBy}
      onChange={(event) => onSays(put(event.target.value === '' ? undefined : event.target.value))}
    >
      {value === undefined && <option value="">as usual</option>}
      {field.choices?.map((choice) => (
        <option key={choice} value={choice}>
          {choice.replaceAll('-', ' ')}
        </option>
      ))}
    </select>
  );
};

const FlagInput = ({ placed, id, value, describedBy, onSays }: InputProps) => {
  const put = usePut(placed);
  return (
    <input
      id={id}
      type="checkbox"
      checked={value === true}
      aria-describedby={describedBy}
      onChange={(event) => onSays(put(event.target.checked))}
    />
  );
};

/** A label, its control, and what was wrong with the last thing written. */
export const FieldRow = ({ placed }: { placed: PlacedField }) => {
  const { field, keys } = placed;
  const id = useId();
  const value = useDocument((state) => valueAt(state.project, keys));
  const [says, setSays] = useState<string | null>(null);
  const props = { placed, id, value, describedBy: `${id}-help`, onSays: setSays };
  return (
    <div className="field">
      <label htmlFor={id}>{field.label}</label>
      {field.choices ? (
        <ChoiceInput {...props} />
      ) : field.quantity === 'flag' ? (
        <FlagInput {...props} />
      ) : (
        <WrittenInput {...props} />
      )}
      <span className="unseen" id={`${id}-help`}>
        {field.help}
      </span>
      {says !== null && <p role="alert">{says}</p>}
    </div>
  );
};
