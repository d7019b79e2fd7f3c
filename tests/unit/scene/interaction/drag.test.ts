import { describe, expect, it } from 'vitest';
import { handlesFor } from '../../../../src/model/handles/handles.ts';
import { bodyHandle, pullHandle } from '../../../../src/model/handles/pull.ts';
import twoRow from '../../../../src/model/presets/two-row.json';
import type { ItemRef, Project } from '../../../../src/model/project.ts';
import { roomShape } from '../../../../src/model/room/shape.ts';
import { projectSchema } from '../../../../src/model/schema/project.ts';
import { dimensionsOf, dimensionTicks } from '../../../../src/scene/interaction/dimensions.ts';
import { covers, floorThings, footprintOf, hasBody } from '../../../../src/scene/interaction/footprints.ts';

const project = projectSchema.parse(twoRow);
const [front, back] = project.rows;
const options = { reachM: 0.02, pairs: false, chosen: [] };
const moved = (from: Project, ref: ItemRef, x: number, z: number): Project => {
  const handle = bodyHandle(from, ref, [0, 0, 0]);
  if (!handle) throw new Error('there is nothing to take hold of');
  const { edit } = pullHandle(from, handle, [x, 0, z], options);
  if (!edit.ok) throw new Error('the drag was refused');
  return edit.project;
};

describe('dragging over the floor', () => {
  it('moves a subwoofer by whole centimetres and leaves its height', () => {
    const [, y] = project.subwoofers[0].atM;
    const [x0, , z0] = project.subwoofers[0].atM;
    const at = moved(project, { kind: 'subwoofer', id: project.subwoofers[0].id }, 0.523, 0.318).subwoofers[0].atM;
    expect(at[0]).toBeCloseTo(Math.round((x0 + 0.523) * 100) / 100, 9);
    expect(at[1]).toBe(y);
    expect(at[2]).toBeCloseTo(Math.round((z0 + 0.318) * 100) / 100, 9);
  });

  it('keeps the whole box in the room, however far the hand goes', () => {
    const { minM, maxM } = roomShape(project);
    const { atM, sizeM } = moved(project, { kind: 'subwoofer', id: project.subwoofers[0].id }, -50, 50).subwoofers[0];
    expect(atM[0] - sizeM[0] / 2).toBeCloseTo(minM[0], 6);
    expect(atM[2] + sizeM[2] / 2).toBeCloseTo(maxM[2], 6);
  });

  it('takes a seat by its handle along its row alone, and its row with it towards the picture', () => {
    const handle = handlesFor(project, [{ kind: 'seat', id: front.seats[0].id }]).find(({ kind }) => kind === 'place')!;
    const { edit } = pullHandle(project, handle, [-0.15, 0, 0.17], options);
    if (!edit.ok) throw new Error('the drag was refused');
    const next = edit.project.rows[0];
    expect(next.seats[0].xM).toBeCloseTo(front.seats[0].xM - 0.15, 9);
    expect(next.seats.slice(1)).toEqual(front.seats.slice(1));
    expect(next.eyeZM).toBeCloseTo(front.eyeZM + 0.17, 9);
  });

  it('takes a sofa by its body as one piece', () => {
    const next = moved(project, { kind: 'seat', id: front.seats[0].id }, -0.17, 0.17).rows[0];
    for (const [i, { xM }] of next.seats.entries()) expect(xM - front.seats[i].xM).toBeCloseTo(-0.17, 9);
    expect(next.eyeZM).toBeCloseTo(front.eyeZM + 0.17, 9);
  });

  it('moves a seat with a place of its own without its row', () => {
    const seats = back.seats.map((seat, i) => (i === 0 ? { ...seat, eyeZM: 5 } : seat));
    const own = { ...project, rows: [front, { ...back, seats }] };
    const next = moved(own, { kind: 'seat', id: back.seats[0].id }, 0, 0.1);
    expect(next.rows[1].eyeZM).toBe(back.eyeZM);
    expect(next.rows[1].seats[0].eyeZM).toBeCloseTo(5.1, 9);
  });

  it('does not take hold of what is locked or of what has no place on the floor', () => {
    const { id } = project.subwoofers[0];
    const locked = { ...project, subwoofers: [{ ...project.subwoofers[0], locked: true }] };
    expect(hasBody(project, { kind: 'subwoofer', id })).toBe(true);
    expect(hasBody(locked, { kind: 'subwoofer', id })).toBe(false);
    expect(handlesFor(locked, [{ kind: 'subwoofer', id }])).toEqual([]);
    expect(hasBody(project, { kind: 'opening', id: 'door' })).toBe(false);
  });
});

describe('footprints and dimensions', () => {
  it('every thing on the floor has a footprint that covers its own middle', () => {
    expect(floorThings(project).length).toBe(project.subwoofers.length + 7);
    for (const { id, atM } of project.subwoofers) {
      const print = footprintOf(project, { kind: 'subwoofer', id });
      expect(print && covers(print, atM[0], atM[2])).toBe(true);
    }
  });

  it('measures to the nearer walls from the sides that face them, and to the floor', () => {
    const room = roomShape(project);
    const lines = dimensionsOf({ minM: [1, 0.5, 0.5], maxM: [1.4, 0.9, 0.9] }, room, 0.51);
    expect(lines.map(({ key }) => key)).toEqual(['wall-0', 'wall-1', 'floor']);
    const [along, across, down] = lines;
    expect(along.lengthM).toBeCloseTo(0.5, 9);
    expect(along.toM[2]).toBe(0);
    expect(across.lengthM).toBeCloseTo(room.maxM[0] - 1.4, 9);
    expect(across.fromM[0]).toBeCloseTo(1.4, 9);
    expect(down.lengthM).toBe(0.5);
    expect(dimensionTicks(across).every(([, y]) => y === 0.51)).toBe(true);
  });

  it('follows slanting walls and never runs through the thing', () => {
    const corners = [
      [-2, 0],
      [2, 0],
      [3, 4],
      [-2, 4],
    ];
    const slanted = projectSchema.parse({
      ...twoRow,
      room: { ...twoRow.room, plan: { shape: 'polygon', cornersM: corners }, openings: [], patches: [] },
    });
    const extent = { minM: [1.4, 0, 1.9], maxM: [1.8, 0.4, 2.3] } as const;
    const lines = dimensionsOf(extent, roomShape(slanted), 0.2);
    const slant = lines.find(({ key }) => key === 'wall-1');
    if (!slant) throw new Error('the slanting wall is the nearest');
    const by = [slant.toM[0] - slant.fromM[0], slant.toM[2] - slant.fromM[2]];
    // At right angles to the wall from (2, 0) to (3, 4).
    expect(by[0] * 1 + by[1] * 4).toBeCloseTo(0, 9);
    for (const { fromM, toM } of lines)
      for (const t of [0.02, 0.3, 0.7, 0.98]) {
        const x = fromM[0] + (toM[0] - fromM[0]) * t;
        const z = fromM[2] + (toM[2] - fromM[2]) * t;
        const inside = x > extent.minM[0] && x < extent.maxM[0] && z > extent.minM[2] && z < extent.maxM[2];
        expect(inside).toBe(false);
      }
  });
});
