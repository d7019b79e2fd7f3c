import { Components, createPlugin, type LevaInputProps, useDrag, useInputContext } from 'leva/plugin';
import type { KeyboardEvent } from 'react';
import { formatQuantity, isNumberQuantity, readInput, stepFor } from '../../words/quantities.ts';
import type { UnitSystem } from '../../words/quantities-length.ts';
import type { Control } from '../parameters/controls.ts';
import { useDraft } from '../parameters/useDraft.ts';

/** What Leva holds of a value; null where the document holds none. */
export type DialValue = number | string | boolean | null;

/** What one of our values needs to be a dial: how it is written and read, and what a key press does to it. */
export interface DialSettings {
  readonly control: Control;
  readonly units: UnitSystem;
  /** What it counts as while nothing stands there. */
  readonly usual: number | undefined;
  /** So many steps on, as part of a run of key presses. */
  step(by: number): void;
  /** Why what was written is not taken; null takes the words back. */
  say(text: string | null): void;
}

/** `held`, because Leva would take a key named `value` for the whole of the input. */
type DialInput = DialSettings & { readonly held: DialValue };
type DialProps = LevaInputProps<DialValue, DialSettings>;

const PX_PER_STEP = 3;

const writtenOf = (value: DialValue, { control: { field }, units }: DialSettings): string =>
  typeof value === 'number' && isNumberQuantity(field.quantity)
    ? formatQuantity(value, field.quantity, units)
    : String(value ?? '');

/** The knob: dragged sideways it turns the number by its step, ten with Shift. Leva says when the drag begins and ends. */
const Knob = () => {
  const { value, settings, onUpdate } = useInputContext<DialProps>();
  const { field } = settings.control;
  const number = typeof value === 'number' ? value : settings.usual;
  const bind = useDrag(({ movement: [dx], shiftKey, memo }) => {
    const start = typeof memo === 'number' ? memo : number;
    if (start === undefined) return memo;
    const by = Math.round(dx / PX_PER_STEP) * (shiftKey ? 10 : 1) * stepFor(field, settings.units);
    if (by !== 0 || memo !== undefined)
      onUpdate(Math.min(field.max ?? Infinity, Math.max(field.min ?? -Infinity, Number((start + by).toFixed(6)))));
    return start;
  });
  return <i className="knob" aria-hidden="true" {...bind()} />;
};

const WrittenDial = () => {
  const { id, value, settings, onUpdate, emitOnEditStart, emitOnEditEnd } = useInputContext<DialProps>();
  const { control, units, step, say } = settings;
  const { field } = control;
  const isNumber = isNumberQuantity(field.quantity);
  const written = writtenOf(value, settings);
  const [text, setText] = useDraft(written);
  const put = (next: DialValue) => {
    say(null);
    emitOnEditStart();
    onUpdate(next);
    emitOnEditEnd();
  };
  const take = () => {
    if (text === written) return;
    if (text.trim() === '' && field.optional) return put(null);
    if (!isNumber) return put(text);
    const read = readInput(text, field, units);
    if (read.ok) put(read.value);
    else say(read.says);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    if (event.key === 'Enter') take();
    else if (event.key === 'Escape') {
      setText(written);
      say(null);
    } else if (isNumber && (event.key === 'ArrowUp' || event.key === 'ArrowDown'))
      step((event.key === 'ArrowUp' ? 1 : -1) * (event.shiftKey ? 10 : 1));
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    <span className="dial">
      {isNumber && <Knob />}
      <input
        id={id}
        type="text"
        autoComplete="off"
        spellCheck={false}
        value={text}
        placeholder={settings.usual === undefined ? 'as usual' : writtenOf(settings.usual, settings)}
        onFocus={(event) => event.target.select()}
        onChange={(event) => setText(event.target.value)}
        onBlur={take}
        onKeyDown={onKeyDown}
      />
    </span>
  );
};

const ChoiceDial = () => {
  const { id, value, settings, onUpdate } = useInputContext<DialProps>();
  const { field, word } = settings.control;
  const now = String(value ?? '');
  const choices = field.choices ?? [];
  return (
    <select id={id} className="dial" value={now} onChange={({ target }) => onUpdate(target.value || null)}>
      {(now === '' || field.absent) && <option value="">as usual</option>}
      {now !== '' && !choices.includes(now) && <option value={now}>{word(now)}</option>}
      {choices.map((choice) => (
        <option key={choice} value={choice}>
          {word(choice)}
        </option>
      ))}
    </select>
  );
};

const FlagDial = () => {
  const { id, value, settings, onUpdate } = useInputContext<DialProps>();
  return (
    <input
      id={id}
      type="checkbox"
      className="dial-flag"
      checked={value === true}
      onChange={({ target }) => onUpdate(target.checked || !settings.control.field.absent ? target.checked : null)}
    />
  );
};

const Dial = () => {
  const { label, settings } = useInputContext<DialProps & { readonly label: string }>();
  const { choices, quantity } = settings.control.field;
  return (
    <Components.Row input>
      <Components.Label>{label}</Components.Label>
      {choices ? <ChoiceDial /> : quantity === 'flag' ? <FlagDial /> : <WrittenDial />}
    </Components.Row>
  );
};

/** One value of ours as an input of Leva's. */
export const dial = createPlugin<DialInput, DialValue, DialSettings>({
  component: Dial,
  normalize: ({ held, ...settings }) => ({ value: held, settings }),
});
