import type { Edit } from '../commands/edit.ts';
import {
  MOST_IN_ROW,
  rowMiddleM,
  seatSpacingM,
  setRowMiddle,
  setSeatCount,
  setSeatSpacing,
} from '../commands/seats.ts';
import type { Key } from '../paths.ts';
import type { Project, Row } from '../project.ts';
import type { Field } from './field.ts';

/** A number that stands nowhere in the document but is read from it and put back into it by a command. */
export interface Figure {
  readonly field: Field;
  read(project: Project, keys: readonly Key[]): number | undefined;
  set(project: Project, keys: readonly Key[], value: number): Edit;
}

const rowAt = (project: Project, keys: readonly Key[]): Row => project.rows[Number(keys[1])];

export const ROW_FIGURES: readonly Figure[] = [
  {
    field: {
      pattern: 'rows[].seats',
      label: 'Middle of the row',
      quantity: 'length',
      unit: 'm',
      min: -100,
      max: 100,
      step: 0.01,
      optional: false,
      absent: false,
      place: true,
      help: 'From the middle of the room, negative to the left. All its seats and what they sit on move together.',
    },
    read: (project, keys) => {
      const row = rowAt(project, keys);
      return row && rowMiddleM(row);
    },
    set: (project, keys, value) => setRowMiddle(project, rowAt(project, keys).id, value),
  },
  {
    field: {
      pattern: 'rows[].seats',
      label: 'Seats',
      quantity: 'count',
      unit: '',
      min: 1,
      max: MOST_IN_ROW,
      step: 1,
      optional: false,
      absent: false,
      place: true,
      help: 'How many seats the row has. New ones are added at the right, and all are laid evenly about the middle.',
    },
    read: (project, keys) => rowAt(project, keys)?.seats.length,
    set: (project, keys, value) => setSeatCount(project, rowAt(project, keys).id, Math.round(value)),
  },
  {
    field: {
      pattern: 'rows[].seats',
      label: 'Seats apart',
      quantity: 'length',
      unit: 'm',
      min: 0.3,
      max: 3,
      step: 0.01,
      optional: false,
      absent: false,
      place: true,
      help: 'From the middle of one seat to the middle of the next.',
    },
    read: (project, keys) => {
      const row = rowAt(project, keys);
      return row && row.seats.length > 1 ? seatSpacingM(row) : undefined;
    },
    set: (project, keys, value) => setSeatSpacing(project, rowAt(project, keys).id, value),
  },
];
