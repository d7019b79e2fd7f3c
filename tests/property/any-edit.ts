import { addObject } from '../../src/model/commands/add-object.ts';
import { addToSurface } from '../../src/model/commands/add-opening.ts';
import { addRow, addSeatToRow } from '../../src/model/commands/add-seating.ts';
import { addLoudspeaker, addSubwoofer, OFFERED_CHANNELS } from '../../src/model/commands/add-source.ts';
import { moveCeilingBend, raiseCeiling } from '../../src/model/commands/ceiling.ts';
import { duplicateItem } from '../../src/model/commands/duplicate.ts';
import type { Edit } from '../../src/model/commands/edit.ts';
import { duplicateItems, lockItems, removeItems, shiftItems } from '../../src/model/commands/group.ts';
import {
  addItem,
  removeItem,
  renameItem,
  setLocked,
  setReferenceSeat,
  setSurface,
} from '../../src/model/commands/items.ts';
import { moveLoudspeaker, moveRow, moveSeat, moveSubwoofer } from '../../src/model/commands/move.ts';
import { addOnSurface, stretchOnSurface } from '../../src/model/commands/on-surface.ts';
import {
  insertPlanCorner,
  movePlanCorner,
  movePlanEdge,
  moveRoomWall,
  removePlanCorner,
  setRectangle,
  toPolygon,
} from '../../src/model/commands/plan.ts';
import { setRowMiddle, setSeatCount, setSeatSpacing } from '../../src/model/commands/seats.ts';
import { setFieldAt } from '../../src/model/commands/set-field.ts';
import { shiftProjector } from '../../src/model/commands/shift.ts';
import {
  aimLoudspeaker,
  moveRiserEdge,
  raiseRow,
  reclineSeat,
  resizePicture,
  stretchObject,
  turnSeat,
} from '../../src/model/commands/stretch.ts';
import { patternKeys } from '../../src/model/fields/field.ts';
import { FIELDS } from '../../src/model/fields/registry.ts';
import { DAMPING_SWITCHES } from '../../src/model/fields/switches-damping.ts';
import { SHAPE_SWITCHES } from '../../src/model/fields/switches-shape.ts';
import { THING_SWITCHES } from '../../src/model/fields/switches-things.ts';
import { addLine, removeLine, TABLES } from '../../src/model/fields/tables.ts';
import { itemsOf } from '../../src/model/items.ts';
import type { Key } from '../../src/model/paths.ts';
import type { ItemKind, Project } from '../../src/model/project.ts';
import { SURFACES } from '../../src/model/schema/room.ts';
import { acoustics } from '../../src/panels/parameters/acoustics.ts';

type Random = () => number;

const between = (random: Random, low: number, high: number): number => low + (high - low) * random();
const pick = <Item>(random: Random, items: readonly Item[]): Item => items[Math.floor(random() * items.length)];

const KINDS = ['row', 'seat', 'loudspeaker', 'subwoofer', 'opening', 'patch', 'object'] as const;

/** Some item of a random kind, or one that is not there. */
const anyItem = (random: Random, project: Project): { kind: ItemKind; id: string } => {
  const kind = pick(random, KINDS);
  const items = itemsOf(project, kind);
  return { kind, id: items.length === 0 || random() < 0.05 ? 'nobody' : pick(random, items).id };
};

type Make = (random: Random, project: Project) => Edit;

const somewhere = (random: Random): [number, number, number] => [
  between(random, -2.4, 2.4),
  between(random, -0.2, 2.9),
  between(random, -0.5, 6.5),
];
const anyBy = (random: Random): [number, number, number] => [
  between(random, -0.4, 0.4),
  random() < 0.5 ? 0 : between(random, -0.3, 0.3),
  between(random, -0.4, 0.4),
];
const anyRow = (random: Random, project: Project): string => pick(random, project.rows).id;
const SWITCHES = [...SHAPE_SWITCHES, ...DAMPING_SWITCHES, ...THING_SWITCHES];
const WALLS = ['front', 'back', 'left', 'right'] as const;
const rect = (random: Random) => ({
  fromM: between(random, -0.5, 5),
  widthM: between(random, 0.01, 1.5),
  bottomM: between(random, -0.2, 2),
  heightM: between(random, 0.01, 1.5),
});

