import { describe, expect, it } from 'vitest';
import { checkProject } from '../../../../src/model/checks/project.ts';
import { type Edit, setValue } from '../../../../src/model/commands/edit.ts';
import { DAMPING_SWITCHES } from '../../../../src/model/fields/switches-damping.ts';
import { SHAPE_SWITCHES } from '../../../../src/model/fields/switches-shape.ts';
import { THING_SWITCHES } from '../../../../src/model/fields/switches-things.ts';
import { addLine, removeLine, TABLES } from '../../../../src/model/fields/tables.ts';
import type { Key } from '../../../../src/model/paths.ts';
import { emptyRoom } from '../../../../src/model/presets/empty-room.ts';
import type { Project } from '../../../../src/model/project.ts';
import { acoustics } from '../../../../src/panels/parameters/acoustics.ts';
import { sampleProject } from '../sample.ts';

const done = (edit: Edit): Project => {
  if (!edit.ok) throw new Error(JSON.stringify(edit.reason));
  expect(checkProject(edit.project)).toEqual([]);
  return edit.project;
};

const switchOf = (pattern: string) => {
  const found = [...SHAPE_SWITCHES, ...DAMPING_SWITCHES, ...THING_SWITCHES].find((one) => one.pattern === pattern);
  if (!found) throw new Error(pattern);
  return found;
};

const turn = (project: Project, pattern: string, keys: readonly Key[], way: string): Project => {
  const one = switchOf(pattern);
  const next = done(one.set(project, keys, way, acoustics));
  expect(one.read(next, keys)).toBe(way);
  expect(one.set(next, keys, way, acoustics)).toEqual({ ok: true, project: next });
  return next;
};

