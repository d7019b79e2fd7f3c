import { useId, useState } from 'react';
import { addLine, removeLine } from '../../model/fields/tables.ts';
import type { Key } from '../../model/paths.ts';
import type { Command } from '../../state/document.ts';
import { useView } from '../../state/view.tsx';
import { refusalText } from '../../words/refusals.ts';
import { useUnits } from '../hooks.ts';
import type { Control } from './controls.ts';
import type { PlacedTable } from './form.ts';
import { tablePath } from './form.ts';
import { ControlInput } from './inputs.tsx';
import { useControl } from './useControl.ts';

const Cell = ({ control }: { readonly control: Control }) => {
  const id = useId();
  const handled = useControl(control);
  return (
    <td>
      <ControlInput handled={handled} id={id} name={control.field.label} />
      {handled.says !== null && <p role="alert">{handled.says}</p>}
    </td>
  );
};

const columnTitle = ({ field }: Control): string => {
  const title = field.label.slice(field.label.indexOf(': ') + 2);
  return `${title.charAt(0).toUpperCase()}${title.slice(1)}`;
};

/** Lines of a list as a table: each number a field of its own, a line added at the end, any line taken away. */
export const TableEditor = ({ placed }: { readonly placed: PlacedTable }) => {
  const { table, keys, lines } = placed;
  const { document } = useView();
  const units = useUnits();
  const [says, setSays] = useState<string | null>(null);
  const apply = (label: string, command: Command) => {
    const refusal = document.actions.apply(label, command);
    setSays(refusal ? refusalText(refusal, units, document.getState().project) : null);
  };
  const remove = (line: Key, name: string) =>
    apply(`Remove ${name}`, (project) => removeLine(project, table, keys, line));
  return (
    <div className="lines" data-path={tablePath(placed)}>
      <table>
        <caption>{table.title}</caption>
        {lines.length > 0 && (
          <thead>
            <tr>
              <th scope="col">
                <span className="unseen">{table.title}</span>
              </th>
              {lines[0].controls.map((control) => (
                <th key={control.path} scope="col">
                  {columnTitle(control)}
                </th>
              ))}
              <th scope="col">
                <span className="unseen">Remove</span>
              </th>
            </tr>
          </thead>
        )}
        <tbody>
          {lines.map(({ key, name, controls }) => (
            <tr key={key}>
              <th scope="row">{name}</th>
              {controls.map((control) => (
                <Cell key={control.path} control={control} />
              ))}
              <td className="line-away">
                <button type="button" className="step" aria-label={`Remove ${name}`} onClick={() => remove(key, name)}>
                  ×
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <button
        type="button"
        className="word-button is-brass"
        onClick={() => apply(`Add to ${table.title.toLowerCase()}`, (project) => addLine(project, table, keys))}
      >
        Add a line<span className="unseen"> to {table.title}</span>
      </button>
      {says !== null && <p role="alert">{says}</p>}
    </div>
  );
};
