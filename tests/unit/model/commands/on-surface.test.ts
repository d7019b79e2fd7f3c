import { describe, expect, it } from 'vitest';
import { addOnSurface, stretchOnSurface, usualRect } from '../../../../src/model/commands/on-surface.ts';
import type { Project } from '../../../../src/model/project.ts';
import { sampleProject } from '../sample.ts';

const project = sampleProject();

const drawn = (answer: ReturnType<typeof addOnSurface>): Project => {
  if (!answer.edit.ok) throw new Error(JSON.stringify(answer.edit.reason));
  return answer.edit.project;
};

describe('drawing on surfaces', () => {
  it('makes an opening of a rectangle, named by what it is', () => {
    const rect = { fromM: 4, widthM: 1.2, bottomM: 0.9, heightM: 1.1 };
    const answer = addOnSurface(project, 'opening', 'window', 'right', null, rect);
    expect(answer.ref).toEqual({ kind: 'opening', id: 'window-2' });
    expect(drawn(answer).room.openings.at(-1)).toMatchObject({ kind: 'window', surface: 'right', ...rect });
  });

  it('takes a rectangle drawn from any corner and cuts it down to its surface', () => {
    const back = { fromM: 5, widthM: -1.5, bottomM: 3, heightM: -1.5 };
    const made = drawn(addOnSurface(project, 'patch', 'fibre-panel-50', 'back', null, back)).room.patches.at(-1);
    // The back wall is 4.3 m wide and 2.7 m high.
    expect(made).toMatchObject({ id: 'panel', fromM: 3.5, bottomM: 1.5 });
    expect(made?.widthM).toBeCloseTo(0.8, 9);
    expect(made?.heightM).toBeCloseTo(1.2, 9);
  });

  it('stands an object out of the surface into the room', () => {
    const rect = { fromM: 1, widthM: 0.5, bottomM: 2, heightM: 0.6 };
    const box = drawn(addOnSurface(project, 'object', 'box', 'floor', null, rect)).room.objects.at(-1);
    // The floor is measured from the left front corner, x = -2.15.
    expect(box).toMatchObject({ minM: [-1.15, 0, 2], maxM: [-0.65, 0.4, 2.6] });
    const beam = drawn(addOnSurface(project, 'object', 'beam', 'ceiling', null, rect)).room.objects.at(-1);
    expect(beam?.maxM[1]).toBe(2.7);
    expect(beam?.minM[1]).toBeCloseTo(2.45, 9);
  });

  it('refuses what is too small, in words', () => {
    const { edit, ref } = addOnSurface(project, 'opening', 'door', 'left', null, {
      fromM: 1,
      widthM: 0.02,
      bottomM: 0,
      heightM: 2,
    });
    expect(ref).toBeNull();
    expect(edit).toMatchObject({
      ok: false,
      reason: { allowed: { kind: 'words', words: 'at least 5 cm wide and high' } },
    });
  });

  it('has a usual size in the middle of a surface for hands that do not draw', () => {
    const door = usualRect(project, 'opening', 'door', 'back', null);
    expect(door && door.fromM + door.widthM / 2).toBeCloseTo(2.15, 3);
    expect(door?.bottomM).toBe(0);
  });

  it('keeps 5 cm between two edges and stops at the end of the wall', () => {
    const window = { kind: 'opening', id: 'window' } as const;
    const narrow = stretchOnSurface(project, window, 'left', 9);
    expect(narrow.ok && narrow.project.room.openings[1].widthM).toBeCloseTo(0.05, 9);
    const wide = stretchOnSurface(project, window, 'right', 99);
    expect(wide.ok && wide.project.room.openings[1].fromM + wide.project.room.openings[1].widthM).toBeCloseTo(6.1, 9);
  });
});
