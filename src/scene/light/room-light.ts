import type { Vec3 } from '../../math/vec3.ts';
import type { Placement, Solid } from '../../shapes/solid.ts';
import { addBounce, type BounceVolume } from './bounce.ts';
import { type Lamp, lampLight } from './lamps.ts';
import { type Occluders, ownerOf } from './occluders.ts';
import { addPictureLight, type PictureLight } from './picture-light.ts';
import { toWorld, turnToWorld, worldMatrix } from './placing.ts';

/** Everything that lights the room; made anew only when the room or the picture changes. */
export interface RoomLight {
  readonly minM: Vec3;
  readonly maxM: Vec3;
  readonly picture: PictureLight;
  readonly lamps: readonly Lamp[];
  readonly bounce: BounceVolume;
  readonly occluders: Occluders;
}

/** Numbers a vertex: the picture's red, green, blue, the lamps' share, and how open to general light it is. */
export const LIGHT_STRIDE = 5;

const CORNER_REACH_M = 0.38;
const CORNER_DEPTH = 0.36;

/** How much of its surroundings' light a surface near the room's corners still gets: 1 in the open. */
export const openness = ({ minM, maxM }: Pick<RoomLight, 'minM' | 'maxM'>, at: Float64Array, normal: Float64Array) => {
  let open = 1;
  for (let axis = 0; axis < 3; axis++) {
    const square = 1 - normal[axis] * normal[axis];
    const low = Math.max(0, at[axis] - minM[axis]);
    const high = Math.max(0, maxM[axis] - at[axis]);
    open *= 1 - CORNER_DEPTH * square * Math.exp(-low / CORNER_REACH_M);
    open *= 1 - CORNER_DEPTH * square * Math.exp(-high / CORNER_REACH_M);
  }
  return open;
};

/** Cut faces and outsides of walls are no part of the room: they keep just enough light to be seen as its thickness. */
const OUTSIDE_SHARE = 0.22;
const OUTSIDE_M = 0.002;

/** In or behind an inner face and turned out of the room, or on a slab's rim: not so the reveals of openings. */
const isOutside = ({ minM, maxM }: RoomLight, at: Float64Array, turned: Float64Array): boolean => {
  let beyond = 0;
  let rim = 0;
  let away = false;
  for (let axis = 0; axis < 3; axis++) {
    const low = minM[axis] - at[axis];
    const high = at[axis] - maxM[axis];
    if (low < -OUTSIDE_M && high < -OUTSIDE_M) continue;
    if (low > OUTSIDE_M || high > OUTSIDE_M) beyond++;
    else rim++;
    if ((low > high ? -turned[axis] : turned[axis]) > 0.9) away = true;
  }
  return away || (beyond > 0 && beyond + rim > 1);
};

const place = new Float64Array(3);
const normal = new Float64Array(3);

interface Shaped {
  readonly positions: ArrayLike<number>;
  readonly normals: ArrayLike<number>;
}

/** Light at every vertex of a part where it stands, LIGHT_STRIDE numbers a vertex, into `out`. */
export const lightPart = (
  light: RoomLight,
  owner: Pick<Solid, 'kind' | 'id'>,
  { positions, normals }: Shaped,
  placement: Placement,
  out: Float32Array,
): void => {
  const matrix = worldMatrix(placement);
  const { occluders } = light;
  occluders.skip = ownerOf(owner);
  out.fill(0);
  for (let i = 0, o = 0; i < positions.length; i += 3, o += LIGHT_STRIDE) {
    toWorld(matrix, positions[i], positions[i + 1], positions[i + 2], place);
    turnToWorld(matrix, normals[i], normals[i + 1], normals[i + 2], normal);
    const [x, y, z] = place;
    const [nx, ny, nz] = normal;
    addPictureLight(light.picture, x, y, z, nx, ny, nz, occluders, out, o);
    for (const lamp of light.lamps) out[o + 3] += lampLight(lamp, x, y, z, nx, ny, nz);
    const open = openness(light, place, normal);
    addBounce(light.bounce, x, y, z, nx, ny, nz, open, out, o);
    out[o + 4] = open * (0.68 + 0.32 * ny);
    if (isOutside(light, place, normal)) for (let k = 0; k < LIGHT_STRIDE; k++) out[o + k] *= OUTSIDE_SHARE;
  }
};

/** Adds a lit part's vertices to running sums: luminance of the picture's light, lamps, general, and how many. */
export const addToSums = (lit: Float32Array, sums: Float64Array): void => {
  for (let o = 0; o < lit.length; o += LIGHT_STRIDE) {
    sums[0] += 0.2126 * lit[o] + 0.7152 * lit[o + 1] + 0.0722 * lit[o + 2];
    sums[1] += lit[o + 3];
    sums[2] += lit[o + 4];
    sums[3] += 1;
  }
};
