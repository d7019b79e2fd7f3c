import { type AxisModes, valuesAt } from './axis-modes.ts';
import { ACROSS, type BoxGeometry, type BoxState, EPSILON, readyTerms } from './box-state.ts';
import { BOTH, pointFactors } from './closed-axis.ts';
import { insideBox } from './pairs.ts';
import type { Axis, SliceField, SlicePlane } from './room-field.ts';
import { SCREEN_PER_M } from './screened.ts';
import { contract, multiplyRows } from './slice-kernel.ts';
import { createSliceRests, type RestMaps, sameGrid } from './slice-rest.ts';
import type { StateCache } from './state-cache.ts';
import { type TransverseTerms, termsWithin } from './transverse-terms.ts';
import { cutKappa2, newCut, setCut } from './truncation.ts';

/** Closer than this to the plane a source's near field is completed by the screened rest. */
const IN_PLANE_M = 0.6;
/** Bytes of screened maps kept (128 x 128 points take 128 kB a source). */
const REST_LIMIT_BYTES = 16e6;

export interface BoxSlices {
  at(plane: SlicePlane, sourcesM: Float64Array, weights: Float64Array, frequencyHz: number): SliceField;
}

/** Sources spread over walls, which a slice takes up as terms beside the point sources. */
export interface WallSources {
  /** Gets ready for a slice; how many terms across the plane they need. */
  prepare(state: BoxState, plane: SlicePlane, sources: Float64Array, weights: Float64Array): number;
  /** Adds those on walls parallel to the plane to the first `count` coefficients, re, im a term. */
  addTerms(state: BoxState, plane: SlicePlane, count: number, sums: Float64Array): void;
  /** Adds those on walls that stand on the plane to the field. */
  addField(state: BoxState, plane: SlicePlane, re: Float64Array, im: Float64Array): void;
}

/** Mode values over one axis of the grid, for the state they were made for. */
interface GridValues {
  state: BoxState | null;
  generation: number;
  orders: number;
  rows: Float64Array;
}

/**
 * Slices at P = U^T C V: C the coefficients 4 pi sum over sources of weight Y_m(u0) Z_n(v0) g(source, plane) of the axis
 * across the plane, U and V the mode values at the grid's lines. The formula of box-field.ts with the sum over sources
 * taken first (derived); near a source's own plane the screened rest is added (screened.ts).
 */
