import { describe, expect, it } from 'vitest';
import { checkProject } from '../../../../src/model/checks/project.ts';
import { duplicateItem } from '../../../../src/model/commands/duplicate.ts';
import type { Edit } from '../../../../src/model/commands/edit.ts';
import {
  addItem,
  addSeat,
  removeItem,
  renameItem,
  setLocked,
  setReferenceSeat,
  setSurface,
} from '../../../../src/model/commands/items.ts';
import { setField } from '../../../../src/model/commands/set-field.ts';
import type { Project } from '../../../../src/model/project.ts';
import { projectSchema } from '../../../../src/model/schema/project.ts';
import { largestProject, sampleProject } from '../sample.ts';

const done = (edit: Edit): Project => {
  if (!edit.ok) throw new Error(JSON.stringify(edit.reason));
  expect(projectSchema.parse(edit.project)).toEqual(edit.project);
  expect(checkProject(edit.project)).toEqual([]);
  return edit.project;
};

describe('adding and taking away', () => {
  it('adds a subwoofer with defaults for what is not said', () => {
    const project = sampleProject();
    const next = done(addItem(project, 'subwoofer', { id: 'S5', atM: [0, 0.2, 3] }));
    expect(next.subwoofers[4]).toMatchObject({ id: 'S5', sizeM: [0.4, 0.4, 0.4], gainDb: 0, inverted: false });
    expect(next.subwoofers.slice(0, 4).every((sub, index) => sub === project.subwoofers[index])).toBe(true);
  });

  it('refuses an id that is taken, a bad value and one more than there may be', () => {
    const project = sampleProject();
    expect(addItem(project, 'subwoofer', { id: 'C', atM: [0, 0.2, 3] })).toMatchObject({
      ok: false,
      reason: { field: 'subwoofers[4].id', aside: 'already used by loudspeakers[1]' },
    });
    expect(addItem(project, 'subwoofer', { id: 'S5', atM: [0, 0.2, 3], gainDb: 90 })).toMatchObject({
      ok: false,
      reason: { field: 'subwoofers[4].gainDb', holds: 90, allowed: { kind: 'range', min: -60, max: 20 } },
    });
    expect(addItem(largestProject(), 'loudspeaker', { id: 'X', channel: 'M+000', atM: [0, 1, 1] })).toMatchObject({
      ok: false,
      reason: { field: 'loudspeakers', holds: 65, allowed: { max: 64 } },
    });
    expect(addSeat(largestProject(), 'r0', { id: 'one-more', xM: 0 })).toMatchObject({
      ok: false,
      reason: { field: 'rows', holds: 65 },
    });
  });

  it('adds a seat at the end of its row', () => {
    expect(done(addSeat(sampleProject(), 'front', { id: 'front-4', xM: 1.44 })).rows[0].seats).toHaveLength(4);
    expect(addSeat(sampleProject(), 'gallery', { id: 'x', xM: 0 }).ok).toBe(false);
  });

  it('takes away each kind of thing', () => {
    const project = sampleProject();
    expect(done(removeItem(project, { kind: 'loudspeaker', id: 'C' })).loudspeakers).toHaveLength(10);
    expect(done(removeItem(project, { kind: 'opening', id: 'window' })).room.openings.map(({ id }) => id)).toEqual([
      'door',
    ]);
    expect(done(removeItem(project, { kind: 'object', id: 'side-table' })).room.objects).toEqual([]);
    expect(done(removeItem(project, { kind: 'surface', id: 'floor' })).room.surfaces.floor).toBeUndefined();
    expect(removeItem(project, { kind: 'patch', id: 'none' }).ok).toBe(false);
  });

  it('forgets a reference seat that goes, alone or with its row', () => {
    const project = sampleProject();
    expect('referenceSeat' in done(removeItem(project, { kind: 'seat', id: 'front-2' }))).toBe(false);
    expect('referenceSeat' in done(removeItem(project, { kind: 'row', id: 'front' }))).toBe(false);
    expect(done(removeItem(project, { kind: 'seat', id: 'back-1' })).referenceSeat).toBe('front-2');
  });

  it('takes a row away with its last seat, but never the last seat of all', () => {
    let project = sampleProject();
    for (const id of ['front-1', 'front-2', 'front-3']) project = done(removeItem(project, { kind: 'seat', id }));
    expect(project.rows.map(({ id }) => id)).toEqual(['back']);
    for (const id of ['back-1', 'back-2', 'back-3']) project = done(removeItem(project, { kind: 'seat', id }));
    expect(removeItem(project, { kind: 'seat', id: 'back-4' })).toMatchObject({
      ok: false,
      reason: { field: 'rows', holds: 0 },
    });
  });

  it('does not take away what is locked', () => {
    const project = done(setLocked(sampleProject(), { kind: 'subwoofer', id: 'S1' }, true));
    expect(removeItem(project, { kind: 'subwoofer', id: 'S1' })).toMatchObject({
      reason: { field: 'subwoofers[0].locked' },
    });
  });
});

