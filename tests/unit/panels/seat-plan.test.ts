import { describe, expect, it } from 'vitest';
import twoRow from '../../../src/model/presets/two-row.json';
import { projectSchema } from '../../../src/model/schema/project.ts';
import { drawSeatPlan, neighbour, type SeatPlanDrawing } from '../../../src/panels/seats/plan.ts';

const project = projectSchema.parse(twoRow);
const { widthM, lengthM } = { widthM: 4.3, lengthM: 6.1 };

const withPlan = (plan: object) => {
  const { room } = twoRow;
  return projectSchema.parse({ ...twoRow, room: { ...room, plan, openings: [], patches: [] } });
};

describe('seat plan', () => {
  it('is true to scale and as large as fits, whichever way it lies', () => {
    const upright = drawSeatPlan(project, { maxWidth: 430, maxHeight: 9999 }, 'upright');
    expect(upright.width).toBeCloseTo(430, 6);
    expect(upright.height / upright.width).toBeCloseTo(lengthM / widthM, 9);
    const across = drawSeatPlan(project, { maxWidth: 9999, maxHeight: 129 }, 'across');
    expect(across.height).toBeCloseTo(129, 6);
    expect(across.width / across.height).toBeCloseTo(lengthM / widthM, 9);
  });

  it('stands chairs where the document has them: 100 px a metre, left of the middle is left', () => {
    const { seats } = drawSeatPlan(project, { maxWidth: 430, maxHeight: 9999 }, 'upright');
    const front = seats.find(({ id }) => id === 'front-1');
    // x = -0.72 m in a room 4.30 m wide: (2.15 - 0.72) m from the left wall
    expect((front?.left ?? 0) + (front?.width ?? 0) / 2).toBeCloseTo(143, 6);
  });

  it('lies across with the picture at the left and a sitter’s right hand up', () => {
    const { seats, picture } = drawSeatPlan(project, { maxWidth: 610, maxHeight: 9999 }, 'across');
    expect(picture.left).toBeLessThan(Math.min(...seats.map(({ left }) => left)));
    const top = (id: string) => seats.find((seat) => seat.id === id)?.top ?? Number.NaN;
    expect(top('front-3')).toBeLessThan(top('front-1'));
  });

  it('lies whichever way is larger', () => {
    expect(drawSeatPlan(project, { maxWidth: 300, maxHeight: 140 }).turn).toBe('across');
    expect(drawSeatPlan(project, { maxWidth: 140, maxHeight: 300 }).turn).toBe('upright');
    // Wider than it is long: 8 m by 5 m in 300 x 126 px is 15.8 px a metre across, 25.2 upright.
    const broad = withPlan({ shape: 'rectangle', widthM: 8, lengthM: 5 });
    const drawn = drawSeatPlan(broad, { maxWidth: 300, maxHeight: 126 });
    expect(drawn.turn).toBe('upright');
    expect(drawn.width).toBeCloseTo(201.6, 6);
  });

  /** Where each chair may be met: no two in one place. */
  const metOf = ({ seats }: SeatPlanDrawing) =>
    seats.map(({ left, top, width, height, reachX, reachY }) => ({
      left: left - reachX,
      top: top - reachY,
      right: left + width + reachX,
      bottom: top + height + reachY,
    }));
  const expectApart = (drawing: SeatPlanDrawing, leastPx: number) => {
    const met = metOf(drawing);
    met.forEach((a, i) => {
      expect(a.right - a.left).toBeGreaterThanOrEqual(leastPx - 1e-4);
      expect(a.bottom - a.top).toBeGreaterThanOrEqual(leastPx - 1e-4);
      for (const b of met.slice(i + 1)) {
        const wide = Math.min(a.right, b.right) - Math.max(a.left, b.left);
        const high = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
        expect(Math.min(wide, high)).toBeLessThanOrEqual(1e-4);
      }
    });
  };

  it('shows the whole room and moves chairs apart until a finger tells them apart', () => {
    const LEAST_PX = 32;
    const space = { maxWidth: 300, maxHeight: 193 };
    const fitting = drawSeatPlan(project, space);
    const moved = drawSeatPlan(project, { ...space, leastPx: LEAST_PX });
    expect([moved.width, moved.height]).toEqual([fitting.width, fitting.height]);
    expectApart(moved, LEAST_PX);
    expectApart(fitting, 0);
    // 0.72 m and 0.8 m apart at 44.9 px a metre: there is nothing to move.
    expect(moved.seats.map(({ left, top }) => [left, top])).toEqual(fitting.seats.map(({ left, top }) => [left, top]));
    const low = drawSeatPlan(project, { maxWidth: 300, maxHeight: 126, leastPx: LEAST_PX });
    expect(low.height).toBeLessThanOrEqual(126);
    expectApart(low, LEAST_PX);
  });

  it('draws two chairs in one place beside each other, and the room as before', () => {
    const [front, ...rest] = twoRow.rows;
    const [one] = front.seats;
    const stacked = projectSchema.parse({
      ...twoRow,
      rows: [{ ...front, seats: [...front.seats, { ...one, id: 'twin' }] }, ...rest],
    });
    const space = { maxWidth: 358, maxHeight: 260, leastPx: 32 };
    const drawn = drawSeatPlan(stacked, space);
    expect(drawn.width).toBe(drawSeatPlan(project, space).width);
    expectApart(drawn, 32);
  });

  it('draws a turned chair along the wall it stands at, its back to that wall', () => {
    const [front, ...rest] = twoRow.rows;
    const seats = front.seats.map((seat, i) => (i === 0 ? { ...seat, facingDeg: 90 } : seat));
    const turned = projectSchema.parse({ ...twoRow, rows: [{ ...front, seats }, ...rest] });
    const { seats: drawn } = drawSeatPlan(turned, { maxWidth: 430, maxHeight: 9999 }, 'upright');
    const [right, ahead] = drawn;
    expect([right.back, ahead.back]).toEqual(['left', 'bottom']);
    expect(right.width).toBeCloseTo(ahead.height, 9);
    expect(right.height).toBeCloseTo(ahead.width, 9);
    expect(drawSeatPlan(turned, { maxWidth: 430, maxHeight: 9999 }, 'across').seats[0].back).toBe('bottom');
  });

  it('shows what stands on the floor and leaves out what hangs', () => {
    const table = { id: 'table', kind: 'table', name: '', minM: [-0.5, 0, 2], maxM: [0.5, 0.4, 2.6] } as const;
    const beam = { id: 'beam', kind: 'beam', name: '', minM: [-2, 2.3, 2], maxM: [2, 2.6, 2.2] } as const;
    const objects = [table, beam].map((one) => ({ ...one, minM: [...one.minM], maxM: [...one.maxM] }));
    const furnished = projectSchema.parse({ ...twoRow, room: { ...twoRow.room, objects } });
    const drawn = drawSeatPlan(furnished, { maxWidth: 430, maxHeight: 9999 }, 'upright').objects;
    expect(drawn.map(({ id }) => id)).toEqual(['table']);
    // x -0.5 to 0.5 m in a room 4.30 m wide, z 2 to 2.6 m, 100 px a metre
    expect(drawn[0].left).toBeCloseTo(165, 6);
    expect(drawn[0].width).toBeCloseTo(100, 6);
    expect(drawn[0].top).toBeCloseTo(200, 6);
    expect(drawn[0].height).toBeCloseTo(60, 6);
  });

  it('moves to the neighbour in each direction and stays put at the edge', () => {
    const { seats } = drawSeatPlan(project, { maxWidth: 430, maxHeight: 9999 }, 'upright');
    expect(neighbour(seats, 'front-2', 'left')).toBe('front-1');
    expect(neighbour(seats, 'front-2', 'right')).toBe('front-3');
    expect(neighbour(seats, 'front-1', 'left')).toBe('back-1');
    expect(neighbour(seats, 'back-1', 'left')).toBe('back-1');
    expect(neighbour(seats, 'back-4', 'down')).toBe('back-4');
    expect(neighbour(seats, 'back-3', 'up')).toBe('front-3');
  });
});
