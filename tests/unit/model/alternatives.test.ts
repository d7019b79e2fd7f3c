import { describe, expect, it } from 'vitest';
import { readProjectText } from '../../../src/files/project/read.ts';
import { writeProject } from '../../../src/files/project/write.ts';
import { alternativesOf, equaliserOf, variantOf } from '../../../src/model/alternatives.ts';
import {
  MOST_ALTERNATIVES,
  removeAlternative,
  renameAlternative,
  setEqualiser,
  setSubwoofers,
  storeAlternative,
  swapAlternative,
} from '../../../src/model/commands/alternatives.ts';
import type { Edit } from '../../../src/model/commands/edit.ts';
import type { Project } from '../../../src/model/project.ts';
import { demo, projectOf } from '../analysis/rooms.ts';

const done = (edit: Edit): Project => {
  if (!edit.ok) throw new Error(JSON.stringify(edit.reason));
  return edit.project;
};
const moved = (project: Project): Project => ({
  ...project,
  subwoofers: project.subwoofers.map((one) => ({
    ...one,
    atM: [one.atM[0] / 2, one.atM[1], one.atM[2]] as typeof one.atM,
  })),
});

describe('alternatives', () => {
  it('stores, renames, swaps there and back, removes; the file carries them', () => {
    const start = demo();
    const stored = done(storeAlternative(start, { name: ' Corners ' }));
    expect(alternativesOf(stored)).toMatchObject([{ id: 'alternative-1', name: 'Corners' }]);
    const other = done(storeAlternative(moved(stored), { name: 'Inner', keep: ['bass'] }));
    expect(alternativesOf(other).map(({ id }) => id)).toEqual(['alternative-1', 'alternative-2']);
    const named = done(renameAlternative(other, 'alternative-1', 'Four corners'));
    const swapped = done(swapAlternative(named, 'alternative-1', 'Until now'));
    expect(swapped.subwoofers).toEqual(start.subwoofers);
    expect(alternativesOf(swapped)[0]).toMatchObject({ name: 'Until now', subwoofers: moved(start).subwoofers });
    const back = done(swapAlternative(swapped, 'alternative-1', 'Four corners'));
    expect(back).toEqual(named);
    const read = readProjectText(writeProject(named));
    expect(read.ok && alternativesOf(read.project)).toEqual(alternativesOf(named));
    const emptied = done(removeAlternative(done(removeAlternative(named, 'alternative-2')), 'alternative-1'));
    expect('alternatives' in emptied).toBe(false);
  });

  it('swaps other parts with it, and brings them back', () => {
    const start = demo();
    const wide = done(
      storeAlternative({ ...start, bass: { ...start.bass, crossoverHz: 100 } }, { name: 'a', keep: ['bass'] }),
    );
    const project = { ...wide, bass: start.bass };
    const swapped = done(swapAlternative(project, 'alternative-1', 'b'));
    expect(swapped.bass.crossoverHz).toBe(100);
    expect(done(swapAlternative(swapped, 'alternative-1', 'a'))).toEqual(project);
  });

  it('carries through what it does not understand', () => {
    const odd = ['an old note', { id: 7 }, { id: 'x', name: 'kept', subwoofers: [], colour: 'red' }];
    const project = projectOf({ ...demo(), alternatives: odd });
    expect(alternativesOf(project)).toMatchObject([{ id: 'x', colour: 'red' }]);
    const stored = done(storeAlternative(project, { name: 'new' }));
    expect((stored.alternatives as unknown[]).slice(0, 3)).toEqual(odd);
    const left = done(removeAlternative(stored, 'x'));
    expect((left.alternatives as unknown[]).slice(0, 2)).toEqual(odd.slice(0, 2));
    const elsewhere = projectOf({ ...demo(), alternatives: { mine: true } });
    expect(alternativesOf(elsewhere)).toEqual([]);
    expect(storeAlternative(elsewhere, { name: 'new' }).ok).toBe(false);
  });

  it('refuses what cannot be', () => {
    const start = demo();
    expect(swapAlternative(start, 'alternative-1', 'x').ok).toBe(false);
    expect(removeAlternative(start, 'nothing').ok).toBe(false);
    expect(storeAlternative(start, { name: '   ' }).ok).toBe(false);
    let full = start;
    for (let i = 0; i < MOST_ALTERNATIVES; i += 1) full = done(storeAlternative(full, { name: `${i}` }));
    expect(storeAlternative(full, { name: 'one more' }).ok).toBe(false);
    const outside = { ...start.subwoofers[0], atM: [9, 0.2, 0.3] as [number, number, number] };
    const bad = done(storeAlternative(start, { name: 'outside', subwoofers: [outside] }));
    expect(variantOf(bad, alternativesOf(bad)[0])).toBeNull();
    expect(swapAlternative(bad, 'alternative-1', 'x').ok).toBe(false);
  });

  it('leaves a locked subwoofer where it is', () => {
    const start = demo();
    const locked = {
      ...start,
      subwoofers: start.subwoofers.map((one, i) => (i === 0 ? { ...one, locked: true } : one)),
    };
    expect(setSubwoofers(locked, moved(locked).subwoofers).ok).toBe(false);
    expect(setSubwoofers(locked, locked.subwoofers.slice(0, 1)).ok).toBe(true);
    expect(setSubwoofers(locked, locked.subwoofers.slice(1)).ok).toBe(false);
  });
});

describe('equaliser', () => {
  const filters = [{ frequencyHz: 42.5, gainDb: -4.5, q: 5.1 }];

  it('is set, read and taken away, with what else stands there kept', () => {
    const start = projectOf({ ...demo(), equaliser: { note: 'by hand' } });
    expect(equaliserOf(start)).toEqual([]);
    const set = done(setEqualiser(start, filters));
    expect(set.equaliser).toEqual({ note: 'by hand', filters });
    expect(equaliserOf(set)).toEqual(filters);
    expect(done(setEqualiser(set, filters))).toBe(set);
    expect(done(setEqualiser(set, [])).equaliser).toEqual({ note: 'by hand', filters: [] });
    const bare = done(setEqualiser(demo(), filters));
    expect('equaliser' in done(setEqualiser(bare, []))).toBe(false);
  });

  it('does not write over another kind of content, nor take a filter beyond reason', () => {
    expect(setEqualiser(projectOf({ ...demo(), equaliser: 'see notes' }), filters).ok).toBe(false);
    expect(setEqualiser(demo(), [{ frequencyHz: 40, gainDb: 20, q: 1 }]).ok).toBe(false);
  });
});
