// @vitest-environment happy-dom
import { act } from 'react';
import { describe, expect, it } from 'vitest';
import { Findings } from '../../../src/panels/findings/Findings.tsx';
import { Notices } from '../../../src/panels/notices/Notices.tsx';
import { Outline } from '../../../src/panels/outline/Outline.tsx';
import { Parameters } from '../../../src/panels/parameters/Parameters.tsx';
import { Ribbon } from '../../../src/panels/ribbon/Ribbon.tsx';
import { SeatPlan } from '../../../src/panels/seats/SeatPlan.tsx';
import { plausibleView } from './fixture.ts';
import { click, mount, only, press, write } from './mount.tsx';

describe('seat plan', () => {
  const plan = () => {
    const view = plausibleView();
    return { view, host: mount(view, <SeatPlan turn="across" maxWidth={300} maxHeight={126} />) };
  };

  it('is one tab stop whose arrows choose and whose Enter sits', () => {
    const { view, host } = plan();
    expect(host.querySelectorAll('button[tabindex="0"]').length).toBe(1);
    // The picture is at the left, so up is a sitter's right hand: from front-2 to front-3.
    press(only(host, '[data-seat="front-2"]'), 'ArrowUp');
    expect(view.session.getState().seatId).toBe('front-3');
    expect(document.activeElement?.getAttribute('data-seat')).toBe('front-3');
    press(only(host, '[data-seat="front-3"]'), 'ArrowRight');
    // x = 0.72 m: back-3 at 0.40 m stands nearer to the line than back-4 at 1.20 m
    expect(view.session.getState().seatId).toBe('back-3');
    press(only(host, '[data-seat="back-3"]'), 'Enter');
    expect(view.session.getState()).toMatchObject({ seatId: 'back-3', mode: 'sit' });
  });

  it('gives each chair its name and its worst verdict in words', () => {
    const { view, host } = plan();
    const findings = view.results.getState().findings?.value ?? [];
    for (const chair of host.querySelectorAll<HTMLElement>('.chair')) {
      const mine = findings.filter(({ seat }) => seat === chair.dataset.seat).map(({ verdict }) => verdict);
      const worst = ['missed', 'close', 'met'].find((verdict) => mine.some((one) => one === verdict));
      expect(chair.getAttribute('aria-label')).toMatch(new RegExp(`^Row \\d, seat \\d, ${worst}$`));
    }
  });
});

describe('findings', () => {
  it('opens with three things to fix first and lights a cause in overlook', () => {
    const view = plausibleView();
    view.session.setState({ mode: 'sit' });
    const host = mount(view, <Findings />);
    expect(only(host, 'section:first-of-type h2').textContent).toBe('Three things to fix first');
    expect(host.querySelectorAll('section:first-of-type > ol > li').length).toBe(3);
    const first = host.querySelector<HTMLElement>('[data-finding]');
    const show = [...host.querySelectorAll('button')].find(({ textContent }) => textContent === 'Show me');
    if (show) click(show);
    const { mode, spotlight } = view.session.getState();
    expect(mode).toBe('overlook');
    expect(spotlight?.findingId).toBe(show?.closest<HTMLElement>('[data-finding]')?.dataset.finding);
    expect(first?.textContent).toMatch(/Source: \S/);
  });
});

describe('outline', () => {
  it('chooses by keyboard and unfolds what is chosen elsewhere', () => {
    const view = plausibleView();
    view.session.setState({ selection: { kind: 'subwoofer', id: 'S3' } });
    const host = mount(view, <Outline />);
    const chosen = only(host, '[aria-selected="true"]');
    expect(chosen.dataset.key).toBe('subwoofer:S3');
    press(chosen, 'ArrowDown');
    press(only(host, '[data-key="subwoofer:S4"]'), 'Enter');
    expect(view.session.getState().selection).toEqual({ kind: 'subwoofer', id: 'S4' });
  });
});

describe('parameters', () => {
  const field = (host: HTMLElement, label: string): HTMLInputElement => {
    const found = [...host.querySelectorAll('label')].find(({ textContent }) => textContent === label);
    return only<HTMLInputElement>(host, `[id="${found?.htmlFor}"]`);
  };
  const widthM = (view: ReturnType<typeof plausibleView>) => {
    const { plan } = view.document.getState().project.room;
    return plan.shape === 'rectangle' ? plan.widthM : Number.NaN;
  };

  it('takes a length in any writing, as one undo', () => {
    const view = plausibleView();
    const host = mount(view, <Parameters />);
    const width = field(host, 'Room width');
    expect(width.value).toBe('4.30 m');
    write(width, '14\' 9 1/4"');
    press(width, 'Enter');
    // 177.25 in x 0.0254 m
    expect(widthM(view)).toBeCloseTo(4.50215, 9);
    act(() => view.document.actions.undo());
    expect(widthM(view)).toBe(4.3);
    expect(view.document.getState().canUndo).toBe(false);
  });

  it('refuses in a sentence that names the range, and Escape puts the old number back', () => {
    const view = plausibleView();
    const host = mount(view, <Parameters />);
    const width = field(host, 'Room width');
    write(width, '99');
    press(width, 'Enter');
    expect(only(host, '[role="alert"]').textContent).toMatch(/1\.50 m to 30\.00 m/);
    expect(widthM(view)).toBe(4.3);
    press(width, 'Escape');
    expect(width.value).toBe('4.30 m');
    expect(host.querySelector('[role="alert"]')).toBeNull();
  });

  it('steps by the arrows, a centimetre for a length', () => {
    const view = plausibleView();
    const host = mount(view, <Parameters />);
    press(field(host, 'Room width'), 'ArrowUp');
    expect(widthM(view)).toBeCloseTo(4.31, 9);
  });
});

describe('frequency ribbon', () => {
  it('is a slider that says hertz and the chosen seat’s level and drives the floor’s frequency', () => {
    const view = plausibleView();
    const host = mount(view, <Ribbon />);
    const slider = only<HTMLInputElement>(host, 'input[type="range"]');
    const level = view.results.getState().bass?.value.seats[1].levelDb[24] ?? Number.NaN;
    const text = level.toFixed(1).replace('-', '\u2212');
    expect(slider.getAttribute('aria-valuetext')).toBe(`40.0 Hz, ${text} dB at Row 1, seat 2`);
    write(slider, '48');
    expect(view.session.getState().frequencyHz).toBeCloseTo(80, 9);
  });

  it('says that it is computing while the bass is of an older document', () => {
    const view = plausibleView();
    view.document.setState({ revision: 1 });
    expect(only(mount(view, <Ribbon />), '.ribbon').getAttribute('aria-busy')).toBe('true');
  });
});

describe('notices', () => {
  it('gives a title and a line a fault in a polite live region, and goes when put away', () => {
    const view = plausibleView();
    view.session.setState({ notices: [{ id: 7, tone: 'caution', title: 'cellar.json', lines: ['one', 'two'] }] });
    const host = mount(view, <Notices />);
    expect(only(host, '[aria-live="polite"]').querySelectorAll('li').length).toBe(2);
    click(only(host, 'button'));
    expect(view.session.getState().notices).toEqual([]);
    expect(host.querySelectorAll('li').length).toBe(0);
  });
});