describe('duplicating', () => {
  it.each([
    ['subwoofer', 'S4', 'S5'],
    ['loudspeaker', 'C', 'C-2'],
    ['seat', 'back-2', 'back-5'],
    ['opening', 'window', 'window-2'],
    ['object', 'side-table', 'side-table-2'],
    ['row', 'front', 'front-2'],
  ] as const)('a %s gets a free id and a place in the room', (kind, id, copyId) => {
    const project = sampleProject();
    const next = done(duplicateItem(project, { kind, id }));
    expect(JSON.stringify(next)).toContain(`"id":"${copyId}"`);
  });

  it('copies a locked thing unlocked, with its drive', () => {
    const quiet = done(setField(sampleProject(), 'subwoofers[3].gainDb', -3));
    const locked = done(setLocked(quiet, { kind: 'subwoofer', id: 'S4' }, true));
    const copy = done(duplicateItem(locked, { kind: 'subwoofer', id: 'S4' })).subwoofers[4];
    expect(copy).toMatchObject({ gainDb: -3, sizeM: [0.42, 0.44, 0.42] });
    expect('locked' in copy).toBe(false);
  });

  it('puts the copy on the left when the wall is near on the right', () => {
    const { subwoofers } = done(duplicateItem(sampleProject(), { kind: 'subwoofer', id: 'S4' }));
    expect(subwoofers[4].atM[0]).toBeCloseTo(1.88 - 0.42, 9);
  });
});

describe('names, surfaces, the reference seat', () => {
  it('the reference seat follows its seat to another name', () => {
    const next = done(renameItem(sampleProject(), { kind: 'seat', id: 'front-2' }, 'sweet'));
    expect(next.referenceSeat).toBe('sweet');
    expect(next.rows[0].seats[1].id).toBe('sweet');
    expect(renameItem(next, { kind: 'seat', id: 'sweet' }, 'back-1').ok).toBe(false);
    expect(renameItem(next, { kind: 'seat', id: 'sweet' }, '').ok).toBe(false);
  });

  it('sets and clears the reference seat', () => {
    const next = done(setReferenceSeat(sampleProject(), 'back-3'));
    expect(next.referenceSeat).toBe('back-3');
    expect('referenceSeat' in done(setReferenceSeat(next, undefined))).toBe(false);
    expect(setReferenceSeat(next, 'nobody')).toMatchObject({ ok: false, reason: { field: 'referenceSeat' } });
  });

  it('sets a surface by finish, by absorption, by admittance, and back to its default', () => {
    const project = sampleProject();
    expect(done(setSurface(project, 'left', { finish: 'brick' })).room.surfaces.left).toEqual({ finish: 'brick' });
    const absorption = { '125': 0.02, '500': 0.14 };
    expect(done(setSurface(project, 'floor', { absorption })).room.surfaces.floor).toEqual({ absorption });
    expect(done(setSurface(project, 'back', { admittance: [0.02, 0] })).room.surfaces.back).toEqual({
      admittance: [0.02, 0],
    });
    expect('left' in done(setSurface(project, 'left', undefined)).room.surfaces).toBe(false);
    expect(setSurface(project, 'left', { finish: 'gold' })).toMatchObject({
      reason: { field: 'room.surfaces.left.finish' },
    });
    expect(setSurface(project, 'left', { admittance: [-0.1, 0] })).toMatchObject({
      reason: { field: 'room.surfaces.left.admittance[0]' },
    });
  });
});

