import { fieldAt } from '../fields/registry.ts';
import { type Key, pathKeys, pathText, valueAt } from '../paths.ts';
import type { Project } from '../project.ts';
import { roomShape } from '../room/shape.ts';
import { type Edit, refuseWords, setValue } from './edit.ts';
import { moveRow } from './move.ts';
import { movePlanCorner, setRectangle } from './plan.ts';

type FieldCommand = (project: Project, keys: readonly Key[], value: number) => Edit;

const corner =
  (axis: 0 | 1): FieldCommand =>
  (project, keys, value) => {
    const { plan } = project.room;
    const index = Number(keys[3]);
    if (plan.shape !== 'polygon' || !plan.cornersM[index]) return setValue(project, keys, value);
    const [x, z] = plan.cornersM[index];
    return movePlanCorner(project, index, axis === 0 ? [value, z] : [x, value]);
  };

/** Numbers whose change takes other things along, as it does when they are dragged: walls, rows. */
const COMMANDS: Readonly<Record<string, FieldCommand>> = {
  'room.plan.widthM': (project, keys, value) =>
    project.room.plan.shape === 'rectangle'
      ? setRectangle(project, value, project.room.plan.lengthM)
      : setValue(project, keys, value),
  'room.plan.lengthM': (project, keys, value) =>
    project.room.plan.shape === 'rectangle'
      ? setRectangle(project, project.room.plan.widthM, value)
      : setValue(project, keys, value),
  'room.plan.cornersM[][0]': corner(0),
  'room.plan.cornersM[][1]': corner(1),
  'rows[].eyeZM': (project, keys, value) => {
    const row = project.rows[Number(keys[1])];
    return row ? moveRow(project, row.id, { eyeZM: value }) : setValue(project, keys, value);
  },
};

/** The ceiling's bends along the other way of the room, as far along it as they were along this one. */
const turnedCeiling = (project: Project, across: unknown): Edit => {
  const { ceiling } = project.room;
  const keys = ['room', 'ceiling'];
  if (ceiling.shape !== 'profile' || ceiling.across === across || (across !== 'x' && across !== 'z'))
    return setValue(project, [...keys, 'across'], across);
  const { minM, maxM } = roomShape(project);
  const [from, to] = across === 'x' ? ([2, 0] as const) : ([0, 2] as const);
  const turned = (at: number): number =>
    Math.round((minM[to] + ((at - minM[from]) / (maxM[from] - minM[from])) * (maxM[to] - minM[to])) * 1000) / 1000;
  const pointsM = ceiling.pointsM.map(([at, height]) => [turned(at), height]);
  return setValue(project, keys, { ...ceiling, across, pointsM });
};

/**
 * Sets a field of the registry at its keys; undefined puts an optional or defaulted one back to what it is when the file
 * says nothing. What says where a locked thing stands is refused.
 */
export const setFieldAt = (project: Project, keys: readonly Key[], value: unknown): Edit => {
  const field = fieldAt(keys);
  if (!field) return refuseWords(pathText(keys), value, 'a field that can be edited');
  if (field.place) {
    const holders = keys.map((_, index) => keys.slice(0, index));
    const locked = holders.find((holder) => valueAt(project, [...holder, 'locked']) === true);
    if (locked) return refuseWords(`${pathText(locked)}.locked`, true, 'unlocked first: it stays where it is');
  }
  if (field.pattern === 'room.ceiling.across') return turnedCeiling(project, value);
  const command = typeof value === 'number' && Object.hasOwn(COMMANDS, field.pattern) && COMMANDS[field.pattern];
  return command ? command(project, keys, value) : setValue(project, keys, value);
};

/** The same by a path such as `loudspeakers[3].atM[0]`. */
export const setField = (project: Project, path: string, value: unknown): Edit => {
  const keys = pathKeys(path);
  return keys ? setFieldAt(project, keys, value) : refuseWords(path, value, 'a field that can be edited');
};
