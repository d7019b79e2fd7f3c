import type { Vec3 } from '../../math/vec3.ts';
import type { FaceCell } from './faces.ts';
import { type Lamp, lampLight } from './lamps.ts';
import { addPictureLight, type PictureLight } from './picture-light.ts';
import { seesPast } from './plan-sight.ts';

/**
 * Light that has met a wall once: on a coarse lattice of points, what arrives from each of the six axis directions
 * (an ambient cube), red, green and blue of the picture's light and one number for the lamps'. Derived here: the
 * surfaces are cut into cells, each lit directly, then seen from the lattice as small Lambertian sources.
 */
export interface BounceVolume {
  readonly minM: Vec3;
  readonly sizeM: Vec3;
  /** 24 numbers a point (direction x channel), x fastest, then y, then z. */
  readonly cubes: Float32Array;
}

const NX = 4;
const NY = 3;
const NZ = 6;
const CHANNELS = 4;

interface Cells {
  /** x, y, z, area, nx, ny, nz a cell. */
  readonly places: Float64Array;
  /** Radiance sent back, four channels a cell. */
  readonly radiance: Float32Array;
}

/** The room's inner faces, each with the light it throws back. */
const litCells = (
  faces: readonly FaceCell[],
  walls: Float64Array,
  picture: PictureLight,
  lamps: readonly Lamp[],
): Cells => {
  const places = new Float64Array(faces.length * 7);
  const radiance = new Float32Array(faces.length * CHANNELS);
  const light = new Float32Array(3);
  const pictureXM = picture.minXM + picture.widthM / 2;
  faces.forEach(({ atM: [x, y, z], areaM2, inward: [nx, ny, nz], reflectance }, cell) => {
    light.fill(0);
    if (seesPast(walls, x, z, pictureXM, picture.planeZM + 0.01))
      addPictureLight(picture, x, y, z, nx, ny, nz, null, light, 0);
    let lamp = 0;
    for (const each of lamps)
      if (seesPast(walls, x, z, each.atM[0], each.atM[2])) lamp += lampLight(each, x, y, z, nx, ny, nz);
    places.set([x, y, z, areaM2, nx, ny, nz], cell * 7);
    radiance.set(
      [light[0], light[1], light[2], lamp].map((value) => value * reflectance),
      cell * CHANNELS,
    );
  });
  return { places, radiance };
};

/** Mean reflectance over the room's faces, by area. */
const meanReflectance = (faces: readonly FaceCell[]): number => {
  const area = faces.reduce((sum, { areaM2 }) => sum + areaM2, 0);
  return faces.reduce((sum, { areaM2, reflectance }) => sum + areaM2 * reflectance, 0) / area;
};

/**
 * @param minM and `sizeM` the upright box round the room, over which the lattice stands
 * @param walls those that may stand between two places (plan-sight)
 */
export const bounceVolume = (
  minM: Vec3,
  sizeM: Vec3,
  faces: readonly FaceCell[],
  walls: Float64Array,
  picture: PictureLight,
  lamps: readonly Lamp[],
): BounceVolume => {
  const { places, radiance } = litCells(faces, walls, picture, lamps);
  // What meets walls again and again: the geometric series of the mean reflectance.
  const again = 1 / (1 - meanReflectance(faces));
  const cubes = new Float32Array(NX * NY * NZ * 6 * CHANNELS);
  for (let k = 0, point = 0; k < NZ; k++)
    for (let j = 0; j < NY; j++)
      for (let i = 0; i < NX; i++, point++) {
        const x = minM[0] + (sizeM[0] * (i + 0.5)) / NX;
        const y = minM[1] + (sizeM[1] * (j + 0.5)) / NY;
        const z = minM[2] + (sizeM[2] * (k + 0.5)) / NZ;
        for (let cell = 0; cell < places.length / 7; cell++)
          if (seesPast(walls, x, z, places[cell * 7], places[cell * 7 + 2]))
            gather(places, radiance, cell, x, y, z, again, cubes, point * 6 * CHANNELS);
      }
  return { minM, sizeM, cubes };
};

const gather = (
  places: Float64Array,
  radiance: Float32Array,
  cell: number,
  x: number,
  y: number,
  z: number,
  gain: number,
  cubes: Float32Array,
  at: number,
): void => {
  const p = cell * 7;
  const dx = places[p] - x;
  const dy = places[p + 1] - y;
  const dz = places[p + 2] - z;
  const squared = dx * dx + dy * dy + dz * dz;
  const far = Math.sqrt(squared);
  const facing = -(dx * places[p + 4] + dy * places[p + 5] + dz * places[p + 6]) / far;
  if (facing <= 0) return;
  const share = (gain * facing * places[p + 3]) / (Math.PI * squared + places[p + 3]);
  for (let direction = 0; direction < 6; direction++) {
    const along = (direction >> 1 === 0 ? dx : direction >> 1 === 1 ? dy : dz) / far;
    const cosine = direction & 1 ? -along : along;
    if (cosine <= 0) continue;
    for (let channel = 0; channel < CHANNELS; channel++)
      cubes[at + direction * CHANNELS + channel] += share * cosine * radiance[cell * CHANNELS + channel];
  }
};

const clampLow = (value: number, count: number): number => Math.min(count - 1, Math.max(0, value));

/** Adds the bounced light at a surface to out[at..at+3], interpolated between the lattice points round it. */
export const addBounce = (
  { minM, sizeM, cubes }: BounceVolume,
  x: number,
  y: number,
  z: number,
  nx: number,
  ny: number,
  nz: number,
  gain: number,
  out: Float32Array,
  at: number,
): void => {
  const fx = clampLow(((x - minM[0]) / sizeM[0]) * NX - 0.5, NX);
  const fy = clampLow(((y - minM[1]) / sizeM[1]) * NY - 0.5, NY);
  const fz = clampLow(((z - minM[2]) / sizeM[2]) * NZ - 0.5, NZ);
  const i0 = Math.min(NX - 2, Math.floor(fx));
  const j0 = Math.min(NY - 2, Math.floor(fy));
  const k0 = Math.min(NZ - 2, Math.floor(fz));
  const tx = fx - i0;
  const ty = fy - j0;
  const tz = fz - k0;
  const dirX = nx >= 0 ? 0 : 1;
  const dirY = ny >= 0 ? 2 : 3;
  const dirZ = nz >= 0 ? 4 : 5;
  for (let corner = 0; corner < 8; corner++) {
    const ci = corner & 1;
    const cj = (corner >> 1) & 1;
    const ck = corner >> 2;
    const weight = gain * (ci ? tx : 1 - tx) * (cj ? ty : 1 - ty) * (ck ? tz : 1 - tz);
    if (weight === 0) continue;
    const base = ((k0 + ck) * NY * NX + (j0 + cj) * NX + i0 + ci) * 6 * CHANNELS;
    for (let channel = 0; channel < CHANNELS; channel++)
      out[at + channel] +=
        weight *
        (nx * nx * cubes[base + dirX * CHANNELS + channel] +
          ny * ny * cubes[base + dirY * CHANNELS + channel] +
          nz * nz * cubes[base + dirZ * CHANNELS + channel]);
  }
};
