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

const firstPoints = ({ corners, count }: PlanOutline, grading: Grading, outline: PlanOutline) => {
  const sizeAt = gradedSize(outline, grading);
  const coords: number[] = Array.from(corners);
  const stretches: Stretch[] = [];
  for (let edge = 0; edge < count; edge++) {
    const next = (edge + 1) % count;
    const [au, av, bu, bv] = [corners[2 * edge], corners[2 * edge + 1], corners[2 * next], corners[2 * next + 1]];
    const cuts = cutEdge(au, av, bu, bv, sizeAt);
    const length = cuts[cuts.length - 1];
    let a = edge;
    for (let i = 1; i < cuts.length; i++) {
      const last = i === cuts.length - 1;
      const b = last ? next : coords.length / 2;
      if (!last) coords.push(au + ((bu - au) * cuts[i]) / length, av + ((bv - av) * cuts[i]) / length);
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
 * in rounds of points far from each other), then smoothed. The rounds and points are bounded; a sentence where it cannot be done.
 */
export const meshPlan = (cornersM: readonly (readonly [number, number])[], grading: Grading): PlanMesh | string => {
  const outline = outlineOf(cornersM);
  if (typeof outline === 'string') return outline;
  try {
    const { coords, stretches, sizeAt } = firstPoints(outline, grading, outline);
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
