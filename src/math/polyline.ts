export type Point2 = readonly [number, number];

/** Which side of a-b the point c lies on: twice the signed area of the triangle. */
const turn = (a: Point2, b: Point2, c: Point2): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

const within = (a: Point2, b: Point2, c: Point2): boolean =>
  Math.min(a[0], b[0]) <= c[0] &&
  c[0] <= Math.max(a[0], b[0]) &&
  Math.min(a[1], b[1]) <= c[1] &&
  c[1] <= Math.max(a[1], b[1]);

/** Whether the segments a-b and c-d share a point, ends included (derived: sides of each line; touching counts). */
export const segmentsMeet = (a: Point2, b: Point2, c: Point2, d: Point2): boolean => {
  const abc = Math.sign(turn(a, b, c));
  const abd = Math.sign(turn(a, b, d));
  const cda = Math.sign(turn(c, d, a));
  const cdb = Math.sign(turn(c, d, b));
  if (abc * abd < 0 && cda * cdb < 0) return true;
  return (
    (abc === 0 && within(a, b, c)) ||
    (abd === 0 && within(a, b, d)) ||
    (cda === 0 && within(c, d, a)) ||
    (cdb === 0 && within(c, d, b))
  );
};

/** Whether the next edge turns straight back over the one before it. */
const foldsBack = (a: Point2, b: Point2, c: Point2): boolean =>
  turn(a, b, c) === 0 && (c[0] - b[0]) * (a[0] - b[0]) + (c[1] - b[1]) * (a[1] - b[1]) > 0;

/**
 * The first pair of edges of a closed polygon that cross, touch or lie on one another, as [i, j] with edge i running from
 * corner i to corner i + 1; an edge of no length is [i, i]. Undefined for a simple polygon. Every pair is tried: at most
 * 64 corners.
 */
export const crossingEdges = (corners: readonly Point2[]): readonly [number, number] | undefined => {
  const n = corners.length;
  const at = (index: number): Point2 => corners[index % n];
  for (let i = 0; i < n; i++) {
    if (at(i)[0] === at(i + 1)[0] && at(i)[1] === at(i + 1)[1]) return [i, i];
    if (foldsBack(at(i), at(i + 1), at(i + 2))) return [i, (i + 1) % n];
    for (let j = i + 2; j < n; j++) {
      if (j + 1 === n && i === 0) continue;
      if (segmentsMeet(at(i), at(i + 1), at(j), at(j + 1))) return [i, j];
    }
  }
  return undefined;
};
