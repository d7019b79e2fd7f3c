import { freeId } from '../items.ts';
import type { Project, Row } from '../project.ts';
import { roomShape } from '../room/shape.ts';
import { type Added, nowhere } from './add-place.ts';
import { duplicateItem } from './duplicate.ts';
import { addItem } from './items.ts';
import { setSeatCount } from './seats.ts';

/** One seat more at the right of a row; the row keeps its middle. */
export const addSeatToRow = (project: Project, rowId: string): Added => {
  const row = project.rows.find(({ id }) => id === rowId);
  if (!row) return nowhere('rows', 'a row to add a seat to');
  const edit = setSeatCount(project, rowId, row.seats.length + 1);
  if (!edit.ok) return { edit, item: null };
  const before = new Set(row.seats.map(({ id }) => id));
  const made = edit.project.rows.find(({ id }) => id === rowId)?.seats.find(({ id }) => !before.has(id));
  return { edit, item: made ? { kind: 'seat', id: made.id } : null };
};

const fresh = (project: Project): Row => {
  const { minM, maxM } = roomShape(project);
  const id = freeId(project, 'row', 'row-1');
  return {
    id,
    eyeZM: Math.round((minM[2] + 0.6 * (maxM[2] - minM[2])) * 100) / 100,
    floorM: 0,
    furniture: 'sofa',
    seat: { widthM: 0.7, panHeightM: 0.43, backHeightM: 0.95 },
    seats: [{ id: `${id}-1`, xM: 0 }],
  };
};

/** A row like the one farthest back, behind it where there is room, else before it. */
export const addRow = (project: Project): Added => {
  const last = [...project.rows].sort((a, b) => b.eyeZM - a.eyeZM)[0];
  if (!last) {
    const row = fresh(project);
    const edit = addItem(project, 'row', row);
    return { edit, item: edit.ok ? { kind: 'row', id: row.id } : null };
  }
  const edit = duplicateItem(project, { kind: 'row', id: last.id });
  if (!edit.ok) return { edit, item: null };
  const before = new Set(project.rows.map(({ id }) => id));
  const made = edit.project.rows.find(({ id }) => !before.has(id));
  return { edit, item: made ? { kind: 'row', id: made.id } : null };
};
