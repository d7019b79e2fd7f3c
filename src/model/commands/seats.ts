import { freeId } from '../items.ts';
import type { Key } from '../paths.ts';
import type { Project, Row, Seat } from '../project.ts';
import { type Edit, refuse, setValue } from './edit.ts';
import { lockedEdit, noSuch } from './move.ts';

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

const rowMiddleM = (row: Row): number => {
  const seats = sorted(row);
  return (seats[0].xM + seats[seats.length - 1].xM) / 2;
};

const spread = (row: Row, seats: readonly Seat[], spacingM: number): Seat[] => {
  const middle = rowMiddleM(row);
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
