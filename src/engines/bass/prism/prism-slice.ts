import { valuesAt } from '../axis-modes.ts';
import { answerOfPatches } from '../patches/coupled-system.ts';
import type { SliceField, SlicePlane } from '../room-field.ts';
import type { SourceTerms } from './near-field.ts';
import type { PrismPatches } from './patch-coupling.ts';
import { intoPrism } from './prism-geometry.ts';
import type { PrismState, PrismStates } from './prism-state.ts';
import type { Section } from './section.ts';
import { createSliceGrids, type SliceGrid } from './slice-grid.ts';
import { SCREEN_PER_M } from './source-images.ts';
import { setLoad } from './source-load.ts';
import type { SourceShelf } from './source-shelf.ts';

export interface PrismSlices {
  at(plane: SlicePlane, sourcesM: Float64Array, weights: Float64Array, frequencyHz: number): SliceField;
}

/**
 * Slices of a prism on any plane: the sum over sources is taken first, so that one solution per mode of the even axis
 * gives the coefficients of all functions (near-field.ts), then each point is one product. NaN outside the cross-section.
 * Patches see the near field of sources but not of points, for whose number that would take too long: before patches on an end
 * a slice is right to some 1.5 % of the field where a seat is to 0.3 %.
 */
export const createPrismSlices = (
  section: Section,
  states: PrismStates,
  shelf: SourceShelf,
  patches: PrismPatches | null,
): PrismSlices => {
  const { geometry, size, orders } = section;
  const grids = createSliceGrids(geometry, section.basis);
  const modal = new Float64Array(2 * orders * size);
  const shared = new Float64Array(2 * orders * size);
  return {
    at: (plane, sourcesM, weights, frequencyHz) => {
      const grid = grids.at(plane);
      const state = states.at(frequencyHz, 0);
      const places = intoPrism(geometry, sourcesM);
      const sources = Array.from({ length: places.length / 3 }, (_, s) =>
        shelf.at(places[3 * s], places[3 * s + 1], places[3 * s + 2]),
      );
      const tauRe = state.kRe ** 2 + SCREEN_PER_M ** 2;
      sumSources(section, states, state, sources, weights, tauRe, modal, shared);
      if (patches !== null) subtractPatches(section, patches, state, sources, weights, modal);
      const re = new Float64Array(grid.points).fill(Number.NaN);
      const im = new Float64Array(grid.points).fill(Number.NaN);
      if (plane.normal === geometry.axis) acrossAxis(section, state, grid, modal, shared, re, im);
      else alongAxis(section, state, grid, modal, shared, re, im);
      sources.forEach((source, s) => {
        addImages(grid, grids.imagesOf(grid, source), tauRe, weights[2 * s], weights[2 * s + 1], re, im);
      });
      states.trim();
      return { re, im };
    },
  };
};

/** Coefficients per order and function: `modal` of the damped even modes, `shared` of the rigid ones (what the images show already). */
const sumSources = (
  section: Section,
  states: PrismStates,
  state: PrismState,
  sources: readonly SourceTerms[],
  weights: Float64Array,
  tau: number,
  modal: Float64Array,
  shared: Float64Array,
): void => {
  const { size, orders, functions, geometry } = section;
  const load = new Float64Array(2 * size);
  const own = new Float64Array(2 * orders);
  modal.fill(0);
  shared.fill(0);
  sources.forEach((source, s) => {
    valuesAt(state.even, source.z, orders, own, 0);
    const wRe = weights[2 * s];
    const wIm = weights[2 * s + 1];
    for (let n = 0; n < orders; n++) {
      setLoad(section, source, state, n, load);
      const zRe = 4 * Math.PI * (wRe * own[2 * n] - wIm * own[2 * n + 1]);
      const zIm = 4 * Math.PI * (wRe * own[2 * n + 1] + wIm * own[2 * n]);
      const rigid =
        ((n === 0 ? 1 : 2) * 4 * Math.PI * Math.cos((n * Math.PI * source.z) / geometry.lengthM)) / geometry.lengthM;
      const o = n * size;
      for (let i = 0; i < functions[n]; i++) {
        const at = 2 * (o + i);
        modal[at] += zRe * load[2 * i] - zIm * load[2 * i + 1];
        modal[at + 1] += zRe * load[2 * i + 1] + zIm * load[2 * i];
        const shown = rigid * (source.a[o + i] + tau * source.slope[o + i]);
        shared[at] -= wRe * shown;
        shared[at + 1] -= wIm * shown;
      }
    }
  });
  for (let n = 0; n < orders; n++) states.solve(state, n, modal.subarray(2 * n * size, 2 * (n + 1) * size), 1);
};

