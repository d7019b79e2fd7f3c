import { describe, expect, it } from 'vitest';
import { moveSubwoofer } from '../../../src/model/commands/move.ts';
import {
  apply,
  cancel,
  commit,
  type History,
  load,
  MOST_STEPS,
  mark,
  redo,
  undo,
  undoLabel,
} from '../../../src/model/history.ts';
import { sampleProject } from './sample.ts';

const slide = (history: History, x: number): History => {
  const edit = moveSubwoofer(history.present, 'S1', [x, 0.22, 1]);
  if (!edit.ok) throw new Error('refused');
  return apply(history, edit.project, 'Move S1');
};

const drag = (history: History, moves: number): History => {
  let dragged = mark(history, 'Move S1');
  for (let i = 0; i < moves; i++) dragged = slide(dragged, i / 100 - 1);
  return dragged;
};

describe('history', () => {
  it('200 moves in one gesture are one undo and one redo', () => {
    const project = sampleProject();
    const dragged = commit(drag(load(project), 200));
    expect(dragged.past).toHaveLength(1);
    expect(dragged.present.subwoofers[0].atM[0]).toBeCloseTo(0.99, 9);
    const undone = undo(dragged);
    expect(undone.present).toBe(project);
    expect(undone.past).toHaveLength(0);
    expect(redo(undone).present).toBe(dragged.present);
  });

  it('Escape goes back to the mark and leaves no step', () => {
    const project = sampleProject();
    const once = slide(load(project), 0);
    const cancelled = cancel(drag(once, 20));
    expect(cancelled.present).toBe(once.present);
    expect(cancelled.past).toHaveLength(1);
    expect(cancelled.gesture).toBeUndefined();
  });

  it('a gesture that comes back to where it began is no step and keeps what could be redone', () => {
    const undone = undo(slide(load(sampleProject()), 0));
    const idle = commit(mark(undone, 'Touch'));
    expect(idle.past).toHaveLength(0);
    expect(idle.future).toHaveLength(1);
  });

  it('undo in the middle of a gesture takes the gesture back; redo waits for its end', () => {
    const once = slide(load(sampleProject()), 0);
    const dragging = drag(once, 5);
    expect(undo(dragging).present).toBe(once.present);
    expect(redo(dragging)).toBe(dragging);
  });

  it('a mark commits a gesture that was left open', () => {
    const open = drag(load(sampleProject()), 3);
    const next = slide(mark(open, 'Second'), 1);
    expect(next.past).toHaveLength(1);
    expect(commit(next).past.map(({ label }) => label)).toEqual(['Move S1', 'Second']);
  });

  it('a new edit forgets what could be redone', () => {
    const undone = undo(slide(slide(load(sampleProject()), 0), 0.5));
    expect(undone.future).toHaveLength(1);
    expect(slide(undone, 1).future).toHaveLength(0);
  });

  it('keeps the newest steps up to the limit', () => {
    let history = load(sampleProject());
    for (let i = 0; i < MOST_STEPS + 50; i++) history = slide(history, i / 500);
    expect(history.past).toHaveLength(MOST_STEPS);
    for (let i = 0; i < MOST_STEPS + 50; i++) history = undo(history);
    expect(history.present.subwoofers[0].atM[0]).toBeCloseTo(49 / 500, 9);
    expect(undo(history)).toBe(history);
  });

  it('counts revisions up, whatever is done', () => {
    const start = load(sampleProject(), 7);
    const revisions = [start, slide(start, 0), undo(slide(start, 0)), redo(undo(slide(start, 0)))].map(
      ({ revision }) => revision,
    );
    expect(revisions).toEqual([7, 8, 9, 10]);
    expect(apply(start, start.present, 'Nothing')).toBe(start);
  });

  it('says what would be undone, and nothing after a file is loaded', () => {
    const history = slide(load(sampleProject()), 0);
    expect(undoLabel(history)).toBe('Move S1');
    expect(undoLabel(load(sampleProject()))).toBeUndefined();
  });
});
