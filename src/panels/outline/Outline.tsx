import { type KeyboardEvent, useEffect, useMemo, useRef, useState } from 'react';
import { isListed } from '../../model/items.ts';
import type { ItemRef } from '../../model/project.ts';
import { useRestingProject } from '../../state/steady-project.ts';
import { useSession, useView } from '../../state/view.tsx';
import { nudgeStepM } from '../../words/quantities.ts';
import { endBurst } from '../burst.ts';
import { sameItem, useUnits } from '../hooks.ts';
import { announce, chosenItems, useItemActions } from '../useItemActions.ts';
import { AddMenu, type MenuHandle } from './AddMenu.tsx';
import { HistoryMenu } from './HistoryMenu.tsx';
import { commandOf, nudgeOf, outlineMove } from './keys.ts';
import { OutlineLine, RenameLine } from './OutlineLine.tsx';
import { gathered, rangeOf } from './selecting.ts';
import { ancestorsOf, keyOf, type Line, linesOf, outlineOf } from './tree.ts';
import './outline.css';

const withKey = (open: ReadonlySet<string>, key: string, unfolded: boolean): ReadonlySet<string> => {
  const next = new Set(open);
  if (unfolded) next.add(key);
  else next.delete(key);
  return next;
};

const renamable = ({ kind }: ItemRef): boolean => kind === 'seat' || isListed(kind);

