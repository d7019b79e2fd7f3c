import { band } from '../../math/polygon.ts';
import type { Point2 } from '../../math/polyline.ts';
import type { Project } from '../../model/project.ts';
import { heightAt } from '../../model/room/ceiling.ts';
import { chords } from '../../model/room/pieces.ts';
import { roomShape } from '../../model/room/shape.ts';
import type { Cut } from './wish.ts';

/** Where a ceiling's line stands above a height, as intervals of its place. */
const above = (knots: readonly Point2[], heightM: number): Point2[] => {
  const spans: [number, number][] = [];
  for (let i = 1; i < knots.length; i += 1) {
    const [a, low] = knots[i - 1];
    const [b, high] = knots[i];
    if (Math.max(low, high) <= heightM || b <= a) continue;
    const crossing = a + ((b - a) * (heightM - low)) / (high - low);
    const from = low > heightM ? a : crossing;
    const to = high > heightM ? b : crossing;
    const last = spans[spans.length - 1];
    if (last && last[1] >= from - 1e-9) last[1] = to;
    else spans.push([from, to]);
  }
  return spans;
};

/**
 * The room's outline in a slice: polygons in the slice's own axes u, v (see BassSlice), exact for any straight-walled plan
 * under any ceiling line. A level slice above part of the ceiling has what is left of the plan.
 */
export const sliceOutline = (project: Project, { normal, atM }: Cut): Point2[][] => {
  const { corners, ceiling } = roomShape(project);
  const { knots } = ceiling;
  const along = ceiling.axis === 0 ? 0 : 1;
  if (normal === 'y') return above(knots, atM).map(([from, to]) => band(corners, along, from, to));
  // Standing across, u is x and z is held; standing along, u is z and x is held.
  const held = normal === 'z' ? 1 : 0;
  return chords(corners, held, atM).map(([from, to]) => {
    const floor: Point2[] = [
      [from, 0],
      [to, 0],
    ];
    if (held === along) {
      const heightM = heightAt(ceiling, atM);
      return [...floor, [to, heightM], [from, heightM]];
    }
    const between = knots.filter(([place]) => place > from + 1e-9 && place < to - 1e-9).reverse();
    return [...floor, [to, heightAt(ceiling, to, -1)], ...between, [from, heightAt(ceiling, from, 1)]];
  });
};
