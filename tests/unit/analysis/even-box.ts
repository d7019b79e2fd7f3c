import type { BoxSpec } from '../../../src/engines/bass/room-field.ts';
import type { Project } from '../../../src/model/project.ts';
import { roomShape } from '../../../src/model/room/shape.ts';

/** The bounds of a project's room with even walls of admittance 0.04, so many times as absorbing. */
export const boxSpec = (project: Project, times = 1): BoxSpec => {
  const { minM, maxM } = roomShape(project);
  return {
    sizeM: [maxM[0] - minM[0], maxM[1] - minM[1], maxM[2] - minM[2]],
    soundSpeed: 343.2,
    admittance: Array.from({ length: 6 }, () => [0.04 * times, 0] as const),
  };
};
