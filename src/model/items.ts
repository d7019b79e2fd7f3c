import type { Key } from './paths.ts';
import type { ItemKind, ItemRef, Project } from './project.ts';

/** The kinds that stand in a list of their own at a fixed place. A seat's list is its row's. */
export const LISTS = {
  row: ['rows'],
  loudspeaker: ['loudspeakers'],
  subwoofer: ['subwoofers'],
  opening: ['room', 'openings'],
  patch: ['room', 'patches'],
  object: ['room', 'objects'],
} as const satisfies Partial<Record<ItemKind, readonly string[]>>;

export type ListedKind = keyof typeof LISTS;
export type AddableKind = ListedKind | 'seat';

export const isListed = (kind: ItemKind): kind is ListedKind => Object.hasOwn(LISTS, kind);

/** The items of a kind in the file's order; seats from the first row to the last. */
export const itemsOf = (
  project: Project,
  kind: AddableKind,
): readonly { readonly id: string; readonly locked?: boolean }[] => {
  switch (kind) {
    case 'row':
      return project.rows;
    case 'seat':
      return project.rows.flatMap((row) => row.seats);
    case 'loudspeaker':
      return project.loudspeakers;
    case 'subwoofer':
      return project.subwoofers;
    case 'opening':
      return project.room.openings;
    case 'patch':
      return project.room.patches;
    case 'object':
      return project.room.objects;
  }
};

/** Row and place in the row of a seat, or undefined when no seat has the id. */
export const seatIndices = (project: Project, id: string): readonly [number, number] | undefined => {
  for (const [rowIndex, row] of project.rows.entries()) {
    const seatIndex = row.seats.findIndex((seat) => seat.id === id);
    if (seatIndex >= 0) return [rowIndex, seatIndex];
  }
  return undefined;
};

/** A surface of a polygon plan's own: its edge's number. */
export const isEdge = (surfaceId: string): boolean => /^\d{1,2}$/.test(surfaceId);

/** Where an item stands in the document, as keys from its top; undefined when there is no such item. */
export const keysOf = (project: Project, { kind, id }: ItemRef): Key[] | undefined => {
  if (kind === 'picture') return ['picture'];
  if (kind === 'surface') return isEdge(id) ? ['room', 'surfaces', 'walls', id] : ['room', 'surfaces', id];
  if (kind === 'seat') {
    const indices = seatIndices(project, id);
    return indices && ['rows', indices[0], 'seats', indices[1]];
  }
  const index = itemsOf(project, kind).findIndex((item) => item.id === id);
  return index < 0 ? undefined : [...LISTS[kind], index];
};

/** Whether the owner said that an item stays where it is. A seat of a locked row is locked with it. */
export const isLocked = (project: Project, { kind, id }: ItemRef): boolean => {
  if (kind === 'picture' || kind === 'surface') return false;
  if (itemsOf(project, kind).some((item) => item.id === id && item.locked === true)) return true;
  if (kind === 'seat')
    return project.rows.some((row) => row.locked === true && row.seats.some((seat) => seat.id === id));
  return false;
};

const TRAILING_NUMBER = /\d+$/;

/** An id no item of the kind's group uses: the base with the first number that is free, `S1` leading to `S2`. */
export const freeId = (project: Project, kind: AddableKind, like: string): string => {
  const kinds: readonly AddableKind[] =
    kind === 'loudspeaker' || kind === 'subwoofer' ? ['loudspeaker', 'subwoofer'] : [kind];
  const used = new Set(kinds.flatMap((each) => itemsOf(project, each).map((item) => item.id)));
  if (!used.has(like)) return like;
  const numbered = TRAILING_NUMBER.test(like);
  const base = (numbered ? like.replace(TRAILING_NUMBER, '') : `${like}-`).slice(0, 56);
  for (let number = numbered ? Number(TRAILING_NUMBER.exec(like)?.[0]) + 1 : 2; ; number++) {
    const id = `${base}${number}`;
    if (!used.has(id)) return id;
  }
};
