import { describe, expect, it, vi } from 'vitest';
import { handlesFor } from '../../../../src/model/handles/handles.ts';
import type { ItemRef } from '../../../../src/model/project.ts';
import { choose } from '../../../../src/scene/interaction/choosing.ts';
import { plausibleView } from '../../panels/fixture.ts';

const seat = (id: string): ItemRef => ({ kind: 'seat', id });

describe('a click on a seat', () => {
  const begin = () => {
    const view = plausibleView();
    let now = 10_000;
    vi.spyOn(performance, 'now').mockImplementation(() => now);
    const click = (ref: ItemRef | null, afterMs = 2000, add = false) => {
      now += afterMs;
      choose(view, ref, add);
      return view.session.getState();
    };
    click(null);
    return { view, click };
  };

  it('chooses a sofa first, then the seat of it, and any seat of it from then on', () => {
    const { click } = begin();
    expect(click(seat('front-3'))).toMatchObject({ selection: { kind: 'row', id: 'front' }, seatId: 'front-3' });
    expect(click(seat('front-3')).selection).toEqual(seat('front-3'));
    expect(click(seat('front-1')).selection).toEqual(seat('front-1'));
    expect(click({ kind: 'subwoofer', id: 'S1' }).selection?.id).toBe('S1');
    expect(click(seat('front-1')).selection).toEqual({ kind: 'row', id: 'front' });
  });

  it('chooses a chair that stands by itself at once', () => {
    const { click } = begin();
    expect(click(seat('back-2'))).toMatchObject({ selection: seat('back-2'), seatId: 'back-2' });
  });

  it('sits in the seat when it comes twice quickly, also on a sofa', () => {
    const { click } = begin();
    click(seat('front-3'));
    expect(click(seat('front-3'), 200)).toMatchObject({ mode: 'sit', seatId: 'front-3' });
  });

  it('adds the seat itself while things are gathered', () => {
    const { click } = begin();
    click({ kind: 'subwoofer', id: 'S1' });
    expect(click(seat('front-1'), 2000, true).alsoSelected).toEqual([seat('front-1')]);
  });
});

describe('two handles of one drawing', () => {
  it('say which moves the sofa and which the seat', () => {
    const { project } = plausibleView().document.getState();
    const tags = (ref: ItemRef) =>
      handlesFor(project, [ref]).flatMap(({ kind, tag }) => (tag === undefined ? [] : [`${kind}: ${tag}`]));
    expect(tags(seat('front-2'))).toEqual(['place: seat 2', 'rowPlace: sofa']);
    expect(tags(seat('back-2'))).toEqual([]);
    expect(tags({ kind: 'row', id: 'back' })).toEqual([]);
  });
});
