import { valuesAt } from './axis-modes.ts';
import { ACROSS, AXES, type BoxGeometry, type BoxState } from './box-state.ts';
import { LEFT, pointFactors, RIGHT } from './closed-axis.ts';
import type { Axis } from './room-field.ts';

/** Points with their distinct coordinates along each axis: seats in rows share most of the work. */
export interface PointSet {
  readonly count: number;
  readonly positions: Float64Array;
  /** Distinct coordinates per axis. */
  readonly distinct: readonly Float64Array[];
  /** Point -> index of its coordinate, per axis. */
  readonly index: readonly Int32Array[];
}

/**
 * Per closed axis and point, for each transverse term: Y_m Z_n L and Y_m Z_n R as four numbers, at
 * (point * capacity + term) * 4. A pair of points is then one bilinear product of two such rows.
 */
export interface PointTables {
  set: PointSet;
  /** Generation of the state whose mode values are in the rows. */
  generation: number;
  readonly filled: readonly Int32Array[];
  readonly capacity: number[];
  readonly data: Float64Array[];
}

export const pointSet = (positions: Float64Array): PointSet => {
  const count = positions.length / 3;
  const distinct: Float64Array[] = [];
  const index: Int32Array[] = [];
  for (const axis of AXES) {
    const seen = new Map<number, number>();
    const which = new Int32Array(count);
    for (let p = 0; p < count; p++) {
      const x = positions[3 * p + axis];
      const known = seen.get(x);
      which[p] = known ?? seen.size;
      if (known === undefined) seen.set(x, seen.size);
    }
    distinct.push(Float64Array.from(seen.keys()));
    index.push(which);
  }
  return { count, positions: Float64Array.from(positions), distinct, index };
};

export const emptyTables = (set: PointSet): PointTables => ({
  set,
  generation: 0,
  filled: AXES.map(() => new Int32Array(set.count)),
  capacity: [0, 0, 0],
  data: AXES.map(() => new Float64Array(0)),
});

export const bytesOfTables = (tables: PointTables): number =>
  tables.data[0].byteLength + tables.data[1].byteLength + tables.data[2].byteLength + 12 * tables.set.count;

/** Forgets what is filled; the memory stays. */
export const clearTables = (tables: PointTables): void => {
  for (const axis of AXES) tables.filled[axis].fill(0);
};

/** Scratch of the fill: mode values per axis and distinct coordinate, and one row of closed-axis factors. */
const values: Float64Array[] = [new Float64Array(0), new Float64Array(0), new Float64Array(0)];
let raw = new Float64Array(0);

/** Number of orders needed along each axis for the terms asked for. */
const ordersNeeded = new Int32Array(3);

/**
 * Fills the tables of a state so that each point has at least need[axis][point] terms, which the state must hold already.
 * `withD` puts the factor D of the closed axis into the rows (sources); `sides` tells per axis and point whether L, R or
 * both are wanted.
 */
export const fillTables = (
  geometry: BoxGeometry,
  state: BoxState,
  need: readonly Int32Array[],
  sides: readonly Uint8Array[],
  withD: boolean,
  tables: PointTables,
): void => {
  const { set } = tables;
  if (tables.generation !== state.generation) {
    clearTables(tables);
    tables.generation = state.generation;
  }
  ordersNeeded.fill(0);
  for (const axis of AXES) {
    const most = mostMissing(need[axis], tables.filled[axis]);
    if (most === 0) continue;
    const terms = geometry.terms(axis);
    const [b, c] = ACROSS[axis];
    ordersNeeded[b] = Math.max(ordersNeeded[b], terms.firstCount[most - 1]);
    ordersNeeded[c] = Math.max(ordersNeeded[c], terms.secondCount[most - 1]);
    growTables(tables, axis, most, terms.count);
  }
  for (const axis of AXES) {
    const orders = ordersNeeded[axis];
    if (orders === 0) continue;
    const coordinates = set.distinct[axis];
    if (values[axis].length < 2 * orders * coordinates.length)
      values[axis] = new Float64Array(2 * orders * coordinates.length);
    for (let i = 0; i < coordinates.length; i++) {
      valuesAt(state.axes[axis], coordinates[i], orders, values[axis], 2 * orders * i);
    }
  }
  for (const axis of AXES) fillAxis(geometry, state, axis, need[axis], sides[axis], withD, tables);
};

