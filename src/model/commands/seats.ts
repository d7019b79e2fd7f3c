import { freeId } from '../items.ts';
import type { Key } from '../paths.ts';
import type { Project, Row, Seat } from '../project.ts';
import { type Edit, refuse, setValue } from './edit.ts';
import { lockedEdit, noSuch } from './move.ts';
import { shiftRow } from './shift.ts';

export const MOST_IN_ROW = 64;

/** A tenth of a millimetre: what sums of decimals leave beyond it is dust. */
const undusted = (valueM: number): number => Math.round(valueM * 10_000) / 10_000 + 0;

const sorted = (row: Row): readonly Seat[] => [...row.seats].sort((a, b) => a.xM - b.xM);

/** Middle to middle of neighbours, on average; the seats' width where there is but one. */
export const seatSpacingM = (row: Row): number => {
  const seats = sorted(row);
  if (seats.length < 2) return row.seat.widthM;
  return undusted((seats[seats.length - 1].xM - seats[0].xM) / (seats.length - 1));
};

const middleM = (row: Row): number => {
  const seats = sorted(row);
  return (seats[0].xM + seats[seats.length - 1].xM) / 2;
};

/** Halfway between the outermost seats, from the middle of the room, metres. */
export const rowMiddleM = (row: Row): number => undusted(middleM(row));

const spread = (row: Row, seats: readonly Seat[], spacingM: number): Seat[] => {
  const middle = middleM(row);
  return seats.map((seat, index) => ({ ...seat, xM: undusted(middle + (index - (seats.length - 1) / 2) * spacingM) }));
};

const rowOf = (project: Project, id: string): number => project.rows.findIndex((row) => row.id === id);

const held = (project: Project, row: Row): Edit | null => {
  if (row.locked === true) return lockedEdit(project, { kind: 'row', id: row.id });
  const seat = row.seats.find((each) => each.locked === true);
  return seat ? lockedEdit(project, { kind: 'seat', id: seat.id }) : null;
};

/** A new seat of a row under an id that is free. */
const newSeat = (project: Project, row: Row, taken: readonly Seat[]): Seat => {
  const others = { ...project, rows: [...project.rows, { ...row, seats: [...taken] }] };
  return { id: freeId(others, 'seat', `${row.id}-1`), xM: 0 };
};

/** Whether a seat stands in the middle of so many; of an even number both do. */
const isMiddle = (index: number, count: number): boolean => Math.abs(index - (count - 1) / 2) < 1;

/** The project as its reference seat is once a row has other seats. */
const withReference = (project: Project, row: Row, seats: readonly Seat[]): Project => {
  const { referenceSeat, ...others } = project;
  const before = sorted(row).findIndex(({ id }) => id === referenceSeat);
  if (before < 0) return project;
  if (isMiddle(before, row.seats.length)) {
    const middle = seats[Math.floor((seats.length - 1) / 2)].id;
    return middle === referenceSeat ? project : { ...project, referenceSeat: middle };
  }
  return seats.some(({ id }) => id === referenceSeat) ? project : (others as Project);
};

/**
 * So many seats in a row, laid evenly about its middle as far apart as they were. Seats are added at the right and taken
 * from the right. A reference in the middle of the row stays in its middle; one that goes with its seat is forgotten.
 */
export const setSeatCount = (project: Project, rowId: string, count: number): Edit => {
  const at = rowOf(project, rowId);
  if (at < 0) return noSuch({ kind: 'row', id: rowId });
  const keys: Key[] = ['rows', at, 'seats'];
  if (!Number.isInteger(count) || count < 1 || count > MOST_IN_ROW)
    return refuse({
      field: `rows[${at}].seats`,
      holds: count,
      lead: 'seats:',
      allowed: { kind: 'range', min: 1, max: MOST_IN_ROW, whole: true },
    });
  const row = project.rows[at];
  if (count === row.seats.length) return { ok: true, project };
  const refused = held(project, row);
  if (refused) return refused;
  const kept: Seat[] = sorted(row).slice(0, count);
  while (kept.length < count) kept.push(newSeat(project, row, kept));
  const seats = spread(row, kept, seatSpacingM(row));
  return setValue(withReference(project, row, seats), keys, seats);
};

/** The seats of a row evenly apart about its middle, `spacingM` from middle to middle. */
export const setSeatSpacing = (project: Project, rowId: string, spacingM: number): Edit => {
  const at = rowOf(project, rowId);
  if (at < 0) return noSuch({ kind: 'row', id: rowId });
  const row = project.rows[at];
  if (row.seats.length < 2 || spacingM === seatSpacingM(row)) return { ok: true, project };
  const refused = held(project, row);
  if (refused) return refused;
  return setValue(project, ['rows', at, 'seats'], spread(row, sorted(row), spacingM));
};

/** Half the last place a length is shown with: what a person copies from a range is taken as its end. */
const AT_END_M = 0.005;
/** Halvings of the way to where the walls stop a row: of 100 m to a tenth of a millimetre. */
const HALVINGS = 20;
/** Farther than any room is wide. */
const FAR_M = 100;

const middleAfter = (project: Project, row: Row, byXM: number): number | null => {
  const edit = shiftRow(project, row.id, byXM, 0);
  const moved = edit.ok ? edit.project.rows.find(({ id }) => id === row.id) : undefined;
  return moved ? rowMiddleM(moved) : null;
};

/** Where the middle of a row is once it has gone as far to one side as the room lets it. */
const endM = (project: Project, row: Row, sign: -1 | 1): number => {
  const from = rowMiddleM(row);
  const stopped = middleAfter(project, row, sign * FAR_M);
  if (stopped !== null) return stopped;
  let [free, barred] = [0, FAR_M];
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const by = (free + barred) / 2;
    if (middleAfter(project, row, sign * by) === null) barred = by;
    else free = by;
  }
  return undusted(from + sign * free);
};

/**
 * A row moved sideways as by hand, all its seats and what they sit on together, until its middle is at `xM`. Where the room
 * stops it before, it is refused with how far it can go.
 */
export const setRowMiddle = (project: Project, rowId: string, xM: number): Edit => {
  const at = rowOf(project, rowId);
  if (at < 0) return noSuch({ kind: 'row', id: rowId });
  const row = project.rows[at];
  if (xM === rowMiddleM(row)) return { ok: true, project };
  const refused = held(project, row);
  if (refused) return refused;
  const moved = shiftRow(project, rowId, xM - middleM(row), 0);
  if (moved.ok && Math.abs(rowMiddleM(moved.project.rows[at]) - xM) <= AT_END_M) return moved;
  const [min, max] = [endM(project, row, -1), endM(project, row, 1)];
  return refuse({
    field: `rows[${at}].seats`,
    holds: xM,
    lead: 'its middle at',
    allowed: { kind: 'range', min, max, quantity: 'length' },
  });
};