/** The patches' answer to all sources together, as coefficients of the same functions. */
const subtractPatches = (
  section: Section,
  patches: PrismPatches,
  state: PrismState,
  sources: readonly SourceTerms[],
  weights: Float64Array,
  modal: Float64Array,
): void => {
  const { size, orders, functions } = section;
  const own = patches.at(state);
  if (own.coupled === null) return;
  const { layout, solved, along } = own;
  const count = layout.functions.count;
  const parts = layout.section.length;
  const load = new Float64Array(2 * size);
  const all = new Float64Array(2 * count * sources.length);
  const sum = new Float64Array(2 * count);
  const loadOf = (n: number, s: number): Float64Array => {
    setLoad(section, sources[s], state, n, load);
    return load;
  };
  const zM = sources.map(({ z }) => z);
  patches.couplings(own, state, zM, loadOf, all);
  sources.forEach((source, s) => {
    const one = all.subarray(2 * count * s, 2 * count * (s + 1));
    patches.addNear(own, state, source, one);
    for (let a = 0; a < 2 * count; a += 2) {
      sum[a] += weights[2 * s] * one[a] - weights[2 * s + 1] * one[a + 1];
      sum[a + 1] += weights[2 * s] * one[a + 1] + weights[2 * s + 1] * one[a];
    }
  });
  answerOfPatches(own.coupled, sum);
  const strengths = new Float64Array(2 * parts);
  for (let n = 0; n < orders; n++) {
    strengths.fill(0);
    for (let a = 0; a < count; a++) {
      const z = 2 * (layout.alongOf[a] * orders + n);
      const m = 2 * layout.sectionOf[a];
      strengths[m] += 4 * Math.PI * (sum[2 * a] * along[z] - sum[2 * a + 1] * along[z + 1]);
      strengths[m + 1] += 4 * Math.PI * (sum[2 * a] * along[z + 1] + sum[2 * a + 1] * along[z]);
    }
    const shown = solved[n];
    for (let i = functions[n] - 1, from = 0; i >= 0; i--) {
      let re = 0;
      let im = 0;
      for (let m = 0; m < 2 * parts; m += 2, from += 2) {
        re += strengths[m] * shown[from] - strengths[m + 1] * shown[from + 1];
        im += strengths[m] * shown[from + 1] + strengths[m + 1] * shown[from];
      }
      modal[2 * (n * size + i)] -= re;
      modal[2 * (n * size + i) + 1] -= im;
    }
  }
};

