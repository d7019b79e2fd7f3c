import type { Project } from './project.ts';

/** Whether the plan is a rectangle under a flat ceiling. */
export const isBox = ({ room }: Project): boolean => room.plan.shape === 'rectangle' && room.ceiling.shape === 'flat';

/** Speed of sound in air: c = 343.2 sqrt((t + 273.15) / 293.15) m/s (ISO 9613-1's form, contract). */
export const soundSpeedOf = (project: Project): number =>
  343.2 * Math.sqrt((project.air.temperatureC + 273.15) / 293.15);
