import type { SeatReadout } from '../../analysis/types.ts';
import type { Project } from '../../model/project.ts';
import { share } from '../figures.ts';

/** How much of the picture the seats see, together. */
export interface PictureSeen {
  /** For a line over the plan. */
  readonly short: string;
  /** With the seats and the least of it. */
  readonly long: string;
}

/** From here on a share reads as 100 %. */
const WHOLE = 0.995;

const listed = (numbers: readonly number[]): string =>
  numbers.length < 2 ? `${numbers[0]}` : `${numbers.slice(0, -1).join(', ')} and ${numbers[numbers.length - 1]}`;

/** "row 1, seats 1 and 3; row 2, seat 4" */
const seatsByRow = (project: Project, ids: ReadonlySet<string>): string =>
  project.rows
    .flatMap(({ seats }, row) => {
      const numbers = seats.flatMap(({ id }, seat) => (ids.has(id) ? [seat + 1] : []));
      if (numbers.length === 0) return [];
      return [`row ${row + 1}, seat${numbers.length > 1 ? 's' : ''} ${listed(numbers)}`];
    })
    .join('; ');

/** Says outright whether every seat sees the whole picture; null in a room without seats. */
export const pictureSeen = (project: Project, readouts: readonly SeatReadout[]): PictureSeen | null => {
  const there = new Set(project.rows.flatMap((row) => row.seats.map(({ id }) => id)));
  const seats = readouts.filter(({ id }) => there.has(id));
  if (seats.length === 0) return null;
  const short = seats.filter(({ picture }) => picture.visibleFraction < WHOLE);
  if (short.length === 0) {
    const who = seats.length === 1 ? 'The one seat sees' : `All ${seats.length} seats see`;
    const text = `${who} the whole picture`;
    return { short: text, long: `${text}.` };
  }
  const least = share(Math.min(...short.map(({ picture }) => picture.visibleFraction)));
  const where = seatsByRow(project, new Set(short.map(({ id }) => id)));
  const rest = short.length === seats.length ? '' : ' The other seats see the whole picture.';
  const sees = short.length === 1 ? `sees ${least.text} %` : `see ${least.text} % or more`;
  const who = `${where.charAt(0).toUpperCase()}${where.slice(1)}`;
  return {
    short: `${short.length} of ${seats.length} see part of the picture`,
    long: `${who} ${sees} of the picture.${rest}`,
  };
};
