import { doubleArea, insideTriangles, type Stretch, type Triangles } from './inside-triangles.ts';
import { cutEdge, type Grading, gradedSize } from './mesh-size.ts';
import { outlineOf, type PlanOutline } from './plan-outline.ts';
import { refineOnce, smooth } from './refine-mesh.ts';

/** Triangles over a plan, the outline cut into stretches. */
export interface PlanMesh {
  /** u, v pairs, m. */
  readonly coords: Float64Array;
  /** Three points each, turning left. */
  readonly triangles: Uint32Array;
  /** Per side of a triangle (from its point k to k + 1) the index of the stretch of outline it is, or -1. */
  readonly sides: Int32Array;
  readonly stretches: readonly Stretch[];
  readonly outline: PlanOutline;
}

/** More triangles than this are never made: elements are then left larger than asked. */
const MOST_POINTS = 6000;
const MOST_ROUNDS = 60;
const SMOOTHINGS = 3;

/** Ends of parts of edges: an edge in the sense the corners were given in, and metres along it. */
export interface EdgeBreak {
  readonly edge: number;
  readonly atM: number;
}

/** Breaks nearer to each other or to a corner than this share of the wanted side are left to the inside of an element. */
const LEAST_PIECE = 0.04;

/** Metres from the first corner of an own edge at which it is broken, its ends included, ascending. */
const breaksOf = (outline: PlanOutline, own: number, breaks: readonly EdgeBreak[], length: number, least: number) => {
  const { count, turned } = outline;
  const edge = turned ? (2 * count - 2 - own) % count : own;
  const places = breaks
    .filter((each) => each.edge === edge)
    .map(({ atM }) => (turned ? length - atM : atM))
    .sort((a, b) => a - b);
  const kept = [0];
  for (const at of places) if (at - kept[kept.length - 1] > least && length - at > least) kept.push(at);
  return [...kept, length];
};

const firstPoints = (outline: PlanOutline, grading: Grading, breaks: readonly EdgeBreak[]) => {
  const { corners, count } = outline;
  const sizeAt = gradedSize(outline, grading);
  const coords: number[] = Array.from(corners);
  const stretches: Stretch[] = [];
  for (let edge = 0; edge < count; edge++) {
    const next = (edge + 1) % count;
    const [au, av, bu, bv] = [corners[2 * edge], corners[2 * edge + 1], corners[2 * next], corners[2 * next + 1]];
    const length = Math.hypot(bu - au, bv - av);
    const uAt = (metres: number): number => au + ((bu - au) * metres) / length;
    const vAt = (metres: number): number => av + ((bv - av) * metres) / length;
    const ends = breaksOf(outline, edge, breaks, length, LEAST_PIECE * grading.meshM);
    const cuts = [0];
    for (let i = 1; i < ends.length; i++) {
      const [from, to] = [ends[i - 1], ends[i]];
      const piece = cutEdge(uAt(from), vAt(from), uAt(to), vAt(to), sizeAt);
      for (let k = 1; k < piece.length - 1; k++) cuts.push(from + piece[k]);
      cuts.push(to);
    }
    let a = edge;
    for (let i = 1; i < cuts.length; i++) {
      const last = i === cuts.length - 1;
      const b = last ? next : coords.length / 2;
      if (!last) coords.push(uAt(cuts[i]), vAt(cuts[i]));
      stretches.push({ a, b, edge, fromM: cuts[i - 1], toM: cuts[i] });
      a = b;
    }
  }
  return { coords, stretches, sizeAt };
};

/** A sentence where the triangles are not a proper cover of the plan: areas positive, summing up, the outline kept. */
const faultOf = (coords: Float64Array, triangles: Triangles, stretches: readonly Stretch[], areaM2: number) => {
  let area = 0;
  for (let t = 0; t < triangles.points.length; t += 3) {
    const [a, b, c] = triangles.points.subarray(t, t + 3);
    const twice = doubleArea(coords, a, b, c);
    if (!(twice > 1e-12 * areaM2)) return 'The plan has a part too thin to be worked out.';
    area += twice / 2;
  }
  if (Math.abs(area - areaM2) > 1e-9 * areaM2) return 'The plan could not be cut into triangles.';
  const seen = new Uint8Array(stretches.length);
  for (const stretch of triangles.stretch) if (stretch >= 0) seen[stretch] += 1;
  return seen.every((times) => times === 1) ? null : 'A wall of the plan was lost in cutting it into triangles.';
};

/**
 * Triangles over a simple polygon of 3 to 64 corners in either sense, smaller towards the corners where modes are not smooth.
 * Constrained Delaunay triangles refined by circumcentres and halved stretches of outline (after Ruppert, 1995, and Chew, 1993,
 * in rounds of points far from each other), then smoothed. `breaks` become points of the outline. The rounds and points are bounded; a sentence where it cannot be done.
 */
export const meshPlan = (
  cornersM: readonly (readonly [number, number])[],
  grading: Grading,
  breaks: readonly EdgeBreak[] = [],
): PlanMesh | string => {
  const outline = outlineOf(cornersM);
  if (typeof outline === 'string') return outline;
  try {
    const { coords, stretches, sizeAt } = firstPoints(outline, grading, breaks);
    let triangles = insideTriangles(Float64Array.from(coords), stretches);
    for (let round = 0; round < MOST_ROUNDS && coords.length < 2 * MOST_POINTS; round++) {
      if (!refineOnce(coords, stretches, triangles, sizeAt)) break;
      triangles = insideTriangles(Float64Array.from(coords), stretches);
    }
    let places = Float64Array.from(coords);
    for (let round = 0; round < SMOOTHINGS; round++) {
      const moved = smooth(places, triangles);
      const next = insideTriangles(moved, stretches);
      if (faultOf(moved, next, stretches, outline.areaM2) !== null) break;
      places = moved;
      triangles = next;
    }
    const fault = faultOf(places, triangles, stretches, outline.areaM2);
    if (fault !== null) return fault;
    return { coords: places, triangles: triangles.points, sides: triangles.stretch, stretches, outline };
  } catch {
    return 'The plan has walls too close to each other to be cut into triangles.';
  }
};
