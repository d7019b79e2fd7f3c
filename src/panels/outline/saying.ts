import type { Finding } from '../../analysis/types.ts';
import { isListed, itemsOf, keysOf } from '../../model/items.ts';
import { valueAt } from '../../model/paths.ts';
import type { ItemRef, Project } from '../../model/project.ts';
import type { DocumentState } from '../../state/document.ts';
import { placeText } from '../../words/places.ts';
import { ruleTitle } from '../../words/rules.ts';
import { itemTitle, seatTitle } from '../naming.ts';

const KINDS = ['row', 'loudspeaker', 'subwoofer', 'opening', 'patch', 'object', 'seat'] as const;

/** More than this is told as a number of things. */
const MOST_NAMED = 2;

const refsOf = (project: Project): readonly ItemRef[] => [
  ...KINDS.filter((kind) => kind === 'seat' || isListed(kind)).flatMap((kind) =>
    itemsOf(project, kind).map(({ id }): ItemRef => ({ kind, id })),
  ),
  { kind: 'picture', id: 'picture' },
];

/** What moved between two documents, as sentences; null when nothing that has a place did. */
export const changeText = (before: Project, after: Project): string | null => {
  const { units } = after.display;
  const moved = refsOf(after).filter((ref) => {
    const was = keysOf(before, ref);
    const now = keysOf(after, ref);
    if (!was || !now || valueAt(before, was) === valueAt(after, now)) return false;
    return placeText(before, ref, units) !== placeText(after, ref, units);
  });
  // Seats that go with their row are told by it.
  const rows = moved.filter(({ kind }) => kind === 'row');
  const told = rows.length > 0 ? moved.filter(({ kind }) => kind !== 'seat') : moved;
  if (told.length === 0) return null;
  const named = told
    .slice(0, MOST_NAMED)
    .map((ref) => `${itemTitle(after, ref)}: ${placeText(after, ref, units)}.`)
    .join(' ');
  return told.length > MOST_NAMED ? `${named} ${told.length - MOST_NAMED} more moved.` : named;
};

/** Which findings changed their verdict: the ones that got worse first. */
export const verdictText = (before: readonly Finding[], after: readonly Finding[], project: Project): string | null => {
  const was = new Map(before.map(({ id, verdict }) => [id, verdict]));
  const changed = after.filter(({ id, verdict }) => (was.get(id) ?? 'met') !== verdict);
  if (changed.length === 0) return null;
  const rank = { missed: 0, close: 1, met: 2 };
  const sorted = [...changed].sort((a, b) => rank[a.verdict] - rank[b.verdict]);
  const named = sorted.slice(0, MOST_NAMED).map(({ rule, seat, item, verdict }) => {
    const of = seat ? ` at ${seatTitle(project, seat)}` : item ? ` for ${item}` : '';
    return `Now ${verdict}: ${ruleTitle(rule)}${of}.`;
  });
  const more = changed.length - named.length;
  const others = more === 1 ? 'One more finding' : `${more} more findings`;
  return more > 0 ? `${named.join(' ')} ${others} changed.` : named.join(' ');
};

/** What was taken back or done again to come to this document: "Undone: Move row 1."; null where it was come to otherwise. */
export const steppedText = ({ stepped, revision }: Pick<DocumentState, 'stepped' | 'revision'>): string | null => {
  if (!stepped || stepped.revision !== revision) return null;
  return `${stepped.way === 'undone' ? 'Undone' : 'Redone'}: ${stepped.label.replace(/\.$/, '')}.`;
};
