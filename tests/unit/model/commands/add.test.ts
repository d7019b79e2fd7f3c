import { describe, expect, it } from 'vitest';
import { checkProject } from '../../../../src/model/checks/project.ts';
import { addObject, type ObjectKind } from '../../../../src/model/commands/add-object.ts';
import { addToSurface, type OnSurfaceKind } from '../../../../src/model/commands/add-opening.ts';
import type { Added } from '../../../../src/model/commands/add-place.ts';
import { addRow, addSeatToRow, addSofa } from '../../../../src/model/commands/add-seating.ts';
import {
  addLoudspeaker,
  addLoudspeakers,
  addSubwoofer,
  OFFERED_CHANNELS,
} from '../../../../src/model/commands/add-source.ts';
import { shiftItems } from '../../../../src/model/commands/group.ts';
import {
  rowMiddleM,
  seatSpacingM,
  setRowMiddle,
  setSeatCount,
  setSeatSpacing,
} from '../../../../src/model/commands/seats.ts';
import { emptyRoom } from '../../../../src/model/presets/empty-room.ts';
import type { ItemRef, Project } from '../../../../src/model/project.ts';
import { projectSchema } from '../../../../src/model/schema/project.ts';
import { seatPoses } from '../../../../src/model/seating.ts';
import { refusalText } from '../../../../src/words/refusals.ts';
import { sampleProject } from '../sample.ts';

const done = ({ edit, item }: Added): { readonly project: Project; readonly item: ItemRef } => {
  if (!edit.ok || !item) throw new Error(JSON.stringify(edit));
  expect(projectSchema.parse(edit.project)).toEqual(edit.project);
  expect(checkProject(edit.project)).toEqual([]);
  return { project: edit.project, item };
};

interface Box {
  readonly min: readonly number[];
  readonly max: readonly number[];
}

/** Boxes of what stands in a project, made here from the file's own numbers. */
const boxesOf = (project: Project): ReadonlyMap<string, Box> =>
  new Map([
    ...[...project.loudspeakers, ...project.subwoofers].map(({ id, atM, sizeM }): [string, Box] => [
      id,
      { min: atM.map((at, axis) => at - sizeM[axis] / 2), max: atM.map((at, axis) => at + sizeM[axis] / 2) },
    ]),
    ...project.room.objects.map(({ id, minM, maxM }): [string, Box] => [id, { min: minM, max: maxM }]),
  ]);

const overlap = (a: Box, b: Box): boolean =>
  [0, 1, 2].every((axis) => a.min[axis] < b.max[axis] - 1e-6 && a.max[axis] > b.min[axis] + 1e-6);

const clearOfOthers = (project: Project, id: string): boolean => {
  const boxes = boxesOf(project);
  const mine = boxes.get(id);
  if (!mine) throw new Error(`${id} stands nowhere`);
  return [...boxes].every(([other, box]) => other === id || !overlap(mine, box));
};

