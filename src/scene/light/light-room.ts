import type { Vec3 } from '../../math/vec3.ts';
import type { Project } from '../../model/project.ts';
import { roomShape } from '../../model/room/shape.ts';
import { pictureFace } from '../../shapes/picture.ts';
import type { Solid } from '../../shapes/solid.ts';
import { bounceVolume } from './bounce.ts';
import { faceCells } from './faces.ts';
import { lampsOf } from './lamps.ts';
import { occludersOf } from './occluders.ts';
import { pictureLight } from './picture-light.ts';
import { inwardWalls } from './plan-sight.ts';
import type { RoomLight } from './room-light.ts';
import { roomSkin } from './skin.ts';

/** All that lights a room, from its document, its parts (for shade) and the picture's mean colours. */
export const lightRoom = (project: Project, solids: readonly Solid[], radiance: Float32Array): RoomLight => {
  const shape = roomShape(project);
  const { minM, maxM } = shape;
  const picture = pictureLight(pictureFace(project), radiance);
  const lamps = lampsOf(project);
  const walls = inwardWalls(shape);
  const sizeM: Vec3 = [maxM[0] - minM[0], maxM[1] - minM[1], maxM[2] - minM[2]];
  return {
    skin: roomSkin(shape),
    picture,
    lamps,
    bounce: bounceVolume(minM, sizeM, faceCells(shape), walls, picture, lamps),
    occluders: { ...occludersOf(solids), walls },
  };
};
