import { useMemo } from 'react';
import type { Vec3 } from '../math/vec3.ts';
import type { Added } from '../model/commands/add-place.ts';
import { allLocked, duplicateItems, lockItems, removeItems, shiftItems } from '../model/commands/group.ts';
import { renameItem } from '../model/commands/items.ts';
import type { ItemRef, Project } from '../model/project.ts';
import type { Command } from '../state/document.ts';
import { useView, type View } from '../state/view.tsx';
import { refusalText } from '../words/refusals.ts';
import { applyInBurst } from './burst.ts';
import { itemTitle } from './naming.ts';

/** Has the page's one live region say something; the same words said again are heard again. */
export const announce = ({ session }: View, text: string): void =>
  session.setState(({ announcement }) => ({ announcement: { text, count: announcement.count + 1 } }));

/** What is chosen, the first of it first. */
export const chosenItems = ({ session }: View): readonly ItemRef[] => {
  const { selection, alsoSelected } = session.getState();
  return selection ? [selection, ...alsoSelected] : [];
};

const titleOf = (project: Project, refs: readonly ItemRef[]): string =>
  refs.length === 1 ? itemTitle(project, refs[0]) : `${refs.length} things`;

/** Commands on whole things, as every panel gives them: what was done or why not is said. */
export const itemActions = (view: View) => {
  const { document, session } = view;
  const project = () => document.getState().project;
  const run = (label: string, command: Command): boolean => {
    const refusal = document.actions.apply(label, command);
    if (refusal) announce(view, refusalText(refusal, project().display.units, project()));
    return refusal === null;
  };
  const choose = ([selection, ...alsoSelected]: readonly ItemRef[]) =>
    session.setState({
      selection: selection ?? null,
      alsoSelected,
      ...(selection?.kind === 'seat' ? { seatId: selection.id } : {}),
    });
  return {
    choose,
    add(label: string, make: (from: Project) => Added): ItemRef | null {
      let made: readonly ItemRef[] = [];
      const done = run(label, (from) => {
        const { edit, item, also = [] } = make(from);
        made = item ? [item, ...also] : [];
        return edit;
      });
      if (!done || made.length === 0) return null;
      choose(made);
      announce(view, `Added: ${made.map((one) => itemTitle(project(), one)).join(', ')}.`);
      return made[0];
    },
    duplicate(refs: readonly ItemRef[]): void {
      let copies: readonly ItemRef[] = [];
      const done = run(`Duplicate ${titleOf(project(), refs)}`, (from) => {
        const answer = duplicateItems(from, refs);
        copies = answer.copies;
        return answer.edit;
      });
      if (done && copies.length > 0) {
        choose(copies);
        announce(view, `Copied: ${titleOf(project(), copies)}.`);
      }
    },
    remove(refs: readonly ItemRef[]): boolean {
      const title = titleOf(project(), refs);
      const done = run(`Remove ${title}`, (from) => removeItems(from, refs));
      if (done) {
        choose([]);
        announce(view, `Removed: ${title}.`);
      }
      return done;
    },
    lock(refs: readonly ItemRef[]): void {
      const held = allLocked(project(), refs);
      const title = titleOf(project(), refs);
      if (run(`${held ? 'Unlock' : 'Lock'} ${title}`, (from) => lockItems(from, refs, !held)))
        announce(view, `${held ? 'Unlocked' : 'Locked'}: ${title}.`);
    },
    rename(ref: ItemRef, id: string): boolean {
      return run(`Rename ${itemTitle(project(), ref)}`, (from) => renameItem(from, ref, id));
    },
    nudge(refs: readonly ItemRef[], byM: Vec3): void {
      const label = `Move ${titleOf(project(), refs)}`;
      const before = project();
      const pairs = !session.getState().pairsReleased;
      const refusal = applyInBurst(document, label, (from) => shiftItems(from, refs, byM, pairs));
      if (refusal) announce(view, refusalText(refusal, before.display.units, before));
      else if (project() === before) announce(view, `${titleOf(before, refs)} cannot go that way.`);
    },
  };
};

export type ItemActionsOf = ReturnType<typeof itemActions>;

export const useItemActions = (): ItemActionsOf => {
  const view = useView();
  return useMemo(() => itemActions(view), [view]);
};
