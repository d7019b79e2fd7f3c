// @vitest-environment happy-dom
import { act } from 'react';
import { describe, expect, it } from 'vitest';
import { setEqualiser, storeAlternative } from '../../../src/model/commands/alternatives.ts';
import { BesideChoice } from '../../../src/panels/bass/BesideChoice.tsx';
import { CurveReading, Curves } from '../../../src/panels/bass/Curves.tsx';
import { CurvesTable } from '../../../src/panels/bass/CurvesTable.tsx';
import { besideOptions } from '../../../src/panels/bass/useBeside.ts';
import { OverCurves } from '../../../src/panels/bass-choice/OverCurves.tsx';
import type { View } from '../../../src/state/view.tsx';
import { plausibleView } from './fixture.ts';
import { click, mount, only } from './mount.tsx';

const keyed = <T,>(value: T) => ({ variant: 'main', revision: 0, inputsKey: 'test', value });

/** The demo room with a filter of -6 dB at 40 Hz in use and an arrangement kept. */
const withFilter = (): View => {
  const view = plausibleView();
  const { bass } = view.results.getState();
  if (!bass) throw new Error('no bass');
  const { frequenciesHz, seats } = bass.value;
  view.results.setState({ curves: keyed({ frequenciesHz, seats, fine: false }) });
  view.document.actions.apply('Filter', (project) => setEqualiser(project, [{ frequencyHz: 40, gainDb: -6, q: 4 }]));
  view.document.actions.apply('Keep', (project) => storeAlternative(project, { name: 'Back wall' }));
  return view;
};

describe('what can be laid over the curves', () => {
  it('is what the document has: filters, the centre, what is kept; nothing without subwoofers', () => {
    const { project } = withFilter().document.getState();
    expect(besideOptions(project).map(({ word }) => word)).toEqual([
      'nothing',
      'the filters in use',
      'the filters proposed',
      'C and the crossover',
      'C, the dip filled',
      'Back wall',
    ]);
    expect(besideOptions({ ...project, loudspeakers: [], equaliser: undefined, alternatives: [] })).toHaveLength(2);
    expect(besideOptions({ ...project, subwoofers: [] })).toEqual([]);
  });
});

describe('curves with something over them', () => {
  it('draw it dashed at the chosen seat and say what it changes', () => {
    const view = withFilter();
    const drawn = mount(view, <Curves width={600} height={300} />);
    expect(drawn.querySelector('path.is-beside')).toBeNull();
    act(() => view.session.setState({ beside: 'filters' }));
    expect(only(drawn, 'path.is-beside').getAttribute('d')).not.toBe(only(drawn, 'path.is-chosen').getAttribute('d'));
    const said = mount(view, <CurveReading />);
    expect(said.textContent).toMatch(/^Row 1, seat 2 .* the filters in use .* dB \u22126\.0$/);
    act(() => view.session.setState({ beside: 'kept:gone' }));
    expect(drawn.querySelector('path.is-beside')).toBeNull();
  });

  it('stand in the table with both levels of the chosen seat and the change at every one', () => {
    const view = withFilter();
    act(() => view.session.setState({ beside: 'filters' }));
    const host = mount(view, <CurvesTable />);
    const heads = [...host.querySelectorAll('thead th')].map((cell) => cell.textContent);
    expect(heads.slice(0, 5)).toEqual(['Hz', 'R1 s1 change', 'R1 s2 as it is', 'R1 s2 with it', 'R1 s2 change']);
    expect(heads).toHaveLength(10);
    const at40 = [...host.querySelectorAll('tbody tr')].find((row) => row.querySelector('th')?.textContent === '40.0');
    const cells = [...(at40?.querySelectorAll('td') ?? [])].map((cell) =>
      Number(cell.textContent?.replace('\u2212', '-')),
    );
    expect(cells.filter((_, i) => i !== 1 && i !== 2)).toEqual(Array(7).fill(-6));
    expect(cells[2] - cells[1]).toBeCloseTo(-6, 1);
  });

  it('say that it is being worked out while it is', () => {
    const view = withFilter();
    act(() => view.session.setState({ beside: 'centre' }));
    expect(mount(view, <CurveReading />).textContent).toContain('C and the crossover: working it out');
  });

  it('are chosen by a list of names, and by a button that opens them', () => {
    const view = withFilter();
    const host = mount(view, <BesideChoice />);
    expect([...host.querySelectorAll('option')].map(({ value }) => value).slice(0, 2)).toEqual(['nothing', 'filters']);
    const button = mount(view, <OverCurves beside="filters" what="the filters in use" />);
    expect(button.textContent).toBe('Over the curve of Row 1, seat 2: the filters in use');
    click(only(button, 'button'));
    expect(view.session.getState()).toMatchObject({ beside: 'filters', bassSheet: 'curves' });
    expect(only(button, 'button').getAttribute('aria-pressed')).toBe('true');
    click(only(button, 'button'));
    expect(view.session.getState().beside).toBe('nothing');
  });
});
