import { reverseCuthillMcKee } from './node-order.ts';
import type { PlanMesh } from './plan-mesh.ts';
import { type TriangleElement, triangleElement } from './triangle-element.ts';

/** Continuous piecewise polynomials on the triangles of a plan, their nodes numbered for a narrow envelope. */
export interface PlanSpace {
  readonly mesh: PlanMesh;
  readonly element: TriangleElement;
  /** Number of nodes. */
  readonly size: number;
  /** Nodes of every triangle in the element's order: triangles x element.nodes. */
  readonly nodes: Uint32Array;
  /** Sparse rows: columns of row i at rowStart[i]..rowStart[i + 1], ascending. */
  readonly rowStart: Uint32Array;
  readonly column: Uint32Array;
  /** Nodes along every stretch of outline, from its point a to b: stretches x (order + 1). */
  readonly stretchNodes: Uint32Array;
}

/** Nodes of every triangle, numbered by corners, sides and insides. */
const numberNodes = ({ triangles, coords }: PlanMesh, { order, nodes }: TriangleElement) => {
  const count = triangles.length / 3;
  const points = coords.length / 2;
  const list = new Uint32Array(count * nodes);
  const sides = new Map<number, number>();
  let next = points;
  for (let t = 0; t < count; t++) {
    const base = t * nodes;
    for (let k = 0; k < 3; k++) {
      const a = triangles[3 * t + k];
      const b = triangles[3 * t + ((k + 1) % 3)];
      list[base + k] = a;
      const key = Math.min(a, b) * points + Math.max(a, b);
      let first = sides.get(key);
      if (first === undefined) {
        first = next;
        sides.set(key, first);
        next += order - 1;
      }
      // nodes of a side run from its lower point to its higher one
      for (let q = 0; q < order - 1; q++) list[base + 3 + k * (order - 1) + q] = first + (a < b ? q : order - 2 - q);
    }
    for (let i = 3 * order; i < nodes; i++) list[base + i] = next++;
  }
  return { list, size: next };
};

/** Sparse rows of the nodes that share a triangle, columns ascending where asked. */
const rowsOf = (list: Uint32Array, perTriangle: number, size: number, ascending: boolean) => {
  const touchStart = new Uint32Array(size + 1);
  for (const node of list) touchStart[node + 1]++;
  for (let i = 0; i < size; i++) touchStart[i + 1] += touchStart[i];
  const filled = touchStart.slice(0, size);
  const touching = new Uint32Array(list.length);
  for (let at = 0; at < list.length; at++) touching[filled[list[at]]++] = at - (at % perTriangle);
  const marked = new Int32Array(size).fill(-1);
  const rowStart = new Uint32Array(size + 1);
  const column = new Uint32Array(list.length * perTriangle);
  let end = 0;
  for (let i = 0; i < size; i++) {
    const start = end;
    for (let k = touchStart[i]; k < touchStart[i + 1]; k++) {
      for (let at = touching[k]; at < touching[k] + perTriangle; at++) {
        const j = list[at];
        if (marked[j] === i) continue;
        marked[j] = i;
        column[end++] = j;
      }
    }
    if (ascending) column.subarray(start, end).sort();
    rowStart[i + 1] = end;
  }
  return { rowStart, column: column.slice(0, end) };
};

export const createPlanSpace = (mesh: PlanMesh, order: number): PlanSpace => {
  const element = triangleElement(order);
  const { list, size } = numberNodes(mesh, element);
  const raw = rowsOf(list, element.nodes, size, false);
  const place = reverseCuthillMcKee(raw.rowStart, raw.column);
  const nodes = list.map((node) => place[node]);
  const { rowStart, column } = rowsOf(nodes, element.nodes, size, true);
  const stretchNodes = new Uint32Array(mesh.stretches.length * (order + 1));
  for (let half = 0; half < mesh.sides.length; half++) {
    const stretch = mesh.sides[half];
    if (stretch < 0) continue;
    const base = Math.floor(half / 3) * element.nodes;
    const k = half % 3;
    // a side inside to its left runs as its stretch does
    const at = stretch * (order + 1);
    stretchNodes[at] = nodes[base + k];
    for (let q = 0; q < order - 1; q++) stretchNodes[at + 1 + q] = nodes[base + 3 + k * (order - 1) + q];
    stretchNodes[at + order] = nodes[base + ((k + 1) % 3)];
  }
  return { mesh, element, size, nodes, rowStart, column, stretchNodes };
};
