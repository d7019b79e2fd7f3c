import { unitRule } from './quadrature.ts';

/**
 * Lagrange polynomials of order p on a triangle, on the lattice of barycentric coordinates i / p: first the corners, then the
 * p - 1 inner points of the sides 0-1, 1-2 and 2-0 in that direction, then the inside. L0 = 1 - L1 - L2.
 */
export interface TriangleElement {
  readonly order: number;
  /** (p + 1) (p + 2) / 2. */
  readonly nodes: number;
  /** Lattice numbers i0, i1, i2 of every node, summing to p. */
  readonly lattice: Uint8Array;
  /** int N_i N_j over area, nodes x nodes. */
  readonly mass: Float64Array;
  /** int dN_i/dL_a dN_j/dL_b over area for (a, b) = (1, 1), (1, 2) made symmetric by adding its transpose, (2, 2). */
  readonly stiffness: readonly [Float64Array, Float64Array, Float64Array];
  /** Values of all polynomials at L1, L2 into `out`. */
  valuesAt(l1: number, l2: number, out: Float64Array): void;
}

const latticeOf = (order: number): Uint8Array => {
  const rows: number[][] = [
    [order, 0, 0],
    [0, order, 0],
    [0, 0, order],
  ];
  for (let k = 1; k < order; k++) rows.push([order - k, k, 0]);
  for (let k = 1; k < order; k++) rows.push([0, order - k, k]);
  for (let k = 1; k < order; k++) rows.push([k, 0, order - k]);
  for (let j = 1; j < order; j++) for (let k = 1; j + k < order; k++) rows.push([order - j - k, j, k]);
  return Uint8Array.from(rows.flat());
};

/** P_i(L) = prod_(q < i) (p L - q) / (q + 1), i = 0..p, and the slopes: N = P_i0(L0) P_i1(L1) P_i2(L2). */
const factorsAt = (order: number, l: number, value: Float64Array, slope: Float64Array | null): void => {
  value[0] = 1;
  if (slope) slope[0] = 0;
  for (let q = 0; q < order; q++) {
    const factor = (order * l - q) / (q + 1);
    value[q + 1] = value[q] * factor;
    if (slope) slope[q + 1] = slope[q] * factor + (value[q] * order) / (q + 1);
  }
};

const elements = new Map<number, TriangleElement>();

/** The element of an order, 1 to 8; its matrices are integrated once, by Gauss points on the square folded to a triangle. */
export const triangleElement = (order: number): TriangleElement => {
  const known = elements.get(order);
  if (known !== undefined) return known;
  const lattice = latticeOf(order);
  const nodes = lattice.length / 3;
  const factors = [0, 1, 2].map(() => new Float64Array(order + 1));
  const slopes = [0, 1, 2].map(() => new Float64Array(order + 1));
  const [mass, s11, s12, s22] = [0, 1, 2, 3].map(() => new Float64Array(nodes * nodes));
  const value = new Float64Array(nodes);
  const d1 = new Float64Array(nodes);
  const d2 = new Float64Array(nodes);
  const { at, weight } = unitRule(order + 2);
  for (let a = 0; a < at.length; a++) {
    for (let b = 0; b < at.length; b++) {
      const l1 = at[a];
      const l2 = at[b] * (1 - at[a]);
      const w = 2 * weight[a] * weight[b] * (1 - at[a]);
      const place = [1 - l1 - l2, l1, l2];
      for (let k = 0; k < 3; k++) factorsAt(order, place[k], factors[k], slopes[k]);
      for (let i = 0; i < nodes; i++) {
        const [i0, i1, i2] = lattice.subarray(3 * i, 3 * i + 3);
        const [p0, p1, p2] = [factors[0][i0], factors[1][i1], factors[2][i2]];
        value[i] = p0 * p1 * p2;
        d1[i] = p2 * (p0 * slopes[1][i1] - slopes[0][i0] * p1);
        d2[i] = p1 * (p0 * slopes[2][i2] - slopes[0][i0] * p2);
      }
      for (let i = 0; i < nodes; i++) {
        for (let j = 0; j < nodes; j++) {
          mass[i * nodes + j] += w * value[i] * value[j];
          s11[i * nodes + j] += w * d1[i] * d1[j];
          s12[i * nodes + j] += w * (d1[i] * d2[j] + d2[i] * d1[j]);
          s22[i * nodes + j] += w * d2[i] * d2[j];
        }
      }
    }
  }
  const element: TriangleElement = {
    order,
    nodes,
    lattice,
    mass,
    stiffness: [s11, s12, s22],
    valuesAt: (l1, l2, out) => {
      factorsAt(order, 1 - l1 - l2, factors[0], null);
      factorsAt(order, l1, factors[1], null);
      factorsAt(order, l2, factors[2], null);
      for (let i = 0; i < nodes; i++)
        out[i] = factors[0][lattice[3 * i]] * factors[1][lattice[3 * i + 1]] * factors[2][lattice[3 * i + 2]];
    },
  };
  elements.set(order, element);
  return element;
};

/** The order + 1 Lagrange polynomials on equal steps of 0..1 at t, into `out`. */
export const lineValues = (order: number, t: number, out: Float64Array): void => {
  for (let i = 0; i <= order; i++) {
    let value = 1;
    for (let q = 0; q <= order; q++) if (q !== i) value *= (order * t - q) / (i - q);
    out[i] = value;
  }
};
