import { type KeyboardEvent, type MouseEvent, useEffect, useMemo, useRef, useState } from 'react';
import { useDocument, useSession } from '../../state/view.tsx';
import { useChoose } from '../hooks.ts';
import { keyOf, type Line, linesOf, outlineMove, outlineOf, parentOf } from './tree.ts';
import './outline.css';

const withKey = (open: ReadonlySet<string>, key: string, unfolded: boolean): ReadonlySet<string> => {
  const next = new Set(open);
  if (unfolded) next.add(key);
  else next.delete(key);
  return next;
};

interface LineProps {
  readonly line: Line;
  readonly unfolded: boolean;
  readonly chosen: boolean;
  readonly tabStop: boolean;
  onPick(): void;
  onFold(): void;
  onKeyDown(event: KeyboardEvent): void;
}

const OutlineLine = ({ line, unfolded, chosen, tabStop, onPick, onFold, onKeyDown }: LineProps) => {
  const { branch, level } = line;
  const folds = branch.children.length > 0;
  const onClick = ({ target }: MouseEvent) =>
    target instanceof HTMLElement && target.dataset.fold === 'true' ? onFold() : onPick();
  return (
    <div
      role="treeitem"
      className={chosen ? 'line is-chosen' : 'line'}
      aria-level={level}
      aria-posinset={line.position}
      aria-setsize={line.siblings}
      aria-expanded={folds ? unfolded : undefined}
      aria-selected={chosen}
      tabIndex={tabStop ? 0 : -1}
      data-key={branch.key}
      style={{ paddingLeft: 20 + (level - 1) * 18 }}
      onClick={onClick}
      onKeyDown={onKeyDown}
    >
      <span className={unfolded ? 'twist is-open' : 'twist'} aria-hidden="true" data-fold={folds} />
      <span className="line-title">{branch.title}</span>
      <small>{branch.note}</small>
    </div>
  );
};

/** The accessible scene: everything in the document, chosen by click or by keyboard. */
export const Outline = () => {
  const project = useDocument((state) => state.project);
  const selection = useSession((state) => state.selection);
  const choose = useChoose();
  const tree = useRef<HTMLDivElement>(null);
  const branches = useMemo(() => outlineOf(project), [project]);
  const [open, setOpen] = useState<ReadonlySet<string>>(() => new Set(project.rows.map(({ id }) => `row:${id}`)));
  const [at, setAt] = useState('room');
  const lines = linesOf(branches, open);
  const chosenKey = keyOf(selection);

  useEffect(() => {
    const parent = parentOf(branches, chosenKey);
    if (parent !== null) setOpen((now) => withKey(now, parent, true));
    setAt(chosenKey);
  }, [branches, chosenKey]);
  const seen = lines.some(({ branch }) => branch.key === chosenKey);
  useEffect(() => {
    if (seen)
      tree.current?.querySelector(`[data-key="${CSS.escape(chosenKey)}"]`)?.scrollIntoView({ block: 'nearest' });
  }, [seen, chosenKey]);

  const stop = lines.some(({ branch }) => branch.key === at) ? at : lines[0].branch.key;
  const goTo = (key: string) => {
    setAt(key);
    tree.current?.querySelector<HTMLElement>(`[data-key="${CSS.escape(key)}"]`)?.focus();
  };
  const fold = (key: string, unfolded: boolean) => setOpen((now) => withKey(now, key, unfolded));
  const pick = ({ branch }: Line) => {
    goTo(branch.key);
    if (branch.item === undefined) fold(branch.key, !open.has(branch.key));
    else if (branch.item?.kind === 'seat') choose.seat(branch.item.id);
    else choose.item(branch.item);
  };
  const onKeyDown = (event: KeyboardEvent, line: Line) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const move = outlineMove(lines, open, line.branch.key, event.key);
    if (!move) return;
    event.preventDefault();
    event.stopPropagation();
    if (move.kind === 'go') goTo(move.key);
    else if (move.kind === 'fold') fold(move.key, move.unfolded);
    else pick(line);
  };

  return (
    <div className="outline scrolls" role="tree" aria-label="Outline of the room" ref={tree}>
      {lines.map((line) => (
        <OutlineLine
          key={line.branch.key}
          line={line}
          unfolded={open.has(line.branch.key)}
          chosen={line.branch.key === chosenKey}
          tabStop={line.branch.key === stop}
          onPick={() => pick(line)}
          onFold={() => fold(line.branch.key, !open.has(line.branch.key))}
          onKeyDown={(event) => onKeyDown(event, line)}
        />
      ))}
    </div>
  );
};
