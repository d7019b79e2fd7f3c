import { normalise, subtract, type Vec3 } from '../../math/vec3.ts';
import type { Loudspeaker, Project } from '../../model/project.ts';
import { roomBox } from '../../model/room.ts';
import { referenceSeatId, seatPoses } from '../../model/seating.ts';
import { keptWith } from '../memo.ts';

/** The ear of the seat the layout is judged at; the middle of the room at ear height where there are no seats. */
export const referenceEar = keptWith((project: Project): Vec3 => {
  const poses = seatPoses(project);
  const { lengthM } = roomBox(project);
  if (poses.length === 0) return [0, 1.1, lengthM / 2];
  const id = referenceSeatId(project);
  return (poses.find((pose) => pose.seat.id === id) ?? poses[0]).earM;
});

/** The upright wall a point lies nearest to, as the unit vector from it into the room. */
export const nearestWall = (project: Project, [x, , z]: Vec3): Vec3 => {
  const { widthM, lengthM } = roomBox(project);
  const walls: readonly { readonly gapM: number; readonly inward: Vec3 }[] = [
    { gapM: x + widthM / 2, inward: [1, 0, 0] },
    { gapM: widthM / 2 - x, inward: [-1, 0, 0] },
    { gapM: z, inward: [0, 0, 1] },
    { gapM: lengthM - z, inward: [0, 0, -1] },
  ];
  return walls.reduce((best, wall) => (wall.gapM < best.gapM - 1e-9 ? wall : best)).inward;
};

/**
 * Which way a loudspeaker's front lobe points, a unit vector. A dipole without an aim lies parallel to its wall with the
 * front lobe forward (contract); on the front or back wall, where forward is no direction along it, the lobe points to
 * the room's middle line. Everything else without an aim faces the reference seat's ear.
 */
export const loudspeakerAim = (project: Project, loudspeaker: Loudspeaker): Vec3 => {
  const { aim, atM, pattern } = loudspeaker;
  if (aim === undefined && pattern === 'dipole') {
    const wall = nearestWall(project, atM);
    if (wall[0] !== 0) return [0, 0, -1];
    return atM[0] > 0 ? [-1, 0, 0] : [1, 0, 0];
  }
  const target = aim === undefined || aim === 'reference' ? referenceEar(project) : aim;
  const direction = normalise(subtract(target, atM));
  return direction[0] === 0 && direction[1] === 0 && direction[2] === 0 ? [0, 0, 1] : direction;
};
