import { describe, expect, it } from 'vitest';
import twoRow from '../../../src/model/presets/two-row.json';
import { projectSchema } from '../../../src/model/schema/project.ts';
import { commandOf, nudgeOf, outlineMove } from '../../../src/panels/outline/keys.ts';
import { gathered, rangeOf } from '../../../src/panels/outline/selecting.ts';
import { ancestorsOf, type Branch, linesOf, outlineOf } from '../../../src/panels/outline/tree.ts';

const project = projectSchema.parse(twoRow);
const branches = outlineOf(project);
const open = new Set(['row:front']);
const lines = linesOf(branches, open);

const flat = (list: readonly Branch[]): readonly Branch[] => list.flatMap((one) => [one, ...flat(one.children)]);

describe('outline', () => {
  it('names every seat, row, loudspeaker, subwoofer, opening, object and surface once', () => {
    const keys = flat(branches).map(({ key }) => key);
    expect(new Set(keys).size).toBe(keys.length);
    const expected = [
      ...project.rows.flatMap((row) => [`row:${row.id}`, ...row.seats.map(({ id }) => `seat:${id}`)]),
      ...project.loudspeakers.map(({ id }) => `loudspeaker:${id}`),
      ...project.subwoofers.map(({ id }) => `subwoofer:${id}`),
      ...project.room.openings.map(({ id }) => `opening:${id}`),
      ...project.room.objects.map(({ id }) => `object:${id}`),
      ...['front', 'back', 'left', 'right', 'floor', 'ceiling'].map((id) => `surface:${id}`),
      'picture:picture',
    ];
    for (const key of expected) expect(keys).toContain(key);
  });

  it('shows only what is unfolded', () => {
    const keys = lines.map(({ branch }) => branch.key);
    expect(keys).toContain('seat:front-2');
    expect(keys).not.toContain('seat:back-1');
    expect(ancestorsOf(branches, 'seat:back-1')).toEqual(['row:back']);
    expect(ancestorsOf(branches, 'opening:door')).toEqual(['room', 'surface:right']);
    expect(ancestorsOf(branches, 'patch:ceiling-cloud')).toEqual(['room', 'surface:ceiling']);
  });

  it('answers the keys of a tree', () => {
    expect(outlineMove(lines, open, 'row:front', 'ArrowRight')).toEqual({ kind: 'go', key: 'seat:front-1' });
    expect(outlineMove(lines, open, 'row:back', 'ArrowRight')).toEqual({
      kind: 'fold',
      key: 'row:back',
      unfolded: true,
    });
    expect(outlineMove(lines, open, 'row:front', 'ArrowLeft')).toEqual({
      kind: 'fold',
      key: 'row:front',
      unfolded: false,
    });
    expect(outlineMove(lines, open, 'seat:front-2', 'ArrowLeft')).toEqual({ kind: 'go', key: 'row:front' });
    expect(outlineMove(lines, open, 'room', 'ArrowUp')).toEqual({ kind: 'go', key: 'room' });
    expect(outlineMove(lines, open, 'room', 'End')).toEqual({ kind: 'go', key: lines[lines.length - 1].branch.key });
    expect(outlineMove(lines, open, 'room', 'Enter')).toEqual({ kind: 'pick' });
    expect(outlineMove(lines, open, 'picture:picture', 'ArrowRight')).toBeNull();
    expect(outlineMove(lines, open, 'room', 'q')).toBeNull();
  });

  it('reads keys as moves and commands', () => {
    expect(nudgeOf('ArrowUp', 0.01, false)).toEqual([0, 0, -0.01]);
    expect(nudgeOf('ArrowRight', 0.01, true)).toEqual([0.1, 0, 0]);
    expect(nudgeOf('PageUp', 0.0127, false)).toEqual([0, 0.0127, 0]);
    expect(nudgeOf('Tab', 0.01, false)).toBeNull();
    expect([commandOf('F2', false), commandOf('Delete', false), commandOf('d', true), commandOf('L', false)]).toEqual([
      'rename',
      'remove',
      'duplicate',
      'lock',
    ]);
    expect(commandOf('d', false)).toBeNull();
    expect(commandOf('toString', false)).toBeNull();
  });

  it('gathers several things, the one touched last leading, and takes them out again', () => {
    const s1 = { kind: 'subwoofer', id: 'S1' } as const;
    const s2 = { kind: 'subwoofer', id: 'S2' } as const;
    expect(gathered([s1], s2)).toEqual([s2, s1]);
    expect(gathered([s2, s1], s1)).toEqual([s2]);
    expect(rangeOf(lines, 'seat:front-1', 'seat:front-3').map(({ id }) => id)).toEqual([
      'front-3',
      'front-2',
      'front-1',
    ]);
  });
});