export const createBoxSlices = (
  geometry: BoxGeometry,
  cache: StateCache,
  walls: WallSources | null = null,
  bytesFor: (state: BoxState) => number = () => 0,
): BoxSlices => {
  const rests = createSliceRests(geometry, REST_LIMIT_BYTES);
  let grid: SlicePlane | null = null;
  const kept: GridValues[] = [0, 1].map(() => ({ state: null, generation: 0, orders: 0, rows: new Float64Array(0) }));
  let partial = new Float64Array(0);
  let matrix = new Float64Array(0);
  let counts = new Int32Array(0);

  const gridRows = (which: 0 | 1, state: BoxState, axis: Axis, points: Float64Array, orders: number): GridValues => {
    const values = kept[which];
    if (values.state === state && values.generation === state.generation && values.orders >= orders) return values;
    if (values.rows.length < 2 * orders * points.length) values.rows = new Float64Array(2 * orders * points.length);
    fillRows(state.axes[axis], points, orders, values.rows);
    values.state = state;
    values.generation = state.generation;
    values.orders = orders;
    return values;
  };

  const at: BoxSlices['at'] = (plane, sourcesM, weights, frequencyHz) => {
    const { normal, atM } = plane;
    if (grid === null || !sameGrid(grid, plane)) {
      grid = { ...plane, uM: Float64Array.from(plane.uM), vM: Float64Array.from(plane.vM) };
      for (const values of kept) values.state = null;
    }
    const sources = insideBox(geometry, sourcesM);
    const state = cache.at(frequencyHz, 0);
    const terms = geometry.terms(normal);
    const spread = walls === null ? 0 : walls.prepare(state, plane, sources, weights);
    const count = Math.max(spread, termsForPlane(geometry, state, plane, sources));
    const layout = layoutOf(geometry, plane, terms, count);
    readyTerms(geometry, state, normal, count);
    const shortRows = gridRows(0, state, layout.shortAxis, layout.shortPoints, layout.shortOrders);
    const longRows = gridRows(1, state, layout.longAxis, layout.longPoints, layout.longOrders);
    const { shortOrder, longOrder, shortPoints, longPoints } = layout;

    const width = longRows.orders;
    const height = shortRows.orders;
    if (matrix.length < 2 * width * height) matrix = new Float64Array(2 * width * height);
    if (counts.length < height) counts = new Int32Array(height);
    matrix.fill(0, 0, 2 * width * height);
    counts.fill(0, 0, height);
    sumSources(geometry, state, plane, layout, sources, weights, count);
    walls?.addTerms(state, plane, count, coefficients);
    for (let t = 0; t < count; t++) {
      const i = 2 * (width * shortOrder[t] + longOrder[t]);
      matrix[i] = coefficients[2 * t];
      matrix[i + 1] = coefficients[2 * t + 1];
      if (longOrder[t] >= counts[shortOrder[t]]) counts[shortOrder[t]] = longOrder[t] + 1;
    }
    if (partial.length < 2 * height * longPoints.length) partial = new Float64Array(2 * height * longPoints.length);
    contract(matrix, counts, height, width, longRows.rows, longPoints.length, partial);
    const nu = plane.uM.length;
    const re = new Float64Array(nu * plane.vM.length);
    const im = new Float64Array(nu * plane.vM.length);
    const [strideShort, strideLong] = layout.shortIsU ? [1, nu] : [nu, 1];
    multiplyRows(
      shortRows.rows,
      shortPoints.length,
      partial,
      longPoints.length,
      height,
      re,
      im,
      strideShort,
      strideLong,
    );
    const screen = state.kRe * state.kRe + SCREEN_PER_M * SCREEN_PER_M;
    for (let s = 0; 3 * s < sources.length; s++) {
      if (Math.abs(sources[3 * s + normal] - atM) >= IN_PLANE_M) continue;
      const maps = rests.mapsFor(plane, sources.slice(3 * s, 3 * s + 3));
      addRest(maps, screen, weights[2 * s], weights[2 * s + 1], re, im);
    }
    walls?.addField(state, plane, re, im);
    cache.trim(bytesFor);
    return { re, im };
  };
  return { at };
};

/** All terms when a source lies near the plane, else as many as the nearest source needs. */
const termsForPlane = (geometry: BoxGeometry, state: BoxState, plane: SlicePlane, sources: Float64Array): number => {
  const terms = geometry.terms(plane.normal);
  let gap = Number.POSITIVE_INFINITY;
  for (let i = plane.normal; i < sources.length; i += 3) gap = Math.min(gap, Math.abs(sources[i] - plane.atM));
  if (gap < IN_PLANE_M) return terms.count;
  setCut(geometry, state, plane.normal, cut);
  return termsWithin(terms, cutKappa2(cut, Math.log(1 / EPSILON) / gap));
};

const cut = newCut();

/** The grid's axis of fewer orders is summed last, over all points: that sum is the expensive one. */
interface Layout {
  readonly shortIsU: boolean;
  readonly shortAxis: Axis;
  readonly longAxis: Axis;
  readonly shortPoints: Float64Array;
  readonly longPoints: Float64Array;
  /** Order of each term along either axis. */
  readonly shortOrder: Uint16Array;
  readonly longOrder: Uint16Array;
  /** Orders needed along either axis. */
  readonly shortOrders: number;
  readonly longOrders: number;
}

