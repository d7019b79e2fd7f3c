import type { Point2 } from './polyline.ts';

/** Area of a simple polygon by Green's theorem, positive where the first axis turns to the second along its corners. */
export const signedArea = (corners: readonly Point2[]): number => {
  let twice = 0;
  for (let i = 0; i < corners.length; i += 1) {
    const [x0, y0] = corners[i];
    const [x1, y1] = corners[(i + 1) % corners.length];
    twice += x0 * y1 - x1 * y0;
  }
  return twice / 2;
};

/** Area and the integrals of both coordinates over a polygon of positive sense (Green's theorem). */
export const momentsOf = (corners: readonly Point2[]): { area: number; first: Point2 } => {
  let area = 0;
  let x = 0;
  let y = 0;
  for (let i = 0; i < corners.length; i += 1) {
    const [x0, y0] = corners[i];
    const [x1, y1] = corners[(i + 1) % corners.length];
    const twice = x0 * y1 - x1 * y0;
    area += twice / 2;
    x += (twice * (x0 + x1)) / 6;
    y += (twice * (y0 + y1)) / 6;
  }
  return { area, first: [x, y] };
};

/** Distance from a point to the segment a-b. */
export const segmentDistance = ([px, py]: Point2, [ax, ay]: Point2, [bx, by]: Point2): number => {
  const dx = bx - ax;
  const dy = by - ay;
  const squared = dx * dx + dy * dy;
  const t = squared > 0 ? Math.min(1, Math.max(0, ((px - ax) * dx + (py - ay) * dy) / squared)) : 0;
  return Math.hypot(px - ax - t * dx, py - ay - t * dy);
};

/** Distance from a point to the nearest edge of a closed polygon. */
export const edgeDistance = (corners: readonly Point2[], point: Point2): number =>
  corners.reduce(
    (least, corner, i) => Math.min(least, segmentDistance(point, corner, corners[(i + 1) % corners.length])),
    Number.POSITIVE_INFINITY,
  );

/** Whether a point lies in a simple polygon, either sense: a ray along the first axis crosses an odd number of edges. */
export const isWithin = (corners: readonly Point2[], [x, y]: Point2): boolean => {
  let inside = false;
  for (let i = 0; i < corners.length; i += 1) {
    const [x0, y0] = corners[i];
    const [x1, y1] = corners[(i + 1) % corners.length];
    if (y0 > y !== y1 > y && x < x0 + ((y - y0) / (y1 - y0)) * (x1 - x0)) inside = !inside;
  }
  return inside;
};

/**
 * The part of a polygon where coordinate `axis` is at least `limit` (or, with `below`, at most). One polygon: parts of a
 * concave one stay joined along the line by edges that carry no area (Sutherland and Hodgman, 1974).
 */
export const clipped = (corners: readonly Point2[], axis: 0 | 1, limit: number, below = false): Point2[] => {
  const sign = below ? -1 : 1;
  const kept: Point2[] = [];
  for (let i = 0; i < corners.length; i += 1) {
    const a = corners[i];
    const b = corners[(i + 1) % corners.length];
    const da = sign * (a[axis] - limit);
    const db = sign * (b[axis] - limit);
    if (da >= 0) kept.push(a);
    if (da > 0 === db > 0 || da === 0 || db === 0) continue;
    const t = da / (da - db);
    const other = a[1 - axis] + (b[1 - axis] - a[1 - axis]) * t;
    kept.push(axis === 0 ? [limit, other] : [other, limit]);
  }
  return kept;
};

/** The part of a polygon between two values of a coordinate. */
export const band = (corners: readonly Point2[], axis: 0 | 1, from: number, to: number): Point2[] =>
  clipped(clipped(corners, axis, from), axis, to, true);

const turn = (a: Point2, b: Point2, c: Point2): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

const inTriangle = (p: Point2, a: Point2, b: Point2, c: Point2): boolean =>
  turn(a, b, p) >= 0 && turn(b, c, p) >= 0 && turn(c, a, p) >= 0;

const same = (a: Point2, b: Point2): boolean => a[0] === b[0] && a[1] === b[1];

/** Whether the corner at `k` of the ring may be cut off: it is convex and no other corner lies in its triangle. */
const isEar = (corners: readonly Point2[], ring: readonly number[], k: number): boolean => {
  const n = ring.length;
  const a = corners[ring[(k + n - 1) % n]];
  const b = corners[ring[k]];
  const c = corners[ring[(k + 1) % n]];
  if (turn(a, b, c) <= 0) return false;
  return ring.every((index) => {
    const p = corners[index];
    return same(p, a) || same(p, b) || same(p, c) || !inTriangle(p, a, b, c);
  });
};

/** A simple polygon of positive sense as triangles of its corners' numbers (Meisters' ears, 1975). At most 64 corners. */
export const triangulated = (corners: readonly Point2[]): (readonly [number, number, number])[] => {
  const ring = corners.map((_, i) => i);
  const triangles: (readonly [number, number, number])[] = [];
  while (ring.length > 3) {
    const n = ring.length;
    const ear = ring.findIndex((_, k) => isEar(corners, ring, k));
    // Nothing but corners on straight lines is left without an ear: they carry no area and go one by one.
    const k = ear >= 0 ? ear : flattest(corners, ring);
    if (ear >= 0) triangles.push([ring[(k + n - 1) % n], ring[k], ring[(k + 1) % n]]);
    ring.splice(k, 1);
  }
  const [a, b, c] = ring;
  if (turn(corners[a], corners[b], corners[c]) > 0) triangles.push([a, b, c]);
  return triangles;
};

const flattest = (corners: readonly Point2[], ring: readonly number[]): number => {
  const n = ring.length;
  const bend = ring.map((index, k) =>
    Math.abs(turn(corners[ring[(k + n - 1) % n]], corners[index], corners[ring[(k + 1) % n]])),
  );
  return bend.indexOf(Math.min(...bend));
};
