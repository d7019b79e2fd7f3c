import { edgeDistance, isWithin, segmentDistance, signedArea } from '../../../math/polygon.ts';
import type { Axis, PrismSpec } from '../room-field.ts';

export type Point = readonly [number, number];

/** One straight edge of the cross-section, from corner i to the next. */
export interface Edge {
  readonly from: Point;
  readonly to: Point;
  readonly lengthM: number;
  /** Unit vectors along the edge and out of the room. */
  readonly along: Point;
  readonly outward: Point;
}

/** What depends on the room's shape and walls alone. Cross-section coordinates are those of the two axes `across`, ascending. */
export interface PrismGeometry {
  readonly axis: Axis;
  readonly across: readonly [Axis, Axis];
  /** Along the even axis. */
  readonly lengthM: number;
  readonly soundSpeed: number;
  readonly corners: readonly Point[];
  readonly edges: readonly Edge[];
  readonly areaM2: number;
  /** beta of the edges and of the ends, re, im each. */
  readonly edgeBeta: Float64Array;
  readonly endBeta: Float64Array;
  readonly rigid: boolean;
}

const ACROSS: readonly (readonly [Axis, Axis])[] = [
  [1, 2],
  [0, 2],
  [0, 1],
];

export const prismGeometry = (spec: PrismSpec): PrismGeometry => {
  const corners = spec.cornersM.map(([x, y]): Point => [x, y]);
  const area = signedArea(corners);
  const turn = area >= 0 ? 1 : -1;
  const edges = corners.map((from, i): Edge => {
    const to = corners[(i + 1) % corners.length];
    const lengthM = Math.hypot(to[0] - from[0], to[1] - from[1]);
    const along: Point = [(to[0] - from[0]) / lengthM, (to[1] - from[1]) / lengthM];
    return { from, to, lengthM, along, outward: [turn * along[1], -turn * along[0]] };
  });
  const edgeBeta = Float64Array.from(spec.edges.flat());
  const endBeta = Float64Array.from(spec.ends.flat());
  return {
    axis: spec.axis,
    across: ACROSS[spec.axis],
    lengthM: spec.lengthM,
    soundSpeed: spec.soundSpeed,
    corners,
    edges,
    areaM2: Math.abs(area),
    edgeBeta,
    endBeta,
    rigid: edgeBeta.every((part) => part === 0) && endBeta.every((part) => part === 0),
  };
};

/** How far outside the cross-section a point still counts as on its edge. */
const ON_EDGE_M = 1e-6;

export const liesWithin = ({ corners }: PrismGeometry, x: number, y: number): boolean =>
  isWithin(corners, [x, y]) || edgeDistance(corners, [x, y]) <= ON_EDGE_M;

/** The nearest point of the cross-section, a little inside its edges so that elements are found. */
export const intoSection = (geometry: PrismGeometry, x: number, y: number): Point => {
  if (isWithin(geometry.corners, [x, y])) return [x, y];
  let nearest: Point = [x, y];
  let least = Number.POSITIVE_INFINITY;
  for (const { from, to, lengthM, along, outward } of geometry.edges) {
    const gap = segmentDistance([x, y], from, to);
    if (gap >= least) continue;
    least = gap;
    const t = Math.min(lengthM, Math.max(0, (x - from[0]) * along[0] + (y - from[1]) * along[1]));
    const inside = 1e-9;
    nearest = [from[0] + t * along[0] - inside * outward[0], from[1] + t * along[1] - inside * outward[1]];
  }
  return nearest;
};

/** Positions as x, y, z triples brought into the prism: cross-section coordinates and the place along the axis, triple by triple. */
export const intoPrism = (geometry: PrismGeometry, positionsM: Float64Array): Float64Array => {
  const [first, second] = geometry.across;
  const out = new Float64Array(positionsM.length);
  for (let p = 0; p < positionsM.length; p += 3) {
    const [x, y] = intoSection(geometry, positionsM[p + first], positionsM[p + second]);
    out[p] = x;
    out[p + 1] = y;
    out[p + 2] = Math.min(geometry.lengthM, Math.max(0, positionsM[p + geometry.axis]));
  }
  return out;
};
