import { type KeyboardEvent, type MouseEvent, useEffect, useRef, useState } from 'react';
import type { Line } from './tree.ts';

interface LineProps {
  readonly line: Line;
  readonly unfolded: boolean;
  readonly chosen: boolean;
  readonly moving: boolean;
  readonly tabStop: boolean;
  onPick(event: { readonly shiftKey: boolean; readonly ctrlKey: boolean; readonly metaKey: boolean }): void;
  onFold(): void;
  onKeyDown(event: KeyboardEvent): void;
}

/** One line of the tree. */
export const OutlineLine = (props: LineProps) => {
  const { line, unfolded, chosen, moving, tabStop, onPick, onFold, onKeyDown } = props;
  const { branch, level } = line;
  const folds = branch.children.length > 0;
  const onClick = (event: MouseEvent) =>
    event.target instanceof HTMLElement && event.target.dataset.fold === 'true' ? onFold() : onPick(event);
  return (
    <div
      role="treeitem"
      className={['line', chosen && 'is-chosen', moving && 'is-moving'].filter(Boolean).join(' ')}
      aria-level={level}
      aria-posinset={line.position}
      aria-setsize={line.siblings}
      aria-expanded={folds ? unfolded : undefined}
      aria-selected={chosen}
      tabIndex={tabStop ? 0 : -1}
      data-key={branch.key}
      style={{ paddingLeft: 20 + (level - 1) * 16 }}
      onClick={onClick}
      onKeyDown={onKeyDown}
    >
      <span className={unfolded ? 'twist is-open' : 'twist'} aria-hidden="true" data-fold={folds} />
      <span className="line-title">{branch.title}</span>
      {branch.locked && <small className="line-locked">locked</small>}
      <small>{moving ? 'arrows move it' : branch.note}</small>
    </div>
  );
};

interface RenameProps {
  readonly line: Line;
  readonly id: string;
  onDone(id: string | null): void;
}

/** The line while its name is written: Enter takes it, Escape leaves it as it was. */
export const RenameLine = ({ line, id, onDone }: RenameProps) => {
  const [text, setText] = useState(id);
  const field = useRef<HTMLInputElement>(null);
  const done = useRef(false);
  useEffect(() => field.current?.select(), []);
  const end = (next: string | null) => {
    if (done.current) return;
    done.current = true;
    onDone(next);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    event.stopPropagation();
    if (event.key !== 'Enter' && event.key !== 'Escape') return;
    event.preventDefault();
    end(event.key === 'Enter' ? text.trim() : null);
  };
  return (
    <div
      role="treeitem"
      className="line is-chosen"
      aria-level={line.level}
      aria-posinset={line.position}
      aria-setsize={line.siblings}
      aria-selected
      tabIndex={-1}
      data-key={line.branch.key}
      style={{ paddingLeft: 20 + (line.level - 1) * 16 }}
    >
      <span className="twist" aria-hidden="true" />
      <input
        ref={field}
        type="text"
        className="line-name"
        aria-label={`Name of ${line.branch.title}`}
        value={text}
        maxLength={64}
        autoComplete="off"
        spellCheck={false}
        onChange={(event) => setText(event.target.value)}
        onBlur={() => end(text.trim())}
        onKeyDown={onKeyDown}
      />
    </div>
  );
};
