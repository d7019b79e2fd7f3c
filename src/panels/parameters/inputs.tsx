import { type KeyboardEvent, useCallback } from 'react';
import { formatQuantity, isNumberQuantity } from '../../words/quantities.ts';
import { useRefused } from './refused.ts';
import type { Handled } from './useControl.ts';
import { useDraft } from './useDraft.ts';

interface InputProps {
  readonly handled: Handled;
  readonly id: string;
  /** Where no label stands beside it. */
  readonly name?: string;
  readonly describedBy?: string;
}

const placeholderOf = ({ control, number, units, value }: Handled): string | undefined => {
  const { field } = control;
  if (!field.absent || value !== undefined) return undefined;
  if (number === undefined || !isNumberQuantity(field.quantity)) return 'as usual';
  return formatQuantity(number, field.quantity, units);
};

/** From a field with nothing to put back, Escape leads to the line of the outline it belongs to. */
const toOutline = (): void => document.querySelector<HTMLElement>('.outline-tree [tabindex="0"]')?.focus();

const leaveByEscape = (event: KeyboardEvent): void => {
  if (event.key !== 'Escape') return;
  event.preventDefault();
  event.stopPropagation();
  toOutline();
};

/** A text that may be longer than this is written on several lines. */
const ONE_LINE = 1000;
const LINE_LETTERS = 34;
const MOST_LINES = 6;

/**
 * A number or a text: taken on Enter or on leaving, put back by Escape; the arrows step a number, by ten with Shift.
 * In a long text Shift with Enter begins a new line.
 */
const WrittenInput = ({ handled, id, name, describedBy }: InputProps) => {
  const { control, written, take, say, step } = handled;
  const { field } = control;
  const isNumber = isNumberQuantity(field.quantity);
  const [text, setText] = useDraft(written);
  const putBack = useCallback(() => {
    setText(written);
    say(null);
  }, [setText, written, say]);
  useRefused(handled.says !== null && text !== written ? text : null, putBack);
  const long = !isNumber && (field.max ?? 0) > ONE_LINE;
  const Written = long ? 'textarea' : 'input';
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    if (event.key === 'Enter' && long && event.shiftKey) return;
    if (event.key === 'Enter') take(text);
    else if (event.key === 'Escape') {
      if (text === written && handled.says === null) toOutline();
      putBack();
    } else if (isNumber && (event.key === 'ArrowUp' || event.key === 'ArrowDown')) {
      step((event.key === 'ArrowUp' ? 1 : -1) * (event.shiftKey ? 10 : 1));
    } else return;
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    <Written
      id={id}
      type={long ? undefined : 'text'}
      rows={long ? Math.min(MOST_LINES, Math.max(2, Math.ceil(text.length / LINE_LETTERS))) : undefined}
      className={isNumber ? 'is-number' : undefined}
      inputMode={isNumber ? 'text' : undefined}
      autoComplete="off"
      spellCheck={false}
      maxLength={isNumber ? undefined : field.max}
      value={text}
      placeholder={placeholderOf(handled)}
      aria-label={name}
      aria-describedby={describedBy}
      data-path={control.path}
      onFocus={(event) => event.target.select()}
      onChange={(event) => setText(event.target.value)}
      onBlur={() => take(text)}
      onKeyDown={onKeyDown}
    />
  );
};

const ChoiceInput = ({ handled, id, name, describedBy }: InputProps) => {
  const { control, value, put } = handled;
  const { field } = control;
  const now = value === undefined ? '' : String(value);
  const known = field.choices?.includes(now) ?? false;
  return (
    <select
      id={id}
      value={now}
      aria-label={name}
      aria-describedby={describedBy}
      data-path={control.path}
      onChange={(event) => put(event.target.value === '' ? undefined : event.target.value)}
      onKeyDown={leaveByEscape}
    >
      {(value === undefined || field.absent) && <option value="">as usual</option>}
      {!known && value !== undefined && <option value={now}>{control.word(now)}</option>}
      {field.choices?.map((choice) => (
        <option key={choice} value={choice}>
          {control.word(choice)}
        </option>
      ))}
    </select>
  );
};

const FlagInput = ({ handled, id, name, describedBy }: InputProps) => (
  <input
    id={id}
    type="checkbox"
    checked={handled.value === true}
    aria-label={name}
    aria-describedby={describedBy}
    data-path={handled.control.path}
    onKeyDown={leaveByEscape}
    onChange={(event) =>
      handled.put(event.target.checked || !handled.control.field.absent ? event.target.checked : undefined)
    }
  />
);

export const ControlInput = (props: InputProps) => {
  const { field } = props.handled.control;
  if (field.choices) return <ChoiceInput {...props} />;
  return field.quantity === 'flag' ? <FlagInput {...props} /> : <WrittenInput {...props} />;
};

/** One step up or down, as large as a thumb on a screen that is touched. */
export const StepButton = ({ handled, by }: { readonly handled: Handled; readonly by: 1 | -1 }) => (
  <button
    type="button"
    className="step"
    tabIndex={-1}
    disabled={handled.number === undefined}
    aria-label={`${by > 0 ? 'More' : 'Less'}: ${handled.control.field.label}`}
    data-path={`${handled.control.path}:${by > 0 ? 'more' : 'less'}`}
    onClick={(event) => handled.step(by * (event.shiftKey ? 10 : 1))}
  >
    {by > 0 ? '+' : '\u2212'}
  </button>
);