/** A plane across the even axis: all orders fold into one coefficient per function. */
const acrossAxis = (
  section: Section,
  state: PrismState,
  grid: SliceGrid,
  modal: Float64Array,
  shared: Float64Array,
  re: Float64Array,
  im: Float64Array,
): void => {
  const { size, orders, functions, geometry } = section;
  const at = new Float64Array(2 * orders);
  valuesAt(state.even, grid.alongM[0], orders, at, 0);
  const sums = new Float64Array(2 * size);
  for (let n = 0; n < orders; n++) {
    const rigid = Math.cos((n * Math.PI * grid.alongM[0]) / geometry.lengthM);
    const zRe = at[2 * n];
    const zIm = at[2 * n + 1];
    for (let i = 0; i < functions[n]; i++) {
      const o = 2 * (n * size + i);
      sums[2 * i] += zRe * modal[o] - zIm * modal[o + 1] + rigid * shared[o];
      sums[2 * i + 1] += zRe * modal[o + 1] + zIm * modal[o] + rigid * shared[o + 1];
    }
  }
  const { inside, values } = grid;
  // two points at a time share the coefficients read
  for (let p = 0; p < inside.length; p += 2) {
    const other = p + 1 < inside.length ? p + 1 : p;
    let re0 = 0;
    let im0 = 0;
    let re1 = 0;
    let im1 = 0;
    for (let i = 0, v = p * size, w = other * size, s = 0; i < size; i++, v++, w++, s += 2) {
      const sRe = sums[s];
      const sIm = sums[s + 1];
      re0 += values[v] * sRe;
      im0 += values[v] * sIm;
      re1 += values[w] * sRe;
      im1 += values[w] * sIm;
    }
    re[inside[p]] = re0;
    im[inside[p]] = im0;
    re[inside[other]] = re1;
    im[inside[other]] = im1;
  }
};

/** A plane along the even axis: functions first, at every point of its line, then the orders. */
const alongAxis = (
  section: Section,
  state: PrismState,
  grid: SliceGrid,
  modal: Float64Array,
  shared: Float64Array,
  re: Float64Array,
  im: Float64Array,
): void => {
  const { size, orders, functions, geometry } = section;
  const { inside, values, alongM, stride, strideAlong } = grid;
  const places = alongM.length;
  const rows = new Float64Array(3 * orders * places);
  const own = new Float64Array(2 * orders);
  for (let z = 0; z < places; z++) {
    valuesAt(state.even, Math.min(geometry.lengthM, Math.max(0, alongM[z])), orders, own, 0);
    for (let n = 0; n < orders; n++) {
      rows[3 * (z * orders + n)] = own[2 * n];
      rows[3 * (z * orders + n) + 1] = own[2 * n + 1];
      rows[3 * (z * orders + n) + 2] = Math.cos((n * Math.PI * alongM[z]) / geometry.lengthM);
    }
  }
  const sums = new Float64Array(4 * orders);
  for (let p = 0; p < inside.length; p++) {
    for (let n = 0; n < orders; n++) {
      let mRe = 0;
      let mIm = 0;
      let sRe = 0;
      let sIm = 0;
      for (let i = 0, v = p * size, o = 2 * n * size; i < functions[n]; i++, v++, o += 2) {
        const value = values[v];
        mRe += value * modal[o];
        mIm += value * modal[o + 1];
        sRe += value * shared[o];
        sIm += value * shared[o + 1];
      }
      sums[4 * n] = mRe;
      sums[4 * n + 1] = mIm;
      sums[4 * n + 2] = sRe;
      sums[4 * n + 3] = sIm;
    }
    for (let z = 0; z < places; z++) {
      let sumRe = 0;
      let sumIm = 0;
      for (let n = 0, o = 3 * z * orders; n < orders; n++, o += 3) {
        const zRe = rows[o];
        const zIm = rows[o + 1];
        const rigid = rows[o + 2];
        sumRe += zRe * sums[4 * n] - zIm * sums[4 * n + 1] + rigid * sums[4 * n + 2];
        sumIm += zRe * sums[4 * n + 1] + zIm * sums[4 * n] + rigid * sums[4 * n + 3];
      }
      const at = inside[p] * stride + z * strideAlong;
      re[at] = sumRe;
      im[at] = sumIm;
    }
  }
};

const addImages = (
  grid: SliceGrid,
  map: Float32Array,
  tau: number,
  wRe: number,
  wIm: number,
  re: Float64Array,
  im: Float64Array,
): void => {
  const { inside, alongM, stride, strideAlong } = grid;
  const places = alongM.length;
  for (let p = 0; p < inside.length; p++) {
    for (let z = 0; z < places; z++) {
      const o = 2 * (p * places + z);
      const value = map[o] + tau * map[o + 1];
      const at = inside[p] * stride + z * strideAlong;
      re[at] += wRe * value;
      im[at] += wIm * value;
    }
  }
};
