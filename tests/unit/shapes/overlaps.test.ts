import { describe, expect, it } from 'vitest';
import twoRow from '../../../src/model/presets/two-row.json';
import type { ItemRef, Project } from '../../../src/model/project.ts';
import { projectSchema } from '../../../src/model/schema/project.ts';
import { overlapsOf } from '../../../src/shapes/overlaps.ts';
import { overlapText } from '../../../src/words/things.ts';

const project = projectSchema.parse(twoRow);
const everything = (from: Project): ItemRef[] => [
  ...from.loudspeakers.map(({ id }): ItemRef => ({ kind: 'loudspeaker', id })),
  ...from.subwoofers.map(({ id }): ItemRef => ({ kind: 'subwoofer', id })),
  ...from.rows.map(({ id }): ItemRef => ({ kind: 'row', id })),
  ...from.room.objects.map(({ id }): ItemRef => ({ kind: 'object', id })),
  { kind: 'picture', id: 'picture' },
];
const subwooferAt = (atM: [number, number, number]): Project => ({
  ...project,
  subwoofers: project.subwoofers.map((one, i) => (i === 0 ? { ...one, atM } : one)),
});
const S1: ItemRef = { kind: 'subwoofer', id: 'S1' };

describe('what stands in another’s room', () => {
  it('is nothing in the demo: chairs share arms, rows stand on their risers, cabinets stand behind the cloth', () => {
    expect(overlapsOf(project, everything(project))).toEqual([]);
  });

  it('is found both ways round, once, with both names', () => {
    const [x, , z] = project.room.objects[0].maxM;
    const into = subwooferAt([x, 0.22, z]);
    expect(overlapsOf(into, [S1])).toEqual([{ a: S1, b: { kind: 'object', id: 'side-table' } }]);
    expect(overlapsOf(into, [{ kind: 'object', id: 'side-table' }])).toHaveLength(1);
    expect(overlapsOf(into, everything(into))).toHaveLength(1);
    expect(overlapText(into, S1, { kind: 'object', id: 'side-table' })).toBe(
      'Subwoofer S1 and Side table stand in the same place.',
    );
  });

  it('lets things touch', () => {
    // S2 stands at x = 1.88, both are 0.42 m wide; L is out of the way at z = 0.42 further left.
    const beside = 1.88 - 0.42;
    const at = (x: number) => overlapsOf(subwooferAt([x, 0.22, 0.27]), [S1]).map(({ b }) => b.id);
    expect(at(beside)).not.toContain('S2');
    expect(at(beside + 0.03)).toContain('S2');
    // R's cabinet hangs from y = 0.85 on its stand over the carpet: turned or not it is not in a low subwoofer's room.
    expect(overlapsOf(project, [{ kind: 'loudspeaker', id: 'R' }])).toEqual([]);
  });

  it('finds a subwoofer in a riser', () => {
    const found = overlapsOf(subwooferAt([1.6, 0.22, 4.6]), [S1]);
    expect(found.map(({ b }) => b)).toContainEqual({ kind: 'row', id: 'back' });
  });
});
