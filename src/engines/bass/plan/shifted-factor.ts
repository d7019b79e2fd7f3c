import { type Envelope, emptyEnvelope, factoriseEnvelope, solveEnvelope } from './envelope-factor.ts';
import type { PlanMatrices } from './plan-matrices.ts';
import type { PlanSpace } from './plan-space.ts';

/** L D L^T of K + shift M. */
export interface ShiftedFactor {
  /** Number of negative pivots: by Sylvester's law the number of eigenvalues of K x = lambda M x below -shift. */
  readonly negative: number;
  /** Least over largest pivot in size: close to 0 where the shift meets an eigenvalue of a leading part. */
  readonly steadiness: number;
  /** Solves in place. */
  solve(x: Float64Array): void;
  readonly bytes: number;
}

/** The nodes inside a triangle meet no other: each triangle's are solved for first (static condensation, Guyan, 1965). */
interface Insides {
  /** Per triangle, `own` inside nodes and `shared` others. */
  readonly own: number;
  readonly shared: number;
  /** Per triangle L (own x own, full rows) and D. */
  readonly lower: Float64Array;
  readonly pivot: Float64Array;
  /** Per triangle A_ii^-1 A_ib, own x shared. */
  readonly carried: Float64Array;
}

const find = (column: Uint32Array, from: number, to: number, wanted: number): number => {
  let low = from;
  let high = to - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (column[middle] < wanted) low = middle + 1;
    else high = middle;
  }
  return low;
};

/** Numbers of the nodes that triangles share, in the order of the space; -1 for nodes inside. */
const sharedNumbers = ({ size, nodes, element }: PlanSpace) => {
  const number = new Int32Array(size);
  const outer = 3 * element.order;
  for (let at = 0; at < nodes.length; at++) if (at % element.nodes >= outer) number[nodes[at]] = -1;
  let count = 0;
  for (let i = 0; i < size; i++) if (number[i] === 0) number[i] = count++;
  return { number, count };
};

/** The rows of the shared nodes, inside nodes not yet taken out. */
const sharedRows = (
  { size, rowStart, column }: PlanSpace,
  { stiffness, mass }: PlanMatrices,
  shift: number,
  number: Int32Array,
  count: number,
): Envelope => {
  const first = Uint32Array.from({ length: count }, (_, i) => i);
  for (let i = 0; i < size; i++) {
    if (number[i] < 0) continue;
    for (let k = rowStart[i]; k < rowStart[i + 1]; k++) {
      const j = number[column[k]];
      if (j >= 0 && j < first[number[i]]) first[number[i]] = j;
    }
  }
  const rows = emptyEnvelope(first);
  for (let i = 0; i < size; i++) {
    const row = number[i];
    if (row < 0) continue;
    for (let k = rowStart[i]; k < rowStart[i + 1]; k++) {
      const j = number[column[k]];
      if (j < 0 || j > row) continue;
      const value = stiffness[k] + shift * mass[k];
      if (j === row) rows.pivot[row] = value;
      else rows.lower[rows.start[row] - first[row] + j] = value;
    }
  }
  return rows;
};

/** Solves one triangle's inside system in place, `width` right sides in rows. */
const solveInside = (
  { own, lower, pivot }: Pick<Insides, 'own' | 'lower' | 'pivot'>,
  triangle: number,
  x: Float64Array,
  at: number,
  width: number,
): void => {
  const base = triangle * own * own;
  for (let i = 0; i < own; i++)
    for (let j = 0; j < i; j++) {
      const l = lower[base + i * own + j];
      for (let r = 0; r < width; r++) x[at + i * width + r] -= l * x[at + j * width + r];
    }
  for (let i = 0; i < own; i++) for (let r = 0; r < width; r++) x[at + i * width + r] /= pivot[triangle * own + i];
  for (let i = own - 1; i >= 0; i--)
    for (let j = i + 1; j < own; j++) {
      const l = lower[base + j * own + i];
      for (let r = 0; r < width; r++) x[at + i * width + r] -= l * x[at + j * width + r];
    }
};

