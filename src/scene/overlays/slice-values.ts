import type { BassSlice } from '../../analysis/types.ts';

/** Stands on the graphics card for a point outside the room. */
export const OUTSIDE = -1e9;
/** Points this many grid steps beyond the room take the nearest value inside, so that the map reaches its walls. */
const EDGE_STEPS = 3;

/** Fills points without a value from their neighbours' mean, in place; `stride` numbers a point. */
export const fillEdges = (values: Float32Array, columns: number, rows: number, stride: number): void => {
  const given = (at: number) => !Number.isNaN(values[at * stride]);
  for (let step = 0; step < EDGE_STEPS; step += 1) {
    const found: number[] = [];
    for (let j = 0; j < rows; j += 1)
      for (let i = 0; i < columns; i += 1) {
        const at = j * columns + i;
        if (given(at)) continue;
        const near = [
          i > 0 && given(at - 1) ? at - 1 : -1,
          i + 1 < columns && given(at + 1) ? at + 1 : -1,
          j > 0 && given(at - columns) ? at - columns : -1,
          j + 1 < rows && given(at + columns) ? at + columns : -1,
        ].filter((neighbour) => neighbour >= 0);
        if (near.length === 0) continue;
        found.push(at);
        for (let k = 0; k < stride; k += 1)
          found.push(near.reduce((sum, neighbour) => sum + values[neighbour * stride + k], 0) / near.length);
      }
    if (found.length === 0) return;
    for (let n = 0; n < found.length; n += 1 + stride)
      for (let k = 0; k < stride; k += 1) values[found[n] * stride + k] = found[n + 1 + k];
  }
};

/** Two numbers a point: level and 0, difference and 0, or the pressure's parts. */
export const sliceValues = (slice: BassSlice): Float32Array => {
  const { levelDb, pressure, meanDb, uM, vM } = slice;
  const values = new Float32Array(2 * levelDb.length);
  const mean = slice.as === 'difference' ? (meanDb ?? 0) : 0;
  for (let i = 0; i < levelDb.length; i += 1) {
    values[2 * i] = slice.as === 'pressure' && pressure ? pressure.re[i] : levelDb[i] - mean;
    values[2 * i + 1] = slice.as === 'pressure' && pressure ? pressure.im[i] : 0;
  }
  fillEdges(values, uM.length, vM.length, 2);
  for (let i = 0; i < values.length; i += 1) if (Number.isNaN(values[i])) values[i] = OUTSIDE;
  return values;
};

/**
 * The turn in radians at which a complex field's real part is largest over all points: minus half the angle of the sum of
 * squares. A still picture of a signed pressure is drawn there, and the moving one begins there.
 */
export const fullestTurn = ({ re, im }: { readonly re: Float32Array; readonly im: Float32Array }): number => {
  let a = 0;
  let b = 0;
  for (let i = 0; i < re.length; i += 1) {
    if (Number.isNaN(re[i])) continue;
    a += re[i] * re[i] - im[i] * im[i];
    b += 2 * re[i] * im[i];
  }
  return -0.5 * Math.atan2(b, a);
};
