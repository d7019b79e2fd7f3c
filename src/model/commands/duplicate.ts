import type { Vec3 } from '../../math/vec3.ts';
import { type AddableKind, freeId, isListed, keysOf, seatIndices } from '../items.ts';
import type { ItemRef, Project, Row } from '../project.ts';
import { frameOf } from '../room/places.ts';
import { roomShape } from '../room/shape.ts';
import { clampInside } from './clamp.ts';
import type { Edit } from './edit.ts';
import { addItem, addSeat } from './items.ts';
import { noSuch } from './move.ts';

/** A copy's place is beside its original: to the right when there is room, else to the left. */
const beside = (project: Project, atM: Vec3, sizeM: Vec3): Vec3 => {
  const room = roomShape(project);
  const right: Vec3 = [atM[0] + sizeM[0], atM[1], atM[2]];
  const fits = room.contains(right, [sizeM[0] / 2, sizeM[1] / 2, sizeM[2] / 2]);
  return clampInside(room, fits ? right : [atM[0] - sizeM[0], atM[1], atM[2]], sizeM);
};

const unlocked = <Item extends { locked?: boolean }>({ locked: _held, ...others }: Item): Item => others as Item;

const ROW_PITCH_M = 1;
/** What stays free between a row's eyes and the wall behind it. */
const BACK_CLEAR_M = 0.2;

const copyRow = (project: Project, row: Row, id: string): Row => {
  let ids = project;
  const seats = row.seats.map((seat) => {
    const copy = { ...unlocked(seat), id: freeId(ids, 'seat', seat.id) };
    ids = { ...ids, rows: [...ids.rows, { ...row, seats: [copy] }] };
    return copy;
  });
  const room = roomShape(project);
  const behind = row.seats.every(({ xM, eyeZM }) =>
    room.contains([xM, 0, (eyeZM ?? row.eyeZM) + ROW_PITCH_M + BACK_CLEAR_M]),
  );
  const byZM = behind ? ROW_PITCH_M : -ROW_PITCH_M;
  const placed = seats.map((seat) => (seat.eyeZM === undefined ? seat : { ...seat, eyeZM: seat.eyeZM + byZM }));
  const { riser: _built, ...others } = row;
  return { ...others, id, eyeZM: row.eyeZM + byZM, seats: placed };
};

interface Copy {
  readonly locked?: boolean;
  readonly [key: string]: unknown;
}

/** The copy of an item, beside it and unlocked, under an id that is free. */
const copyOf = (project: Project, ref: ItemRef & { kind: AddableKind }, id: string): Copy => {
  const keys = keysOf(project, ref)!;
  switch (ref.kind) {
    case 'row':
      return copyRow(project, project.rows[Number(keys[1])], id);
    case 'seat': {
      const row = project.rows[Number(keys[1])];
      const seat = row.seats[Number(keys[3])];
      const xM = seat.xM + row.seat.widthM;
      const fits = roomShape(project).contains([xM, 0, seat.eyeZM ?? row.eyeZM], [row.seat.widthM / 2, 0, 0.1]);
      return { ...seat, id, xM: fits ? xM : seat.xM - row.seat.widthM };
    }
    case 'loudspeaker':
    case 'subwoofer': {
      const source = project[ref.kind === 'loudspeaker' ? 'loudspeakers' : 'subwoofers'][Number(keys[1])];
      return { ...source, id, atM: beside(project, source.atM, source.sizeM) };
    }
    case 'object': {
      const object = project.room.objects[Number(keys[2])];
      const sizeM = object.maxM.map((max, axis) => max - object.minM[axis]) as unknown as Vec3;
      const centre = object.minM.map((min, axis) => min + sizeM[axis] / 2) as unknown as Vec3;
      const to = beside(project, centre, sizeM);
      const corner = (sign: number) => to.map((value, axis) => value + (sign * sizeM[axis]) / 2);
      return { ...object, id, minM: corner(-1), maxM: corner(1) };
    }
    case 'opening':
    case 'patch': {
      const item =
        ref.kind === 'opening' ? project.room.openings[Number(keys[2])] : project.room.patches[Number(keys[2])];
      const alongM = frameOf(project, item)?.alongM ?? 0;
      const after = item.fromM + item.widthM;
      return { ...item, id, fromM: after + item.widthM <= alongM ? after : Math.max(0, item.fromM - item.widthM) };
    }
  }
};

/** A copy of an item, beside it. Its id is the original's with the next number that is free. */
export const duplicateItem = (project: Project, ref: ItemRef): Edit => {
  const { kind } = ref;
  if (!(isListed(kind) || kind === 'seat') || !keysOf(project, ref)) return noSuch(ref);
  const copy = unlocked(copyOf(project, { ...ref, kind }, freeId(project, kind, ref.id)));
  if (kind !== 'seat') return addItem(project, kind, copy);
  const [rowIndex] = seatIndices(project, ref.id)!;
  return addSeat(project, project.rows[rowIndex].id, copy);
};
