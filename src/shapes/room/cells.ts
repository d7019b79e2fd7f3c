import { band } from '../../math/polygon.ts';
import type { Point2 } from '../../math/polyline.ts';

/** A rectangle in a surface's plane. */
export interface Cut {
  readonly u0: number;
  readonly u1: number;
  readonly v0: number;
  readonly v1: number;
}

/** A flat region: what a closed outline holds, less rectangular holes. The outline crosses itself nowhere. */
export interface Region {
  readonly outline: readonly Point2[];
  readonly holes: readonly Cut[];
}

/** Lines that all but coincide are one. */
const SAME_M = 1e-6;

/** Grid lines from `from` to `to` at every wanted place and nowhere farther apart than `step`. */
const linesOf = (from: number, to: number, wanted: readonly number[], step: number): number[] => {
  const fixed = [from, ...wanted.filter((v) => v > from + SAME_M && v < to - SAME_M), to].sort((a, b) => a - b);
  const lines: number[] = [fixed[0]];
  for (let i = 1; i < fixed.length; i += 1) {
    const last = lines[lines.length - 1];
    const gap = fixed[i] - last;
    if (gap < SAME_M) continue;
    const pieces = Math.max(1, Math.ceil(gap / step - 1e-9));
    for (let k = 1; k < pieces; k += 1) lines.push(last + (gap * k) / pieces);
    lines.push(fixed[i]);
  }
  return lines;
};

/** Where an edge runs over a column of the grid: its v on both sides. */
type Crossing = readonly [number, number];

/** The edges that run right across a column, from the lowest up. */
const crossingsOf = (outline: readonly Point2[], u0: number, u1: number): Crossing[] => {
  const middle = (u0 + u1) / 2;
  const found: Crossing[] = [];
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length];
    if (a[0] > middle === b[0] > middle) return;
    const at = (u: number) => {
      if (Math.abs(u - a[0]) < SAME_M) return a[1];
      if (Math.abs(u - b[0]) < SAME_M) return b[1];
      return a[1] + ((b[1] - a[1]) * (u - a[0])) / (b[0] - a[0]);
    };
    found.push([at(u0), at(u1)]);
  });
  return found.sort((p, q) => p[0] + p[1] - q[0] - q[1]);
};

const spread = (points: readonly Point2[], axis: 0 | 1): [number, number] => {
  const values = points.map((point) => point[axis]);
  return [Math.min(...values), Math.max(...values)];
};

const isHole = (holes: readonly Cut[], u: number, v: number): boolean =>
  holes.some((h) => u > h.u0 && u < h.u1 && v > h.v0 && v < h.v1);

/**
 * A region as convex cells, each of positive sense: cut at every corner and hole, at the wanted lines, and nowhere farther
 * apart than `stepM`. Cells meet edge to edge. Derived: between two corners' places the edges do not cross, so a column is
 * a stack of trapezoids.
 */
export const cellsOf = (
  { outline, holes }: Region,
  stepM: number,
  wanted: { readonly u: readonly number[]; readonly v: readonly number[] },
): Point2[][] => {
  const [leastU, mostU] = spread(outline, 0);
  const [leastV, mostV] = spread(outline, 1);
  const us = linesOf(
    leastU,
    mostU,
    [...wanted.u, ...outline.map(([u]) => u), ...holes.flatMap((h) => [h.u0, h.u1])],
    stepM,
  );
  const vs = linesOf(
    leastV,
    mostV,
    [...wanted.v, ...outline.map(([, v]) => v), ...holes.flatMap((h) => [h.v0, h.v1])],
    stepM,
  );
  const cells: Point2[][] = [];
  for (let i = 0; i + 1 < us.length; i += 1) {
    const [u0, u1] = [us[i], us[i + 1]];
    const crossings = crossingsOf(outline, u0, u1);
    for (let k = 0; k + 1 < crossings.length; k += 2) {
      const [low, high] = [crossings[k], crossings[k + 1]];
      const trapezoid: Point2[] = [
        [u0, low[0]],
        [u1, low[1]],
        [u1, high[1]],
        [u0, high[0]],
      ];
      const [from, to] = [Math.min(...low), Math.max(...high)];
      for (let j = 0; j + 1 < vs.length; j += 1) {
        if (vs[j + 1] <= from + SAME_M || vs[j] >= to - SAME_M) continue;
        if (isHole(holes, (u0 + u1) / 2, (vs[j] + vs[j + 1]) / 2)) continue;
        const cell = band(trapezoid, 1, vs[j], vs[j + 1]);
        if (cell.length > 2) cells.push(cell);
      }
    }
  }
  return cells;
};
