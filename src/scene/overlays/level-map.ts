import type { BassSlice } from '../../analysis/types.ts';
import { cividis } from '../../math/cividis.ts';
import { diverging } from '../../math/diverging.ts';
import type { SliceLegend } from '../../state/slice-legend.ts';

/** Where a coordinate falls among n equally spaced ones, clamped to the first and last. */
const gridAt = (valueM: number, coordinatesM: Float64Array): number => {
  const last = coordinatesM.length - 1;
  const span = coordinatesM[last] - coordinatesM[0];
  return span > 0 ? Math.min(last, Math.max(0, ((valueM - coordinatesM[0]) / span) * last)) : 0;
};

/** A grid's value at a point, bilinear between grid points exactly as the shader draws it. */
const bilinear = ({ uM, vM }: BassSlice, values: ArrayLike<number>, atUM: number, atVM: number): number => {
  const columns = uM.length;
  const u = gridAt(atUM, uM);
  const v = gridAt(atVM, vM);
  const i = Math.min(Math.floor(u), Math.max(0, columns - 2));
  const j = Math.min(Math.floor(v), Math.max(0, vM.length - 2));
  const right = Math.min(i + 1, columns - 1);
  const below = Math.min(j + 1, vM.length - 1);
  const s = u - i;
  const t = v - j;
  const near = values[j * columns + i] * (1 - s) + values[j * columns + right] * s;
  const far = values[below * columns + i] * (1 - s) + values[below * columns + right] * s;
  return near * (1 - t) + far * t;
};

/** The level at a point of a slice, in its own axes; NaN outside the room. */
export const levelAt = (slice: BassSlice, atUM: number, atVM: number): number =>
  bilinear(slice, slice.levelDb, atUM, atVM);

/** What a slice's colour at a point stands for: level, difference from the seats' mean, or the pressure at `turn` radians. */
export const valueAt = (slice: BassSlice, atUM: number, atVM: number, turn: number): number => {
  if (slice.as === 'pressure' && slice.pressure) {
    const { re, im } = slice.pressure;
    return bilinear(slice, re, atUM, atVM) * Math.cos(turn) - bilinear(slice, im, atUM, atVM) * Math.sin(turn);
  }
  return levelAt(slice, atUM, atVM) - (slice.as === 'difference' ? (slice.meanDb ?? 0) : 0);
};

/** The colour a value is drawn in, sRGB 0 to 255: the legend's and the map's. */
export const legendColour = (value: number, { kind, low, high }: SliceLegend): readonly [number, number, number] => {
  const share = Math.min(1, Math.max(0, (value - low) / (high - low)));
  return kind === 'level' ? cividis(share) : diverging(share);
};
