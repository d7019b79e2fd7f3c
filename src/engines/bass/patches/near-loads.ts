import type { BoxGeometry } from '../box-state.ts';
import type { BoxPatch } from './box-patches.ts';
import type { PatchLayout } from './patch-layout.ts';

/** Three static sums per patch function, at 3 function; null where no patch is near. */
export type NearLoads = Float64Array | null;

/** Beyond this distance from a patch's wall the terms left out have died away. */
export const NEAR_M = 0.7;
/** Terms are followed until they have fallen by ln(1000) more. */
const FALL = Math.log(1e3);
/** Points remembered per layout: enough for every place a search tries. */
const MOST_KEPT = 512;
let rows = new Float64Array(0);
let shapesU = new Float64Array(0);
let shapesV = new Float64Array(0);

const fillShapes = (out: Float64Array, count: number, atM: number, lengthM: number): void => {
  for (let m = 0; m < count; m++)
    out[m] = Math.sqrt((m === 0 ? 1 : 2) / lengthM) * Math.cos((m * Math.PI * atM) / lengthM);
};

/**
 * What the terms beyond the cut add to the load of a point near a patch's wall, x metres from it: there, as in static-tail.ts,
 * with rigid shapes and integrals,
 *
 *   e^(-gamma x) / (gamma + B) = e^(-kappa x) / kappa [1 - B / kappa + k^2 (x / 2 kappa + 1 / 2 kappa^2) + ...]
 *
 * so that three sums without frequency do, multiplied by 1, -B and k^2. Derived.
 */
export const nearLoads = (
  geometry: BoxGeometry,
  patches: readonly BoxPatch[],
  layout: PatchLayout,
  point: readonly [number, number, number],
): NearLoads => {
  const key = point.join();
  const known = layout.near.get(key);
  if (known !== undefined) return known;
  let sums: NearLoads = null;
  for (const [i, patch] of patches.entries()) {
    const gapM = patch.side === 0 ? point[patch.normal] : geometry.sizeM[patch.normal] - point[patch.normal];
    if (gapM > NEAR_M) continue;
    sums ??= new Float64Array(3 * layout.functions.count);
    addPatch(geometry, patch, layout, i, point, gapM, sums);
  }
  if (layout.near.size >= MOST_KEPT) layout.near.clear();
  layout.near.set(key, sums);
  return sums;
};

const addPatch = (
  geometry: BoxGeometry,
  { axes }: BoxPatch,
  layout: PatchLayout,
  i: number,
  point: readonly [number, number, number],
  gapM: number,
  sums: Float64Array,
): void => {
  const { cut, modes, integrals } = layout.rigid;
  const far = Math.min(layout.rigid.far, cut + FALL / Math.max(gapM, 1e-3));
  const [lengthU, lengthV] = [geometry.sizeM[axes[0]], geometry.sizeM[axes[1]]];
  const [modesU, modesV] = [modes[axes[0]], modes[axes[1]]];
  const functions = layout.functions.patches[i];
  const [u, v] = integrals[i];
  if (shapesU.length < modesU) shapesU = new Float64Array(modesU);
  if (shapesV.length < modesV) shapesV = new Float64Array(modesV);
  fillShapes(shapesU, modesU, point[axes[0]], lengthU);
  fillShapes(shapesV, modesV, point[axes[1]], lengthV);
  const height = 3 * functions.orders[1];
  if (rows.length < height) rows = new Float64Array(height);
  const lastU = Math.min(modesU - 1, Math.floor((far * lengthU) / Math.PI));
  for (let m = 0; m <= lastU; m++) {
    const square = ((m * Math.PI) / lengthU) ** 2;
    const last = Math.min(modesV - 1, Math.floor((Math.sqrt(Math.max(0, far * far - square)) * lengthV) / Math.PI));
    const first = square > cut * cut ? 0 : Math.floor((Math.sqrt(cut * cut - square) * lengthV) / Math.PI) + 1;
    rows.fill(0, 0, height);
    for (let n = first; n <= last; n++) {
      const kappa = Math.sqrt(square + ((n * Math.PI) / lengthV) ** 2);
      const one = (shapesV[n] * Math.exp(-kappa * gapM)) / kappa;
      const two = one / kappa;
      const three = (two * gapM + two / kappa) / 2;
      for (let q = 0; 3 * q < height; q++) {
        const value = v[q * modesV + n];
        rows[3 * q] += value * one;
        rows[3 * q + 1] += value * two;
        rows[3 * q + 2] += value * three;
      }
    }
    for (let f = 0; f < functions.first.length; f++) {
      const value = shapesU[m] * u[functions.first[f] * modesU + m];
      const q = 3 * functions.second[f];
      const at = 3 * (functions.start + f);
      sums[at] += value * rows[q];
      sums[at + 1] += value * rows[q + 1];
      sums[at + 2] += value * rows[q + 2];
    }
  }
};
