import { degreesOf, radiansOf, wrapDegrees } from '../../math/angles.ts';
import type { Vec3 } from '../../math/vec3.ts';
import { isLocked, keysOf, seatIndices } from '../items.ts';
import type { Project } from '../project.ts';
import type { Riser } from '../riser.ts';
import { roomShape } from '../room/shape.ts';
import { type Edit, setValue } from './edit.ts';
import { lockedEdit, noSuch } from './move.ts';

const tidy = (valueM: number): number => Number(valueM.toFixed(4));
const within = (value: number, min: number, max: number): number => Math.min(Math.max(value, min), Math.max(min, max));

/** Turns a loudspeaker to a point of the room, or to the reference seat whatever becomes of it. */
export const aimLoudspeaker = (project: Project, id: string, aim: 'reference' | Vec3): Edit => {
  const ref = { kind: 'loudspeaker', id } as const;
  const keys = keysOf(project, ref);
  if (!keys) return noSuch(ref);
  if (isLocked(project, ref)) return lockedEdit(project, ref);
  return setValue(project, [...keys, 'aim'], aim === 'reference' ? aim : aim.map(tidy));
};

/** Another width for the picture, its shape kept. It grows about its middle line from its lower edge, or with `top` from its upper. */
export const resizePicture = (project: Project, widthM: number, held: 'bottom' | 'top'): Edit => {
  const { picture } = project;
  const { minM, maxM, highestM } = roomShape(project);
  const side = 2 * Math.min(picture.centreXM - minM[0], maxM[0] - picture.centreXM);
  const topM = picture.bottomM + picture.widthM / picture.aspect;
  const roomUp = held === 'bottom' ? highestM - picture.bottomM : topM;
  const width = tidy(within(widthM, 0.3, Math.min(12, side, roomUp * picture.aspect)));
  const bottomM = held === 'bottom' ? picture.bottomM : tidy(Math.max(0, topM - width / picture.aspect));
  return setValue(project, ['picture'], { ...picture, widthM: width, bottomM });
};

const LEAST_RISER_M = 0.3;

/** Steps built against a riser's front edge go with it. */
const stepsAlong = (steps: Riser['steps'], byM: number): Riser['steps'] =>
  steps.map((step) => ({
    ...step,
    ...(step.fromZM === undefined ? {} : { fromZM: tidy(step.fromZM + byM) }),
    ...(step.toZM === undefined ? {} : { toZM: tidy(step.toZM + byM) }),
  }));

/** Moves a riser's front or back edge to a place along the room. `drawn` is the extent it has now. */
export const moveRiserEdge = (
  project: Project,
  rowId: string,
  edge: 'fromZM' | 'toZM',
  toM: number,
  drawn: Riser,
): Edit => {
  const ref = { kind: 'row', id: rowId } as const;
  const keys = keysOf(project, ref);
  if (!keys) return noSuch(ref);
  if (isLocked(project, ref)) return lockedEdit(project, ref);
  const { minM, maxM } = roomShape(project);
  const limits =
    edge === 'fromZM'
      ? ([minM[2], drawn.toZM - LEAST_RISER_M] as const)
      : ([drawn.fromZM + LEAST_RISER_M, maxM[2]] as const);
  const value = tidy(within(toM, ...limits));
  const steps = edge === 'fromZM' ? stepsAlong(drawn.steps, value - drawn.fromZM) : drawn.steps;
  return setValue(project, [...keys, 'riser'], { ...drawn, [edge]: value, steps });
};

/** How high a row's floor is built; nought takes the riser away from under it. */
export const raiseRow = (project: Project, rowId: string, floorM: number): Edit => {
  const ref = { kind: 'row', id: rowId } as const;
  const keys = keysOf(project, ref);
  if (!keys) return noSuch(ref);
  if (isLocked(project, ref)) return lockedEdit(project, ref);
  return setValue(project, [...keys, 'floorM'], tidy(within(floorM, 0, roomShape(project).lowestM - 0.5)));
};

const seatKeys = (project: Project, id: string) => {
  const indices = seatIndices(project, id);
  return indices && (['rows', indices[0], 'seats', indices[1]] as const);
};

/** Turns a chair to face along a level direction of the plan; positive to the right. Whole degrees; straight ahead says nothing. */
export const turnSeat = (project: Project, id: string, facingDeg: number): Edit => {
  const keys = seatKeys(project, id);
  if (!keys) return noSuch({ kind: 'seat', id });
  if (isLocked(project, { kind: 'seat', id })) return lockedEdit(project, { kind: 'seat', id });
  const whole = Math.round(wrapDegrees(facingDeg));
  return setValue(project, [...keys, 'facingDeg'], whole === 0 ? undefined : whole);
};

/** Leans a chair's back, whole degrees from upright. */
export const reclineSeat = (project: Project, id: string, reclineDeg: number): Edit => {
  const keys = seatKeys(project, id);
  if (!keys) return noSuch({ kind: 'seat', id });
  if (isLocked(project, { kind: 'seat', id })) return lockedEdit(project, { kind: 'seat', id });
  const whole = Math.round(within(reclineDeg, 0, 60));
  return setValue(project, [...keys, 'reclineDeg'], whole === 0 ? undefined : whole);
};

/** The direction of the plan a chair faces, and the facing of a direction. */
export const facingDirection = (facingDeg: number): readonly [number, number] => [
  Math.sin(radiansOf(facingDeg)),
  -Math.cos(radiansOf(facingDeg)),
];
export const facingOf = (x: number, z: number): number => degreesOf(Math.atan2(x, -z));

const LEAST_SIDE_M = 0.05;

/** Moves one side of an object along its axis, the other sides where they are; kept in the room and at least 5 cm thick. */
export const stretchObject = (project: Project, id: string, axis: 0 | 1 | 2, end: 'min' | 'max', toM: number): Edit => {
  const ref = { kind: 'object', id } as const;
  const index = project.room.objects.findIndex((one) => one.id === id);
  if (index < 0) return noSuch(ref);
  if (isLocked(project, ref)) return lockedEdit(project, ref);
  const object = project.room.objects[index];
  const { minM, maxM } = roomShape(project);
  const value =
    end === 'min'
      ? within(toM, minM[axis], object.maxM[axis] - LEAST_SIDE_M)
      : within(toM, object.minM[axis] + LEAST_SIDE_M, maxM[axis]);
  const key = end === 'min' ? 'minM' : 'maxM';
  return setValue(project, ['room', 'objects', index], { ...object, [key]: object[key].with(axis, tidy(value)) });
};
