import { describe, expect, it } from 'vitest';
import { signedArea } from '../../../src/math/polygon.ts';
import { shrunk } from '../../../src/math/shrink.ts';

describe('a polygon with its edges moved inwards', () => {
  it('leaves of a rectangle what is left by hand, either way round', () => {
    const corners = [
      [0, 0],
      [4, 0],
      [4, 3],
      [0, 3],
    ] as const;
    const rounded = (points: readonly (readonly number[])[]) => points.map((point) => point.map((x) => +x.toFixed(9)));
    const inner = [
      [0.1, 0.1],
      [3.9, 0.1],
      [3.9, 2.9],
      [0.1, 2.9],
    ];
    expect(rounded(shrunk(corners, 0.1))).toEqual(inner);
    expect(rounded(shrunk([...corners].reverse(), 0.1))).toEqual(inner.reverse());
  });

  it('moves an inward corner into the plan: an L loses its outline times the distance', () => {
    const corners = [
      [0, 0],
      [6, 0],
      [6, 2],
      [2, 2],
      [2, 5],
      [0, 5],
    ] as const;
    // Area 12 + 6 = 18, outline 22; five outward corners and one inward: 18 - 22 d + (5 - 1) d^2.
    const d = 0.05;
    expect(signedArea(shrunk(corners, d))).toBeCloseTo(18 - 22 * d + 4 * d * d, 9);
  });
});
