import type { BassFloor } from '../../analysis/types.ts';
import { cividis } from '../../math/cividis.ts';
import { type LevelScale, shareOf } from '../../math/level-scale.ts';

/** Where a coordinate falls among n equally spaced ones, clamped to the first and last. */
const gridAt = (valueM: number, coordinatesM: Float64Array): number => {
  const last = coordinatesM.length - 1;
  const span = coordinatesM[last] - coordinatesM[0];
  return span > 0 ? Math.min(last, Math.max(0, ((valueM - coordinatesM[0]) / span) * last)) : 0;
};

/** The level at a point of the floor, bilinear between grid points exactly as the shader draws it. */
export const levelAt = ({ xM, zM, levelDb }: BassFloor, atXM: number, atZM: number): number => {
  const columns = xM.length;
  const x = gridAt(atXM, xM);
  const z = gridAt(atZM, zM);
  const i = Math.min(Math.floor(x), Math.max(0, columns - 2));
  const j = Math.min(Math.floor(z), Math.max(0, zM.length - 2));
  const right = Math.min(i + 1, columns - 1);
  const below = Math.min(j + 1, zM.length - 1);
  const s = x - i;
  const t = z - j;
  const near = levelDb[j * columns + i] * (1 - s) + levelDb[j * columns + right] * s;
  const far = levelDb[below * columns + i] * (1 - s) + levelDb[below * columns + right] * s;
  return near * (1 - t) + far * t;
};

/** The colour a level is drawn in, sRGB 0 to 255: the legend's, the ribbon's and the floor's. */
export const levelColour = (levelDb: number, scale: LevelScale): readonly [number, number, number] =>
  cividis(shareOf(levelDb, scale));
