// @vitest-environment happy-dom
import { act } from 'react';
import { describe, expect, it } from 'vitest';
import { setField } from '../../../src/model/commands/set-field.ts';
import { followed } from '../../../src/model/follow.ts';
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
    return { view, host: mount(view, <SeatPlan maxWidth={300} maxHeight={126} />) };
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
    expect(host.querySelectorAll('section:first-of-type > ol > li[data-finding]').length).toBe(3);
    const first = host.querySelector<HTMLElement>('[data-finding]');
    const show = [...host.querySelectorAll('button')].find(({ textContent }) => textContent === 'Show me');
    if (show) click(show);
    const { mode, spotlight } = view.session.getState();
    expect(mode).toBe('overlook');
    expect(spotlight?.findingId).toBe(show?.closest<HTMLElement>('[data-finding]')?.dataset.finding);
    expect(first?.textContent).toMatch(/Source: \S/);
    expect(show?.textContent).toBe('Stop showing');
    if (show) click(show);
    expect(view.session.getState().spotlight).toBeNull();
    expect(show?.textContent).toBe('Show me');
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

describe('outline by keyboard', () => {
  const at = (host: HTMLElement, key: string) => only(host, `[data-key="${key}"]`);
  const keyed = (element: Element, key: string, more: KeyboardEventInit) =>
    act(() => {
      element.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true, ...more }));
    });
  const S1 = { kind: 'subwoofer', id: 'S1' } as const;
  const withS1 = () => {
    const view = plausibleView();
    view.session.setState({ selection: S1 });
    return { view, host: mount(view, <Outline />) };
  };
  const s1 = (view: ReturnType<typeof plausibleView>) => view.document.getState().project.subwoofers[0];

  it('moves what is chosen by Alt and arrows, a run of them one undo', () => {
    const { view, host } = withS1();
    const [x, , z] = s1(view).atM;
    for (let presses = 0; presses < 3; presses += 1) keyed(at(host, 'subwoofer:S1'), 'ArrowRight', { altKey: true });
    keyed(at(host, 'subwoofer:S1'), 'ArrowDown', { altKey: true, shiftKey: true });
    expect(s1(view).atM[0]).toBeCloseTo(x + 0.03, 9);
    expect(s1(view).atM[2]).toBeCloseTo(z + 0.1, 9);
    keyed(at(host, 'subwoofer:S1'), 'z', { ctrlKey: true });
    act(() => view.document.actions.undo());
    expect(s1(view).atM[0]).toBe(x);
    expect(view.document.getState().canUndo).toBe(false);
  });

  it('moves in move mode until Escape, and arrows walk again after it', () => {
    const { view, host } = withS1();
    const [x] = s1(view).atM;
    press(at(host, 'subwoofer:S1'), 'm');
    press(at(host, 'subwoofer:S1'), 'ArrowRight');
    expect(s1(view).atM[0]).toBeCloseTo(x + 0.01, 9);
    press(at(host, 'subwoofer:S1'), 'Escape');
    press(at(host, 'subwoofer:S1'), 'ArrowDown');
    expect(s1(view).atM[0]).toBeCloseTo(x + 0.01, 9);
    expect(document.activeElement?.getAttribute('data-key')).toBe('subwoofer:S2');
  });

  it('copies, locks, names and takes away', () => {
    const { view, host } = withS1();
    keyed(at(host, 'subwoofer:S1'), 'd', { ctrlKey: true });
    expect(view.session.getState().selection).toEqual({ kind: 'subwoofer', id: 'S5' });
    press(at(host, 'subwoofer:S5'), 'l');
    expect(view.document.getState().project.subwoofers[4].locked).toBe(true);
    press(at(host, 'subwoofer:S5'), 'Delete');
    expect(view.document.getState().project.subwoofers).toHaveLength(5);
    expect(view.session.getState().announcement.text).toMatch(/unlocked first/);
    press(at(host, 'subwoofer:S5'), 'l');
    press(at(host, 'subwoofer:S5'), 'F2');
    const name = only<HTMLInputElement>(host, '.line-name');
    write(name, 'Deep');
    press(name, 'Enter');
    expect(view.session.getState().selection).toEqual({ kind: 'subwoofer', id: 'Deep' });
    press(at(host, 'subwoofer:Deep'), 'Delete');
    expect(view.document.getState().project.subwoofers).toHaveLength(4);
  });

  it('chooses several with Ctrl and with Shift, and moves them together', () => {
    const { view, host } = withS1();
    press(at(host, 'subwoofer:S1'), 'ArrowDown');
    keyed(at(host, 'subwoofer:S2'), 'Enter', { ctrlKey: true });
    expect(view.session.getState()).toMatchObject({ selection: { id: 'S2' }, alsoSelected: [{ id: 'S1' }] });
    expect(host.querySelectorAll('[aria-selected="true"]')).toHaveLength(2);
    keyed(at(host, 'subwoofer:S4'), 'Enter', { shiftKey: true });
    expect(view.session.getState().alsoSelected.map(({ id }) => id)).toEqual(['S3', 'S2']);
    expect(only(host, '[role="tree"]').getAttribute('aria-multiselectable')).toBe('true');
  });

  it('adds from its menu by key', () => {
    const { view, host } = withS1();
    press(at(host, 'subwoofer:S1'), 'Insert');
    const menu = only(host, '[role="menu"]');
    expect(document.activeElement?.getAttribute('role')).toBe('menuitem');
    press(menu, 'End');
    expect(document.activeElement?.getAttribute('data-add')).toBe('column');
    click(only(host, '[data-add="subwoofer"]'));
    expect(view.document.getState().project.subwoofers).toHaveLength(5);
    expect(view.session.getState().selection).toEqual({ kind: 'subwoofer', id: 'S5' });
    expect(host.querySelector('[role="menu"]')).toBeNull();
  });
});

