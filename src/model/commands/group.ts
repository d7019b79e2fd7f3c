import type { Vec3 } from '../../math/vec3.ts';
import { type Extent, extentOf, joined } from '../extents.ts';
import { type AddableKind, isListed, isLocked, itemsOf, keysOf } from '../items.ts';
import { mirroredMove, partnerOf } from '../pairs.ts';
import type { ItemRef, Project } from '../project.ts';
import { roomShape } from '../room/shape.ts';
import { duplicateItem } from './duplicate.ts';
import { type Edit, refuseWords } from './edit.ts';
import { removeItem, setLocked } from './items.ts';
import { lockedEdit } from './move.ts';
import { shiftItem } from './shift.ts';

const same = (a: ItemRef, b: ItemRef): boolean => a.kind === b.kind && a.id === b.id;

export const holds = (refs: readonly ItemRef[], ref: ItemRef): boolean => refs.some((one) => same(one, ref));

/** What is moved when these are: a row for its seats when it or all of them are chosen, each thing once. */
export const movable = (project: Project, refs: readonly ItemRef[]): ItemRef[] => {
  const whole = project.rows.filter(
    ({ id, seats }) =>
      holds(refs, { kind: 'row', id }) || seats.every((seat) => holds(refs, { kind: 'seat', id: seat.id })),
  );
  const seated = new Set(whole.flatMap(({ seats }) => seats.map(({ id }) => id)));
  return [
    ...whole.map(({ id }): ItemRef => ({ kind: 'row', id })),
    ...refs.filter(({ kind, id }) => kind !== 'surface' && kind !== 'row' && !(kind === 'seat' && seated.has(id))),
  ];
};

/** Each command's document is the next one's; the first refusal is the answer. */
const inTurn = <Item>(project: Project, items: readonly Item[], command: (from: Project, item: Item) => Edit): Edit => {
  let at = project;
  for (const item of items) {
    const next = command(at, item);
    if (!next.ok) return next;
    at = next.project;
  }
  return { ok: true, project: at };
};

const limited = (by: number, { minM, maxM }: Extent, room: Extent, axis: 0 | 1 | 2): number =>
  Math.min(Math.max(by, Math.min(0, room.minM[axis] - minM[axis])), Math.max(0, room.maxM[axis] - maxM[axis]));

/** The move that keeps the whole group in the room, so that its things keep their places to one another. */
const groupMove = (project: Project, refs: readonly ItemRef[], byM: Vec3): Vec3 => {
  const extent = joined(refs.flatMap((ref) => extentOf(project, ref) ?? []));
  if (!extent || refs.length < 2) return byM;
  const room = roomShape(project);
  const level = refs.some(({ kind }) => kind === 'seat' || kind === 'row');
  return [
    limited(byM[0], extent, room, 0),
    level ? 0 : limited(byM[1], extent, room, 1),
    limited(byM[2], extent, room, 2),
  ];
};

/** Whether every thing went by just so much: none was stopped by a wall or slope the others were not. */
const keptTogether = (before: Project, after: Project, things: readonly ItemRef[], byM: Vec3): boolean =>
  things.every((ref) => {
    const [from, to] = [extentOf(before, ref), extentOf(after, ref)];
    return !from || !to || from.minM.every((value, axis) => Math.abs(to.minM[axis] - value - byM[axis]) < TOGETHER_M);
  });

const TOGETHER_M = 1e-4;
/** Halvings of the way to where the first of several things is stopped: of a metre to a quarter of a millimetre. */
const HALVINGS = 12;

/** Several things as far along a way as all of them can go, one axis after the other; alone one slides along walls. */
const movedTogether = (project: Project, things: readonly ItemRef[], byM: Vec3): Edit => {
  const move = (by: Vec3): Edit => inTurn(project, things, (from, ref) => shiftItem(from, ref, by));
  const whole = move(byM);
  if (things.length < 2 || !whole.ok || keptTogether(project, whole.project, things, byM)) return whole;
  const goes = (by: Vec3): boolean => {
    const edit = move(by);
    return edit.ok && keptTogether(project, edit.project, things, by);
  };
  let by: Vec3 = [0, 0, 0];
  for (const axis of [0, 1, 2] as const) {
    let [free, barred] = [0, byM[axis]];
    if (barred === 0) continue;
    if (goes(by.with(axis, barred) as unknown as Vec3)) free = barred;
    for (let halving = 0; halving < HALVINGS && free !== barred; halving += 1) {
      const middle = (free + barred) / 2;
      if (goes(by.with(axis, middle) as unknown as Vec3)) free = middle;
      else barred = middle;
    }
    by = by.with(axis, Math.trunc(free * 1000) / 1000) as unknown as Vec3;
  }
  return move(by);
};

