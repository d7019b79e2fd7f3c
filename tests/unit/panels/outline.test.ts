import { describe, expect, it } from 'vitest';
import twoRow from '../../../src/model/presets/two-row.json';
import { projectSchema } from '../../../src/model/schema/project.ts';
import { type Branch, linesOf, outlineMove, outlineOf, parentOf } from '../../../src/panels/outline/tree.ts';

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
    expect(parentOf(branches, 'seat:back-1')).toBe('row:back');
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
});
