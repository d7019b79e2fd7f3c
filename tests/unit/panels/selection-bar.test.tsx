// @vitest-environment happy-dom
import { act } from 'react';
import { describe, expect, it } from 'vitest';
import { Parameters } from '../../../src/panels/parameters/Parameters.tsx';
import { SelectionBar } from '../../../src/panels/selection/SelectionBar.tsx';
import type { SessionState } from '../../../src/state/session.ts';
import { plausibleView } from './fixture.ts';
import { click, mount, only } from './mount.tsx';

const L = { kind: 'loudspeaker', id: 'L' } as const;
const SEAT = { kind: 'seat', id: 'front-2' } as const;

const words = (host: HTMLElement, within: string): string[] =>
  [...host.querySelectorAll(`${within} button`)].map((button) => button.textContent ?? '');

describe('bar of what is chosen', () => {
  const shown = (part: Partial<SessionState>) => {
    const view = plausibleView();
    const host = mount(
      view,
      <>
        <SelectionBar />
        <Parameters />
      </>,
    );
    act(() => view.session.setState(part));
    return { bar: words(host, '.selection-bar'), form: words(host, '.item-actions') };
  };

  it('leaves to the form what the form offers', () => {
    expect(shown({ selection: L, formShown: true })).toEqual({
      bar: ['L + R together'],
      form: ['Duplicate', 'Lock', 'Remove'],
    });
    expect(shown({ selection: SEAT, formShown: true }).bar).toEqual([]);
  });

  it('offers it where the form is out of view', () => {
    expect(shown({ selection: L, formShown: false }).bar).toEqual(['L + R together', 'Duplicate', 'Lock', 'Remove']);
    expect(shown({ selection: SEAT, formShown: false }).bar).toEqual(['Duplicate', 'Lock', 'Remove']);
  });

  it('offers for several at once what the form of the first of them then does not', () => {
    expect(shown({ selection: L, alsoSelected: [SEAT], formShown: true })).toEqual({
      bar: ['L + R together', 'Duplicate', 'Lock', 'Remove'],
      form: [],
    });
  });

  it('offers on a surface what can be drawn and a way to close it, and is gone with the panels', () => {
    const view = plausibleView();
    const host = mount(view, <SelectionBar />);
    const bar = () => host.querySelector('.selection-bar');
    act(() => view.session.setState({ selection: { kind: 'surface', id: 'left' } }));
    expect(words(host, '.selection-bar')).toEqual(['Door', 'Window', 'Opening', 'Absorber', 'Box', 'Plan', '']);
    for (const part of [{ stageCleared: true }, { barAway: true }]) {
      act(() => view.session.setState(part));
      expect(bar()).toBeNull();
      act(() => view.session.setState({ stageCleared: false, barAway: false }));
      expect(bar()).not.toBeNull();
    }
    click(only(host, '[aria-label="Choose nothing"]'));
    expect(view.session.getState().selection).toBeNull();
    expect(bar()).toBeNull();
  });
});