describe('setField', () => {
  it('sets numbers, choices, flags and text', () => {
    const project = sampleProject();
    expect(done(setField(project, 'picture.widthM', 2.4)).picture.widthM).toBe(2.4);
    expect(done(setField(project, 'display.units', 'imperial')).display.units).toBe('imperial');
    expect(done(setField(project, 'subwoofers[2].inverted', true)).subwoofers[2].inverted).toBe(true);
    expect(done(setField(project, 'rows[1].seats[0].reclineDeg', 20)).rows[1].seats[0].reclineDeg).toBe(20);
    expect(done(setField(project, 'loudspeakers[0].atM[1]', 1.2)).loudspeakers[0].atM).toEqual([-1.36, 1.2, 0.22]);
  });

  it('refuses with the limits of the schema', () => {
    expect(setField(sampleProject(), 'picture.widthM', 40)).toEqual({
      ok: false,
      reason: { field: 'picture.widthM', holds: 40, allowed: { kind: 'range', min: 0.3, max: 12, whole: false } },
    });
  });

  it('puts a value back to its default, or to nothing', () => {
    const project = done(setField(sampleProject(), 'rows[0].seats[0].facingDeg', 10));
    expect('facingDeg' in done(setField(project, 'rows[0].seats[0].facingDeg', undefined)).rows[0].seats[0]).toBe(
      false,
    );
    expect(done(setField(project, 'picture.gain', undefined)).picture.gain).toBe(1);
    expect(setField(project, 'room.plan.widthM', undefined).ok).toBe(false);
  });

  it('brings about what a field needs around it, or says what else is missing', () => {
    const project = sampleProject();
    const taller = done(setField(project, 'rows[0].seats[0].people.eyeAbovePanM', 0.8));
    expect(taller.rows[0].seats[0].people).toEqual({ eyeAbovePanM: 0.8 });
    const bare = done(setSurface(project, 'front', undefined));
    expect(done(setField(bare, 'room.surfaces.front.finish', 'brick')).room.surfaces.front).toEqual({
      finish: 'brick',
    });
    const { projector: _none, ...picture } = project.picture;
    expect(setField({ ...project, picture }, 'picture.projector.lumens', 2000)).toMatchObject({
      ok: false,
      reason: { field: 'picture.projector.atM' },
    });
  });

  it('names what is in the way when a room is made too small', () => {
    expect(setField(sampleProject(), 'room.plan.widthM', 3)).toMatchObject({
      ok: false,
      reason: { field: 'loudspeakers[3].atM', allowed: { kind: 'inside' } },
    });
  });

  it.each([
    'room.plan.shape',
    'version',
    'nothing.here',
    'loudspeakers[99].id',
    'rows[-1].id',
    '__proto__.x',
    'rows[0]',
    '',
  ])('refuses the path %j', (path) => {
    expect(setField(sampleProject(), path, 1).ok).toBe(false);
  });

  it('does not move what is locked, but edits the rest of it', () => {
    const project = done(setLocked(sampleProject(), { kind: 'subwoofer', id: 'S1' }, true));
    expect(setField(project, 'subwoofers[0].atM[0]', 0)).toMatchObject({
      ok: false,
      reason: { field: 'subwoofers[0].locked' },
    });
    expect(setField(project, 'subwoofers[0].gainDb', -2).ok).toBe(true);
  });
});
