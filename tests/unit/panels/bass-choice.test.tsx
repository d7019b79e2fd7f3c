// @vitest-environment happy-dom
import { describe, expect, it } from 'vitest';
import { storeAlternative } from '../../../src/model/commands/alternatives.ts';
import { Alternatives } from '../../../src/panels/bass-choice/Alternatives.tsx';
import { Arrangements } from '../../../src/panels/bass-choice/Arrangements.tsx';
import { type ChoiceActions, ChoiceActionsProvider } from '../../../src/panels/bass-choice/actions.ts';
import { Headroom } from '../../../src/panels/bass-choice/Headroom.tsx';
import { Improve } from '../../../src/panels/bass-choice/Improve.tsx';
import type { AlternativeLine } from '../../../src/proposals/alternatives.ts';
import { CHAIN_FREQUENCIES_HZ } from '../../../src/proposals/chain.ts';
import type { ImproveGoal } from '../../../src/proposals/subwoofers/improve.ts';
import type { ChoiceState } from '../../../src/state/choice.ts';
import type { View } from '../../../src/state/view.tsx';
import { plausibleView } from './fixture.ts';
import { click, mount, only } from './mount.tsx';

const put = (view: View, part: Partial<ChoiceState>): void =>
  view.results.setState(({ choice }) => ({ choice: { ...choice, ...part } }));

const figures = (spreadDb: number) => ({ spreadDb, flatnessDb: spreadDb + 1, levelDb: 9, perSubwooferDb: -3 });

const press = (host: HTMLElement, word: string): void => {
  const label = [...host.querySelectorAll('label')].find((one) => one.textContent === word);
  if (!label) throw new Error(`no ${word}`);
  click(label.querySelector('input') ?? label);
};

describe('the trade’s arrangements', () => {
  it('tell of the seats what other damping makes of it, and of every column on request', () => {
    const view = plausibleView();
    const band = { nominal: figures(4.7), low: figures(4.4), high: figures(4.8) };
    put(view, { arrangements: { key: '', value: [{ id: 'now', places: [], figures: band }] } });
    const host = mount(view, <Arrangements />);
    const cells = () => Array.from(only(host, 'tbody').querySelectorAll('td'), (cell) => cell.textContent);
    expect(cells()).toEqual(['4.74.4\u00a0to 4.8', '5.7', '9.0', '\u22123.0']);
    press(host, 'Other damping in every column');
    expect(cells()[1]).toBe('5.75.4\u00a0to 5.8');
    expect(cells()[3]).toBe('\u22123.0\u22123.0\u00a0to \u22123.0');
  });
});

describe('headroom', () => {
  it('stands for every seat and band, and says short where it is', () => {
    const view = plausibleView();
    const seats = ['front-1', 'front-2', 'back-1'].map((id, i) => ({ id, marginDb: [6 - i, i === 2 ? -1.5 : 3] }));
    const host = mount(view, <Headroom headroom={{ askedDb: 105, bandsHz: [20, 25], seats }} />);
    const table = only(host, '.is-wide table');
    expect([...table.querySelectorAll('thead th')].map((cell) => cell.textContent)).toEqual([
      'Hz',
      'R1 s1',
      'R1 s2',
      'R2 s1',
    ]);
    const rows = [...table.querySelectorAll('tbody tr')].map((row) =>
      [...row.children].map((cell) => cell.textContent),
    );
    expect(rows).toEqual([
      ['20', '6.0', '5.0', '4.0'],
      ['25', '3.0', '3.0', '\u22121.5short'],
    ]);
  });
});

describe('alternatives', () => {
  it('are told apart seat by seat: over the bass and at the cursor', () => {
    const view = plausibleView();
    view.document.actions.apply('Keep', (project) => storeAlternative(project, { name: 'Back wall' }));
    const [kept] = view.document.getState().project.alternatives as { id: string }[];
    const at40 = Math.round(24 * Math.log2(40 / 20));
    // 3 dB more everywhere and 10 dB less at 40 Hz: a mean over 49 points that is 3 - 13/49 dB more.
    const line = (id: string, by: number, dip: number): AlternativeLine => ({
      id,
      subwoofers: 4,
      figures: { nominal: figures(4), low: figures(4), high: figures(4) },
      seats: ['front-1', 'front-2'].map((seat) => ({
        id: seat,
        levelDb: CHAIN_FREQUENCIES_HZ.map((_, f) => 10 + by - (f === at40 ? dip : 0)),
      })),
      leastMargin: null,
    });
    put(view, { compared: { key: '', value: [line('now', 0, 0), line(kept.id, 3, 13)] } });
    const host = mount(view, <Alternatives />);
    const tables = [...host.querySelectorAll('table')];
    expect(tables[1].querySelector('caption')?.textContent).toContain('Back wall, seat by seat');
    const row = [...tables[1].querySelectorAll('tbody tr')].find((one) => one.classList.contains('is-now'));
    expect([...(row?.children ?? [])].map((cell) => cell.textContent)).toEqual([
      'Row 1, seat 2',
      '12.7+2.7',
      '0.0\u221210.0',
    ]);
  });
});

describe('the search', () => {
  it('says what it weighs and asks for it', () => {
    const view = plausibleView();
    const asked: ImproveGoal[] = [];
    const actions: ChoiceActions = {
      improve: (goal) => asked.push(goal),
      stopImproving: () => undefined,
      saveFilters: () => undefined,
    };
    const host = mount(
      view,
      <ChoiceActionsProvider value={actions}>
        <Improve />
      </ChoiceActionsProvider>,
    );
    expect(host.textContent).toContain('counts as 0.15 dB more even, 1 dB louder as 0.05 dB');
    press(host, 'Even and flat');
    press(host, '2');
    expect(host.textContent).toContain('counts as 0.60 dB more even');
    const button = [...host.querySelectorAll('button')].find(({ textContent }) => textContent === 'Improve');
    if (!button) throw new Error('no button');
    click(button);
    expect(asked).toMatchObject([{ counts: [2], flatnessWeight: 0.6, levelWeight: 0.05, drives: true }]);
  });
});