/**
 * Moves several things together, and with `pairs` the other half of every pair as its mirror image. Locked things are
 * refused by name; partners that are locked stay where they are.
 */
export const shiftItems = (project: Project, refs: readonly ItemRef[], byM: Vec3, pairs: boolean): Edit => {
  const things = movable(project, refs);
  const by = groupMove(project, things, byM);
  const partners = pairs
    ? things
        .flatMap((ref) => partnerOf(project, ref) ?? [])
        .filter((ref) => !holds(things, ref) && !isLocked(project, ref))
    : [];
  const led = movedTogether(project, things, by);
  return led.ok ? inTurn(led.project, partners, (from, ref) => shiftItem(from, ref, mirroredMove(by))) : led;
};

/** One press of an arrow key for whatever is chosen: the same command as a drag. */
export const nudgeItems = shiftItems;

const isAddable = (kind: ItemRef['kind']): kind is AddableKind => kind === 'seat' || isListed(kind);

/** Copies of several things, with the names they were given. */
export const duplicateItems = (
  project: Project,
  refs: readonly ItemRef[],
): { readonly edit: Edit; readonly copies: readonly ItemRef[] } => {
  const rows = refs.filter(({ kind }) => kind === 'row').map(({ id }) => project.rows.find((row) => row.id === id));
  const inRows = new Set(rows.flatMap((row) => row?.seats.map(({ id }) => id) ?? []));
  const wanted = refs.filter(({ kind, id }) => isAddable(kind) && !(kind === 'seat' && inRows.has(id)));
  if (wanted.length === 0) {
    const [first] = refs;
    return {
      edit: refuseWords(first?.kind ?? 'selection', first?.id, 'something there can be more than one of'),
      copies: [],
    };
  }
  const copies: ItemRef[] = [];
  const edit = inTurn(project, wanted, (from, ref) => {
    const next = duplicateItem(from, ref);
    if (!next.ok || !isAddable(ref.kind)) return next;
    const before = new Set(itemsOf(from, ref.kind).map(({ id }) => id));
    const made = itemsOf(next.project, ref.kind).find(({ id }) => !before.has(id));
    if (made) copies.push({ kind: ref.kind, id: made.id });
    return next;
  });
  return { edit, copies: edit.ok ? copies : [] };
};

/** Takes several things away; a seat goes once with its row. */
export const removeItems = (project: Project, refs: readonly ItemRef[]): Edit => {
  const held = refs.find((ref) => isLocked(project, ref));
  if (held) return lockedEdit(project, held);
  return inTurn(project, refs, (from, ref) =>
    keysOf(from, ref) === undefined ? { ok: true, project: from } : removeItem(from, ref),
  );
};

const lockable = ({ kind }: ItemRef): boolean => kind !== 'picture' && kind !== 'surface';

/** Whether all of these that can be locked are. */
export const allLocked = (project: Project, refs: readonly ItemRef[]): boolean => {
  const these = refs.filter(lockable);
  return these.length > 0 && these.every((ref) => isLocked(project, ref));
};

/** Locks several things, or lets them go. A seat held by its row is let go with the row. */
export const lockItems = (project: Project, refs: readonly ItemRef[], locked: boolean): Edit => {
  const rows = locked
    ? []
    : project.rows.filter(
        ({ id, seats, locked: held }) =>
          held === true &&
          !holds(refs, { kind: 'row', id }) &&
          seats.some((seat) => holds(refs, { kind: 'seat', id: seat.id })),
      );
  const these = [...refs.filter(lockable), ...rows.map(({ id }): ItemRef => ({ kind: 'row', id }))];
  return inTurn(project, these, (from, ref) => setLocked(from, ref, locked));
};
