import type { ItemRef } from '../../model/project.ts';
import { sameItem } from '../hooks.ts';
import { keyOf, type Line } from './tree.ts';

/** What is chosen once a thing was added to it, or taken out of it. The thing touched last leads. */
export const gathered = (chosen: readonly ItemRef[], item: ItemRef): readonly ItemRef[] => {
  const others = chosen.filter((one) => !sameItem(one, item));
  return others.length < chosen.length ? others : [item, ...others];
};

/** Everything between the line that is chosen and another, both included; the other leads. */
export const rangeOf = (lines: readonly Line[], fromKey: string, toKey: string): readonly ItemRef[] => {
  const items = lines.flatMap(({ branch }) => (branch.item ? [branch.item] : []));
  const to = items.findIndex((item) => keyOf(item) === toKey);
  const from = items.findIndex((item) => keyOf(item) === fromKey);
  if (to < 0) return [];
  if (from < 0) return [items[to]];
  const range = items.slice(Math.min(from, to), Math.max(from, to) + 1);
  return to < from ? range : range.reverse();
};
