import fc from 'fast-check';
import type { Project } from '../../src/model/project.ts';

/** Rooms of every kind the file can describe, for property tests. */

type Room = Project['room'];

export const milli = (min: number, max: number) =>
  fc.integer({ min: Math.round(min * 1000), max: Math.round(max * 1000) }).map((mm) => mm / 1000);

/** Plans seen whole from a point within: corners at rising angles, so they never cross; either turning sense. */
export const stars = fc
  .tuple(
    fc.array(fc.tuple(milli(0.2, 1), milli(1.2, 4)), { minLength: 3, maxLength: 16 }),
    fc.boolean(),
    milli(-3, 3),
    milli(0, 3),
  )
  .map(([steps, turned, x, z]) => {
    const total = steps.reduce((sum, [step]) => sum + step, 0);
    let angle = 0.1;
    const corners = steps.map(([step, radius]): [number, number] => {
      angle += (2 * Math.PI * step) / total;
      return [x + radius * Math.cos(angle), z + 4 + radius * Math.sin(angle)];
    });
    return { turned: turned ? corners.reverse() : corners, widest: Math.max(...steps.map(([step]) => step)) / total };
  })
  // A gap of half a turn or more between two corners would leave the middle outside and might cross.
  .filter(({ widest }) => widest < 0.45)
  .map(({ turned }) => ({ shape: 'polygon' as const, cornersM: turned }));

const rectangles = fc.record({
  shape: fc.constant('rectangle' as const),
  widthM: milli(1.5, 8),
  lengthM: milli(1.5, 9),
});
const across = fc.constantFrom('x' as const, 'z' as const);
const profiles = fc
  .tuple(
    across,
    fc.array(fc.tuple(milli(0.2, 2), milli(0, 4)), { minLength: 1, maxLength: 6 }),
    milli(1.9, 4),
    milli(-4, 1),
  )
  .map(([axis, steps, top, start]) => {
    let at = start;
    const points: [number, number][] = [[at, top]];
    for (const [step, height] of steps) {
      at += step;
      points.push([at, height]);
    }
    return { shape: 'profile' as const, across: axis, pointsM: points };
  });
export const ceilings = fc.oneof(
  fc.record({ shape: fc.constant('flat' as const), heightM: milli(1.8, 4) }),
  fc.record({
    shape: fc.constant('slope' as const),
    across,
    startHeightM: milli(1.8, 4),
    endHeightM: milli(1.8, 4),
  }),
  profiles,
);

export const rooms = fc
  .record({ plan: fc.oneof(stars, rectangles), ceiling: ceilings })
  .map(({ plan, ceiling }): { room: Room } => ({
    room: { plan, ceiling, surfaces: {}, patches: [], openings: [], objects: [] } as Room,
  }));
