import { edgeDistance, isWithin } from './polygon.ts';
import type { Point2 } from './polyline.ts';

/** What is kept clear round a point: a disc's radius, or half the sides of an upright rectangle. Metres. */
export type Clear = number | Point2;

/** Touching the edge counts as inside; this much forgives sums of decimals (2.15 - 4.3 / 2). */
export const SLACK_M = 1e-9;

/** A rectangle without width or depth is looked at as one this thin. */
const THIN_M = 1e-10;

/**
 * Whether the segment a-b passes through the open rectangle about a point. One without depth may lie along the segment, as
 * a picture does on its wall.
 */
const passesThrough = ([px, py]: Point2, clear: Point2, a: Point2, b: Point2): boolean => {
  if (clear[0] <= SLACK_M && clear[1] <= SLACK_M) return false;
  let enter = 0;
  let leave = 1;
  const from = [a[0] - px, a[1] - py];
  const by = [b[0] - a[0], b[1] - a[1]];
  for (const axis of [0, 1]) {
    const thin = clear[axis] <= SLACK_M;
    const half = thin ? THIN_M : clear[axis] - SLACK_M;
    if (Math.abs(by[axis]) < 1e-15) {
      if (thin || Math.abs(from[axis]) >= half) return false;
      continue;
    }
    const t0 = (-half - from[axis]) / by[axis];
    const t1 = (half - from[axis]) / by[axis];
    enter = Math.max(enter, Math.min(t0, t1));
    leave = Math.min(leave, Math.max(t0, t1));
  }
  return enter < leave;
};

/** Whether a point, with what is to be clear round it, lies within a simple polygon; touching counts. */
export const fits = (corners: readonly Point2[], point: Point2, clear: Clear): boolean => {
  const away = edgeDistance(corners, point);
  if (!isWithin(corners, point) && away > SLACK_M) return false;
  if (typeof clear === 'number') return clear <= SLACK_M || away >= clear - SLACK_M;
  return !corners.some((corner, i) => passesThrough(point, clear, corner, corners[(i + 1) % corners.length]));
};

interface Line {
  readonly at: Point2;
  readonly along: Point2;
}

/** Every line on which the place nearest to a point may lie: the edges moved inwards, and the sides round inward corners. */
const linesOf = (corners: readonly Point2[], clear: Clear): Line[] => {
  const n = corners.length;
  const lines: Line[] = [];
  for (let i = 0; i < n; i += 1) {
    const a = corners[i];
    const b = corners[(i + 1) % n];
    const long = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (long === 0) continue;
    const along: Point2 = [(b[0] - a[0]) / long, (b[1] - a[1]) / long];
    const inward: Point2 = [-along[1], along[0]];
    const by = typeof clear === 'number' ? clear : Math.abs(inward[0]) * clear[0] + Math.abs(inward[1]) * clear[1];
    lines.push({ at: [a[0] + inward[0] * by, a[1] + inward[1] * by], along });
    const c = corners[(i + 2) % n];
    const inwardCorner = along[0] * (c[1] - b[1]) - along[1] * (c[0] - b[0]) < 0;
    if (typeof clear === 'number' || !inwardCorner) continue;
    for (const sign of [1, -1]) {
      lines.push({ at: [b[0] + sign * clear[0], b[1]], along: [0, 1] });
      lines.push({ at: [b[0], b[1] + sign * clear[1]], along: [1, 0] });
    }
  }
  return lines;
};

/** The foot of a point on a line; along an axis the point keeps its own coordinate to the last bit. */
const onLine = ({ at, along }: Line, [x, y]: Point2): Point2 => {
  if (along[1] === 0) return [x, at[1]];
  if (along[0] === 0) return [at[0], y];
  const t = (x - at[0]) * along[0] + (y - at[1]) * along[1];
  return [at[0] + along[0] * t, at[1] + along[1] * t];
};

const meeting = (a: Line, b: Line): Point2 | null => {
  const across = a.along[0] * b.along[1] - a.along[1] * b.along[0];
  if (Math.abs(across) < 1e-12) return null;
  if (a.along[1] === 0 && b.along[0] === 0) return [b.at[0], a.at[1]];
  if (a.along[0] === 0 && b.along[1] === 0) return [a.at[0], b.at[1]];
  const t = ((b.at[0] - a.at[0]) * b.along[1] - (b.at[1] - a.at[1]) * b.along[0]) / across;
  return [a.at[0] + a.along[0] * t, a.at[1] + a.along[1] * t];
};

/** Points at the disc's radius from each corner, towards the point. */
const roundCorners = (corners: readonly Point2[], [x, y]: Point2, radius: number): Point2[] =>
  corners.flatMap(([cx, cy]): Point2[] => {
    const far = Math.hypot(x - cx, y - cy);
    return far > 0 ? [[cx + ((x - cx) * radius) / far, cy + ((y - cy) * radius) / far]] : [];
  });

interface Place {
  readonly at: Point2;
  readonly far: number;
}

/** The nearest of these places that fits, if one is nearer than `before`. */
const firstFit = (corners: readonly Point2[], places: Place[], clear: Clear, before: Place | null): Place | null =>
  places.sort((a, b) => a.far - b.far).find(({ at }) => fits(corners, at, clear)) ?? before;

/**
 * The feet of the point on all lines first; only meetings nearer than the best of them are then tried, which in a plan of
 * many corners are few.
 */
const nearestOf = (corners: readonly Point2[], point: Point2, clear: Clear): Point2 | null => {
  const lines = linesOf(corners, clear);
  const placed = (at: Point2): Place => ({ at, far: Math.hypot(at[0] - point[0], at[1] - point[1]) });
  const feet = lines.map((line) => placed(onLine(line, point)));
  if (typeof clear === 'number') feet.push(...roundCorners(corners, point, clear).map(placed));
  const foot = firstFit(corners, feet, clear, null);
  const limit = foot?.far ?? Number.POSITIVE_INFINITY;
  const meetings: Place[] = [];
  lines.forEach((line, i) => {
    for (let j = i + 1; j < lines.length; j += 1) {
      const met = meeting(line, lines[j]);
      if (met && Math.hypot(met[0] - point[0], met[1] - point[1]) < limit) meetings.push(placed(met));
    }
  });
  return firstFit(corners, meetings, clear, foot)?.at ?? null;
};

const spanOf = (corners: readonly Point2[], axis: 0 | 1): number =>
  Math.max(...corners.map((corner) => corner[axis])) - Math.min(...corners.map((corner) => corner[axis]));

const SHRINK = 0.8;
const SHRINKS = 24;

/**
 * The point nearest to `point` that lies within a simple polygon of positive sense with `clear` round it. What is too large
 * for the polygon is made smaller until it fits. Derived: the nearest place lies on the edges moved inwards or where two of
 * them meet, so those are tried, nearest first.
 */
export const nearestFit = (corners: readonly Point2[], point: Point2, clear: Clear): Point2 => {
  if (fits(corners, point, clear)) return point;
  let wanted: Clear =
    typeof clear === 'number'
      ? clear
      : [Math.min(clear[0], spanOf(corners, 0) / 2), Math.min(clear[1], spanOf(corners, 1) / 2)];
  for (let k = 0; k < SHRINKS; k += 1) {
    const found = fits(corners, point, wanted) ? point : nearestOf(corners, point, wanted);
    if (found) return found;
    wanted = typeof wanted === 'number' ? wanted * SHRINK : [wanted[0] * SHRINK, wanted[1] * SHRINK];
  }
  return nearestOf(corners, point, 0) ?? corners[0];
};
