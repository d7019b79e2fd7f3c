import type { Placement, Solid } from '../../shapes/solid.ts';
import { addBounce, type BounceVolume } from './bounce.ts';
import { type Lamp, lampLight } from './lamps.ts';
import { type Occluders, ownerOf } from './occluders.ts';
import { addPictureLight, type PictureLight } from './picture-light.ts';
import { toWorld, turnToWorld, worldMatrix } from './placing.ts';
import { seesPast } from './plan-sight.ts';
import { isOutside, openness, type RoomSkin } from './skin.ts';

/** Everything that lights the room; made anew only when the room or the picture changes. */
export interface RoomLight {
  readonly skin: RoomSkin;
  readonly picture: PictureLight;
  readonly lamps: readonly Lamp[];
  readonly bounce: BounceVolume;
  readonly occluders: Occluders;
}

/** Numbers a vertex: the picture's red, green, blue, the lamps' share, and how open to general light it is. */
export const LIGHT_STRIDE = 5;

/** Cut faces and outsides of walls are no part of the room: they keep just enough light to be seen as its thickness. */
const OUTSIDE_SHARE = 0.22;

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
    for (const lamp of light.lamps)
      if (seesPast(occluders.walls, x, z, lamp.atM[0], lamp.atM[2])) out[o + 3] += lampLight(lamp, x, y, z, nx, ny, nz);
    const open = openness(light.skin, place, normal);
    addBounce(light.bounce, x, y, z, nx, ny, nz, open, out, o);
    out[o + 4] = open * (0.68 + 0.32 * ny);
    if (isOutside(light.skin, place, normal)) for (let k = 0; k < LIGHT_STRIDE; k++) out[o + k] *= OUTSIDE_SHARE;
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
