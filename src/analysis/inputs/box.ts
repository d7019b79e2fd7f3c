import type { BoxSpec } from '../../engines/bass/room-field.ts';
import type { Vec3 } from '../../math/vec3.ts';
import type { Project, SurfaceName } from '../../model/project.ts';
import { roomShape } from '../../model/room/shape.ts';
import { soundSpeedOf } from '../../model/room.ts';
import { defaultFinish, wallAdmittance } from './treatment.ts';

/** Which of the three solves a field is for: the walls as described, or with less or more damping than that. */
export type Damping = 'nominal' | 'low' | 'high';

/**
 * How far the damping of a described wall may be off: a factor of sqrt(3) either way. Published tables of one and the same
 * board on studs disagree threefold at 125 Hz (0.29 and 0.10), and below that no handbook table says anything; the band is
 * that factor laid evenly about the nominal value. Derived from the tables' disagreement; the factor is ours.
 */
export const DAMPING_FACTOR = Math.sqrt(3);

const factors: Readonly<Record<Damping, number>> = { nominal: 1, low: 1 / DAMPING_FACTOR, high: DAMPING_FACTOR };

/** The engine's wall order x-, x+, y-, y+, z-, z+ in the document's names. */
const engineWalls: readonly SurfaceName[] = ['left', 'right', 'floor', 'ceiling', 'front', 'back'];

/**
 * The room as the bass engine takes it: a sealed box, every wall even over its whole area. Patches and openings do not enter
 * (they change reverberation, not the field); 'low' and 'high' divide and multiply the real part of every admittance by
 * sqrt(3) and leave the imaginary part.
 */
export const boxSpec = (project: Project, damping: Damping = 'nominal'): BoxSpec => {
  const { minM, maxM } = roomShape(project);
  const { surfaces } = project.room;
  return {
    sizeM: [maxM[0] - minM[0], maxM[1], maxM[2] - minM[2]],
    soundSpeed: soundSpeedOf(project),
    admittance: engineWalls.map((wall) => {
      const [real, imaginary] = wallAdmittance(surfaces[wall], defaultFinish(wall));
      return [real * factors[damping], imaginary] as const;
    }),
  };
};

/** A point of the document in the engine's axes: the same directions, origin in the corner of least x, y and z. */
export const toEngine = (project: Project, [x, y, z]: Vec3): Vec3 => {
  const { minM } = roomShape(project);
  return [x - minM[0], y, z - minM[2]];
};

/** Points of the document as the engine takes them: x, y, z triples from the corner. */
export const engineTriples = (project: Project, pointsM: readonly Vec3[]): Float64Array => {
  const triples = new Float64Array(3 * pointsM.length);
  pointsM.forEach((point, index) => {
    triples.set(toEngine(project, point), 3 * index);
  });
  return triples;
};
