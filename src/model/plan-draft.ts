import { degreesOf, radiansOf } from '../math/angles.ts';
import { signedArea } from '../math/polygon.ts';
import { crossingEdges, type Point2, segmentsMeet } from '../math/polyline.ts';
import { wholeCm } from './snap/lines.ts';

/** A plan being drawn: its corners so far, [x, z] in metres, and whether the last wall has come back to the first corner. */
export interface PlanDraft {
  readonly corners: readonly Point2[];
  readonly closed: boolean;
}

export const EMPTY_DRAFT: PlanDraft = { corners: [], closed: false };

/** Directions on the board: 0 to the right, 90 to the back, clockwise as one looks down on the plan. */
export const pointAlong = ([x, z]: Point2, directionDeg: number, lengthM: number): Point2 => {
  const angle = radiansOf(directionDeg);
  const tidy = (value: number) => Number(value.toFixed(4)) + 0;
  return [tidy(x + lengthM * Math.cos(angle)), tidy(z + lengthM * Math.sin(angle))];
};

export const directionDeg = (a: Point2, b: Point2): number =>
  (degreesOf(Math.atan2(b[1] - a[1], b[0] - a[0])) + 360) % 360;

export const lengthM = (a: Point2, b: Point2): number => Math.hypot(b[0] - a[0], b[1] - a[1]);

const SQUARE_DEG = 6;

export interface Aimed {
  readonly atM: Point2;
  /** Whether it would close the plan on its first corner. */
  readonly closes: boolean;
  /** Whether it was turned square with the room. */
  readonly square: boolean;
}

/**
 * Where the next corner comes to lie when the hand points at a place: on the first corner when it is near, square with the
 * board when the wall is nearly so and in line with the first corner where that is near, else on whole centimetres.
 * @param reachM how near counts as near, metres
 * @param free lets go of all of that but the first corner
 */
export const aimNext = ({ corners }: PlanDraft, wantedM: Point2, reachM: number, free = false): Aimed => {
  const first = corners[0];
  const last = corners[corners.length - 1];
  if (!last) return { atM: [wholeCm(wantedM[0]), wholeCm(wantedM[1])], closes: false, square: false };
  if (corners.length > 2 && lengthM(first, wantedM) <= reachM) return { atM: first, closes: true, square: false };
  if (free) return { atM: [wholeCm(wantedM[0]), wholeCm(wantedM[1])], closes: false, square: false };
  const direction = directionDeg(last, wantedM);
  const nearest = Math.round(direction / 90) * 90;
  const square = Math.abs(direction - nearest) <= SQUARE_DEG;
  let [x, z] = wantedM;
  if (square && nearest % 180 === 0) z = last[1];
  else if (square) x = last[0];
  // In line with the first corner, so that two square walls can close the plan.
  if (x !== last[0] && Math.abs(x - first[0]) <= reachM) x = first[0];
  if (z !== last[1] && Math.abs(z - first[1]) <= reachM) z = first[1];
  const keep = (value: number, exact: number[]) => (exact.includes(value) ? value : wholeCm(value));
  return { atM: [keep(x, [last[0], first[0]]), keep(z, [last[1], first[1]])], closes: false, square };
};

/** What is wrong with a draft, as the two walls that cross, counted from 0; null while nothing is. */
export const crossing = ({ corners, closed }: PlanDraft): readonly [number, number] | null => {
  if (closed) return crossingEdges(corners) ?? null;
  for (let i = 0; i + 1 < corners.length; i++)
    for (let j = i + 2; j + 1 < corners.length; j++)
      if (segmentsMeet(corners[i], corners[i + 1], corners[j], corners[j + 1])) return [i, j];
  return null;
};

/** Another corner at the end. Closing adds none: the last wall runs to the first corner. */
export const withCorner = (draft: PlanDraft, { atM, closes }: Pick<Aimed, 'atM' | 'closes'>): PlanDraft => {
  if (draft.closed) return draft;
  if (closes) return { ...draft, closed: draft.corners.length > 2 };
  const last = draft.corners[draft.corners.length - 1];
  if (last && lengthM(last, atM) < 0.01) return draft;
  return { ...draft, corners: [...draft.corners, atM] };
};

/** One step back: a closed plan is opened, an open one loses its last corner. */
export const stepBack = ({ corners, closed }: PlanDraft): PlanDraft =>
  closed ? { corners, closed: false } : { corners: corners.slice(0, -1), closed: false };

export const moveCorner = (draft: PlanDraft, index: number, toM: Point2): PlanDraft => ({
  ...draft,
  corners: draft.corners.map((corner, i) => (i === index ? toM : corner)),
});

/** A corner taken away; three are the fewest of a closed plan. */
export const dropCorner = (draft: PlanDraft, index: number): PlanDraft =>
  draft.closed && draft.corners.length <= 3
    ? draft
    : { ...draft, corners: draft.corners.filter((_, i) => i !== index) };

/** A new corner in the middle of a wall. */
export const splitWall = (draft: PlanDraft, wall: number): PlanDraft => {
  const { corners } = draft;
  const a = corners[wall];
  const b = corners[(wall + 1) % corners.length];
  const middle: Point2 = [wholeCm((a[0] + b[0]) / 2), wholeCm((a[1] + b[1]) / 2)];
  return { ...draft, corners: [...corners.slice(0, wall + 1), middle, ...corners.slice(wall + 1)] };
};

/**
 * A wall made as long as asked, its direction kept: the corners after it follow up to the one whose own wall runs the same
 * way back, so that square plans stay square. In an open draft all that follow do.
 */
export const setWallLength = (draft: PlanDraft, wall: number, toM: number): PlanDraft => {
  const { corners, closed } = draft;
  const count = corners.length;
  const a = corners[wall];
  const b = corners[(wall + 1) % count];
  const now = lengthM(a, b);
  if (!(now > 0) || !(toM > 0)) return draft;
  const by: Point2 = [((b[0] - a[0]) / now) * (toM - now), ((b[1] - a[1]) / now) * (toM - now)];
  const direction = directionDeg(a, b);
  const follows = new Set<number>();
  for (let step = 1; step < count; step++) {
    const index = (wall + step) % count;
    if (!closed && index < wall) break;
    follows.add(index);
    const next = (index + 1) % count;
    if (next === wall) break;
    const turned = Math.abs(((directionDeg(corners[index], corners[next]) - direction + 540) % 360) - 180);
    if (closed && turned > 90.5) break;
  }
  return {
    ...draft,
    corners: corners.map(
      ([x, z], i): Point2 =>
        follows.has(i) ? [Number((x + by[0]).toFixed(4)), Number((z + by[1]).toFixed(4))] : [x, z],
    ),
  };
};

/** Square metres of floor of a closed plan; of an open one what it would be if its last wall ran straight back. */
export const draftAreaM2 = ({ corners }: PlanDraft): number => (corners.length < 3 ? 0 : Math.abs(signedArea(corners)));
