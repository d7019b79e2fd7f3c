import { band, signedArea, triangulated } from '../../math/polygon.ts';
import type { Point2 } from '../../math/polyline.ts';
import type { Vec3 } from '../../math/vec3.ts';
import { type CeilingLine, SAME_M } from './ceiling.ts';

/** One plane of the ceiling. */
export interface CeilingPiece {
  /** A slope (level ones too) over the plan, or the upright face of a step. */
  readonly kind: 'slope' | 'step';
  /** Where it begins and ends along the ceiling's axis, and how high it is there. */
  readonly places: Point2;
  readonly heightsM: Point2;
  /** Unit vector out of the room. */
  readonly outward: Vec3;
  readonly areaM2: number;
  /** It as convex polygons in document axes. */
  readonly polygonsM: readonly (readonly Vec3[])[];
}

/** The stretches in which a line of constant x (axis 0) or z (axis 1) runs through a plan, by the other coordinate. */
export const chords = (corners: readonly Point2[], axis: 0 | 1, place: number): Point2[] => {
  const crossed: number[] = [];
  corners.forEach((a, i) => {
    const b = corners[(i + 1) % corners.length];
    if (a[axis] > place === b[axis] > place) return;
    crossed.push(a[1 - axis] + ((place - a[axis]) / (b[axis] - a[axis])) * (b[1 - axis] - a[1 - axis]));
  });
  crossed.sort((p, q) => p - q);
  return Array.from({ length: crossed.length / 2 }, (_, k): Point2 => [crossed[2 * k], crossed[2 * k + 1]]);
};

/** How far from a step the plan is looked at on its two sides. */
const BESIDE_M = 1e-7;

/** A step's face stands where there is room on both sides of it. */
const shared = (a: readonly Point2[], b: readonly Point2[]): Point2[] =>
  a.flatMap(([a0, a1]) =>
    b.flatMap(([b0, b1]): Point2[] => {
      const [from, to] = [Math.max(a0, b0), Math.min(a1, b1)];
      return to - from > SAME_M ? [[from, to]] : [];
    }),
  );

const slopePiece = (corners: readonly Point2[], k: 0 | 1, a: Point2, b: Point2): CeilingPiece => {
  const rise = (b[1] - a[1]) / (b[0] - a[0]);
  const long = Math.hypot(1, rise);
  const lifted = ([x, z]: Point2): Vec3 => [x, a[1] + ((k === 0 ? x : z) - a[0]) * rise, z];
  const polygonsM = triangulated(corners)
    .map((triangle) =>
      band(
        triangle.map((i) => corners[i]),
        k,
        a[0],
        b[0],
      ),
    )
    .filter((polygon) => polygon.length > 2 && signedArea(polygon) > 1e-12)
    .map((polygon) => polygon.map(lifted));
  return {
    kind: 'slope',
    places: [a[0], b[0]],
    heightsM: [a[1], b[1]],
    outward: k === 0 ? [-rise / long, 1 / long, 0] : [0, 1 / long, -rise / long],
    areaM2: signedArea(band(corners, k, a[0], b[0])) * long,
    polygonsM,
  };
};

const stepPiece = (corners: readonly Point2[], k: 0 | 1, a: Point2, b: Point2): CeilingPiece => {
  const stretches = shared(chords(corners, k, a[0] - BESIDE_M), chords(corners, k, a[0] + BESIDE_M));
  // Out of the room is towards the lower side, where there is no room above its ceiling.
  const sign = b[1] < a[1] ? 1 : -1;
  const at = (along: number, height: number): Vec3 => (k === 0 ? [a[0], height, along] : [along, height, a[0]]);
  return {
    kind: 'step',
    places: [a[0], b[0]],
    heightsM: [a[1], b[1]],
    outward: k === 0 ? [sign, 0, 0] : [0, 0, sign],
    areaM2: stretches.reduce((sum, [from, to]) => sum + (to - from) * Math.abs(b[1] - a[1]), 0),
    polygonsM: stretches.map(([from, to]) => [at(from, a[1]), at(to, a[1]), at(to, b[1]), at(from, b[1])]),
  };
};

/** The planes of a ceiling over a plan of positive sense, in the order of the ceiling's line. */
export const piecesOf = (corners: readonly Point2[], { axis, knots }: CeilingLine): CeilingPiece[] => {
  const k = axis === 0 ? 0 : 1;
  return knots.slice(1).map((b, i) => {
    const a = knots[i];
    return b[0] - a[0] > SAME_M ? slopePiece(corners, k, a, b) : stepPiece(corners, k, a, b);
  });
};
