import { normalise, subtract, type Vec3 } from '../../math/vec3.ts';
import type { Loudspeaker, Project } from '../../model/project.ts';
import { nearestWallTo } from '../../model/room/places.ts';
import { roomShape } from '../../model/room/shape.ts';
import { referenceSeatId, seatPoses } from '../../model/seating.ts';
import { keptWith } from '../memo.ts';

/** The ear of the seat the layout is judged at; the middle of the room at ear height where there are no seats. */
export const referenceEar = keptWith((project: Project): Vec3 => {
  const poses = seatPoses(project);
  const { minM, maxM } = roomShape(project);
  if (poses.length === 0) return [(minM[0] + maxM[0]) / 2, 1.1, (minM[2] + maxM[2]) / 2];
  const id = referenceSeatId(project);
  return (poses.find((pose) => pose.seat.id === id) ?? poses[0]).earM;
});

/** The upright wall a point lies nearest to, as the unit vector from it into the room. */
export const nearestWall = (project: Project, atM: Vec3): Vec3 => {
  const { outward } = nearestWallTo(project, atM).wall;
  return [0 - outward[0], 0, 0 - outward[1]];
};

/** Along the wall a dipole lies by: forward along a side wall, to the room's middle line along any other. */
const alongWall = (project: Project, atM: Vec3): Vec3 => {
  const { wall } = nearestWallTo(project, atM);
  const [ax, az] = wall.along;
  if (wall.surface === 'left' || wall.surface === 'right') return [0 - ax, 0, 0 - az];
  const { minM, maxM } = roomShape(project);
  return atM[0] > (minM[0] + maxM[0]) / 2 ? [0 - ax, 0, 0 - az] : [ax, 0, az];
};

/**
 * Which way a loudspeaker's front lobe points, a unit vector. A dipole without an aim lies parallel to its wall with the
 * front lobe forward (contract); on the front or back wall, where forward is no direction along it, the lobe points to
 * the room's middle line. Everything else without an aim faces the reference seat's ear.
 */
export const loudspeakerAim = (project: Project, loudspeaker: Loudspeaker): Vec3 => {
  const { aim, atM, pattern } = loudspeaker;
  if (aim === undefined && pattern === 'dipole') return alongWall(project, atM);
  const target = aim === undefined || aim === 'reference' ? referenceEar(project) : aim;
  const direction = normalise(subtract(target, atM));
  return direction[0] === 0 && direction[1] === 0 && direction[2] === 0 ? [0, 0, 1] : direction;
};
