import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import twoRow from '../../src/model/presets/two-row.json';
import { projectSchema } from '../../src/model/schema/project.ts';
import { areApart, spotsApart } from '../../src/panels/seats/apart.ts';
import { drawSeatPlan } from '../../src/panels/seats/plan.ts';

const LEAST_PX = 32;
const board = fc.record({
  width: fc.double({ min: 60, max: 400, noNaN: true }),
  height: fc.double({ min: 60, max: 300, noNaN: true }),
});
/** Places as shares of the board, many of them the same. */
const share = fc.oneof(fc.constantFrom(0, 0.3, 0.5, 1), fc.double({ min: 0, max: 1, noNaN: true }));
const shares = fc.array(fc.tuple(share, share), { minLength: 1, maxLength: 14 });

describe('seat plan of any seats', () => {
  it('keeps what is to be met as far apart as asked, where the board has the room, and on the board', () => {
    fc.assert(
      fc.property(board, shares, (size, places) => {
        const wishes = places.map(([x, y]) => ({ x: x * size.width, y: y * size.height }));
        const spots = spotsApart(wishes, size, LEAST_PX);
        const cells = Math.floor(size.width / LEAST_PX) * Math.floor(size.height / LEAST_PX);
        if (cells >= wishes.length) expect(areApart(spots, LEAST_PX)).toBe(true);
        for (const { x, y } of spots) {
          expect(x).toBeGreaterThanOrEqual(0);
          expect(y).toBeGreaterThanOrEqual(0);
          expect(x).toBeLessThanOrEqual(size.width);
          expect(y).toBeLessThanOrEqual(size.height);
        }
        if (areApart(wishes, LEAST_PX)) expect(spots).toEqual(wishes);
      }),
      { numRuns: 400 },
    );
  });

  it('has the whole room within its space, whatever stands where', () => {
    const [front, ...rest] = twoRow.rows;
    const corners = [
      [-2.15, 0],
      [2.15, 0],
      [2.15, 6.1],
      [0.4, 6.1],
      [0.4, 5],
      [-2.15, 5],
    ];
    fc.assert(
      fc.property(fc.array(fc.tuple(share, share), { minLength: 1, maxLength: 6 }), fc.boolean(), (places, shaped) => {
        const seats = places.map(([x, z], i) => ({ id: `s${i}`, xM: 3 * x - 1.5, eyeZM: 1 + 3.5 * z }));
        const plan = shaped ? { shape: 'polygon', cornersM: corners } : twoRow.room.plan;
        const room = { ...twoRow.room, plan, openings: [], patches: [] };
        const project = projectSchema.parse({ ...twoRow, room, rows: [{ ...front, seats }, ...rest] });
        const drawn = drawSeatPlan(project, { maxWidth: 358, maxHeight: 260, leastPx: LEAST_PX });
        expect(drawn.width).toBeLessThanOrEqual(358 + 1e-9);
        expect(drawn.height).toBeLessThanOrEqual(260 + 1e-9);
        for (const [x, y] of drawn.outline ?? []) {
          expect(Math.min(x, y)).toBeGreaterThanOrEqual(-1e-9);
          expect(x).toBeLessThanOrEqual(drawn.width + 1e-9);
          expect(y).toBeLessThanOrEqual(drawn.height + 1e-9);
        }
        const middles = drawn.seats.map(({ left, top, width, height }) => ({
          x: left + width / 2,
          y: top + height / 2,
        }));
        expect(areApart(middles, LEAST_PX)).toBe(true);
      }),
      { numRuns: 100 },
    );
  });
});
