import { useId } from 'react';
import { isNumberQuantity } from '../../words/quantities.ts';
import type { Control } from './controls.ts';
import { ControlInput, StepButton } from './inputs.tsx';
import { useControl } from './useControl.ts';
import { useScrub } from './useScrub.ts';

/** A label, its control, and what was wrong with the last thing written. A number's label turns it when dragged. */
export const FieldRow = ({ control }: { readonly control: Control }) => {
  const id = useId();
  const handled = useControl(control);
  const scrub = useScrub(handled);
  const { field } = control;
  const isNumber = isNumberQuantity(field.quantity);
  const { says, value, put } = handled;
  return (
    <div className={isNumber ? 'field is-number' : 'field'}>
      <label htmlFor={id} className={isNumber ? 'turns' : undefined} {...(isNumber ? scrub : {})}>
        {field.label}
      </label>
      <span className="field-value">
        {isNumber && <StepButton handled={handled} by={-1} />}
        <ControlInput handled={handled} id={id} describedBy={`${id}-help`} />
        {isNumber && <StepButton handled={handled} by={1} />}
      </span>
      <span className="unseen" id={`${id}-help`}>
        {field.help}
      </span>
      {field.absent && value !== undefined && field.quantity !== 'flag' && !field.choices && (
        <button type="button" className="word-button usual" onClick={() => put(undefined)}>
          as usual<span className="unseen">: {field.label}</span>
        </button>
      )}
      {says !== null && <p role="alert">{says}</p>}
    </div>
  );
};
