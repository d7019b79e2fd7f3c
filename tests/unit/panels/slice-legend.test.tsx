// @vitest-environment happy-dom
import { act } from 'react';
import { describe, expect, it } from 'vitest';
import { SliceLegend } from '../../../src/panels/bass/SliceLegend.tsx';
import { plausibleView } from './fixture.ts';
import { mount } from './mount.tsx';

describe('legend of the bass floor', () => {
  it('stands while the floor is drawn: seen from outside, switched on, and with a subwoofer to hear', () => {
    const view = plausibleView();
    const host = mount(view, <SliceLegend />);
    const shown = () => host.querySelector('.legend') !== null;
    expect(shown()).toBe(true);
    act(() => view.session.setState({ mode: 'sit' }));
    expect(shown()).toBe(false);
    act(() => view.session.setState({ mode: 'overlook' }));
    expect(shown()).toBe(true);
    act(() => {
      view.document.actions.apply('Remove the subwoofers', (project) => ({
        ok: true,
        project: { ...project, subwoofers: [] },
      }));
    });
    expect(view.document.getState().project.subwoofers).toEqual([]);
    expect(shown()).toBe(false);
    act(() => {
      view.document.actions.undo();
    });
    expect(shown()).toBe(true);
  });
});
