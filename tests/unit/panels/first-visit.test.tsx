// @vitest-environment happy-dom
import { act } from 'react';
import { describe, expect, it, vi } from 'vitest';
import { ActionsProvider, type AppActions } from '../../../src/panels/actions.ts';
import { FirstVisit } from '../../../src/panels/notices/FirstVisit.tsx';
import { plausibleView } from './fixture.ts';
import { click, mount, only } from './mount.tsx';

describe('the line of the first visit', () => {
  const shown = () => {
    const view = plausibleView();
    const firstVisitSeen = vi.fn();
    const host = mount(
      view,
      <ActionsProvider value={{ firstVisit: true, firstVisitSeen } as Partial<AppActions> as AppActions}>
        <FirstVisit says="Try this." />
      </ActionsProvider>,
    );
    expect(host.textContent).toBe('Try this.');
    return { view, host, firstVisitSeen };
  };

  it('goes for good with the first change of the document, also when that is taken back', () => {
    const { view, host, firstVisitSeen } = shown();
    act(() => {
      view.document.actions.apply('Rename', (project) => ({ ok: true, project: { ...project, name: 'Other' } }));
    });
    expect(firstVisitSeen).toHaveBeenCalledOnce();
    act(() => view.document.actions.undo());
    expect(host.textContent).toBe('');
  });

  it('goes for good with sitting and with being put away', () => {
    const sat = shown();
    act(() => sat.view.session.setState({ mode: 'sit' }));
    expect(sat.firstVisitSeen).toHaveBeenCalledOnce();
    const away = shown();
    click(only(away.host, 'button'));
    expect(away.firstVisitSeen).toHaveBeenCalledOnce();
  });

  it('only makes way while something is chosen', () => {
    const { view, host, firstVisitSeen } = shown();
    act(() => view.session.setState({ selection: { kind: 'row', id: 'front' } }));
    expect(host.textContent).toBe('');
    act(() => view.session.setState({ selection: null }));
    expect(host.textContent).toBe('Try this.');
    expect(firstVisitSeen).not.toHaveBeenCalled();
  });
});
