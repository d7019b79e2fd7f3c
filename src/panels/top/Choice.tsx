import { useId } from 'react';

export interface Option<T extends string> {
  readonly value: T;
  readonly word: string;
  readonly key?: string;
}

interface ChoiceProps<T extends string> {
  readonly label: string;
  readonly options: readonly Option<T>[];
  readonly value: T;
  readonly quiet?: boolean;
  onChoose(value: T): void;
  /** The chosen one has been pressed again. */
  onAgain?(value: T): void;
}

/** One of a few words, as radio buttons drawn in a line. */
export const Choice = <T extends string>({ label, options, value, quiet = false, ...choice }: ChoiceProps<T>) => {
  const name = useId();
  return (
    <fieldset className={quiet ? 'choice is-quiet' : 'choice'}>
      <legend className="unseen">{label}</legend>
      {options.map((option) => (
        <label key={option.value} className={option.value === value ? 'is-chosen' : undefined}>
          <input
            type="radio"
            name={name}
            value={option.value}
            checked={option.value === value}
            onChange={() => choice.onChoose(option.value)}
            onClick={() => option.value === value && choice.onAgain?.(value)}
            aria-keyshortcuts={option.key}
          />
          {option.word}
        </label>
      ))}
    </fieldset>
  );
};

interface SwitchProps {
  readonly word: string;
  readonly on: boolean;
  readonly shortcut: string;
  onChange(on: boolean): void;
}

/** Something shown or not: a small lamp beside its word, lit when shown. */
export const Switch = ({ word, on, shortcut, onChange }: SwitchProps) => (
  <button type="button" className="switch" aria-pressed={on} aria-keyshortcuts={shortcut} onClick={() => onChange(!on)}>
    <i aria-hidden="true" />
    {word}
  </button>
);
