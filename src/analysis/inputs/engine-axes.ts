import type { Vec3 } from '../../math/vec3.ts';
import type { Project } from '../../model/project.ts';
import { roomShape } from '../../model/room/shape.ts';

/** A point of the document in the engine's axes: the same directions, origin at the least x, y and z of the room's bounds. */
export const toEngine = (project: Project, [x, y, z]: Vec3): Vec3 => {
  const [minX, minY, minZ] = roomShape(project).minM;
  return [x - minX, y - minY, z - minZ];
};

/** Points of the document as the engine takes them: x, y, z triples from the corner. */
export const engineTriples = (project: Project, pointsM: readonly Vec3[]): Float64Array => {
  const triples = new Float64Array(3 * pointsM.length);
  pointsM.forEach((point, index) => {
    triples.set(toEngine(project, point), 3 * index);
  });
  return triples;
};
