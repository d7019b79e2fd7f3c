import { isListed, isLocked, itemsOf, keysOf, LISTS, seatIndices } from '../items.ts';
import type { Key } from '../paths.ts';
import { valueAt } from '../paths.ts';
import type { ItemRef, Project, SurfaceName, SurfaceTreatment } from '../project.ts';
import { accept, appendTo, type Edit, setValue, withValue } from './edit.ts';
import { lockedEdit, noSuch } from './move.ts';

/** A new item of a listed kind as a file would describe it; what is left out takes its default. */
export const addItem = (project: Project, kind: keyof typeof LISTS, item: unknown): Edit => {
  return appendTo(project, LISTS[kind], item);
};

/** A new seat at the end of a row. */
export const addSeat = (project: Project, rowId: string, seat: unknown): Edit => {
  const rowIndex = project.rows.findIndex((row) => row.id === rowId);
  if (rowIndex < 0) return noSuch({ kind: 'row', id: rowId });
  return appendTo(project, ['rows', rowIndex, 'seats'], seat);
};

/** The document without a reference to a seat that is about to go: the layout is then judged at the default seat. */
const forget = (project: Project, seats: readonly { readonly id: string }[]): Project => {
  if (!seats.some((seat) => seat.id === project.referenceSeat)) return project;
  const { referenceSeat: _gone, ...others } = project;
  return others as Project;
};

/** Takes an item away. A row goes with its last seat; the last seat of all is refused, and so is what is locked. */
export const removeItem = (project: Project, ref: ItemRef): Edit => {
  const { kind, id } = ref;
  if (kind === 'picture') return setValue(project, ['picture'], undefined);
  if (kind === 'surface') return setValue(project, ['room', 'surfaces', id], undefined);
  if (!keysOf(project, ref)) return noSuch(ref);
  if (isLocked(project, ref)) return lockedEdit(project, ref);
  if (kind !== 'seat') {
    const kept = itemsOf(project, kind).filter((item) => item.id !== id);
    const row = kind === 'row' ? project.rows.find((each) => each.id === id) : undefined;
    return accept(withValue(forget(project, row?.seats ?? []), LISTS[kind], kept) as Project);
  }
  const [rowIndex] = seatIndices(project, id)!;
  const row = project.rows[rowIndex];
  if (row.seats.length === 1) return removeItem(project, { kind: 'row', id: row.id });
  const seats = row.seats.filter((seat) => seat.id !== id);
  return accept(withValue(forget(project, [{ id }]), ['rows', rowIndex, 'seats'], seats) as Project);
};

/** Another id for an item; the reference seat follows its seat. */
export const renameItem = (project: Project, ref: ItemRef, id: string): Edit => {
  const keys = keysOf(project, ref);
  if (!keys || !(isListed(ref.kind) || ref.kind === 'seat')) return noSuch(ref);
  const followed = ref.kind === 'seat' && project.referenceSeat === ref.id;
  if (!followed) return setValue(project, [...keys, 'id'], id);
  const { referenceSeat: _old, ...others } = project;
  const renamed = setValue(others as Project, [...keys, 'id'], id);
  return renamed.ok ? setValue(renamed.project, ['referenceSeat'], id) : renamed;
};

/** The seat the layout is judged at; undefined leaves the choice to the program. */
export const setReferenceSeat = (project: Project, id: string | undefined): Edit =>
  setValue(project, ['referenceSeat'], id);

/** What a surface is finished with; undefined puts it back to the default finish. */
export const setSurface = (project: Project, surface: SurfaceName, treatment: SurfaceTreatment | undefined): Edit =>
  setValue(project, ['room', 'surfaces', surface], treatment);

/** Keeps an item where it is, or lets it be moved again. */
export const setLocked = (project: Project, ref: ItemRef, locked: boolean): Edit => {
  const keys: Key[] | undefined = keysOf(project, ref);
  if (!keys || ref.kind === 'picture' || ref.kind === 'surface') return noSuch(ref);
  const was = valueAt(project, [...keys, 'locked']) === true;
  return was === locked ? { ok: true, project } : setValue(project, [...keys, 'locked'], locked ? true : undefined);
};
