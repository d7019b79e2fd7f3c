import { visitEdge } from './edge-quadrature.ts';
import { extraPoints } from './plan-loads.ts';
import type { Located, PlanLocator } from './plan-locator.ts';
import type { PlanSpace } from './plan-space.ts';

/** Functions given by their values at the nodes of a space, asked at points and along edges. */
export interface NodalField {
  readonly size: number;
  valuesAt(pointsUv: Float64Array): Float64Array;
  edgeMatrix(edge: number, fromM: number, toM: number): Float64Array;
  edgeVector(edge: number, fromM: number, toM: number, order: number): Float64Array;
  readonly bytes: number;
}

/** `families`: functions as rows of node values; they are kept node by node, so that a point reads few stretches of memory. */
export const createNodalField = (
  space: PlanSpace,
  locator: PlanLocator,
  families: readonly Float64Array[],
): NodalField => {
  const { element, nodes, stretchNodes } = space;
  const size = families.reduce((sum, family) => sum + family.length / space.size, 0);
  const table = new Float64Array(space.size * size);
  let column = 0;
  for (const family of families) {
    for (let row = 0; row < family.length; row += space.size, column++)
      for (let node = 0; node < space.size; node++) table[node * size + column] = family[row + node];
  }

  /** out[outAt...] = sum of weights times the rows of nodes list[at...]. */
  const combine = (list: Uint32Array, at: number, weights: Float64Array, out: Float64Array, outAt: number): void => {
    const count = weights.length;
    let k = 0;
    for (; k + 2 < count; k += 3) {
      const a = list[at + k] * size;
      const b = list[at + k + 1] * size;
      const c = list[at + k + 2] * size;
      const [wa, wb, wc] = [weights[k], weights[k + 1], weights[k + 2]];
      for (let i = 0; i < size; i++) out[outAt + i] += wa * table[a + i] + wb * table[b + i] + wc * table[c + i];
    }
    for (; k < count; k++) {
      const a = list[at + k] * size;
      for (let i = 0; i < size; i++) out[outAt + i] += weights[k] * table[a + i];
    }
  };

  return {
    size,
    valuesAt: (pointsUv) => {
      const points = pointsUv.length / 2;
      const values = new Float64Array(points * size);
      const weights = new Float64Array(element.nodes);
      const at: Located = { triangle: 0, l1: 0, l2: 0 };
      for (let p = 0; p < points; p++) {
        locator.locate(pointsUv[2 * p], pointsUv[2 * p + 1], at);
        element.valuesAt(at.l1, at.l2, weights);
        combine(nodes, at.triangle * element.nodes, weights, values, p * size);
      }
      return values;
    },
    edgeMatrix: (edge, fromM, toM) => {
      const matrix = new Float64Array(size * size);
      const trace = new Float64Array(size);
      visitEdge(space, edge, fromM, toM, 0, (nodesAt, values, weightM) => {
        trace.fill(0);
        combine(stretchNodes, nodesAt, values, trace, 0);
        for (let i = 0; i < size; i++) {
          const scaled = weightM * trace[i];
          const row = i * size;
          for (let j = 0; j <= i; j++) matrix[row + j] += scaled * trace[j];
        }
      });
      for (let i = 0; i < size; i++) for (let j = 0; j < i; j++) matrix[j * size + i] = matrix[i * size + j];
      return matrix;
    },
    edgeVector: (edge, fromM, toM, order) => {
      const vector = new Float64Array(size);
      const trace = new Float64Array(size);
      visitEdge(space, edge, fromM, toM, extraPoints(order), (nodesAt, values, weightM, atM) => {
        trace.fill(0);
        combine(stretchNodes, nodesAt, values, trace, 0);
        const course = weightM * Math.cos((order * Math.PI * (atM - fromM)) / (toM - fromM));
        for (let i = 0; i < size; i++) vector[i] += course * trace[i];
      });
      return vector;
    },
    bytes: 8 * table.length,
  };
};
