import { describe, expect, it } from 'vitest';
import twoRow from '../../../../src/model/presets/two-row.json';
import { roomBox } from '../../../../src/model/room.ts';
import { projectSchema } from '../../../../src/model/schema/project.ts';
import { dimensionTicks, wallDimensions } from '../../../../src/scene/interaction/dimensions.ts';
import { covers, dragBy, footprintOf, handlesOf, isHandle } from '../../../../src/scene/interaction/drag.ts';

const project = projectSchema.parse(twoRow);
const [front, back] = project.rows;
const moved = (ref: { kind: 'seat' | 'subwoofer'; id: string }, x: number, z: number) => {
  const answer = dragBy(project, project, ref, x, z);
  if (!answer.ok) throw new Error('the drag was refused');
  return answer.project;
};

describe('dragging over the floor', () => {
  it('moves a subwoofer by whole centimetres and leaves its height', () => {
    const [, y] = project.subwoofers[0].atM;
    const [x0, , z0] = project.subwoofers[0].atM;
    const at = moved({ kind: 'subwoofer', id: project.subwoofers[0].id }, 0.503, 0.298).subwoofers[0].atM;
    expect(at[0]).toBeCloseTo(Math.round((x0 + 0.503) * 100) / 100, 9);
    expect(at[1]).toBe(y);
    expect(at[2]).toBeCloseTo(Math.round((z0 + 0.298) * 100) / 100, 9);
  });

  it('keeps the whole box in the room, however far the hand goes', () => {
    const { minM, maxM } = roomBox(project);
    const { atM, sizeM } = moved({ kind: 'subwoofer', id: project.subwoofers[0].id }, -50, 50).subwoofers[0];
    expect(atM[0] - sizeM[0] / 2).toBeCloseTo(minM[0], 9);
    expect(atM[2] + sizeM[2] / 2).toBeCloseTo(maxM[2], 9);
  });

  it('counts from where the hand took hold, so that many moves end where one would', () => {
    const ref = { kind: 'subwoofer', id: project.subwoofers[0].id } as const;
    const half = dragBy(project, project, ref, 0.2, 0.1);
    if (!half.ok) throw new Error('refused');
    const there = dragBy(half.project, project, ref, 0.4, 0.2);
    expect(there).toEqual({ ok: true, project: moved(ref, 0.4, 0.2) });
  });

  it('takes a seat along its row alone, and its row with it towards the picture', () => {
    const next = moved({ kind: 'seat', id: front.seats[0].id }, -0.1, 0.15).rows[0];
    expect(next.seats[0].xM).toBeCloseTo(front.seats[0].xM - 0.1, 9);
    expect(next.seats.slice(1)).toEqual(front.seats.slice(1));
    expect(next.eyeZM).toBeCloseTo(front.eyeZM + 0.15, 9);
  });

  it('moves a seat with a place of its own without its row', () => {
    const seats = back.seats.map((seat, i) => (i === 0 ? { ...seat, eyeZM: 5 } : seat));
    const own = { ...project, rows: [front, { ...back, seats }] };
    const answer = dragBy(own, own, { kind: 'seat', id: back.seats[0].id }, 0, 0.1);
    if (!answer.ok) throw new Error('refused');
    expect(answer.project.rows[1].eyeZM).toBe(back.eyeZM);
    expect(answer.project.rows[1].seats[0].eyeZM).toBeCloseTo(5.1, 9);
  });

  it('does not take hold of what is locked or of what has no place on the floor', () => {
    const { id } = project.subwoofers[0];
    const locked = { ...project, subwoofers: [{ ...project.subwoofers[0], locked: true }] };
    expect(isHandle(project, { kind: 'subwoofer', id })).toBe(true);
    expect(isHandle(locked, { kind: 'subwoofer', id })).toBe(false);
    expect(isHandle(project, { kind: 'loudspeaker', id: 'L' })).toBe(false);
  });
});

describe('footprints and dimensions', () => {
  it('every handle has a footprint that covers its own middle', () => {
    const handles = handlesOf(project);
    expect(handles.length).toBe(project.subwoofers.length + 7);
    for (const { id, atM } of project.subwoofers) {
      const print = footprintOf(project, { kind: 'subwoofer', id });
      expect(print && covers(print, atM[0], atM[2])).toBe(true);
    }
  });

  it('measures to the nearer walls from the sides that face them', () => {
    const room = roomBox(project);
    const print = { minXM: 1, maxXM: 1.4, minZM: 0.5, maxZM: 0.9, baseM: 0 };
    const [across, along] = wallDimensions(print, room, 0.01);
    expect(across.lengthM).toBeCloseTo(room.widthM / 2 - 1.4, 9);
    expect(across.toM[0]).toBe(room.maxM[0]);
    expect(along.lengthM).toBeCloseTo(0.5, 9);
    expect(along.toM[2]).toBe(0);
    expect(dimensionTicks(across).every(([, y]) => y === 0.01)).toBe(true);
  });
});
