import { describe, expect, it } from 'vitest';
import { clampInside, clampSeatInside } from '../../../../src/model/commands/clamp.ts';
import type { Edit } from '../../../../src/model/commands/edit.ts';
import { setLocked } from '../../../../src/model/commands/items.ts';
import { moveLoudspeaker, moveRow, moveSeat, moveSubwoofer } from '../../../../src/model/commands/move.ts';
import type { Project } from '../../../../src/model/project.ts';
import { roomShape } from '../../../../src/model/room/shape.ts';
import { seatPose } from '../../../../src/model/seating.ts';
import { largestProject, sampleProject } from '../sample.ts';

const done = (edit: Edit): Project => {
  if (!edit.ok) throw new Error(JSON.stringify(edit.reason));
  return edit.project;
};

describe('moving', () => {
  it('moves a subwoofer and nothing else: the rest keeps its identity', () => {
    const project = sampleProject();
    const next = done(moveSubwoofer(project, 'S2', [1, 0.3, 3]));
    expect(next.subwoofers[1].atM).toEqual([1, 0.3, 3]);
    expect(project.subwoofers[1].atM).toEqual([1.88, 0.22, 0.27]);
    expect(next.subwoofers[0]).toBe(project.subwoofers[0]);
    expect(next.subwoofers[1].maxOutput).toBe(project.subwoofers[1].maxOutput);
    expect(next.rows).toBe(project.rows);
    expect(next.loudspeakers).toBe(project.loudspeakers);
    expect(next.room).toBe(project.room);
  });

  it('moves a loudspeaker', () => {
    const next = done(moveLoudspeaker(sampleProject(), 'C', [0, 0.5, 0.3]));
    expect(next.loudspeakers[1]).toMatchObject({ id: 'C', atM: [0, 0.5, 0.3], aim: 'reference' });
  });

  it('moving to where it stands gives back the same document', () => {
    const project = sampleProject();
    expect(done(moveSubwoofer(project, 'S1', [-1.88, 0.22, 0.27]))).toBe(project);
    expect(done(moveSeat(project, 'front-1', { xM: -0.72 }))).toBe(project);
    expect(done(moveRow(project, 'front', { eyeZM: 3.3 }))).toBe(project);
  });

  it('refuses a place outside the room, with the room as what is allowed', () => {
    expect(moveSubwoofer(sampleProject(), 'S1', [3, 0.2, 1])).toEqual({
      ok: false,
      reason: {
        field: 'subwoofers[0].atM',
        holds: [3, 0.2, 1],
        lead: undefined,
        allowed: { kind: 'inside', minM: [-2.15, 0, 0], maxM: [2.15, 2.7, 6.1] },
      },
    });
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY])('refuses %s', (value) => {
    const edit = moveSubwoofer(sampleProject(), 'S1', [value, 0.2, 1]);
    expect(edit).toMatchObject({ ok: false, reason: { field: 'subwoofers[0].atM[0]', allowed: { kind: 'range' } } });
    expect(moveSeat(sampleProject(), 'front-1', { xM: value }).ok).toBe(false);
  });

  it('refuses an id there is none of', () => {
    expect(moveSubwoofer(sampleProject(), 'S9', [0, 0, 0])).toMatchObject({ ok: false, reason: { holds: 'S9' } });
  });

  it('moves a seat along its row, and out of line with it', () => {
    const project = sampleProject();
    expect(done(moveSeat(project, 'back-2', { xM: -0.5 })).rows[1].seats[1]).toEqual({ id: 'back-2', xM: -0.5 });
    const out = done(moveSeat(project, 'back-2', { xM: -0.5, eyeZM: 4.8 }));
    expect(out.rows[1].seats[1]).toEqual({ id: 'back-2', xM: -0.5, eyeZM: 4.8 });
    expect(out.rows[0]).toBe(project.rows[0]);
    expect(out.rows[1].seats[0]).toBe(project.rows[1].seats[0]);
  });

  it('moves a row with all its seats, those out of line included', () => {
    const out = done(moveSeat(sampleProject(), 'front-3', { xM: 0.72, eyeZM: 3.1 }));
    const next = done(moveRow(out, 'front', { eyeZM: 3.5, byXM: 0.1 }));
    expect(next.rows[0].eyeZM).toBe(3.5);
    expect(next.rows[0].seats.map(({ xM }) => xM)).toEqual([-0.62, 0.1, 0.82]);
    expect(next.rows[0].seats[2].eyeZM).toBeCloseTo(3.3, 12);
  });

  it('refuses a row whose ears would leave the room', () => {
    const edit = moveRow(sampleProject(), 'back', { eyeZM: 6.05 });
    expect(edit).toMatchObject({ ok: false, reason: { field: 'rows[1].seats[0]', lead: 'an ear at' } });
  });

  it('leaves locked things alone', () => {
    const seat = done(setLocked(sampleProject(), { kind: 'seat', id: 'front-2' }, true));
    expect(moveSeat(seat, 'front-2', { xM: 0.1 })).toMatchObject({
      ok: false,
      reason: { field: 'rows[0].seats[1].locked' },
    });
    expect(moveRow(seat, 'front', { eyeZM: 3 })).toMatchObject({
      ok: false,
      reason: { field: 'rows[0].seats[1].locked' },
    });
    expect(moveSeat(seat, 'front-1', { xM: -0.8 }).ok).toBe(true);
    const row = done(setLocked(sampleProject(), { kind: 'row', id: 'front' }, true));
    expect(moveSeat(row, 'front-1', { xM: -0.8 }).ok).toBe(false);
    const freed = done(setLocked(row, { kind: 'row', id: 'front' }, false));
    expect(freed).toEqual(sampleProject());
  });

  it('a move in the largest document there may be costs under a millisecond', () => {
    const project = largestProject();
    const moves = 400;
    const start = process.cpuUsage();
    for (let i = 0; i < moves; i++) {
      const edit =
        i % 2 === 0 ? moveSubwoofer(project, 'S3', [i / 200, 0.2, 3]) : moveSeat(project, 's3-1', { xM: i / 200 });
      expect(edit.ok).toBe(true);
    }
    const { user, system } = process.cpuUsage(start);
    // The budget of a drag at 60 Hz, in processor time, which other work on the machine does not stretch.
    expect((user + system) / 1000 / moves).toBeLessThan(1);
  });
});

