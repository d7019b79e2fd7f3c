import type { Point2 } from '../../math/polyline.ts';
import type { Project } from '../project.ts';

type Ceiling = Project['room']['ceiling'];

/** Two places nearer than this are one. */
export const SAME_M = 1e-9;

/**
 * A ceiling as one line: its height over the coordinate it changes along. The knots [place, height] run from the plan's
 * least value of that coordinate to its greatest; two of one place are a step.
 */
export interface CeilingLine {
  /** 0: the height changes along x; 2: along z. */
  readonly axis: 0 | 2;
  readonly knots: readonly Point2[];
}

const between = ([s0, h0]: Point2, [s1, h1]: Point2, s: number): number => h0 + ((h1 - h0) * (s - s0)) / (s1 - s0);

/** A profile's points from the least place to the greatest, carried on level to both ends of the plan and cut there. */
const cutTo = (points: readonly Point2[], min: number, max: number): Point2[] => {
  const run = points[0][0] <= points[points.length - 1][0] ? [...points] : [...points].reverse();
  const first = run[0];
  const last = run[run.length - 1];
  const whole: Point2[] = [[Math.min(min, first[0]) - 1, first[1]], ...run, [Math.max(max, last[0]) + 1, last[1]]];
  const knots: Point2[] = [];
  for (let i = 0; i + 1 < whole.length; i += 1) {
    const [a, b] = [whole[i], whole[i + 1]];
    const from = Math.max(a[0], min);
    const to = Math.min(b[0], max);
    if (to - from <= SAME_M) continue;
    for (const s of [from, to]) {
      const knot: Point2 = [s, between(a, b, s)];
      const before = knots[knots.length - 1];
      if (!before || Math.abs(before[0] - knot[0]) > SAME_M || Math.abs(before[1] - knot[1]) > SAME_M) knots.push(knot);
    }
  }
  return knots;
};

/** The ceiling over a plan that reaches from `minM` to `maxM`, [x, z]. */
export const ceilingLine = (ceiling: Ceiling, minM: Point2, maxM: Point2): CeilingLine => {
  if (ceiling.shape === 'flat') return { axis: 0, knots: [minM[0], maxM[0]].map((s): Point2 => [s, ceiling.heightM]) };
  const axis = ceiling.across === 'x' ? 0 : 2;
  const [min, max] = axis === 0 ? [minM[0], maxM[0]] : [minM[1], maxM[1]];
  if (ceiling.shape === 'profile') return { axis, knots: cutTo(ceiling.pointsM, min, max) };
  return {
    axis,
    knots: [
      [min, ceiling.startHeightM],
      [max, ceiling.endHeightM],
    ],
  };
};

/**
 * The height at a place; beyond the ends that of the end. At a step `side` says from where one looks: -1 from lesser
 * places, 1 from greater ones, 0 gives the lower of the two.
 */
export const heightAt = ({ knots }: CeilingLine, place: number, side: -1 | 0 | 1 = 0): number => {
  const s = Math.min(Math.max(place, knots[0][0]), knots[knots.length - 1][0]);
  let before = Number.NaN;
  let after = Number.NaN;
  for (let i = 0; i + 1 < knots.length; i += 1) {
    const [s0, s1] = [knots[i][0], knots[i + 1][0]];
    if (s1 - s0 <= SAME_M || s < s0 - SAME_M || s > s1 + SAME_M) continue;
    const height = between(knots[i], knots[i + 1], Math.min(Math.max(s, s0), s1));
    if (Number.isNaN(before)) before = height;
    after = height;
  }
  if (side < 0) return before;
  return side > 0 ? after : Math.min(before, after);
};

/** The room's section below the ceiling line, of positive sense in (place, height): floor first. */
export const sectionOf = ({ knots }: CeilingLine): Point2[] => {
  const first = knots[0];
  const last = knots[knots.length - 1];
  const ring: Point2[] = [[first[0], 0], [last[0], 0], ...[...knots].reverse()];
  return ring.filter((point, i) => {
    const before = ring[(i + ring.length - 1) % ring.length];
    return Math.abs(before[0] - point[0]) > SAME_M || Math.abs(before[1] - point[1]) > SAME_M;
  });
};
