import { describe, expect, it } from 'vitest';
import { cheapestAssignment } from '../../../src/math/assignment.ts';
import { seededRandom } from '../../../src/math/random.ts';

/** The least cost by trying every way. */
const leastOf = (
  rows: number,
  columns: number,
  costs: Float64Array,
  row = 0,
  taken: readonly number[] = [],
): number => {
  if (row === rows) return 0;
  let least = Number.POSITIVE_INFINITY;
  for (let column = 0; column < columns; column++)
    if (!taken.includes(column))
      least = Math.min(
        least,
        costs[row * columns + column] + leastOf(rows, columns, costs, row + 1, [...taken, column]),
      );
  return least;
};

describe('the cheapest assignment', () => {
  it('is the cheapest of all there are, each column taken once, over 300 random tables', () => {
    const random = seededRandom(5);
    for (let round = 0; round < 300; round++) {
      const rows = 1 + Math.floor(5 * random());
      const columns = rows + Math.floor(3 * random());
      const costs = Float64Array.from({ length: rows * columns }, () => Math.round(20 * random()) - 10);
      const columnOf = cheapestAssignment(rows, columns, costs);
      expect(new Set(columnOf).size).toBe(rows);
      const cost = columnOf.reduce((sum, column, row) => sum + costs[row * columns + column], 0);
      expect(cost).toBe(leastOf(rows, columns, costs));
    }
  });

  it('nothing to give: nothing given', () => {
    expect([...cheapestAssignment(0, 3, new Float64Array(0))]).toEqual([]);
  });
});
