import { type FormEvent, useId, useState } from 'react';
import { fieldOf } from '../../model/fields/registry.ts';
import type { RoomLengths } from '../../model/presets/empty-room.ts';
import { formatQuantity, rangeText, readInput } from '../../words/quantities.ts';
import { useUnits } from '../hooks.ts';

const LENGTHS = [
  { key: 'widthM', word: 'Wide', field: fieldOf('room.plan.widthM') },
  { key: 'lengthM', word: 'Long', field: fieldOf('room.plan.lengthM') },
  { key: 'heightM', word: 'High', field: fieldOf('room.ceiling.heightM') },
] as const;

type Key = (typeof LENGTHS)[number]['key'];

/** An empty room in one step: three lengths in the person's own way of writing. */
export const BeginForm = ({ onBegin }: { onBegin(lengths: RoomLengths): void }) => {
  const id = useId();
  const units = useUnits();
  const [texts, setTexts] = useState<Record<Key, string>>(() => {
    const written = (metres: number) => formatQuantity(metres, 'length', units);
    return { widthM: written(4), lengthM: written(5.5), heightM: written(2.5) };
  });
  const [says, setSays] = useState<Partial<Record<Key, string>>>({});

  const begin = (event: FormEvent) => {
    event.preventDefault();
    const lengths: Partial<Record<Key, number>> = {};
    const wrong: Partial<Record<Key, string>> = {};
    for (const { key, field } of LENGTHS) {
      const read = readInput(texts[key], field, units);
      if (read.ok) lengths[key] = read.value;
      else wrong[key] = read.says;
    }
    setSays(wrong);
    const { widthM, lengthM, heightM } = lengths;
    if (widthM !== undefined && lengthM !== undefined && heightM !== undefined) onBegin({ widthM, lengthM, heightM });
  };

  return (
    <form className="begin" onSubmit={begin} noValidate>
      {LENGTHS.map(({ key, word, field }) => (
        <div key={key} className="begin-length">
          <label htmlFor={`${id}-${key}`}>{word}</label>
          <input
            id={`${id}-${key}`}
            type="text"
            autoComplete="off"
            spellCheck={false}
            value={texts[key]}
            aria-describedby={`${id}-${key}-says`}
            aria-invalid={says[key] !== undefined}
            onFocus={({ target }) => target.select()}
            onChange={({ target }) => setTexts((now) => ({ ...now, [key]: target.value }))}
          />
          <small id={`${id}-${key}-says`} role={says[key] ? 'alert' : undefined}>
            {says[key] ?? rangeText(field, units)}
          </small>
        </div>
      ))}
      <button type="submit" className="sheet-button">
        Begin this room
      </button>
    </form>
  );
};
