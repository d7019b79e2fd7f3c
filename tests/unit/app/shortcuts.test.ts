// @vitest-environment happy-dom
import { describe, expect, it } from 'vitest';
import { KEY_GROUPS, shortcutFor } from '../../../src/app/shortcuts.ts';
import { plausibleView } from '../panels/fixture.ts';

const pressed = (key: string, more: KeyboardEventInit = {}) => new KeyboardEvent('keydown', { key, ...more });

const run = (key: string, more?: KeyboardEventInit) => {
  const view = plausibleView();
  shortcutFor(pressed(key, more))?.run({ view, actions: null, showKeys: () => undefined, showRooms: () => undefined });
  return view.session.getState();
};

describe('shortcuts', () => {
  it('changes the view, clears the stage and steps the frequency', () => {
    expect(run('2').mode).toBe('sit');
    expect(run('h').stageCleared).toBe(true);
    expect(run('`').stageCleared).toBe(true);
    expect(run('.').frequencyHz).toBeCloseTo(40 * 2 ** (1 / 24), 9);
    expect(run('[').seatId).toBe('front-1');
    expect(run('b').slice.shown).toBe(false);
  });

  it('brings the panels back by Escape before anything else', () => {
    const view = plausibleView();
    const press = (key: string) =>
      shortcutFor(pressed(key))?.run({
        view,
        actions: null,
        showKeys: () => undefined,
        showRooms: () => undefined,
      });
    view.session.setState({ stageCleared: true, selection: { kind: 'row', id: 'front' } });
    press('Escape');
    expect(view.session.getState()).toMatchObject({ stageCleared: false, selection: { kind: 'row', id: 'front' } });
    press('Escape');
    expect(view.session.getState().selection).toBeNull();
  });

  it('tells F6 from Shift and F6, and hears both while someone writes', () => {
    const input = document.createElement('input');
    document.body.append(input);
    const found: unknown[] = [];
    input.addEventListener('keydown', (event) => {
      found.push(shortcutFor(event)?.shown.join(' '));
    });
    for (const shiftKey of [false, true]) input.dispatchEvent(pressed('F6', { shiftKey, bubbles: true }));
    expect(found).toEqual(['F6', 'Shift F6']);
  });

  it('tells undo from redo and leaves the browser’s other keys alone', () => {
    expect(shortcutFor(pressed('z', { ctrlKey: true }))?.does).toMatch(/^Undo/);
    expect(shortcutFor(pressed('Z', { ctrlKey: true, shiftKey: true }))?.does).toBe('Redo');
    expect(shortcutFor(pressed('p', { ctrlKey: true }))).toBeUndefined();
    expect(shortcutFor(pressed('2', { altKey: true }))).toBeUndefined();
  });

  it('means nothing while someone writes', () => {
    const input = document.createElement('input');
    document.body.append(input);
    let found: unknown = 'not asked';
    input.addEventListener('keydown', (event) => {
      found = shortcutFor(event);
    });
    input.dispatchEvent(pressed('h', { bubbles: true }));
    expect(found).toBeUndefined();
  });

  it('lists no key twice in one place of the sheet of keys, and every line says what it does', () => {
    const outline = KEY_GROUPS.filter(({ title }) => title === 'In the outline');
    const anywhere = KEY_GROUPS.filter((group) => !outline.includes(group));
    for (const groups of [outline, anywhere]) {
      const keysOf = groups.flatMap((group) => group.lines.map(({ keys }) => keys.join('+')));
      expect(keysOf.length).toBeGreaterThan(4);
      expect(new Set(keysOf).size).toBe(keysOf.length);
    }
    const lines = KEY_GROUPS.flatMap((group) => group.lines);
    const pressedAs = lines.map(({ keys }) => keys.join('+'));
    expect(pressedAs).toContain('R');
    expect(lines.every(({ does }) => does.length > 3)).toBe(true);
  });
});
