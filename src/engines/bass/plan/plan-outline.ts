import { orient2d } from 'robust-predicates';

export const MOST_CORNERS = 64;

/** A simple polygon turned so that its inside lies to the left, u to the right and v up. */
export interface PlanOutline {
  /** u, v pairs. */
  readonly corners: Float64Array;
  readonly count: number;
  readonly areaM2: number;
  /** Interior angle at every corner, rad. */
  readonly angles: Float64Array;
  /** Whether the corners came in the other sense: corner i here is then the given corner `count - 1 - i`. */
  readonly turned: boolean;
}

/** 1 where c lies left of a-b with v upwards, -1 to the right, 0 on the line; exact. */
const side = (p: Float64Array, a: number, b: number, c: number): number =>
  -Math.sign(orient2d(p[2 * a], p[2 * a + 1], p[2 * b], p[2 * b + 1], p[2 * c], p[2 * c + 1]));

/** Whether c, known to be on the line a-b, lies within the stretch a-b, ends included. */
const between = (p: Float64Array, a: number, b: number, c: number): boolean =>
  (p[2 * c] - p[2 * a]) * (p[2 * c] - p[2 * b]) + (p[2 * c + 1] - p[2 * a + 1]) * (p[2 * c + 1] - p[2 * b + 1]) <= 0;

const touches = (p: Float64Array, a: number, b: number, c: number, d: number): boolean => {
  const [c1, d1, a1, b1] = [side(p, a, b, c), side(p, a, b, d), side(p, c, d, a), side(p, c, d, b)];
  if (c1 * d1 < 0 && a1 * b1 < 0) return true;
  return (
    (c1 === 0 && between(p, a, b, c)) ||
    (d1 === 0 && between(p, a, b, d)) ||
    (a1 === 0 && between(p, c, d, a)) ||
    (b1 === 0 && between(p, c, d, b))
  );
};

const crossing = (p: Float64Array, count: number): string | null => {
  for (let i = 0; i < count; i++) {
    const next = (i + 1) % count;
    const after = (i + 2) % count;
    if (side(p, i, next, after) === 0 && (count === 3 || between(p, i, next, after) || between(p, next, after, i))) {
      return `The walls at corner ${next + 1} of the plan fold back on each other.`;
    }
    for (let j = i + 2; j < count; j++) {
      if (i === 0 && j === count - 1) continue;
      if (touches(p, i, next, j, (j + 1) % count)) return `Walls ${i + 1} and ${j + 1} of the plan cross or touch.`;
    }
  }
  return null;
};

/** Checks that the corners make a simple polygon; returns a sentence where they do not. */
export const outlineOf = (cornersM: readonly (readonly [number, number])[]): PlanOutline | string => {
  const count = cornersM.length;
  if (count < 3 || count > MOST_CORNERS) return `A plan has 3 to ${MOST_CORNERS} corners, not ${count}.`;
  if (!cornersM.every(([u, v]) => Number.isFinite(u) && Number.isFinite(v)))
    return 'A corner of the plan has no place.';
  const given = Float64Array.from(cornersM.flat());
  for (let i = 0; i < count; i++) {
    const j = (i + 1) % count;
    const length = Math.hypot(given[2 * j] - given[2 * i], given[2 * j + 1] - given[2 * i + 1]);
    if (!(length > 1e-6)) return `Corners ${i + 1} and ${j + 1} of the plan are in the same place.`;
  }
  const crossed = crossing(given, count);
  if (crossed !== null) return crossed;
  let twice = 0;
  for (let i = 0; i < count; i++) {
    const j = (i + 1) % count;
    twice += (given[2 * i] - given[0]) * (given[2 * j + 1] - given[1]);
    twice -= (given[2 * j] - given[0]) * (given[2 * i + 1] - given[1]);
  }
  const turned = twice < 0;
  const corners = turned ? Float64Array.from([...cornersM].reverse().flat()) : given;
  const angles = Float64Array.from({ length: count }, (_, i) => {
    const [before, after] = [(i + count - 1) % count, (i + 1) % count];
    const [bu, bv] = [corners[2 * before] - corners[2 * i], corners[2 * before + 1] - corners[2 * i + 1]];
    const [au, av] = [corners[2 * after] - corners[2 * i], corners[2 * after + 1] - corners[2 * i + 1]];
    const angle = Math.atan2(au * bv - av * bu, au * bu + av * bv);
    return angle < 0 ? angle + 2 * Math.PI : angle;
  });
  return { corners, count, areaM2: Math.abs(twice) / 2, angles, turned };
};
