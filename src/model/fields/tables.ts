import { appendTo, type Edit, refuseWords, setValue } from '../commands/edit.ts';
import { insertPlanCorner, removePlanCorner } from '../commands/plan.ts';
import { type Key, pathText, valueAt } from '../paths.ts';
import type { Project } from '../project.ts';
import { anotherStep } from '../riser-steps.ts';

/** A list of the document whose entries are a few numbers each, shown as a table; or a record of numbers by frequency. */
export interface Table {
  readonly pattern: string;
  readonly title: string;
  /** What one line is. */
  readonly entry: string;
  readonly of: 'list' | 'record';
  /** Fields of one entry, relative to it. */
  readonly columns: readonly string[];
  /** What a new line holds; for a record also its key. Null where nothing can be added. */
  fresh(project: Project, keys: readonly Key[]): { readonly key: Key; readonly value: unknown } | null;
  /** Commands of their own, for lists whose entries other things depend on. */
  readonly add?: (project: Project) => Edit;
  readonly remove?: (project: Project, line: number) => Edit;
}

const notThere = (keys: readonly Key[]): Edit => refuseWords(pathText(keys), undefined, 'a list of this project');

type Pair = readonly [number, number];

const halfway = ([a, b]: Pair, [c, d]: Pair): [number, number] => [
  Math.round((a + c) * 500) / 1000,
  Math.round((b + d) * 500) / 1000,
];

const pairsAt = (project: Project, keys: readonly Key[]): readonly Pair[] => (valueAt(project, keys) ?? []) as Pair[];

const bands = (pattern: string, title: string, hertz: readonly string[], usual: number): Table => ({
  pattern,
  title,
  entry: 'Hz',
  of: 'record',
  columns: ['{}'],
  fresh(project, keys) {
    const there = (valueAt(project, keys) ?? {}) as Readonly<Record<string, number>>;
    const key = hertz.find((each) => !Object.hasOwn(there, each));
    if (key === undefined) return null;
    const below = Object.keys(there)
      .filter((each) => Number(each) < Number(key))
      .sort((a, b) => Number(b) - Number(a))[0];
    return { key, value: below === undefined ? usual : there[below] };
  },
});

const OCTAVES = ['125', '250', '500', '1000', '2000', '4000', '63'];
const BASS_BANDS = ['20', '25', '31.5', '40', '50', '63', '80', '100', '125', '16', '160'];

const absorption = (surface: string): Table => bands(`${surface}.absorption`, 'Absorption by octave', OCTAVES, 0.1);

export const TABLES: readonly Table[] = [
  {
    pattern: 'room.plan.cornersM',
    title: 'Corners',
    entry: 'Corner',
    of: 'list',
    columns: ['[0]', '[1]'],
    fresh: () => null,
    add(project) {
      const keys = ['room', 'plan', 'cornersM'];
      const corners = pairsAt(project, keys);
      if (corners.length === 0) return notThere(keys);
      const last = corners.length - 1;
      return insertPlanCorner(project, last, halfway(corners[last], corners[0]));
    },
    remove: removePlanCorner,
  },
  {
    pattern: 'room.ceiling.pointsM',
    title: 'Bends of the ceiling',
    entry: 'Bend',
    of: 'list',
    columns: ['[0]', '[1]'],
    fresh(project, keys) {
      const points = pairsAt(project, keys);
      const last = points.length - 1;
      return { key: last, value: halfway(points[last - 1], points[last]) };
    },
  },
  {
    pattern: 'picture.formats',
    title: 'Films of other shapes',
    entry: 'Film',
    of: 'list',
    columns: ['.aspect', '.method'],
    fresh: ({ picture }) => ({ key: picture.formats.length, value: { aspect: 2.39, method: 'letterbox' } }),
  },
  {
    pattern: 'rows[].riser.steps',
    title: 'Steps',
    entry: 'Step',
    of: 'list',
    columns: ['.fromXM', '.toXM', '.fromZM', '.toZM', '.heightM'],
    fresh(project, keys) {
      const row = project.rows[Number(keys[1])];
      return row ? { key: row.riser?.steps.length ?? 0, value: anotherStep(project, row) } : null;
    },
  },
  bands('subwoofers[].maxOutput.bandsDb', 'Most at 1 m by band', BASS_BANDS, 100),
  ...['front', 'back', 'left', 'right', 'floor', 'ceiling'].map((side) => absorption(`room.surfaces.${side}`)),
  absorption('room.surfaces.walls{}'),
  bands('room.reverberationS', 'Reverberation time by octave', OCTAVES, 0.5),
  absorption('room.patches[]'),
];

/** One more line, where the table puts it. */
export const addLine = (project: Project, table: Table, keys: readonly Key[]): Edit => {
  if (table.add) return table.add(project);
  if (valueAt(project, keys) === undefined) return notThere(keys);
  const fresh = table.fresh(project, keys);
  if (!fresh) return { ok: true, project };
  const there = valueAt(project, keys);
  if (!Array.isArray(there)) return setValue(project, [...keys, fresh.key], fresh.value);
  const at = Number(fresh.key);
  if (at >= there.length) return appendTo(project, keys, fresh.value);
  return setValue(project, keys, [...there.slice(0, at), fresh.value, ...there.slice(at)]);
};

/** Takes a line away; refused where the list would become too short. */
export const removeLine = (project: Project, table: Table, keys: readonly Key[], line: Key): Edit => {
  if (table.remove) return table.remove(project, Number(line));
  const there = valueAt(project, keys);
  if (Array.isArray(there))
    return setValue(
      project,
      keys,
      there.filter((_, index) => index !== line),
    );
  const { [line]: _gone, ...others } = (there ?? {}) as Record<Key, unknown>;
  return setValue(project, keys, others);
};