/** A pattern's path in some project: list places up to 4, keys of records among those that mean something. */
const anyKeys = (random: Random, pattern: string): Key[] =>
  patternKeys(pattern).map((key) => {
    if (key === '[]') return Math.floor(random() * 5);
    return key === '{}' ? pick(random, ['0', '3', '125', '31.5', '63']) : key;
  });

const setAnyField: Make = (random, project) => {
  const field = pick(random, FIELDS);
  const low = field.min ?? 0;
  const high = Math.min(field.max ?? 1, low + 10);
  const value = field.choices
    ? pick(random, field.choices)
    : field.quantity === 'flag'
      ? random() < 0.5
      : between(random, low, high);
  const keys = anyKeys(random, field.pattern);
  return setFieldAt(project, keys, random() < 0.1 ? undefined : value);
};

/** Every command of the model, good or bad: about a third are refused. */
const COMMANDS_OF_THE_MODEL: readonly Make[] = [
  (random, project) => moveSubwoofer(project, pick(random, project.subwoofers)?.id ?? 'S1', somewhere(random)),
  (random, project) => moveLoudspeaker(project, pick(random, project.loudspeakers)?.id ?? 'L', somewhere(random)),
  (random, project) => {
    const [xM, , eyeZM] = somewhere(random);
    return moveSeat(project, anyItem(random, project).id, { xM, ...(random() < 0.5 ? { eyeZM } : {}) });
  },
  (random, project) =>
    moveRow(project, anyRow(random, project), { eyeZM: between(random, 1, 6), byXM: between(random, -0.1, 0.1) }),
  setAnyField,
  setAnyField,
  setAnyField,
  (random, project) => addItem(project, 'subwoofer', { id: `S${Math.floor(random() * 12)}`, atM: somewhere(random) }),
  (random, project) => {
    const minM = somewhere(random);
    const id = `box-${Math.floor(random() * 30)}`;
    return addItem(project, 'object', { id, kind: 'box', minM, maxM: minM.map((value) => value + 0.4) });
  },
  (random, project) => duplicateItem(project, anyItem(random, project)),
  (random, project) => renameItem(project, anyItem(random, project), `name-${Math.floor(random() * 20)}`),
  (random, project) => (random() < 0.4 ? removeItem(project, anyItem(random, project)) : { ok: true, project }),
  (random, project) => setLocked(project, anyItem(random, project), random() < 0.3),
  (random, project) => setLocked(project, anyItem(random, project), false),
  (random, project) => setReferenceSeat(project, random() < 0.2 ? undefined : anyItem(random, project).id),
  (random, project) =>
    setSurface(
      project,
      pick(random, SURFACES),
      random() < 0.2 ? undefined : { finish: pick(random, ['brick', 'gold', 'carpet-thin']) },
    ),
  (random, project) => {
    const one = pick(random, SWITCHES);
    return one.set(project, anyKeys(random, one.pattern), pick(random, one.ways).id, acoustics);
  },
  (random, project) => {
    const table = pick(random, TABLES);
    const keys = anyKeys(random, table.pattern);
    return random() < 0.5 ? addLine(project, table, keys) : removeLine(project, table, keys, Math.floor(random() * 5));
  },
  (random, project) => setSeatCount(project, anyRow(random, project), Math.floor(between(random, 0, 7))),
  (random, project) => setRowMiddle(project, anyRow(random, project), between(random, -3, 3)),
  (random, project) => setSeatSpacing(project, anyRow(random, project), between(random, 0.4, 1)),
  (random, project) => addSeatToRow(project, anyRow(random, project)).edit,
  (_random, project) => (project.rows.length < 4 ? addRow(project).edit : { ok: true, project }),
  (random, project) => addLoudspeaker(project, pick(random, OFFERED_CHANNELS)).edit,
  (_random, project) => addSubwoofer(project).edit,
  (random, project) =>
    addToSurface(
      project,
      pick(random, ['door', 'window', 'opening', 'panel'] as const),
      pick(random, [...SURFACES, '2']),
    ).edit,
  (random, project) => addObject(project, pick(random, ['box', 'beam', 'column', 'table', 'lamp'] as const)).edit,
  (random, project) =>
    addOnSurface(
      project,
      pick(random, ['opening', 'patch', 'object'] as const),
      pick(random, ['door', 'brick', 'box']),
      pick(random, SURFACES),
      random() < 0.8 ? null : 1,
      rect(random),
    ).edit,
  (random, project) => {
    const kind = random() < 0.5 ? 'opening' : 'patch';
    const items = itemsOf(project, kind);
    const id = items.length > 0 ? pick(random, items).id : 'nobody';
    return stretchOnSurface(
      project,
      { kind, id },
      pick(random, ['left', 'right', 'top', 'bottom'] as const),
      between(random, -0.3, 4),
    );
  },
  (random, project) =>
    shiftItems(project, [anyItem(random, project), anyItem(random, project)], anyBy(random), random() < 0.5),
  (random, project) => duplicateItems(project, [anyItem(random, project), anyItem(random, project)]).edit,
  (random, project) => (random() < 0.2 ? removeItems(project, [anyItem(random, project)]) : { ok: true, project }),
  (random, project) => lockItems(project, [anyItem(random, project)], random() < 0.2),
  (random, project) => shiftProjector(project, anyBy(random)),
  (random, project) =>
    aimLoudspeaker(
      project,
      pick(random, project.loudspeakers)?.id ?? 'L',
      random() < 0.5 ? 'reference' : somewhere(random),
    ),
  (random, project) => resizePicture(project, between(random, 0.2, 4), random() < 0.5 ? 'bottom' : 'top'),
  (random, project) =>
    moveRiserEdge(project, anyRow(random, project), pick(random, ['fromZM', 'toZM'] as const), between(random, -3, 7), {
      fromXM: -1.8,
      toXM: 1.8,
      fromZM: 3.9,
      toZM: 6,
      steps: [],
    }),
  (random, project) => raiseRow(project, anyRow(random, project), between(random, -0.2, 0.6)),
  (random, project) => turnSeat(project, anyItem(random, project).id, between(random, -200, 200)),
  (random, project) => reclineSeat(project, anyItem(random, project).id, between(random, -10, 70)),
  (random, project) => {
    const objects = project.room.objects;
    const id = objects.length > 0 ? pick(random, objects).id : 'nobody';
    return stretchObject(
      project,
      id,
      pick(random, [0, 1, 2] as const),
      random() < 0.5 ? 'min' : 'max',
      between(random, -2, 6),
    );
  },
  (random, project) => raiseCeiling(project, between(random, -0.2, 0.3)),
  (random, project) =>
    moveCeilingBend(project, Math.floor(random() * 4), [between(random, -3, 3), between(random, 0, 4)]),
  (_random, project) => toPolygon(project),
  (random, project) =>
    movePlanCorner(project, Math.floor(random() * 6), [between(random, -3, 3), between(random, -1, 7)]),
  (random, project) =>
    insertPlanCorner(project, Math.floor(random() * 6), [between(random, -3, 3), between(random, -1, 7)]),
  (random, project) => removePlanCorner(project, Math.floor(random() * 6)),
  (random, project) => movePlanEdge(project, Math.floor(random() * 6), between(random, -0.2, 0.5)),
  (random, project) => setRectangle(project, between(random, 3.5, 6), between(random, 5, 8)),
  (random, project) => moveRoomWall(project, pick(random, WALLS), between(random, -0.2, 0.5)),
];

/** One of them, on things that are there more often than not. */
export const anyEdit: Make = (random, project) => pick(random, COMMANDS_OF_THE_MODEL)(random, project);
