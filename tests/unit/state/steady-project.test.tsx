// @vitest-environment happy-dom
import { act } from 'react';
import { describe, expect, it } from 'vitest';
import { moveLoudspeaker, moveSubwoofer } from '../../../src/model/commands/move.ts';
import type { Project } from '../../../src/model/project.ts';
import { useProjectBesides, useRestingProject } from '../../../src/state/steady-project.ts';
import { plausibleView } from '../panels/fixture.ts';
import { mount } from '../panels/mount.tsx';

interface Seen {
  besides: Project | null;
  resting: Project | null;
}

const Watch = ({ onSeen }: { readonly onSeen: (seen: Seen) => void }) => {
  onSeen({ besides: useProjectBesides('subwoofers'), resting: useRestingProject() });
  return null;
};

const watching = () => {
  const view = plausibleView();
  const seen: Seen = { besides: null, resting: null };
  mount(view, <Watch onSeen={(now) => Object.assign(seen, now)} />);
  const project = () => view.document.getState().project;
  const moveS2 = (zM: number) =>
    act(() => void view.document.actions.apply('Move', (from) => moveSubwoofer(from, 'S2', [1.5, 0.22, zM])));
  return { view, seen, project, moveS2 };
};

describe('a steady document', () => {
  it('stays the same one while only subwoofers change, and follows everything else', () => {
    const { view, seen, project, moveS2 } = watching();
    const before = seen.besides;
    moveS2(0.6);
    expect(project()).not.toBe(before);
    expect(seen.besides).toBe(before);
    act(() => void view.document.actions.apply('Move', (from) => moveLoudspeaker(from, 'L', [-1.3, 1.15, 0.42])));
    expect(seen.besides).toBe(project());
  });

  it('is held while a hand drags, and catches up when it lets go', () => {
    const { view, seen, project, moveS2 } = watching();
    const before = seen.resting;
    act(() => view.session.setState({ dragging: { kind: 'subwoofer', id: 'S2' } }));
    moveS2(0.6);
    expect(seen.resting).toBe(before);
    act(() => view.session.setState({ dragging: null }));
    expect(seen.resting).toBe(project());
    moveS2(0.7);
    expect(seen.resting).toBe(project());
  });
});
