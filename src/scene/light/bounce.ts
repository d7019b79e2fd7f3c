import type { Vec3 } from '../../math/vec3.ts';
import { type Lamp, lampLight } from './lamps.ts';
import { addPictureLight, type PictureLight } from './picture-light.ts';

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

export interface BouncingSurface {
  /** Axis of the normal, 0 to 2, and which way it points into the room. */
  readonly axis: 0 | 1 | 2;
  readonly sign: 1 | -1;
  readonly reflectance: number;
}

const NX = 4;
const NY = 3;
const NZ = 6;
const CELL_M = 0.55;
const CHANNELS = 4;

interface Cells {
  /** x, y, z, area, nx, ny, nz a cell. */
  readonly places: Float64Array;
  /** Radiance sent back, four channels a cell. */
  readonly radiance: Float32Array;
}

/** The inner faces of a box-shaped room cut into cells, each with the light it throws back. */
const litCells = (
  minM: Vec3,
  sizeM: Vec3,
  surfaces: readonly BouncingSurface[],
  picture: PictureLight,
  lamps: readonly Lamp[],
): Cells => {
  const places: number[] = [];
  const radiance: number[] = [];
  const light = new Float32Array(3);
  for (const { axis, sign, reflectance } of surfaces) {
    const u = axis === 0 ? 2 : 0;
    const v = axis === 1 ? 2 : 1;
    const countU = Math.max(1, Math.round(sizeM[u] / CELL_M));
    const countV = Math.max(1, Math.round(sizeM[v] / CELL_M));
    const area = (sizeM[u] / countU) * (sizeM[v] / countV);
    const normal = [0, 0, 0];
    normal[axis] = sign;
    for (let j = 0; j < countV; j++)
      for (let i = 0; i < countU; i++) {
        const at = [0, 0, 0];
        at[axis] = sign > 0 ? minM[axis] : minM[axis] + sizeM[axis];
        at[u] = minM[u] + (sizeM[u] * (i + 0.5)) / countU;
        at[v] = minM[v] + (sizeM[v] * (j + 0.5)) / countV;
        light.fill(0);
        addPictureLight(picture, at[0], at[1], at[2], normal[0], normal[1], normal[2], null, light, 0);
        let lamp = 0;
        for (const each of lamps) lamp += lampLight(each, at[0], at[1], at[2], normal[0], normal[1], normal[2]);
        places.push(at[0], at[1], at[2], area, normal[0], normal[1], normal[2]);
        radiance.push(light[0] * reflectance, light[1] * reflectance, light[2] * reflectance, lamp * reflectance);
      }
  }
  return { places: Float64Array.from(places), radiance: Float32Array.from(radiance) };
};

export const bounceVolume = (
  minM: Vec3,
  sizeM: Vec3,
  surfaces: readonly BouncingSurface[],
  picture: PictureLight,
  lamps: readonly Lamp[],
): BounceVolume => {
  const { places, radiance } = litCells(minM, sizeM, surfaces, picture, lamps);
  const mean = surfaces.reduce((sum, surface) => sum + surface.reflectance, 0) / surfaces.length;
  // What meets walls again and again: the geometric series of the mean reflectance.
  const again = 1 / (1 - mean);
  const cubes = new Float32Array(NX * NY * NZ * 6 * CHANNELS);
  for (let k = 0, point = 0; k < NZ; k++)
    for (let j = 0; j < NY; j++)
      for (let i = 0; i < NX; i++, point++) {
        const x = minM[0] + (sizeM[0] * (i + 0.5)) / NX;
        const y = minM[1] + (sizeM[1] * (j + 0.5)) / NY;
        const z = minM[2] + (sizeM[2] * (k + 0.5)) / NZ;
        for (let cell = 0; cell < places.length / 7; cell++)
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
