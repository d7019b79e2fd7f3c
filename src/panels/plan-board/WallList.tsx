import { type KeyboardEvent, useEffect, useState } from 'react';
import { directionDeg, dropCorner, lengthM, type PlanDraft, setWallLength, splitWall } from '../../model/plan-draft.ts';
import { formatQuantity, parseQuantity } from '../../words/quantities.ts';
import { useUnits } from '../hooks.ts';

const WAYS = ['to the right', 'to the back', 'to the left', 'to the front'];

/** The way a wall runs, in words where it is square with the board. */
const wayOf = (deg: number): string => {
  const quarter = Math.round(deg / 90);
  return Math.abs(deg - quarter * 90) < 0.05 ? WAYS[quarter % 4] : `${deg.toFixed(1)}°`;
};

interface LineProps {
  readonly draft: PlanDraft;
  readonly index: number;
  onChange(draft: PlanDraft): void;
}

const WallLine = ({ draft, index, onChange }: LineProps) => {
  const units = useUnits();
  const a = draft.corners[index];
  const b = draft.corners[(index + 1) % draft.corners.length];
  const written = formatQuantity(lengthM(a, b), 'length', units);
  const [text, setText] = useState(written);
  useEffect(() => setText(written), [written]);
  const take = () => {
    const read = text === written ? undefined : parseQuantity(text, 'length', units);
    if (read !== undefined && read > 0) onChange(setWallLength(draft, index, read));
    else setText(written);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== 'Enter') return;
    event.preventDefault();
    take();
  };
  return (
    <li>
      <label>
        <span>
          Wall {index + 1} <small>{wayOf(directionDeg(a, b))}</small>
        </span>
        <input
          type="text"
          autoComplete="off"
          value={text}
          aria-label={`Length of wall ${index + 1}`}
          onChange={(event) => setText(event.target.value)}
          onBlur={take}
          onKeyDown={onKeyDown}
        />
      </label>
      <button
        type="button"
        className="word-button"
        aria-label={`A corner in the middle of wall ${index + 1}`}
        onClick={() => onChange(splitWall(draft, index))}
      >
        Split
      </button>
      <button
        type="button"
        className="word-button"
        aria-label={`Take away the corner where wall ${index + 1} begins`}
        disabled={draft.closed && draft.corners.length <= 3}
        onClick={() => onChange(dropCorner(draft, index))}
      >
        Drop
      </button>
    </li>
  );
};

/** Every wall with its length as a number: the board for hands that do not point. */
export const WallList = ({ draft, onChange }: Omit<LineProps, 'index'>) => {
  const count = draft.closed ? draft.corners.length : Math.max(0, draft.corners.length - 1);
  if (count === 0) return null;
  const lines = Array.from({ length: count }, (_, index) => ({ key: `wall ${index + 1}`, index }));
  return (
    <ol className="plan-walls-list" aria-label="Walls">
      {lines.map(({ key, index }) => (
        <WallLine key={key} draft={draft} index={index} onChange={onChange} />
      ))}
    </ol>
  );
};
