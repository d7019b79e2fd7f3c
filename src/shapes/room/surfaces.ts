import type { Vec3 } from '../../math/vec3.ts';
import type { Opening, Project, SurfaceName } from '../../model/project.ts';
import { roomBox } from '../../model/room.ts';
import type { Cut, SlabFrame } from './slab.ts';

export const WALL_M = 0.12;

/** A surface's own axes: u as the file's fromM runs, v as its bottomM runs; n into the room. Metres. */
export interface Surface {
  readonly name: SurfaceName;
  readonly origin: Vec3;
  readonly u: Vec3;
  readonly v: Vec3;
  readonly n: Vec3;
  readonly lengthM: number;
  readonly riseM: number;
}

/** The six surfaces of a box room. `fromM` runs along side walls from the front, elsewhere from the left (model). */
export const surfacesOf = (project: Project): Surface[] => {
  const { widthM, lengthM, heightM } = roomBox(project);
  const w = widthM / 2;
  return [
    { name: 'front', origin: [-w, 0, 0], u: [1, 0, 0], v: [0, 1, 0], n: [0, 0, 1], lengthM: widthM, riseM: heightM },
    {
      name: 'back',
      origin: [-w, 0, lengthM],
      u: [1, 0, 0],
      v: [0, 1, 0],
      n: [0, 0, -1],
      lengthM: widthM,
      riseM: heightM,
    },
    { name: 'left', origin: [-w, 0, 0], u: [0, 0, 1], v: [0, 1, 0], n: [1, 0, 0], lengthM, riseM: heightM },
    { name: 'right', origin: [w, 0, 0], u: [0, 0, 1], v: [0, 1, 0], n: [-1, 0, 0], lengthM, riseM: heightM },
    { name: 'floor', origin: [-w, 0, 0], u: [1, 0, 0], v: [0, 0, 1], n: [0, 1, 0], lengthM: widthM, riseM: lengthM },
    {
      name: 'ceiling',
      origin: [-w, heightM, 0],
      u: [1, 0, 0],
      v: [0, 0, 1],
      n: [0, -1, 0],
      lengthM: widthM,
      riseM: lengthM,
    },
  ];
};

/** A right-handed frame for the slab behind a surface: u is turned round where the surface's own axes are left-handed. */
export const slabFrame = ({ origin, u, v, n, name, lengthM }: Surface): { frame: SlabFrame; flip: boolean } => {
  const leftHanded = name === 'back' || name === 'left' || name === 'floor';
  if (!leftHanded) return { frame: { origin, u, v, n }, flip: false };
  const far: Vec3 = [origin[0] + u[0] * lengthM, origin[1] + u[1] * lengthM, origin[2] + u[2] * lengthM];
  return { frame: { origin: far, u: [-u[0], -u[1], -u[2]], v, n }, flip: true };
};

/** The part of a rectangle in the file's terms that lies on the surface, or null where none does. */
export const onSurface = (
  { lengthM, riseM }: Surface,
  { fromM, widthM, bottomM, heightM }: Pick<Opening, 'fromM' | 'widthM' | 'bottomM' | 'heightM'>,
): Cut | null => {
  const cut = {
    u0: Math.max(0, fromM),
    u1: Math.min(lengthM, fromM + widthM),
    v0: Math.max(0, bottomM),
    v1: Math.min(riseM, bottomM + heightM),
  };
  return cut.u1 - cut.u0 > 0.02 && cut.v1 - cut.v0 > 0.02 ? cut : null;
};

/** A rectangle counted from the other end of the surface. */
export const flipped = (cut: Cut, lengthM: number): Cut => ({ ...cut, u0: lengthM - cut.u1, u1: lengthM - cut.u0 });