/** The accessible scene: everything in the document, chosen, moved, named, copied and removed by keyboard or by hand. */
export const Outline = () => {
  const view = useView();
  const units = useUnits();
  const project = useRestingProject();
  const selection = useSession((state) => state.selection);
  const alsoSelected = useSession((state) => state.alsoSelected);
  const actions = useItemActions();
  const tree = useRef<HTMLDivElement>(null);
  const menu = useRef<MenuHandle>(null);
  /** Where the focus goes once the tree has been drawn anew. */
  const wanted = useRef<string | 'chosen' | null>(null);
  const branches = useMemo(() => outlineOf(project), [project]);
  const [open, setOpen] = useState<ReadonlySet<string>>(() => new Set(project.rows.map(({ id }) => `row:${id}`)));
  const [at, setAt] = useState('room');
  const [moving, setMoving] = useState(false);
  const [renaming, setRenaming] = useState<string | null>(null);
  const lines = linesOf(branches, open);
  const chosenKey = keyOf(selection);
  const alsoKeys = new Set(alsoSelected.map(keyOf));

  useEffect(() => {
    const parents = ancestorsOf(branches, chosenKey);
    if (parents.length > 0) setOpen((now) => parents.reduce((set, key) => withKey(set, key, true), now));
    setAt(chosenKey);
  }, [branches, chosenKey]);
  const lineElement = (key: string) => tree.current?.querySelector<HTMLElement>(`[data-key="${CSS.escape(key)}"]`);
  const seen = lines.some(({ branch }) => branch.key === chosenKey);
  useEffect(() => {
    if (seen)
      tree.current?.querySelector(`[data-key="${CSS.escape(chosenKey)}"]`)?.scrollIntoView({ block: 'nearest' });
  }, [seen, chosenKey]);
  useEffect(() => {
    if (wanted.current === null) return;
    const element = lineElement(wanted.current === 'chosen' ? chosenKey : wanted.current);
    if (!element) return;
    wanted.current = null;
    element.focus();
  });

  const stop = lines.some(({ branch }) => branch.key === at) ? at : lines[0].branch.key;
  const goTo = (key: string) => {
    setAt(key);
    setMoving(false);
    lineElement(key)?.focus();
  };
  const fold = (key: string, unfolded: boolean) => setOpen((now) => withKey(now, key, unfolded));
  const pick = ({ branch }: Line, { adds, reaches }: { readonly adds: boolean; readonly reaches: boolean }) => {
    goTo(branch.key);
    if (branch.item === undefined) fold(branch.key, !open.has(branch.key));
    else if (branch.item === null) actions.choose([]);
    else if (reaches) actions.choose(rangeOf(lines, chosenKey, branch.key));
    else if (adds) actions.choose(gathered(chosenItems(view), branch.item));
    else actions.choose([branch.item]);
  };

  /** What a key is about: all that is chosen when the line is part of it, else the line alone, which is then chosen. */
  const meant = (item: ItemRef): readonly ItemRef[] => {
    const chosen = chosenItems(view);
    if (chosen.some((one) => sameItem(one, item))) return chosen;
    actions.choose([item]);
    return [item];
  };
  const neighbourOf = (key: string): string | null => {
    const i = lines.findIndex(({ branch }) => branch.key === key);
    const next = lines[i + 1];
    return next && next.level === lines[i].level ? next.branch.key : (lines[i - 1]?.branch.key ?? null);
  };
  const startMoving = (item: ItemRef) => {
    meant(item);
    setMoving(true);
    announce(view, 'Arrows move it, with Shift ten times as far, Page Up and Page Down its height. Escape ends.');
  };
  const command = (event: KeyboardEvent, item: ItemRef): boolean => {
    const what = commandOf(event.key, event.ctrlKey || event.metaKey);
    if (what === null) return false;
    if (what === 'add') menu.current?.open();
    else if (what === 'move') startMoving(item);
    else if (what === 'lock') actions.lock(meant(item));
    else if (what === 'duplicate') {
      wanted.current = 'chosen';
      actions.duplicate(meant(item));
    } else if (what === 'remove') {
      const next = neighbourOf(keyOf(item));
      if (actions.remove(meant(item))) wanted.current = next;
    } else if (renamable(item)) setRenaming(keyOf(item));
    return true;
  };

  const moved = (event: KeyboardEvent, item: ItemRef): boolean => {
    if (!(moving || event.altKey)) return false;
    if (event.key === 'Escape') {
      setMoving(false);
      endBurst(view.document);
      return true;
    }
    const by = nudgeOf(event.key, nudgeStepM(units), event.shiftKey);
    if (by) actions.nudge(meant(item), by);
    return by !== null;
  };
  const onKeyDown = (event: KeyboardEvent, line: Line) => {
    const { item } = line.branch;
    const choosing = event.key === 'Enter' || event.key === ' ';
    const plain = !(event.ctrlKey || event.metaKey || event.altKey);
    let done = true;
    if (item && moved(event, item)) done = true;
    else if (choosing && !event.altKey) pick(line, { adds: event.ctrlKey || event.metaKey, reaches: event.shiftKey });
    else if (item && !event.altKey && command(event, item)) done = true;
    else if (plain && !item && commandOf(event.key, false) === 'add') menu.current?.open();
    else {
      const move = plain ? outlineMove(lines, open, line.branch.key, event.key) : null;
      if (move?.kind === 'go') goTo(move.key);
      else if (move?.kind === 'fold') fold(move.key, move.unfolded);
      else done = false;
    }
    if (!done) return;
    event.preventDefault();
    event.stopPropagation();
  };
  const onRenamed = (item: ItemRef, id: string | null) => {
    setRenaming(null);
    wanted.current = 'chosen';
    if (id !== null && id !== '' && id !== item.id && actions.rename(item, id)) actions.choose([{ ...item, id }]);
  };

  return (
    <div className="outline">
      <div className="outline-head">
        <AddMenu ref={menu} onAdded={() => (wanted.current = 'chosen')} />
        <HistoryMenu />
      </div>
      <div
        className="outline-tree scrolls"
        role="tree"
        aria-label="Outline of the room"
        aria-multiselectable="true"
        ref={tree}
        onBlur={() => setMoving(false)}
      >
        {lines.map((line) => {
          const { key, item } = line.branch;
          if (item && key === renaming)
            return <RenameLine key={key} line={line} id={item.id} onDone={(id) => onRenamed(item, id)} />;
          const chosen = key === chosenKey || alsoKeys.has(key);
          return (
            <OutlineLine
              key={key}
              line={line}
              unfolded={open.has(key)}
              chosen={chosen}
              moving={moving && key === stop}
              tabStop={key === stop}
              onPick={({ shiftKey, ctrlKey, metaKey }) => pick(line, { adds: ctrlKey || metaKey, reaches: shiftKey })}
              onFold={() => fold(key, !open.has(key))}
              onKeyDown={(event) => onKeyDown(event, line)}
            />
          );
        })}
      </div>
    </div>
  );
};
