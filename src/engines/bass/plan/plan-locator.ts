import type { PlanMesh } from './plan-mesh.ts';

/** Where a point lies: a triangle and its barycentric coordinates L1, L2 (L0 = 1 - L1 - L2). */
export interface Located {
  triangle: number;
  l1: number;
  l2: number;
}

/** Finds triangles by a grid of cells, each with the triangles that may reach into it. */
export interface PlanLocator {
  /** A point outside is taken at the nearest place inside. */
  locate(u: number, v: number, out: Located): void;
  readonly bytes: number;
}

/** How far outside, in barycentric coordinates, still counts as inside. */
const SLACK = 1e-9;

export const createLocator = (mesh: PlanMesh): PlanLocator => {
  const { coords, triangles, outline } = mesh;
  const count = triangles.length / 3;
  const [minU, minV, maxU, maxV] = boundsOf(outline.corners);
  const cell = Math.sqrt(((maxU - minU) * (maxV - minV)) / (4 * count));
  const columns = Math.max(1, Math.min(512, Math.ceil((maxU - minU) / cell)));
  const rows = Math.max(1, Math.min(512, Math.ceil((maxV - minV) / cell)));
  const perU = columns / (maxU - minU);
  const perV = rows / (maxV - minV);
  const columnOf = (u: number): number => Math.max(0, Math.min(columns - 1, Math.floor((u - minU) * perU)));
  const rowOf = (v: number): number => Math.max(0, Math.min(rows - 1, Math.floor((v - minV) * perV)));

  // L1 = p0 + p1 u + p2 v, L2 = p3 + p4 u + p5 v
  const plane = new Float64Array(6 * count);
  const cells: number[][] = Array.from({ length: columns * rows }, () => []);
  for (let t = 0; t < count; t++) {
    const [a, b, c] = triangles.subarray(3 * t, 3 * t + 3);
    const [au, av] = [coords[2 * a], coords[2 * a + 1]];
    const [bu, bv] = [coords[2 * b] - au, coords[2 * b + 1] - av];
    const [cu, cv] = [coords[2 * c] - au, coords[2 * c + 1] - av];
    const twice = bu * cv - bv * cu;
    const [p1, p2, p4, p5] = [cv / twice, -cu / twice, -bv / twice, bu / twice];
    plane.set([-(p1 * au + p2 * av), p1, p2, -(p4 * au + p5 * av), p4, p5], 6 * t);
    const us = [au, au + bu, au + cu];
    const vs = [av, av + bv, av + cv];
    for (let row = rowOf(Math.min(...vs)); row <= rowOf(Math.max(...vs)); row++)
      for (let column = columnOf(Math.min(...us)); column <= columnOf(Math.max(...us)); column++)
        cells[row * columns + column].push(t);
  }
  const cellStart = new Uint32Array(cells.length + 1);
  for (const [i, list] of cells.entries()) cellStart[i + 1] = cellStart[i] + list.length;
  const inCell = Uint32Array.from(cells.flat());

  const sideTriangle = new Uint32Array(mesh.stretches.length);
  for (let half = 0; half < mesh.sides.length; half++)
    if (mesh.sides[half] >= 0) sideTriangle[mesh.sides[half]] = Math.floor(half / 3);

  const isIn = (t: number, u: number, v: number, slack: number, out: Located): boolean => {
    const l1 = plane[6 * t] + plane[6 * t + 1] * u + plane[6 * t + 2] * v;
    const l2 = plane[6 * t + 3] + plane[6 * t + 4] * u + plane[6 * t + 5] * v;
    if (l1 < -slack || l2 < -slack || 1 - l1 - l2 < -slack) return false;
    out.triangle = t;
    out.l1 = l1;
    out.l2 = l2;
    return true;
  };

  /** The nearest place on the outline. */
  const bringIn = (u: number, v: number, out: Located): void => {
    let least = Number.POSITIVE_INFINITY;
    let [nearU, nearV, stretch] = [u, v, 0];
    for (let i = 0; i < mesh.stretches.length; i++) {
      const { a, b } = mesh.stretches[i];
      const [du, dv] = [coords[2 * b] - coords[2 * a], coords[2 * b + 1] - coords[2 * a + 1]];
      const along = ((u - coords[2 * a]) * du + (v - coords[2 * a + 1]) * dv) / (du * du + dv * dv);
      const t = Math.max(0, Math.min(1, along));
      const [pu, pv] = [coords[2 * a] + t * du, coords[2 * a + 1] + t * dv];
      const away = (u - pu) ** 2 + (v - pv) ** 2;
      if (away >= least) continue;
      least = away;
      [nearU, nearV, stretch] = [pu, pv, i];
    }
    isIn(sideTriangle[stretch], nearU, nearV, Number.POSITIVE_INFINITY, out);
  };

  return {
    locate: (u, v, out) => {
      if (out.triangle < count && isIn(out.triangle, u, v, 0, out)) return;
      const at = rowOf(v) * columns + columnOf(u);
      for (let k = cellStart[at]; k < cellStart[at + 1]; k++) if (isIn(inCell[k], u, v, SLACK, out)) return;
      bringIn(u, v, out);
    },
    bytes: 8 * plane.length + 4 * (inCell.length + cellStart.length + sideTriangle.length),
  };
};

const boundsOf = (corners: Float64Array): [number, number, number, number] => {
  let [minU, minV, maxU, maxV] = [corners[0], corners[1], corners[0], corners[1]];
  for (let i = 2; i < corners.length; i += 2) {
    minU = Math.min(minU, corners[i]);
    maxU = Math.max(maxU, corners[i]);
    minV = Math.min(minV, corners[i + 1]);
    maxV = Math.max(maxV, corners[i + 1]);
  }
  return [minU, minV, maxU, maxV];
};