describe('ways of stating a thing', () => {
  it('the plan by its lengths or its corners, and back to the same lengths', () => {
    const corners = turn(sampleProject(), 'room.plan.shape', ['room', 'plan', 'shape'], 'polygon');
    expect(corners.room.plan).toEqual({
      shape: 'polygon',
      cornersM: [
        [-2.15, 0],
        [2.15, 0],
        [2.15, 6.1],
        [-2.15, 6.1],
      ],
    });
    const back = turn(corners, 'room.plan.shape', ['room', 'plan', 'shape'], 'rectangle');
    expect(back.room.plan).toEqual({ shape: 'rectangle', widthM: 4.3, lengthM: 6.1 });
  });

  it('the damping by what the surfaces make it, or by times that begin as those, octave by octave', () => {
    const keys = ['room', 'reverberationS'];
    const before = sampleProject();
    const times = turn(before, 'room.reverberationS', keys, 'times').room.reverberationS ?? {};
    expect(Object.keys(times)).toEqual(['125', '250', '500', '1000', '2000', '4000']);
    for (const timeS of Object.values(times)) expect(timeS * 100).toBeCloseTo(Math.round(timeS * 100), 9);
    const back = turn(turn(before, 'room.reverberationS', keys, 'times'), 'room.reverberationS', keys, 'surfaces');
    expect(back.room.reverberationS).toBeUndefined();
  });

  it('the ceiling flat, sloping or by its bends keeps its heights', () => {
    const keys = ['room', 'ceiling', 'shape'];
    const slope = turn(sampleProject(), 'room.ceiling.shape', keys, 'slope');
    expect(slope.room.ceiling).toEqual({ shape: 'slope', across: 'x', startHeightM: 2.7, endHeightM: 2.7 });
    const bends = turn(slope, 'room.ceiling.shape', keys, 'profile');
    expect(bends.room.ceiling).toMatchObject({
      shape: 'profile',
      pointsM: [
        [-2.15, 2.7],
        [0, 2.7],
        [2.15, 2.7],
      ],
    });
    expect(turn(bends, 'room.ceiling.shape', keys, 'flat').room.ceiling).toEqual({ shape: 'flat', heightM: 2.7 });
  });

  it('an aim at nothing, the reference seat or a point', () => {
    const keys = ['loudspeakers', 0, 'aim'];
    const point = turn(sampleProject(), 'loudspeakers[].aim', keys, 'point');
    // The reference ear by hand: front-2 at x 0, eyes 3.3 m back: the row's 3.3 + 0.1, the pan's 0.43 + 0.68 high.
    const row = point.rows[0];
    const { earBehindEyeM, earAbovePanM } = point.people;
    expect(point.loudspeakers[0].aim).toEqual([
      0,
      Math.round((row.floorM + row.seat.panHeightM + earAbovePanM) * 100) / 100,
      Math.round((row.eyeZM + earBehindEyeM) * 100) / 100,
    ]);
    expect(turn(point, 'loudspeakers[].aim', keys, 'usual').loudspeakers[0].aim).toBeUndefined();
  });

  it('parts that may be left out come with numbers and go without a trace', () => {
    const project = sampleProject();
    const riser = turn(project, 'rows[].riser', ['rows', 0, 'riser'], 'own');
    expect(riser.rows[0].riser).toMatchObject({ fromXM: -2.15, toXM: 2.15, toZM: 6.1 });
    expect(turn(riser, 'rows[].riser', ['rows', 0, 'riser'], 'usual')).toEqual(project);
    const output = turn(
      turn(project, 'subwoofers[].maxOutput', ['subwoofers', 0, 'maxOutput'], 'usual'),
      'subwoofers[].maxOutput',
      ['subwoofers', 0, 'maxOutput'],
      'own',
    );
    expect(output.subwoofers[0].maxOutput?.space).toBe('half');
    const bare = turn(project, 'picture.projector', ['picture', 'projector'], 'usual');
    expect(bare.picture.projector).toBeUndefined();
    expect(turn(bare, 'picture.projector', ['picture', 'projector'], 'own').picture.projector?.lumens).toBe(2000);
  });

  it('a surface by finish, by octave or by admittance keeps what it was as far as it can', () => {
    const keys = ['room', 'surfaces', 'floor'];
    const pattern = 'room.surfaces.floor';
    const octave = turn(sampleProject(), pattern, keys, 'octave');
    // Wood floor on joists, the handbook row the published absorption test reads: 0.15 0.11 0.10 0.07 0.06 0.07.
    expect(octave.room.surfaces.floor).toEqual({
      absorption: { '125': 0.15, '250': 0.11, '500': 0.1, '1000': 0.07, '2000': 0.06, '4000': 0.07 },
    });
    const back = turn(octave, pattern, keys, 'finish');
    expect(back.room.surfaces.floor).toEqual({ finish: 'wood-floor-on-joists' });
    const bass = turn(octave, pattern, keys, 'admittance').room.surfaces.floor?.admittance;
    // A real admittance of 0.02 takes about 0.14 of a diffuse field (8 times it less its logarithm's part).
    expect(bass?.[0]).toBeGreaterThan(0.015);
    expect(bass?.[0]).toBeLessThan(0.03);
    expect(bass?.[1]).toBe(0);
  });
});

