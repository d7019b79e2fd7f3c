import Constrainautor from '@kninnug/constrainautor';
import Delaunator from 'delaunator';

/** A stretch of the outline between two points, the inside to its left. */
export interface Stretch {
  readonly a: number;
  readonly b: number;
  /** The edge of the outline it belongs to. */
  readonly edge: number;
  /** Metres from the edge's first corner to both ends. */
  readonly fromM: number;
  readonly toM: number;
}

export interface Triangles {
  /** Three points each, turning left. */
  readonly points: Uint32Array;
  /** Per side (between point k and k + 1 of its triangle) the index of the stretch it lies on, or -1. */
  readonly stretch: Int32Array;
}

/**
 * Constrained Delaunay triangles inside a closed outline. What is outside is found by flooding from the hull across every
 * side that is no part of the outline, which needs no point-in-polygon test. Throws where a stretch runs through a point.
 */
export const insideTriangles = (coords: Float64Array, stretches: readonly Stretch[]): Triangles => {
  const mesh = new Delaunator(coords);
  new Constrainautor(
    mesh,
    stretches.map(({ a, b }) => [a, b] as [number, number]),
  );
  const { triangles, halfedges } = mesh;
  const points = coords.length / 2;
  const known = new Map<number, number>();
  for (const [i, { a, b }] of stretches.entries()) known.set(Math.min(a, b) * points + Math.max(a, b), i);
  const stretchOf = (half: number): number => {
    const a = triangles[half];
    const b = triangles[half % 3 === 2 ? half - 2 : half + 1];
    return known.get(Math.min(a, b) * points + Math.max(a, b)) ?? -1;
  };
  const of = Int32Array.from(triangles, (_, half) => stretchOf(half));
  const outside = new Uint8Array(triangles.length / 3);
  const queue: number[] = [];
  const flood = (triangle: number): void => {
    if (outside[triangle]) return;
    outside[triangle] = 1;
    queue.push(triangle);
  };
  for (let half = 0; half < triangles.length; half++)
    if (halfedges[half] < 0 && of[half] < 0) flood(Math.floor(half / 3));
  while (queue.length > 0) {
    const triangle = queue.pop() ?? 0;
    for (let half = 3 * triangle; half < 3 * triangle + 3; half++)
      if (of[half] < 0 && halfedges[half] >= 0) flood(Math.floor(halfedges[half] / 3));
  }
  return leftTurning(coords, triangles, of, outside);
};

/** The triangles that are not outside; Delaunator's all turn the same way, which depends on the direction of v. */
const leftTurning = (coords: Float64Array, triangles: Uint32Array, of: Int32Array, outside: Uint8Array): Triangles => {
  const points: number[] = [];
  const stretch: number[] = [];
  for (let t = 0; t < outside.length; t++) {
    if (outside[t]) continue;
    const [a, b, c] = triangles.subarray(3 * t, 3 * t + 3);
    if (doubleArea(coords, a, b, c) >= 0) {
      points.push(a, b, c);
      stretch.push(of[3 * t], of[3 * t + 1], of[3 * t + 2]);
    } else {
      points.push(a, c, b);
      stretch.push(of[3 * t + 2], of[3 * t + 1], of[3 * t]);
    }
  }
  return { points: Uint32Array.from(points), stretch: Int32Array.from(stretch) };
};

/** Twice the area of the triangle a, b, c; positive where it turns left. */
export const doubleArea = (p: Float64Array, a: number, b: number, c: number): number =>
  (p[2 * b] - p[2 * a]) * (p[2 * c + 1] - p[2 * a + 1]) - (p[2 * b + 1] - p[2 * a + 1]) * (p[2 * c] - p[2 * a]);
