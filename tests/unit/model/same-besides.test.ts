import { describe, expect, it } from 'vitest';
import { moveLoudspeaker, moveSubwoofer } from '../../../src/model/commands/move.ts';
import twoRow from '../../../src/model/presets/two-row.json';
import type { Project } from '../../../src/model/project.ts';
import { sameBesides } from '../../../src/model/same-besides.ts';
import { projectSchema } from '../../../src/model/schema/project.ts';

const project = projectSchema.parse(twoRow);

const edited = (edit: ReturnType<typeof moveSubwoofer>): Project => {
  if (!edit.ok) throw new Error('refused');
  return edit.project;
};

describe('sameBesides', () => {
  it('overlooks one part and nothing else', () => {
    const subwoofer = edited(moveSubwoofer(project, 'S1', [-1.5, 0.22, 0.4]));
    expect(subwoofer.subwoofers).not.toEqual(project.subwoofers);
    expect(sameBesides(project, subwoofer, 'subwoofers')).toBe(true);
    expect(sameBesides(project, subwoofer, 'loudspeakers')).toBe(false);
    const loudspeaker = edited(moveLoudspeaker(project, 'L', [-1.3, 1.15, 0.42]));
    expect(sameBesides(project, loudspeaker, 'subwoofers')).toBe(false);
  });

  it('sees a part that came or went', () => {
    const more = { ...project, unknownPart: 'kept' };
    expect(sameBesides(project, more, 'subwoofers')).toBe(false);
    expect(sameBesides(more, project, 'subwoofers')).toBe(false);
  });
});
