import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../src/analysis/types.ts';
import type { Edit } from '../../../src/model/commands/edit.ts';
import { moveRow, moveSubwoofer } from '../../../src/model/commands/move.ts';
import { setField } from '../../../src/model/commands/set-field.ts';
import type { Project } from '../../../src/model/project.ts';
import { changeText, steppedText, verdictText } from '../../../src/panels/outline/saying.ts';
import { createDocumentStore } from '../../../src/state/document.ts';
import { sampleProject } from '../model/sample.ts';

const done = (edit: Edit): Project => {
  if (!edit.ok) throw new Error(JSON.stringify(edit.reason));
  return edit.project;
};

describe('what the live region says', () => {
  const project = sampleProject();

  it('names what moved and where it stands, in the person’s units', () => {
    const moved = done(moveSubwoofer(project, 'S1', [-1.2, 0.2, 0.25]));
    expect(changeText(project, moved)).toBe(
      'Subwoofer S1: 1.20 m left of the middle, 0.20 m high, 0.25 m from the front wall.',
    );
    const feet = (one: Project): Project => ({ ...one, display: { units: 'imperial' } });
    // 1.2 m is 47.24 in, 0.2 m is 7.87 in, 0.25 m is 9.84 in.
    expect(changeText(feet(project), feet(moved))).toBe(
      'Subwoofer S1: 3 ft 11 1/4 in left of the middle, 7 7/8 in high, 9 7/8 in from the front wall.',
    );
  });

  it('tells a row and not each of its seats', () => {
    const moved = done(moveRow(project, 'front', { eyeZM: 3.4 }));
    expect(changeText(project, moved)).toBe('Row 1: eyes 3.40 m from the front wall.');
  });

  it('says nothing of what has no place', () => {
    expect(changeText(project, done(setField(project, 'subwoofers[0].gainDb', -3)))).toBeNull();
    expect(changeText(project, project)).toBeNull();
  });

  it('tells changed verdicts, the worst first', () => {
    const finding = (id: string, verdict: Finding['verdict'], seat: string | null): Finding =>
      ({ id, rule: 'sightline', verdict, seat, item: null }) as unknown as Finding;
    const before = [finding('a', 'met', 'front-1'), finding('b', 'missed', 'front-2'), finding('c', 'close', null)];
    const after = [finding('a', 'missed', 'front-1'), finding('b', 'met', 'front-2'), finding('c', 'close', null)];
    const text = verdictText(before, after, project);
    expect(text).toMatch(/^Now missed: .+ at Row 1, seat 1\. Now met: .+ at Row 1, seat 2\.$/);
    expect(verdictText(after, after, project)).toBeNull();
  });

  it('names what was taken back or done again, and only as long as nothing else was done', () => {
    const store = createDocumentStore(project);
    const move = (x: number) =>
      store.actions.apply('Move the sub.', (from) => moveSubwoofer(from, 'S1', [x, 0.2, 0.25]));
    const said = () => steppedText(store.getState());
    move(-1.2);
    expect(said()).toBeNull();
    store.actions.undo();
    expect(said()).toBe('Undone: Move the sub.');
    // There is nothing more to take back: what was said last still holds.
    store.actions.undo();
    expect(said()).toBe('Undone: Move the sub.');
    store.actions.redo();
    expect(said()).toBe('Redone: Move the sub.');
    move(-1);
    expect(said()).toBeNull();
    store.actions.mark('Drag it');
    move(-0.8);
    store.actions.undo();
    expect(said()).toBe('Undone: Drag it.');
    store.actions.load(project);
    expect(said()).toBeNull();
  });
});