describe('adding things where they usually stand', () => {
  it('builds a whole layout in an empty room, each loudspeaker in its label’s direction and clear of the others', () => {
    let project = emptyRoom({ widthM: 4.6, lengthM: 6.2, heightM: 2.5 });
    for (const channel of OFFERED_CHANNELS) {
      const next = done(addLoudspeaker(project, channel));
      project = next.project;
      expect(clearOfOthers(project, next.item.id), channel).toBe(true);
    }
    for (let count = 0; count < 4; count += 1) {
      const next = done(addSubwoofer(project));
      project = next.project;
      expect(clearOfOthers(project, next.item.id)).toBe(true);
    }
    const ear = seatPoses(project)[0].earM;
    for (const { channel, atM } of project.loudspeakers) {
      if (!/^M[+-]/.test(channel) || channel === 'M+000') continue;
      // BS.2051 counts to the left, the report to the right; a place clear of others may be a step aside.
      const seen = (Math.atan2(atM[0] - ear[0], -(atM[2] - ear[2])) * 180) / Math.PI;
      expect(Math.abs(((seen + Number(channel.slice(1)) + 540) % 360) - 180), channel).toBeLessThan(20);
    }
    const ids = [...project.loudspeakers, ...project.subwoofers].map(({ id }) => id);
    expect(ids).toContain('L');
    expect(new Set(ids).size).toBe(ids.length);
  });

  it.each([
    [4.2, 5.5, 2.5],
    [3.4, 4.2, 2.4],
    [6, 8, 3],
    [5, 4, 2.3],
  ])(
    'stands a 5.1 set round a sofa in a room %f x %f x %f m at the angles homes ask for, left and right alike',
    (widthM, lengthM, heightM) => {
      const sofa = done(addSofa(emptyRoom({ widthM, lengthM, heightM }), 3)).project;
      expect(sofa.rows.map(({ furniture, seats }) => [furniture, seats.length])).toEqual([['sofa', 3]]);
      const set = addLoudspeakers(sofa, ['M+030', 'M+000', 'M-030', 'M+110', 'M-110']);
      const { project } = done(set);
      expect([set.item, ...(set.also ?? [])].map((item) => item?.id)).toEqual(['L', 'C', 'R', 'Ls', 'Rs']);
      const ear = seatPoses(project)[1].earM;
      const seen = (id: string) => {
        const at = project.loudspeakers.find((one) => one.id === id)?.atM ?? [0, 0, 0];
        const [x, y, z] = at.map((value, axis) => value - ear[axis]);
        return [Math.atan2(x, -z), Math.atan2(y, Math.hypot(x, z))].map((angle) => (angle * 180) / Math.PI);
      };
      // Left and right 22 to 32 degrees, surrounds 90 to 120 and 15 to 35 up (product.md's living set: common practice).
      for (const [id, low, high, lowest, highest] of [
        ['R', 22, 32, -15, 10],
        ['Rs', 90, 120, 15, 35],
      ] as const) {
        const [azimuth, elevation] = seen(id);
        expect(azimuth, id).toBeGreaterThanOrEqual(low);
        expect(azimuth, id).toBeLessThanOrEqual(high);
        expect(elevation, id).toBeGreaterThanOrEqual(lowest);
        expect(elevation, id).toBeLessThanOrEqual(highest);
        const [mirrored, same] = seen(id.replace('R', 'L'));
        expect(mirrored).toBeCloseTo(-azimuth, 9);
        expect(same).toBeCloseTo(elevation, 9);
      }
      expect(addLoudspeakers(project, ['M+030', 'M-030'])).toMatchObject({ edit: { ok: true, project }, item: null });
    },
  );

  it('a sofa takes the place of the chair a room begins with, and stands behind where people sit already', () => {
    const empty = emptyRoom({ widthM: 4.2, lengthM: 6.5, heightM: 2.5 });
    const sofa = done(addSofa(empty, 3)).project;
    expect(sofa.rows[0].eyeZM).toBe(empty.rows[0].eyeZM);
    const poses = seatPoses(sofa);
    expect(poses.find(({ seat }) => seat.id === sofa.referenceSeat)?.earM[0]).toBe(0);
    const two = done(addSofa(sofa, 3)).project;
    expect(two.rows).toHaveLength(2);
    expect(two.rows[1].eyeZM).toBeGreaterThan(two.rows[0].eyeZM + 1);
  });

  it('puts the centre under a panel, and behind cloth that lets sound through', () => {
    const panel = emptyRoom({ widthM: 4.6, lengthM: 6.2, heightM: 2.5 });
    const under = done(addLoudspeaker(panel, 'M+000')).project.loudspeakers[0];
    expect(under.atM[0]).toBe(panel.picture.centreXM);
    expect(under.atM[1] + under.sizeM[1] / 2).toBeLessThan(panel.picture.bottomM);
    const cloth = { ...panel, picture: { ...panel.picture, acousticallyTransparent: true, offFrontWallM: 0.5 } };
    const behind = done(addLoudspeaker(cloth, 'M+000')).project.loudspeakers[0];
    expect(behind.atM[2]).toBeLessThan(0.5);
    expect(behind.atM[1]).toBeGreaterThan(cloth.picture.bottomM);
  });

  it.each(['box', 'beam', 'column', 'table', 'lamp'] as const satisfies readonly ObjectKind[])('a %s', (kind) => {
    const { project, item } = done(addObject(sampleProject(), kind));
    const box = boxesOf(project).get(item.id);
    if (!box) throw new Error('nothing was added');
    expect(clearOfOthers(project, item.id)).toBe(true);
    // The sample room: 4.3 m wide, 6.1 m long, 2.7 m high.
    expect(box.min[0] >= -2.15 - 1e-9 && box.max[0] <= 2.15 + 1e-9 && box.min[2] >= 0 && box.max[2] <= 6.1).toBe(true);
    expect(kind === 'beam' ? box.max[1] : box.min[1]).toBeCloseTo(kind === 'beam' ? 2.7 : 0, 6);
  });

  it.each(['door', 'window', 'opening', 'panel'] as const satisfies readonly OnSurfaceKind[])(
    'a %s beside what is in the wall already',
    (kind) => {
      const once = done(addToSurface(sampleProject(), kind, 'right')).project;
      const twice = done(addToSurface(once, kind, 'right')).project;
      const list = kind === 'panel' ? 'patches' : 'openings';
      const [first, second] = twice.room[list].slice(-2);
      const apart = first.fromM + first.widthM <= second.fromM + 1e-9 || second.fromM + second.widthM <= first.fromM;
      expect(apart).toBe(true);
    },
  );

  it('a seat and a row', () => {
    const project = sampleProject();
    const seat = done(addSeatToRow(project, 'front'));
    expect(seat.project.rows[0].seats).toHaveLength(4);
    expect(seat.item.kind).toBe('seat');
    const row = done(addRow(project));
    expect(row.project.rows).toHaveLength(3);
    expect(addSeatToRow(project, 'gallery').edit.ok).toBe(false);
  });
});

