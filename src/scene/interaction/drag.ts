import type { Vec3 } from '../../math/vec3.ts';
import { clampInside, clampSeatInside } from '../../model/commands/clamp.ts';
import type { Edit } from '../../model/commands/edit.ts';
import { moveRow, moveSeat, moveSubwoofer } from '../../model/commands/move.ts';
import { isLocked, seatIndices } from '../../model/items.ts';
import type { ItemRef, Project } from '../../model/project.ts';
import { roomBox } from '../../model/room.ts';

/** Dragged places are whole centimetres: a tape measures no finer. */
const STEP_M = 0.01;
const snapped = (valueM: number): number => Math.round(valueM / STEP_M) * STEP_M;

/** Whether the hand may move a thing over the floor. */
export const isHandle = (project: Project, ref: ItemRef): boolean => {
  if (isLocked(project, ref)) return false;
  if (ref.kind === 'subwoofer') return project.subwoofers.some(({ id }) => id === ref.id);
  return ref.kind === 'seat' && seatIndices(project, ref.id) !== undefined;
};

const seatFrom = (start: Project, id: string) => {
  const indices = seatIndices(start, id);
  if (!indices) return null;
  const row = start.rows[indices[0]];
  return { row, seat: row.seats[indices[1]] };
};

/** A seat goes along its row by itself; towards the picture it takes its row with it, unless it has a place of its own. */
const dragSeat = (project: Project, start: Project, id: string, byXM: number, byZM: number): Edit => {
  const from = seatFrom(start, id);
  if (!from) return { ok: true, project };
  const wanted = { xM: snapped(from.seat.xM + byXM), eyeZM: snapped((from.seat.eyeZM ?? from.row.eyeZM) + byZM) };
  const to = clampSeatInside(project, id, wanted);
  if (from.seat.eyeZM !== undefined) return moveSeat(project, id, to);
  const along = moveSeat(project, id, { xM: to.xM });
  if (!along.ok) return along;
  const forward = moveRow(along.project, from.row.id, { eyeZM: to.eyeZM ?? from.row.eyeZM });
  return forward.ok ? forward : along;
};

/**
 * The project with a thing dragged by so much from where it stood when the hand took it, kept inside the room.
 * @param project the document as it is now
 * @param start the document when the hand took the thing
 */
export const dragBy = (project: Project, start: Project, ref: ItemRef, byXM: number, byZM: number): Edit => {
  if (ref.kind === 'seat') return dragSeat(project, start, ref.id, byXM, byZM);
  const from = start.subwoofers.find(({ id }) => id === ref.id);
  if (!from) return { ok: true, project };
  const [x, y, z] = from.atM;
  const to: Vec3 = [snapped(x + byXM), y, snapped(z + byZM)];
  return moveSubwoofer(project, ref.id, clampInside(roomBox(project), to, from.sizeM));
};

/** A thing's outline on the floor. */
export interface Footprint {
  readonly minXM: number;
  readonly maxXM: number;
  readonly minZM: number;
  readonly maxZM: number;
  /** From here up it stands. */
  readonly baseM: number;
}

/** A seat reaches this far before and behind its sitter's eye. */
const SEAT_AHEAD_M = 0.5;
const SEAT_BEHIND_M = 0.32;

export const footprintOf = (project: Project, { kind, id }: ItemRef): Footprint | null => {
  if (kind === 'seat') {
    const found = seatFrom(project, id);
    if (!found) return null;
    const { row, seat } = found;
    const z = seat.eyeZM ?? row.eyeZM;
    const half = row.seat.widthM / 2;
    return {
      minXM: seat.xM - half,
      maxXM: seat.xM + half,
      minZM: z - SEAT_AHEAD_M,
      maxZM: z + SEAT_BEHIND_M,
      baseM: row.floorM,
    };
  }
  const box = kind === 'subwoofer' ? project.subwoofers.find((item) => item.id === id) : undefined;
  if (!box) return null;
  const [x, y, z] = box.atM;
  const [width, height, depth] = box.sizeM;
  return {
    minXM: x - width / 2,
    maxXM: x + width / 2,
    minZM: z - depth / 2,
    maxZM: z + depth / 2,
    baseM: y - height / 2,
  };
};

export const covers = ({ minXM, maxXM, minZM, maxZM }: Footprint, xM: number, zM: number): boolean =>
  xM >= minXM && xM <= maxXM && zM >= minZM && zM <= maxZM;

/** Subwoofers and seats, the things that have a footprint to take hold of. */
export const handlesOf = (project: Project): ItemRef[] => [
  ...project.subwoofers.map(({ id }): ItemRef => ({ kind: 'subwoofer', id })),
  ...project.rows.flatMap(({ seats }) => seats.map(({ id }): ItemRef => ({ kind: 'seat', id }))),
];