describe('clamping', () => {
  const room = roomShape(sampleProject());

  it('leaves alone what stands inside', () => {
    expect(clampInside(room, [1, 0.5, 3], [0.4, 0.4, 0.4])).toEqual([1, 0.5, 3]);
  });

  it('brings a box back against the walls, the floor and the ceiling', () => {
    expect(clampInside(room, [9, -1, -1], [0.4, 0.5, 0.6])).toEqual([1.95, 0.25, 0.3]);
    expect(clampInside(room, [-9, 9, 9], [0.4, 0.5, 0.6])).toEqual([-1.95, 2.45, 5.8]);
  });

  it('puts what does not fit in the middle', () => {
    expect(clampInside(room, [9, 1, 1], [5, 0.4, 0.4])[0]).toBe(0);
  });

  it('what was clamped is never refused', () => {
    const project = sampleProject();
    for (const at of [
      [99, 99, 99],
      [-99, -99, -99],
      [0, 50, -3],
    ] as const) {
      expect(moveSubwoofer(project, 'S1', clampInside(room, at, project.subwoofers[0].sizeM)).ok).toBe(true);
    }
    for (const to of [{ xM: 50, eyeZM: 50 }, { xM: -50, eyeZM: -50 }, { xM: 50 }]) {
      const edit = moveSeat(project, 'back-1', clampSeatInside(project, 'back-1', to));
      expect(edit.ok).toBe(true);
    }
  });

  it('keeps the back of a reclined head off the wall behind', () => {
    const project = sampleProject();
    const row = { ...project.rows[1], seats: [{ ...project.rows[1].seats[0], reclineDeg: 30 }] };
    const reclined = { ...project, rows: [project.rows[0], row] };
    const to = clampSeatInside(reclined, 'back-1', { xM: 0, eyeZM: 9 });
    const { earM } = seatPose(done(moveSeat(reclined, 'back-1', to)), 1, 0);
    expect(earM[2]).toBeCloseTo(6.0, 9);
  });
});