describe('history', () => {
  it('names what was done and goes back over several steps', () => {
    const view = plausibleView();
    const host = mount(view, <Outline />);
    const width = () => view.document.getState().project.picture.widthM;
    const before = width();
    act(() => {
      for (const [label, widthM] of [
        ['First', 2],
        ['Second', 2.1],
        ['Third', 2.2],
      ] as const)
        view.document.actions.apply(label, (project) => setField(project, 'picture.widthM', widthM));
    });
    click([...host.querySelectorAll('button')].find(({ textContent }) => textContent === 'History')!);
    const lines = () => [...host.querySelectorAll('.history li')].map(({ textContent }) => textContent);
    expect(lines()).toEqual(['Third undo', 'Second undo 2 steps', 'First undo 3 steps']);
    click(host.querySelectorAll('.history li button')[1]);
    expect(width()).toBe(2);
    expect(lines()).toEqual(['Third redo', 'Second redo', 'First undo']);
    click(host.querySelectorAll('.history li button')[0]);
    expect(width()).toBe(2.2);
    click(host.querySelectorAll('.history li button')[2]);
    expect(width()).toBe(before);
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

describe('parameters of more kinds', () => {
  const labelled = (host: HTMLElement, name: string): HTMLElement =>
    only(
      host,
      `[aria-label="${name}"], [id="${[...host.querySelectorAll('label')].find(({ textContent }) => textContent === name)?.htmlFor ?? 'none'}"]`,
    );

  it('hold a run of arrow presses together as one undo', () => {
    const view = plausibleView();
    const host = mount(view, <Parameters />);
    const width = labelled(host, 'Room width');
    for (let presses = 0; presses < 5; presses += 1) press(width, 'ArrowUp');
    act(() => {
      window.dispatchEvent(new KeyboardEvent('keydown', { key: 'z', ctrlKey: true }));
    });
    expect(view.document.getState().project.room.plan).toMatchObject({ widthM: 4.35 });
    act(() => view.document.actions.undo());
    expect(view.document.getState().project.room.plan).toMatchObject({ widthM: 4.3 });
    expect(view.document.getState().canUndo).toBe(false);
  });

  it('show one surface with what is in it, stated another way, and add to it', () => {
    const view = plausibleView();
    view.session.setState({ selection: { kind: 'surface', id: 'left' } });
    const host = mount(view, <Parameters />);
    expect(host.textContent).toContain('Window');
    const way = only<HTMLSelectElement>(host, 'select[data-path="room.surfaces.left:way"]');
    act(() => {
      way.value = 'octave';
      way.dispatchEvent(new Event('change', { bubbles: true }));
    });
    const octaves = [...host.querySelectorAll('input[data-path^="room.surfaces.left.absorption"]')];
    expect(octaves).toHaveLength(6);
    const before = view.document.getState().project.room.openings.length;
    click([...host.querySelectorAll('button')].find(({ textContent }) => textContent === 'Add a door')!);
    expect(view.document.getState().project.room.openings).toHaveLength(before + 1);
    expect(view.session.getState().selection?.kind).toBe('opening');
  });

  it('let a project judge by ranges of its own', () => {
    const view = plausibleView();
    const host = mount(view, <Parameters />);
    const add = [...host.querySelectorAll('button')].find(({ textContent }) => /Ranges of your own/.test(textContent));
    click(add!);
    const [rule] = Object.keys(view.document.getState().project.targets.overrides ?? {});
    expect(rule).toBeTruthy();
    const to = labelled(host, 'Range 1: to') as HTMLInputElement;
    write(to, '40');
    press(to, 'Enter');
    expect(view.document.getState().project.targets.overrides?.[rule].range[1]).toBe(40);
    write(to, '');
    press(to, 'Enter');
    expect(view.document.getState().project.targets.overrides?.[rule].range[1]).toBeNull();
  });

  it('count the seats of a row and follow a thing under its new name', () => {
    const view = plausibleView();
    view.session.setState({ selection: { kind: 'row', id: 'front' } });
    const host = mount(view, <Parameters />);
    const seats = labelled(host, 'Seats') as HTMLInputElement;
    expect(seats.value).toBe('3');
    write(seats, '4');
    press(seats, 'Enter');
    expect(view.document.getState().project.rows[0].seats).toHaveLength(4);
    const before = view.document.getState().project;
    const name = labelled(host, 'Name') as HTMLInputElement;
    write(name, 'stalls');
    press(name, 'Enter');
    const after = view.document.getState().project;
    expect(followed(before, after, { kind: 'row', id: 'front' })).toEqual({ kind: 'row', id: 'stalls' });
    expect(followed(after, before, { kind: 'row', id: 'stalls' })).toEqual({ kind: 'row', id: 'front' });
    expect(followed(before, { ...before, rows: before.rows.slice(1) }, { kind: 'row', id: 'front' })).toBeNull();
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