describe('the middle of a row', () => {
  const settled = (project: Project, xM: number): Project => {
    const edit = setRowMiddle(project, 'front', xM);
    if (!edit.ok) throw new Error(JSON.stringify(edit.reason));
    return edit.project;
  };

  it('takes all its seats along, just as dragging the row does, and can be set back', () => {
    const project = sampleProject();
    const moved = settled(project, 0.31);
    expect(moved.rows[0].seats.map(({ xM }) => xM)).toEqual([-0.41, 0.31, 1.03]);
    const dragged = shiftItems(project, [{ kind: 'row', id: 'front' }], [0.31, 0, 0], true);
    expect(dragged.ok && dragged.project).toEqual(moved);
    expect(settled(moved, 0)).toEqual(project);
    expect(settled(project, rowMiddleM(project.rows[0]))).toBe(project);
  });

  it('is refused beyond where the walls stop the row, with how far it goes in the person’s units', () => {
    const project = sampleProject();
    const edit = setRowMiddle(project, 'front', 30);
    if (edit.ok || edit.reason.allowed.kind !== 'range') throw new Error('not refused');
    const { min = 0, max = 0 } = edit.reason.allowed;
    expect(min).toBeLessThan(0);
    // The ends of the range are where the row can stand; as they are written, to the centimetre, they are taken.
    for (const end of [min, max]) {
      expect(rowMiddleM(settled(project, end).rows[0])).toBeCloseTo(end, 6);
      expect(rowMiddleM(settled(project, Math.round(end * 100) / 100).rows[0])).toBeCloseTo(end, 2);
      expect(setRowMiddle(project, 'front', end + Math.sign(end) * 0.02).ok).toBe(false);
    }
    expect(refusalText(edit.reason, 'metric', project)).toMatch(
      /^Front: its middle at 30.00 m\. Allowed: .* m to .* m\.$/,
    );
    expect(refusalText(edit.reason, 'imperial', project)).toMatch(/ ft .* to .* in\.$/);
  });

  it('stays where it is when the row is locked', () => {
    const project = sampleProject();
    const [front, back] = project.rows;
    expect(setRowMiddle({ ...project, rows: [{ ...front, locked: true }, back] }, 'front', 0.2).ok).toBe(false);
  });
});

describe('the seats of a row', () => {
  it('are laid evenly about the middle they had', () => {
    const edit = setSeatCount(sampleProject(), 'front', 5);
    if (!edit.ok) throw new Error('refused');
    // Three seats at -0.72, 0 and 0.72 m: five as far apart are at -1.44, -0.72, 0, 0.72, 1.44.
    expect(edit.project.rows[0].seats.map(({ xM }) => xM)).toEqual([-1.44, -0.72, 0, 0.72, 1.44]);
    expect(seatSpacingM(edit.project.rows[0])).toBe(0.72);
    const back = setSeatCount(edit.project, 'front', 3);
    expect(back.ok && back.project.rows[0].seats.map(({ xM }) => xM)).toEqual([-0.72, 0, 0.72]);
  });

  it('keep a reference of the middle in the middle', () => {
    const one = emptyRoom({ widthM: 4.2, lengthM: 5.5, heightM: 2.5 });
    const three = setSeatCount(one, 'front', 3);
    if (!three.ok) throw new Error('refused');
    const middle = three.project.rows[0].seats.find(({ xM }) => xM === 0);
    expect(three.project.referenceSeat).toBe(middle?.id);
    const named = { ...three.project, referenceSeat: three.project.rows[0].seats[0].id };
    const five = setSeatCount(named, 'front', 5);
    expect(five.ok && five.project.referenceSeat).toBe(named.referenceSeat);
  });

  it('may be set apart, and are refused when one is locked or the count makes no sense', () => {
    const project = sampleProject();
    const wider = setSeatSpacing(project, 'front', 0.9);
    expect(wider.ok && wider.project.rows[0].seats.map(({ xM }) => xM)).toEqual([-0.9, 0, 0.9]);
    expect(setSeatCount(project, 'front', 0)).toMatchObject({ ok: false, reason: { allowed: { min: 1, max: 64 } } });
    const [front, back] = project.rows;
    const held = { ...project, rows: [{ ...front, locked: true }, back] };
    expect(setSeatCount(held, 'front', 4).ok).toBe(false);
  });
});
