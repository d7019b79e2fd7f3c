import { describe, expect, it } from 'vitest';
import twoRow from '../../../src/model/presets/two-row.json';
import { projectSchema } from '../../../src/model/schema/project.ts';
import { drawSeatPlan, neighbour } from '../../../src/panels/seats/plan.ts';

const project = projectSchema.parse(twoRow);
const { widthM, lengthM } = { widthM: 4.3, lengthM: 6.1 };

describe('seat plan', () => {
  it('is true to scale and as large as fits, whichever way it lies', () => {
    const upright = drawSeatPlan(project, 'upright', 430, 9999);
    expect(upright.width).toBeCloseTo(430, 6);
    expect(upright.height / upright.width).toBeCloseTo(lengthM / widthM, 9);
    const across = drawSeatPlan(project, 'across', 9999, 129);
    expect(across.height).toBeCloseTo(129, 6);
    expect(across.width / across.height).toBeCloseTo(lengthM / widthM, 9);
  });

  it('stands chairs where the document has them: 100 px a metre, left of the middle is left', () => {
    const { seats } = drawSeatPlan(project, 'upright', 430, 9999);
    const front = seats.find(({ id }) => id === 'front-1');
    // x = -0.72 m in a room 4.30 m wide: (2.15 - 0.72) m from the left wall
    expect((front?.left ?? 0) + (front?.width ?? 0) / 2).toBeCloseTo(143, 6);
  });

  it('lies across with the picture at the left and a sitter’s right hand up', () => {
    const { seats, picture } = drawSeatPlan(project, 'across', 610, 9999);
    expect(picture.left).toBeLessThan(Math.min(...seats.map(({ left }) => left)));
    const top = (id: string) => seats.find((seat) => seat.id === id)?.top ?? Number.NaN;
    expect(top('front-3')).toBeLessThan(top('front-1'));
  });

  it('shows what stands on the floor and leaves out what hangs', () => {
    const table = { id: 'table', kind: 'table', name: '', minM: [-0.5, 0, 2], maxM: [0.5, 0.4, 2.6] } as const;
    const beam = { id: 'beam', kind: 'beam', name: '', minM: [-2, 2.3, 2], maxM: [2, 2.6, 2.2] } as const;
    const objects = [table, beam].map((one) => ({ ...one, minM: [...one.minM], maxM: [...one.maxM] }));
    const furnished = projectSchema.parse({ ...twoRow, room: { ...twoRow.room, objects } });
    const drawn = drawSeatPlan(furnished, 'upright', 430, 9999).objects;
    expect(drawn.map(({ id }) => id)).toEqual(['table']);
    // x -0.5 to 0.5 m in a room 4.30 m wide, z 2 to 2.6 m, 100 px a metre
    expect(drawn[0].left).toBeCloseTo(165, 6);
    expect(drawn[0].width).toBeCloseTo(100, 6);
    expect(drawn[0].top).toBeCloseTo(200, 6);
    expect(drawn[0].height).toBeCloseTo(60, 6);
  });

  it('moves to the neighbour in each direction and stays put at the edge', () => {
    const { seats } = drawSeatPlan(project, 'upright', 430, 9999);
    expect(neighbour(seats, 'front-2', 'left')).toBe('front-1');
    expect(neighbour(seats, 'front-2', 'right')).toBe('front-3');
    expect(neighbour(seats, 'front-1', 'left')).toBe('back-1');
    expect(neighbour(seats, 'back-1', 'left')).toBe('back-1');
    expect(neighbour(seats, 'back-4', 'down')).toBe('back-4');
    expect(neighbour(seats, 'back-3', 'up')).toBe('front-3');
  });
});
