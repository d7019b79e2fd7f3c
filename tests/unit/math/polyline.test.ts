import { describe, expect, it } from 'vitest';
import { crossingEdges, type Point2, segmentsMeet } from '../../../src/math/polyline.ts';

describe('segmentsMeet', () => {
  const a: Point2 = [0, 0];
  const b: Point2 = [4, 0];
  it.each<[string, Point2, Point2, boolean]>([
    ['crosses', [2, -1], [2, 1], true],
    ['touches with its end', [2, 0], [2, 3], true],
    ['shares an end', [4, 0], [5, 5], true],
    ['lies upon it', [1, 0], [3, 0], true],
    ['overlaps its end', [3, 0], [9, 0], true],
    ['goes on in line with it', [5, 0], [9, 0], false],
    ['is parallel', [0, 1], [4, 1], false],
    ['would cross its line farther on', [6, -1], [6, 1], false],
    ['ends before it', [2, 1], [2, 0.001], false],
  ])('%s', (_, c, d, meets) => {
    expect(segmentsMeet(a, b, c, d)).toBe(meets);
    expect(segmentsMeet(d, c, b, a)).toBe(meets);
  });
});

describe('crossingEdges', () => {
  it('accepts simple polygons of either turning sense', () => {
    const l: Point2[] = [
      [-2, 0],
      [2, 0],
      [2, 6],
      [0, 6],
      [0, 3],
      [-2, 3],
    ];
    expect(crossingEdges(l)).toBeUndefined();
    expect(crossingEdges(l.toReversed())).toBeUndefined();
  });

  it('accepts a corner on a straight wall', () => {
    expect(
      crossingEdges([
        [0, 0],
        [1, 0],
        [2, 0],
        [2, 2],
        [0, 2],
      ]),
    ).toBeUndefined();
  });

  it('names the edges of a bow tie', () => {
    expect(
      crossingEdges([
        [0, 0],
        [2, 2],
        [2, 0],
        [0, 2],
      ]),
    ).toEqual([0, 2]);
  });

  it('finds an edge of no length, a fold and a touch', () => {
    expect(
      crossingEdges([
        [0, 0],
        [0, 0],
        [2, 2],
        [0, 2],
      ]),
    ).toEqual([0, 0]);
    expect(
      crossingEdges([
        [0, 0],
        [2, 0],
        [1, 0],
        [0, 2],
      ]),
    ).toEqual([0, 1]);
    expect(
      crossingEdges([
        [0, 0],
        [4, 0],
        [4, 4],
        [2, 0],
        [0, 4],
      ]),
    ).toEqual([0, 2]);
  });

  it('finds a spike at the last corner', () => {
    expect(
      crossingEdges([
        [0, 0],
        [2, 0],
        [2, 2],
        [3, 0],
      ]),
    ).toBeDefined();
  });
});
