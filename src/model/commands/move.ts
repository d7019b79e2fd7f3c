import type { Vec3 } from '../../math/vec3.ts';
import { checkEar, checkInside } from '../checks/places.ts';
import { isLocked, keysOf, seatIndices } from '../items.ts';
import { pathText } from '../paths.ts';
import type { ItemRef, Project, Row } from '../project.ts';
import { roomShape } from '../room/shape.ts';
import { refusalsOf } from '../schema/issues.ts';
import { projectSchema } from '../schema/project.ts';
import { row as rowSchema } from '../schema/seating.ts';
import { accept, type Edit, refuse, refuseWords, setValue } from './edit.ts';

export const noSuch = ({ kind, id }: ItemRef): Edit => refuseWords(kind, id, `the id of a ${kind} in this project`);

export const lockedEdit = (project: Project, ref: ItemRef): Edit =>
  refuseWords(`${pathText(keysOf(project, ref) ?? [ref.kind])}.locked`, true, 'unlocked first: it stays where it is');

const moveSource = (project: Project, kind: 'loudspeaker' | 'subwoofer', id: string, toM: Vec3): Edit => {
  const ref = { kind, id };
  const keys = keysOf(project, ref);
  if (!keys) return noSuch(ref);
  if (isLocked(project, ref)) return lockedEdit(project, ref);
  const atKeys = [...keys, 'atM'];
  return setValue(project, atKeys, [...toM], (next) => checkInside(roomShape(next), toM, pathText(atKeys)));
};

/** Moves a subwoofer's acoustic centre. Refused outside the room: callers that drag clamp first (see clamp). */
export const moveSubwoofer = (project: Project, id: string, toM: Vec3): Edit =>
  moveSource(project, 'subwoofer', id, toM);

/** Moves a loudspeaker's acoustic centre; its aim stays what it was. */
export const moveLoudspeaker = (project: Project, id: string, toM: Vec3): Edit =>
  moveSource(project, 'loudspeaker', id, toM);

export interface SeatPlace {
  readonly xM: number;
  /** Left out, the seat keeps to its row, or to the place of its own that it has. */
  readonly eyeZM?: number;
}

const replaceRow = (project: Project, rowIndex: number, row: Row): Edit => {
  const rows = project.rows.with(rowIndex, row);
  const next = { ...project, rows };
  const parsed = rowSchema.safeParse(row);
  const ears = (moved: Project) => row.seats.flatMap((_, seatIndex) => checkEar(moved, rowIndex, seatIndex));
  return parsed.success
    ? accept(next, ears)
    : refuse(refusalsOf(projectSchema, next, parsed.error.issues, ['rows', rowIndex])[0]);
};

/** Moves one seat, along its row and, with `eyeZM`, out of line with it. */
export const moveSeat = (project: Project, id: string, to: SeatPlace): Edit => {
  const indices = seatIndices(project, id);
  const ref = { kind: 'seat', id } as const;
  if (!indices) return noSuch(ref);
  if (isLocked(project, ref)) return lockedEdit(project, ref);
  const [rowIndex, seatIndex] = indices;
  const row = project.rows[rowIndex];
  const seat = row.seats[seatIndex];
  const eyeZM = to.eyeZM ?? seat.eyeZM;
  if (seat.xM === to.xM && seat.eyeZM === eyeZM) return { ok: true, project };
  const moved = { ...seat, xM: to.xM, ...(eyeZM === undefined ? {} : { eyeZM }) };
  return replaceRow(project, rowIndex, { ...row, seats: row.seats.with(seatIndex, moved) });
};

/** Moves a whole row: its eyes' line to `eyeZM`, every seat `byXM` to the right. The riser, which is built, stays. */
export const moveRow = (project: Project, id: string, to: { readonly eyeZM: number; readonly byXM?: number }): Edit => {
  const rowIndex = project.rows.findIndex((row) => row.id === id);
  if (rowIndex < 0) return noSuch({ kind: 'row', id });
  const row = project.rows[rowIndex];
  const held = row.locked === true ? { kind: 'row' as const, id } : undefined;
  const heldSeat = row.seats.find((seat) => seat.locked === true);
  if (held) return lockedEdit(project, held);
  if (heldSeat) return lockedEdit(project, { kind: 'seat', id: heldSeat.id });
  const byXM = to.byXM ?? 0;
  const byZM = to.eyeZM - row.eyeZM;
  if (byXM === 0 && byZM === 0) return { ok: true, project };
  const seats = row.seats.map((seat) => {
    if (byXM === 0 && seat.eyeZM === undefined) return seat;
    return { ...seat, xM: seat.xM + byXM, ...(seat.eyeZM === undefined ? {} : { eyeZM: seat.eyeZM + byZM }) };
  });
  return replaceRow(project, rowIndex, { ...row, eyeZM: to.eyeZM, seats });
};