describe('tables of lines', () => {
  const tableOf = (pattern: string) => TABLES.find((one) => one.pattern === pattern)!;

  it('grow by a line that is good and shrink again, but not below what a shape needs', () => {
    const project = done(switchOf('room.plan.shape').set(sampleProject(), [], 'polygon', acoustics));
    const keys = ['room', 'plan', 'cornersM'];
    const five = done(addLine(project, tableOf('room.plan.cornersM'), keys));
    expect(five.room.plan).toMatchObject({ cornersM: { length: 5 } });
    expect(done(removeLine(five, tableOf('room.plan.cornersM'), keys, 4))).toEqual(project);
    const empty = emptyRoom({ widthM: 4.6, lengthM: 6.2, heightM: 2.5 });
    const corners = [
      [-6, 0],
      [6, 0],
      [0, 9],
    ];
    const three = done(setValue(empty, ['room', 'plan'], { shape: 'polygon', cornersM: corners }));
    expect(removeLine(three, tableOf('room.plan.cornersM'), keys, 2)).toMatchObject({
      ok: false,
      reason: { allowed: { kind: 'count', min: 3 } },
    });
  });

  it('of bands take the next that is missing at the level below it', () => {
    const project = sampleProject();
    const keys = ['subwoofers', 0, 'maxOutput', 'bandsDb'];
    const there = Object.keys(project.subwoofers[0].maxOutput?.bandsDb ?? {});
    const next = done(addLine(project, tableOf('subwoofers[].maxOutput.bandsDb'), keys));
    const added = Object.keys(next.subwoofers[0].maxOutput?.bandsDb ?? {}).filter((band) => !there.includes(band));
    expect(added).toHaveLength(1);
    expect(
      done(removeLine(next, tableOf('subwoofers[].maxOutput.bandsDb'), keys, added[0])).subwoofers[0].maxOutput,
    ).toEqual(project.subwoofers[0].maxOutput);
  });

  it('of films come and go', () => {
    const project = sampleProject();
    const keys = ['picture', 'formats'];
    const more = done(addLine(project, tableOf('picture.formats'), keys));
    expect(more.picture.formats).toHaveLength(project.picture.formats.length + 1);
    expect(done(removeLine(more, tableOf('picture.formats'), keys, project.picture.formats.length))).toEqual(project);
  });
});

describe('the steps up to a riser', () => {
  const keys: Key[] = ['rows', 1, 'riser', 'steps'];
  const table = TABLES.find(({ pattern }) => pattern === 'rows[].riser.steps')!;
  const riserOf = (project: Project) => project.rows[1].riser!;

  it('are as usual until they are told by their edges, then those that were drawn', () => {
    const project = sampleProject();
    const own = turn(project, 'rows[].riser.steps', keys, 'own');
    // 36 cm up is one step of 18 cm (7 3/4 in at most, IRC R311.7.5) at either end, 28 cm deep and 70 cm wide.
    const step = { fromZM: 3.67, toZM: 3.95, heightM: 0.18 };
    expect(riserOf(own).steps).toEqual([
      { fromXM: -2.15, toXM: -1.45, ...step },
      { fromXM: 1.45, toXM: 2.15, ...step },
    ]);
    expect(turn(own, 'rows[].riser.steps', keys, 'usual')).toEqual(project);
  });

  it('come with a riser where the row has none yet, one to begin with', () => {
    const own = turn(sampleProject(), 'rows[].riser.steps', ['rows', 0, 'riser', 'steps'], 'own');
    expect(own.rows[0].riser).toMatchObject({ fromXM: -2.15, toXM: 2.15, toZM: 6.1 });
    expect(own.rows[0].riser?.steps).toHaveLength(1);
  });

  it('are added and taken away line by line; without one they are as usual again', () => {
    const own = turn(sampleProject(), 'rows[].riser.steps', keys, 'own');
    const more = done(addLine(own, table, keys));
    expect(riserOf(more).steps[2]).toEqual({ fromXM: -2.15, toXM: -1.45, fromZM: 3.67, toZM: 3.95, heightM: 0.18 });
    const less = [2, 1, 0].reduce((from, line) => done(removeLine(from, table, keys, line)), more);
    expect(less).toEqual(sampleProject());
    expect(switchOf('rows[].riser.steps').read(less, keys)).toBe('usual');
  });

  it('are refused in words where an edge lies before the other, or out of range', () => {
    const own = turn(sampleProject(), 'rows[].riser.steps', keys, 'own');
    const wrong = setValue(own, [...keys, 0, 'toXM'], -2.2);
    expect(wrong.ok ? null : wrong.reason).toMatchObject({
      field: 'rows[1].riser.steps[0].toXM',
      holds: -2.2,
      allowed: { words: 'more than fromXM, which is -2.15' },
    });
    const high = setValue(own, [...keys, 0, 'heightM'], 5.1);
    expect(high.ok ? null : high.reason).toMatchObject({ allowed: { kind: 'range', min: 0, max: 5 } });
    const open = setValue(own, [...keys, 0, 'toXM'], undefined);
    expect(open.ok && riserOf(open.project).steps[0].toXM).toBeUndefined();
  });
});