/** Factorises every triangle's inside block and takes its share out of the shared rows. */
const takeOutInsides = (
  { nodes, element, rowStart, column }: PlanSpace,
  { stiffness, mass }: PlanMatrices,
  shift: number,
  number: Int32Array,
  rows: Envelope,
): Insides => {
  const shared = 3 * element.order;
  const own = element.nodes - shared;
  const triangles = nodes.length / element.nodes;
  const lower = new Float64Array(triangles * own * own);
  const pivot = new Float64Array(triangles * own);
  const carried = new Float64Array(triangles * own * shared);
  const insides: Insides = { own, shared, lower, pivot, carried };
  const links = new Float64Array(own * shared);
  for (let t = 0; t < triangles; t++) {
    const at = t * element.nodes;
    const block = t * own * own;
    for (let i = 0; i < own; i++) {
      const node = nodes[at + shared + i];
      const entry = (other: number): number => {
        const k = find(column, rowStart[node], rowStart[node + 1], nodes[at + other]);
        return stiffness[k] + shift * mass[k];
      };
      for (let b = 0; b < shared; b++) links[i * shared + b] = entry(b);
      for (let j = 0; j <= i; j++) lower[block + i * own + j] = entry(shared + j);
    }
    for (let i = 0; i < own; i++) {
      for (let j = 0; j <= i; j++) {
        let value = lower[block + i * own + j];
        for (let k = 0; k < j; k++)
          value -= lower[block + i * own + k] * lower[block + j * own + k] * pivot[t * own + k];
        if (j === i) pivot[t * own + i] = value;
        else lower[block + i * own + j] = value / pivot[t * own + j];
      }
    }
    carried.set(links, t * own * shared);
    solveInside(insides, t, carried, t * own * shared, shared);
    for (let a = 0; a < shared; a++) {
      const row = number[nodes[at + a]];
      for (let b = 0; b < shared; b++) {
        const to = number[nodes[at + b]];
        if (to > row) continue;
        let sum = 0;
        for (let i = 0; i < own; i++) sum += links[i * shared + a] * carried[(t * own + i) * shared + b];
        if (to === row) rows.pivot[row] -= sum;
        else rows.lower[rows.start[row] - rows.first[row] + to] -= sum;
      }
    }
  }
  return insides;
};

/** L D L^T of K + shift M: the nodes inside triangles first, the shared ones in an envelope. */
export const factorShifted = (space: PlanSpace, matrices: PlanMatrices, shift: number): ShiftedFactor => {
  const { size, nodes, element } = space;
  const { number, count } = sharedNumbers(space);
  const rows = sharedRows(space, matrices, shift, number, count);
  const insides = takeOutInsides(space, matrices, shift, number, rows);
  factoriseEnvelope(rows);
  const { own, shared, lower, pivot, carried } = insides;
  const triangles = nodes.length / element.nodes;
  let [negative, least, largest] = [0, Number.POSITIVE_INFINITY, 0];
  for (const list of [pivot, rows.pivot]) {
    for (const value of list) {
      if (value < 0) negative++;
      least = Math.min(least, Math.abs(value));
      largest = Math.max(largest, Math.abs(value));
    }
  }
  const outer = new Float64Array(count);
  const inner = new Float64Array(own);
  return {
    negative,
    steadiness: least / largest,
    solve: (x) => {
      for (let i = 0; i < size; i++) if (number[i] >= 0) outer[number[i]] = x[i];
      for (let t = 0; t < triangles; t++) {
        const at = t * element.nodes;
        for (let b = 0; b < shared; b++) {
          let sum = 0;
          for (let i = 0; i < own; i++) sum += carried[(t * own + i) * shared + b] * x[nodes[at + shared + i]];
          outer[number[nodes[at + b]]] -= sum;
        }
      }
      solveEnvelope(rows, outer);
      for (let t = 0; t < triangles; t++) {
        const at = t * element.nodes;
        for (let i = 0; i < own; i++) inner[i] = x[nodes[at + shared + i]];
        solveInside(insides, t, inner, 0, 1);
        for (let i = 0; i < own; i++) {
          let sum = inner[i];
          for (let b = 0; b < shared; b++) sum -= carried[(t * own + i) * shared + b] * outer[number[nodes[at + b]]];
          x[nodes[at + shared + i]] = sum;
        }
      }
      for (let i = 0; i < size; i++) if (number[i] >= 0) x[i] = outer[number[i]];
    },
    bytes: 8 * (rows.lower.length + rows.pivot.length + lower.length + pivot.length + carried.length) + 4 * size,
  };
};
