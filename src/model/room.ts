import type { Vec3 } from '../math/vec3.ts';
import type { Project } from './project.ts';

export interface RoomBox {
  readonly widthM: number;
  readonly lengthM: number;
  readonly heightM: number;
  readonly minM: Vec3;
  readonly maxM: Vec3;
}

/** Whether the plan is a rectangle under a flat ceiling. */
export const isBox = ({ room }: Project): boolean => room.plan.shape === 'rectangle' && room.ceiling.shape === 'flat';

/** The room as a box. Only rectangles with a flat ceiling get past reading; a caller with any other room is at fault. */
export const roomBox = (project: Project): RoomBox => {
  const { plan, ceiling } = project.room;
  if (plan.shape !== 'rectangle' || ceiling.shape !== 'flat') throw new TypeError('the room is no box');
  const { widthM, lengthM } = plan;
  const { heightM } = ceiling;
  return { widthM, lengthM, heightM, minM: [-widthM / 2, 0, 0], maxM: [widthM / 2, heightM, lengthM] };
};

/** Speed of sound in air: c = 343.2 sqrt((t + 273.15) / 293.15) m/s (ISO 9613-1's form, contract). */
export const soundSpeedOf = (project: Project): number =>
  343.2 * Math.sqrt((project.air.temperatureC + 273.15) / 293.15);
