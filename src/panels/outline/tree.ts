import type { ItemRef, Project } from '../../model/project.ts';
import { SURFACES } from '../../model/schema/room.ts';
import { capital, itemTitle, surfaceTitle } from '../naming.ts';

/** One line of the outline. `item` is null for the room itself (nothing chosen); undefined for a mere heading. */
export interface Branch {
  readonly key: string;
  readonly title: string;
  readonly note: string;
  readonly item: ItemRef | null | undefined;
  readonly children: readonly Branch[];
}

const leaf = (item: ItemRef, title: string, note = ''): Branch => ({
  key: `${item.kind}:${item.id}`,
  title,
  note,
  item,
  children: [],
});

const heading = (key: string, title: string, children: readonly Branch[]): readonly Branch[] =>
  children.length === 0 ? [] : [{ key, title, note: String(children.length), item: undefined, children }];

/** The document as a tree: what the scene shows, for eyes that do not see it and hands that do not point. */
export const outlineOf = (project: Project): readonly Branch[] => {
  const { room, rows, loudspeakers, subwoofers } = project;
  return [
    {
      key: 'room',
      title: 'Room',
      note: '',
      item: null,
      children: [
        ...SURFACES.map((id) => leaf({ kind: 'surface', id }, surfaceTitle(id))),
        ...room.patches.map(({ id }) => leaf({ kind: 'patch', id }, `Patch ${id}`)),
      ],
    },
    leaf({ kind: 'picture', id: 'picture' }, 'Picture', project.picture.kind),
    ...rows.map((row, r) => ({
      key: `row:${row.id}`,
      title: `Row ${r + 1}`,
      note: row.furniture,
      item: { kind: 'row', id: row.id } as const,
      children: row.seats.map(({ id }, s) =>
        leaf({ kind: 'seat', id }, `Seat ${s + 1}`, id === project.referenceSeat ? 'reference' : ''),
      ),
    })),
    ...heading(
      'loudspeakers',
      'Loudspeakers',
      loudspeakers.map(({ id, channel }) => leaf({ kind: 'loudspeaker', id }, id, channel)),
    ),
    ...heading(
      'subwoofers',
      'Subwoofers',
      subwoofers.map(({ id }) => leaf({ kind: 'subwoofer', id }, id)),
    ),
    ...heading(
      'openings',
      'Doors and windows',
      room.openings.map(({ id, surface }) => {
        const item = { kind: 'opening', id } as const;
        return leaf(item, itemTitle(project, item), `${surfaceTitle(surface).toLowerCase()}`);
      }),
    ),
    ...heading(
      'objects',
      'Furniture and fittings',
      room.objects.map(({ id, name, kind }) => leaf({ kind: 'object', id }, name || capital(id), kind)),
    ),
  ];
};

export interface Line {
  readonly branch: Branch;
  readonly level: number;
  readonly parent: string | null;
  readonly position: number;
  readonly siblings: number;
}

/** The lines that can be seen when only the branches in `open` are unfolded, top to bottom. */
export const linesOf = (branches: readonly Branch[], open: ReadonlySet<string>): Line[] => {
  const lines: Line[] = [];
  const add = (list: readonly Branch[], level: number, parent: string | null) => {
    for (const [i, branch] of list.entries()) {
      lines.push({ branch, level, parent, position: i + 1, siblings: list.length });
      if (open.has(branch.key)) add(branch.children, level + 1, branch.key);
    }
  };
  add(branches, 1, null);
  return lines;
};

/** The branch an item stands in, so that choosing it in the scene can unfold the outline; null at the top. */
export const parentOf = (branches: readonly Branch[], itemKey: string): string | null => {
  for (const branch of branches) {
    if (branch.children.some(({ key }) => key === itemKey)) return branch.key;
  }
  return null;
};

export const keyOf = (item: ItemRef | null): string => (item === null ? 'room' : `${item.kind}:${item.id}`);

/** What a key does in the outline: go to a line, fold or unfold one, or choose it. */
export type OutlineMove =
  | { readonly kind: 'go'; readonly key: string }
  | { readonly kind: 'fold'; readonly key: string; readonly unfolded: boolean }
  | { readonly kind: 'pick' };

/** The tree keys every desktop has: up, down, first, last, right into a branch, left out of it, Enter chooses. */
export const outlineMove = (
  lines: readonly Line[],
  open: ReadonlySet<string>,
  at: string,
  pressed: string,
): OutlineMove | null => {
  const i = lines.findIndex(({ branch }) => branch.key === at);
  if (i < 0) return null;
  const { branch, parent } = lines[i];
  const folds = branch.children.length > 0;
  const unfolded = folds && open.has(branch.key);
  const go = (key: string): OutlineMove => ({ kind: 'go', key });
  switch (pressed) {
    case 'ArrowDown':
      return go(lines[Math.min(i + 1, lines.length - 1)].branch.key);
    case 'ArrowUp':
      return go(lines[Math.max(i - 1, 0)].branch.key);
    case 'Home':
      return go(lines[0].branch.key);
    case 'End':
      return go(lines[lines.length - 1].branch.key);
    case 'ArrowRight':
      if (!folds) return null;
      return unfolded ? go(branch.children[0].key) : { kind: 'fold', key: branch.key, unfolded: true };
    case 'ArrowLeft':
      if (unfolded) return { kind: 'fold', key: branch.key, unfolded: false };
      return parent === null ? null : go(parent);
    case 'Enter':
    case ' ':
      return { kind: 'pick' };
    default:
      return null;
  }
};
