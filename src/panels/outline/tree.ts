import { partsOf } from '../../model/commands/add-opening.ts';
import type { ItemRef, Project } from '../../model/project.ts';
import { roomShape } from '../../model/room/shape.ts';
import { SURFACES } from '../../model/schema/room.ts';
import { formatLength } from '../../words/quantities-length.ts';
import { capital, itemTitle, surfaceTitle } from '../naming.ts';

/** One line of the outline. `item` is null for the room itself (nothing chosen); undefined for a mere heading. */
export interface Branch {
  readonly key: string;
  readonly title: string;
  readonly note: string;
  readonly item: ItemRef | null | undefined;
  readonly locked: boolean;
  readonly children: readonly Branch[];
}

interface Entry {
  readonly id: string;
  readonly locked?: boolean;
}

const leaf = (item: ItemRef, title: string, note = '', entry?: Entry, children: readonly Branch[] = []): Branch => ({
  key: `${item.kind}:${item.id}`,
  title,
  note,
  item,
  locked: entry?.locked === true,
  children,
});

const heading = (key: string, title: string, children: readonly Branch[]): readonly Branch[] =>
  children.length === 0
    ? []
    : [{ key, title, note: String(children.length), item: undefined, locked: false, children }];

/** What is cut into a surface and lies on it. */
const partBranches = (project: Project, surface: string): readonly Branch[] => {
  const { openings, patches } = partsOf(project, surface);
  return [
    ...openings.map((opening) => {
      const item = { kind: 'opening', id: opening.id } as const;
      return leaf(item, itemTitle(project, item), opening.leaf === 'none' ? '' : opening.leaf, opening);
    }),
    ...patches.map((patch) => {
      const item = { kind: 'patch', id: patch.id } as const;
      return leaf(item, itemTitle(project, item), '', patch);
    }),
  ];
};

/** The surfaces by name, or a polygon's walls edge by edge with floor and ceiling. */
const surfaceIds = (project: Project): readonly string[] => {
  if (project.room.plan.shape === 'rectangle') return SURFACES;
  const edges = roomShape(project).walls.map(({ edge }) => String(edge));
  return [...edges.sort((a, b) => Number(a) - Number(b)), 'floor', 'ceiling'];
};

const surfaceBranch = (project: Project, id: string): Branch => {
  const wall = roomShape(project).walls.find(({ edge }) => String(edge) === id);
  const note = wall ? `${wall.surface}, ${formatLength(wall.lengthM, project.display.units)}` : '';
  return leaf({ kind: 'surface', id }, surfaceTitle(id), note, undefined, partBranches(project, id));
};

const rowNote = ({ furniture, floorM }: Project['rows'][number], units: Project['display']['units']): string =>
  floorM > 0 ? `${furniture}, riser ${formatLength(floorM, units)}` : furniture;

/** The document as a tree: what the scene shows, for eyes that do not see it and hands that do not point. */
export const outlineOf = (project: Project): readonly Branch[] => {
  const { room, rows, loudspeakers, subwoofers, picture } = project;
  const pictureNote = picture.projector ? `${picture.kind}, projector` : picture.kind;
  return [
    {
      key: 'room',
      title: 'Room',
      note: '',
      item: null,
      locked: false,
      children: surfaceIds(project).map((id) => surfaceBranch(project, id)),
    },
    leaf({ kind: 'picture', id: 'picture' }, 'Picture', pictureNote),
    ...rows.map((row, r) =>
      leaf(
        { kind: 'row', id: row.id },
        `Row ${r + 1}`,
        rowNote(row, project.display.units),
        row,
        row.seats.map((seat, s) =>
          leaf(
            { kind: 'seat', id: seat.id },
            `Seat ${s + 1}`,
            seat.id === project.referenceSeat ? 'reference' : '',
            seat,
          ),
        ),
      ),
    ),
    ...heading(
      'loudspeakers',
      'Loudspeakers',
      loudspeakers.map((each) => leaf({ kind: 'loudspeaker', id: each.id }, each.id, each.channel, each)),
    ),
    ...heading(
      'subwoofers',
      'Subwoofers',
      subwoofers.map((each) => leaf({ kind: 'subwoofer', id: each.id }, each.id, '', each)),
    ),
    ...heading(
      'objects',
      'Furniture and fittings',
      room.objects.map((each) => leaf({ kind: 'object', id: each.id }, each.name || capital(each.id), each.kind, each)),
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

/** The branches an item stands in, outermost first, so that choosing it in the scene can unfold the outline. */
export const ancestorsOf = (branches: readonly Branch[], itemKey: string): readonly string[] => {
  for (const { key, children } of branches) {
    if (children.some((child) => child.key === itemKey)) return [key];
    const deeper = ancestorsOf(children, itemKey);
    if (deeper.length > 0) return [key, ...deeper];
  }
  return [];
};

export const keyOf = (item: ItemRef | null): string => (item === null ? 'room' : `${item.kind}:${item.id}`);