const mostMissing = (need: Int32Array, filled: Int32Array): number => {
  let most = 0;
  for (let p = 0; p < need.length; p++) if (need[p] > filled[p] && need[p] > most) most = need[p];
  return most;
};

const growTables = (tables: PointTables, axis: Axis, count: number, limit: number): void => {
  const old = tables.capacity[axis];
  if (old >= count) return;
  const capacity = Math.min(limit, Math.max(count, Math.ceil(1.5 * old)));
  const data = new Float64Array(4 * capacity * tables.set.count);
  for (let p = 0; p < tables.set.count; p++) {
    data.set(tables.data[axis].subarray(4 * old * p, 4 * (old * p + tables.filled[axis][p])), 4 * capacity * p);
  }
  tables.data[axis] = data;
  tables.capacity[axis] = capacity;
};

const fillAxis = (
  geometry: BoxGeometry,
  state: BoxState,
  axis: Axis,
  need: Int32Array,
  sides: Uint8Array,
  withD: boolean,
  tables: PointTables,
): void => {
  const { set } = tables;
  const filled = tables.filled[axis];
  const index = set.index[axis];
  const coordinates = set.distinct[axis];
  for (let i = 0; i < coordinates.length; i++) {
    let from = Number.POSITIVE_INFINITY;
    let to = 0;
    let wanted = 0;
    for (let p = 0; p < set.count; p++) {
      if (index[p] !== i || need[p] <= filled[p]) continue;
      if (filled[p] < from) from = filled[p];
      if (need[p] > to) to = need[p];
      wanted |= sides[p];
    }
    if (to === 0) continue;
    if (raw.length < 4 * to) raw = new Float64Array(4 * to);
    pointFactors(
      state.closed[axis],
      from,
      to,
      coordinates[i],
      state.walls[axis],
      geometry.sizeM[axis],
      withD,
      wanted,
      raw,
    );
    for (let p = 0; p < set.count; p++) {
      if (index[p] !== i || need[p] <= filled[p]) continue;
      fold(geometry, axis, p, filled[p], need[p], sides[p], tables);
      filled[p] = need[p];
    }
  }
};

/** Multiplies the closed-axis factors of one point by its two transverse mode values. */
const fold = (
  geometry: BoxGeometry,
  axis: Axis,
  p: number,
  from: number,
  to: number,
  sides: number,
  tables: PointTables,
): void => {
  const terms = geometry.terms(axis);
  const [b, c] = ACROSS[axis];
  const { first, second } = terms;
  const valuesB = values[b];
  const valuesC = values[c];
  const startB = 2 * ordersNeeded[b] * tables.set.index[b][p];
  const startC = 2 * ordersNeeded[c] * tables.set.index[c][p];
  const data = tables.data[axis];
  const factors = raw;
  let o = 4 * (tables.capacity[axis] * p + from);
  for (let t = from; t < to; t++, o += 4) {
    const i = startB + 2 * first[t];
    const j = startC + 2 * second[t];
    const yRe = valuesB[i] * valuesC[j] - valuesB[i + 1] * valuesC[j + 1];
    const yIm = valuesB[i] * valuesC[j + 1] + valuesB[i + 1] * valuesC[j];
    const r = 4 * t;
    if ((sides & LEFT) !== 0) {
      data[o] = factors[r] * yRe - factors[r + 1] * yIm;
      data[o + 1] = factors[r] * yIm + factors[r + 1] * yRe;
    }
    if ((sides & RIGHT) !== 0) {
      data[o + 2] = factors[r + 2] * yRe - factors[r + 3] * yIm;
      data[o + 3] = factors[r + 2] * yIm + factors[r + 3] * yRe;
    }
  }
};