const layoutOf = (geometry: BoxGeometry, plane: SlicePlane, terms: TransverseTerms, count: number): Layout => {
  const { uAxis, vAxis, uM, vM } = plane;
  const shortIsU = geometry.sizeM[uAxis] <= geometry.sizeM[vAxis];
  const shortAxis = shortIsU ? uAxis : vAxis;
  const firstIsShort = ACROSS[plane.normal][0] === shortAxis;
  return {
    shortIsU,
    shortAxis,
    longAxis: shortIsU ? vAxis : uAxis,
    shortPoints: shortIsU ? uM : vM,
    longPoints: shortIsU ? vM : uM,
    shortOrder: firstIsShort ? terms.first : terms.second,
    longOrder: firstIsShort ? terms.second : terms.first,
    shortOrders: (firstIsShort ? terms.firstCount : terms.secondCount)[count - 1],
    longOrders: (firstIsShort ? terms.secondCount : terms.firstCount)[count - 1],
  };
};

const fillRows = (modes: AxisModes, points: Float64Array, orders: number, rows: Float64Array): void => {
  for (let i = 0; i < points.length; i++) valuesAt(modes, points[i], orders, rows, 2 * orders * i);
};

let coefficients = new Float64Array(0);
let planeFactors = new Float64Array(0);
let sourceFactors = new Float64Array(0);
let shortValues = new Float64Array(0);
let longValues = new Float64Array(0);

/** The coefficient of each term, 4 pi sum over sources of weight Y_m Z_n g, into `coefficients`. */
const sumSources = (
  geometry: BoxGeometry,
  state: BoxState,
  plane: SlicePlane,
  layout: Layout,
  sources: Float64Array,
  weights: Float64Array,
  count: number,
): void => {
  const { normal, atM } = plane;
  const { shortAxis, longAxis, shortOrder, longOrder, shortOrders, longOrders } = layout;
  const lengthM = geometry.sizeM[normal];
  const closed = readyTerms(geometry, state, normal, count);
  if (coefficients.length < 2 * count) {
    coefficients = new Float64Array(2 * count);
    planeFactors = new Float64Array(4 * count);
    sourceFactors = new Float64Array(4 * count);
  }
  const most = 2 * Math.max(geometry.orders[0], geometry.orders[1], geometry.orders[2]);
  if (shortValues.length < most) {
    shortValues = new Float64Array(most);
    longValues = new Float64Array(most);
  }
  coefficients.fill(0, 0, 2 * count);
  pointFactors(closed, 0, count, atM, state.walls[normal], lengthM, true, BOTH, planeFactors);
  for (let s = 0; 3 * s < sources.length; s++) {
    const z = sources[3 * s + normal];
    pointFactors(closed, 0, count, z, state.walls[normal], lengthM, false, BOTH, sourceFactors);
    valuesAt(state.axes[shortAxis], sources[3 * s + shortAxis], shortOrders, shortValues, 0);
    valuesAt(state.axes[longAxis], sources[3 * s + longAxis], longOrders, longValues, 0);
    const wRe = 4 * Math.PI * weights[2 * s];
    const wIm = 4 * Math.PI * weights[2 * s + 1];
    const low = atM >= z ? 0 : 2;
    const [sums, planes, own, shorts, longs] = [coefficients, planeFactors, sourceFactors, shortValues, longValues];
    for (let t = 0; t < count; t++) {
      const i = 4 * t + low;
      const j = 4 * t + 2 - low;
      const gRe = own[i] * planes[j] - own[i + 1] * planes[j + 1];
      const gIm = own[i] * planes[j + 1] + own[i + 1] * planes[j];
      const m = 2 * shortOrder[t];
      const n = 2 * longOrder[t];
      const yRe = shorts[m] * longs[n] - shorts[m + 1] * longs[n + 1];
      const yIm = shorts[m] * longs[n + 1] + shorts[m + 1] * longs[n];
      const pRe = gRe * yRe - gIm * yIm;
      const pIm = gRe * yIm + gIm * yRe;
      sums[2 * t] += wRe * pRe - wIm * pIm;
      sums[2 * t + 1] += wRe * pIm + wIm * pRe;
    }
  }
};

const addRest = (
  { near, slope }: RestMaps,
  screen: number,
  wRe: number,
  wIm: number,
  re: Float64Array,
  im: Float64Array,
): void => {
  for (let i = 0; i < near.length; i++) {
    const value = near[i] + screen * slope[i];
    re[i] += wRe * value;
    im[i] += wIm * value;
  }
};
