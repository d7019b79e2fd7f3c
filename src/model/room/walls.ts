import { signedArea } from '../../math/polygon.ts';
import type { Point2 } from '../../math/polyline.ts';
import type { Project, SurfaceName } from '../project.ts';
import { type CeilingLine, heightAt, SAME_M } from './ceiling.ts';

export type WallName = Extract<SurfaceName, 'front' | 'back' | 'left' | 'right'>;

/** One straight wall. Plan points are [x, z], metres. */
export interface RoomWall {
  /** The plan edge's number in the file's order; a rectangle's are 0 front, 1 right, 2 back, 3 left. */
  readonly edge: number;
  readonly surface: WallName;
  /** From one corner to the next in the room's turning sense: front from left to right, then on round the room. */
  readonly from: Point2;
  readonly to: Point2;
  readonly lengthM: number;
  /** Unit vector out of the room. */
  readonly outward: Point2;
  /** Where `fromM` is 0: a side wall's end nearest the front, any other wall's end nearest the left. */
  readonly start: Point2;
  /** Unit vector along which `fromM` grows. */
  readonly along: Point2;
  /** The ceiling's height along the wall, [fromM, height] from `start`; two points of one place are a step. */
  readonly top: readonly Point2[];
  readonly areaM2: number;
}

/** The surface a wall belongs to by its outward normal, the z component winning at 45 degrees (contract). */
export const wallName = ([x, z]: Point2): WallName => {
  if (Math.abs(z) >= Math.abs(x) * (1 - 1e-9)) return z < 0 ? 'front' : 'back';
  return x < 0 ? 'left' : 'right';
};

export interface Plan {
  /** [x, z], in the sense that runs along the front wall from left to right. */
  readonly corners: readonly Point2[];
  /** The file's number of the edge from corner i to the next. */
  readonly edges: readonly number[];
}

/** A plan's corners in the room's one turning sense. */
export const planOf = (plan: Project['room']['plan']): Plan => {
  if (plan.shape === 'rectangle') {
    const [w, l] = [plan.widthM / 2, plan.lengthM];
    return {
      corners: [
        [-w, 0],
        [w, 0],
        [w, l],
        [-w, l],
      ],
      edges: [0, 1, 2, 3],
    };
  }
  const corners: Point2[] = plan.cornersM.map(([x, z]) => [x, z]);
  const count = corners.length;
  const edges = corners.map((_, i) => i);
  if (signedArea(corners) >= 0) return { corners, edges };
  return { corners: corners.reverse(), edges: edges.map((i) => (2 * count - 2 - i) % count) };
};

/** The ceiling's height from one plan point to another, [distance, height]. */
const topBetween = (line: CeilingLine, a: Point2, b: Point2, lengthM: number, inward: Point2): Point2[] => {
  const k = line.axis === 0 ? 0 : 1;
  const by = b[k] - a[k];
  if (Math.abs(by) <= SAME_M) {
    const height = heightAt(line, a[k], inward[k] > 0 ? 1 : -1);
    return [
      [0, height],
      [lengthM, height],
    ];
  }
  const ahead = by > 0 ? 1 : -1;
  const behind = by > 0 ? -1 : 1;
  const crossed = line.knots
    .map(([s]) => s)
    .filter((s, i, all) => (s - a[k]) * ahead > SAME_M && (b[k] - s) * ahead > SAME_M && s !== all[i - 1]);
  if (ahead < 0) crossed.reverse();
  const middle = crossed.flatMap((s): Point2[] => {
    const distance = ((s - a[k]) / by) * lengthM;
    const [before, after] = [heightAt(line, s, behind), heightAt(line, s, ahead)];
    const point: Point2 = [distance, before];
    return Math.abs(before - after) <= SAME_M ? [point] : [point, [distance, after]];
  });
  return [[0, heightAt(line, a[k], ahead)], ...middle, [lengthM, heightAt(line, b[k], behind)]];
};

const areaUnder = (top: readonly Point2[]): number =>
  top.slice(1).reduce((sum, [s, h], i) => sum + ((s - top[i][0]) * (h + top[i][1])) / 2, 0);

/** The walls of a plan under a ceiling, in the turning sense of the plan. */
export const wallsOf = ({ corners, edges }: Plan, line: CeilingLine): RoomWall[] =>
  corners.map((from, i) => {
    const to = corners[(i + 1) % corners.length];
    const lengthM = Math.hypot(to[0] - from[0], to[1] - from[1]);
    const direction: Point2 = [(to[0] - from[0]) / lengthM, (to[1] - from[1]) / lengthM];
    // Adding 0 turns a negative zero into a plain one.
    const outward: Point2 = [direction[1] + 0, 0 - direction[0]];
    const surface = wallName(outward);
    const k = surface === 'front' || surface === 'back' ? 0 : 1;
    const onward = direction[k] > 0;
    const start = onward ? from : to;
    const end = onward ? to : from;
    const along: Point2 = onward ? direction : [0 - direction[0], 0 - direction[1]];
    const top = topBetween(line, start, end, lengthM, [-outward[0], -outward[1]]);
    return { edge: edges[i], surface, from, to, lengthM, outward, start, along, top, areaM2: areaUnder(top) };
  });
