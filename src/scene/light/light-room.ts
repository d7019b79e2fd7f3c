import type { Vec3 } from '../../math/vec3.ts';
import type { Project } from '../../model/project.ts';
import { SURFACES, type SurfaceName } from '../../model/schema/room.ts';
import type { Solid } from '../../shapes/solid.ts';
import { type BouncingSurface, bounceVolume } from './bounce.ts';
import { lampsOf } from './lamps.ts';
import { occludersOf } from './occluders.ts';
import { pictureLight } from './picture-light.ts';
import type { RoomLight } from './room-light.ts';

export interface Extent {
  readonly minM: Vec3;
  readonly maxM: Vec3;
}

/** The upright box round the plan and under the highest point of the ceiling. */
export const roomExtent = ({ room }: Project): Extent => {
  const { plan, ceiling } = room;
  const height =
    ceiling.shape === 'flat'
      ? ceiling.heightM
      : ceiling.shape === 'slope'
        ? Math.max(ceiling.startHeightM, ceiling.endHeightM)
        : Math.max(...ceiling.pointsM.map(([, y]) => y));
  if (plan.shape === 'rectangle')
    return { minM: [-plan.widthM / 2, 0, 0], maxM: [plan.widthM / 2, height, plan.lengthM] };
  const xs = plan.cornersM.map(([x]) => x);
  const zs = plan.cornersM.map(([, z]) => z);
  return { minM: [Math.min(...xs), 0, Math.min(...zs)], maxM: [Math.max(...xs), height, Math.max(...zs)] };
};

/** How much light each inner face throws back: the palette's mid tones, with the boards lighter and the front dark. */
const REFLECTANCE: Readonly<Record<SurfaceName, number>> = {
  front: 0.12,
  back: 0.22,
  left: 0.22,
  right: 0.22,
  floor: 0.16,
  ceiling: 0.14,
};

const FACES: Readonly<Record<SurfaceName, Pick<BouncingSurface, 'axis' | 'sign'>>> = {
  left: { axis: 0, sign: 1 },
  right: { axis: 0, sign: -1 },
  floor: { axis: 1, sign: 1 },
  ceiling: { axis: 1, sign: -1 },
  front: { axis: 2, sign: 1 },
  back: { axis: 2, sign: -1 },
};

/** All that lights a room, from its document, its parts (for shade) and the picture's mean colours. */
export const lightRoom = (project: Project, solids: readonly Solid[], radiance: Float32Array): RoomLight => {
  const { minM, maxM } = roomExtent(project);
  const picture = pictureLight(project.picture, radiance);
  const lamps = lampsOf(project, { minM, maxM });
  const sizeM: Vec3 = [maxM[0] - minM[0], maxM[1] - minM[1], maxM[2] - minM[2]];
  const faces = SURFACES.map((name) => ({ ...FACES[name], reflectance: REFLECTANCE[name] }));
  return {
    minM,
    maxM,
    picture,
    lamps,
    bounce: bounceVolume(minM, sizeM, faces, picture, lamps),
    occluders: occludersOf(solids),
  };
};
