import { describe, expect, it } from 'vitest';
import type { Point2 } from '../../../../src/math/polyline.ts';
import { drawPlan } from '../../../../src/model/commands/draw-plan.ts';
import type { Project } from '../../../../src/model/project.ts';
import { roomShape } from '../../../../src/model/room/shape.ts';
import { sampleProject } from '../sample.ts';

const project = sampleProject();

const drawn = (corners: readonly Point2[]): Project => {
  const edit = drawPlan(project, corners);
  if (!edit.ok) throw new Error(JSON.stringify(edit.reason));
  return edit.project;
};

describe('a drawn plan', () => {
  it('is a rectangle where it is one, wherever and whichever way round it was drawn', () => {
    const corners: Point2[] = [
      [10, 3],
      [10, 9],
      [15, 9],
      [15, 3],
    ];
    for (const way of [corners, [...corners].reverse()]) {
      const { plan } = drawn(way).room;
      expect(plan).toEqual({ shape: 'rectangle', widthM: 5, lengthM: 6 });
    }
  });

  it('is a polygon about the middle of its width from its front wall on', () => {
    const { plan } = drawn([
      [0, 1],
      [6, 1],
      [6, 5],
      [3, 5],
      [3, 8],
      [0, 8],
    ]).room;
    expect(plan.shape === 'polygon' && plan.cornersM).toEqual([
      [-3, 0],
      [3, 0],
      [3, 4],
      [0, 4],
      [0, 7],
      [-3, 7],
    ]);
  });

  it('brings inside what the new walls would leave outside, and keeps openings on walls of their name', () => {
    const next = drawn([
      [0, 0],
      [3.4, 0],
      [3.4, 5.4],
      [0, 5.4],
    ]);
    const { contains } = roomShape(next);
    for (const { atM } of [...next.loudspeakers, ...next.subwoofers]) expect(contains(atM)).toBe(true);
    for (const { seats } of next.rows) for (const { xM } of seats) expect(Math.abs(xM)).toBeLessThanOrEqual(1.7);
    expect(next.room.openings.map(({ surface }) => surface)).toEqual(['right', 'left']);
    for (const { fromM, widthM } of next.room.openings) expect(fromM + widthM).toBeLessThanOrEqual(5.4 + 1e-6);
  });

  it('refuses walls that cross and says which', () => {
    const edit = drawPlan(project, [
      [0, 0],
      [4, 4],
      [4, 0],
      [0, 4],
    ]);
    expect(edit.ok).toBe(false);
    if (!edit.ok) expect(edit.reason.aside).toBe('walls 1 and 3 cross or touch');
  });

  it('refuses a room that is too small', () => {
    const edit = drawPlan(project, [
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 1],
    ]);
    expect(edit.ok).toBe(false);
  });
});
