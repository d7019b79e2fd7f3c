import type { Vec3 } from '../../math/vec3.ts';
import { freeId } from '../items.ts';
import type { Project, Row } from '../project.ts';
import { roomShape } from '../room/shape.ts';
import { type Added, centimetres, nowhere } from './add-place.ts';
import { duplicateItem } from './duplicate.ts';
import { setValue } from './edit.ts';
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

const SEAT_WIDTH_M = 0.7;
/** What a row's eyes keep to the wall behind them. */
const LEAST_TO_WALL_M = 0.7;

/** A seat before the picture, three fifths of the room's length from its front wall. */
const fresh = (project: Project): Row => {
  const { minM, maxM, nearestInside } = roomShape(project);
  const id = freeId(project, 'row', 'row-1');
  const wished: Vec3 = [project.picture.centreXM, 0, minM[2] + 0.6 * (maxM[2] - minM[2])];
  const [x, , z] = nearestInside(wished, [SEAT_WIDTH_M / 2, 0, LEAST_TO_WALL_M]);
  return {
    id,
    eyeZM: centimetres(z),
    floorM: 0,
    furniture: 'sofa',
    seat: { widthM: SEAT_WIDTH_M, panHeightM: 0.43, backHeightM: 0.95 },
    seats: [{ id: `${id}-1`, xM: centimetres(x) }],
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

/** The chair a room begins with, when it is all there is to sit on. */
const loneChair = ({ rows }: Project): Row | null => {
  const [row] = rows;
  return rows.length === 1 && row.seats.length === 1 && row.furniture === 'single' && row.locked !== true ? row : null;
};

/** Behind the last row where there is room, else before the first: middle to middle of rows, common practice. */
const BEHIND_M = 1.2;

const anotherRow = (project: Project): Row => {
  const row = fresh(project);
  if (project.rows.length === 0) return row;
  const eyes = project.rows.map(({ eyeZM }) => eyeZM);
  const behind = Math.max(...eyes) + BEHIND_M;
  const fits = behind <= roomShape(project).maxM[2] - LEAST_TO_WALL_M;
  return { ...row, eyeZM: centimetres(fits ? behind : Math.min(...eyes) - BEHIND_M) };
};

/** A sofa for so many: in the place of the one chair an empty room begins with, else as a row of its own. */
export const addSofa = (project: Project, count: number): Added => {
  const chair = loneChair(project);
  const row = chair ?? anotherRow(project);
  const there = chair ? ({ ok: true, project } as const) : addItem(project, 'row', row);
  const counted = there.ok ? setSeatCount(there.project, row.id, count) : there;
  if (!counted.ok) return { edit: counted, item: null };
  const at = counted.project.rows.findIndex(({ id }) => id === row.id);
  const edit = setValue(counted.project, ['rows', at, 'furniture'], 'sofa');
  return { edit, item: edit.ok ? { kind: 'row', id: row.id } : null };
};
