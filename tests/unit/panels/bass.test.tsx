// @vitest-environment happy-dom
import { act } from 'react';
import { describe, expect, it } from 'vitest';
import type { DecayReadout, HeardModes } from '../../../src/analysis/types.ts';
import { CIVIDIS_BYTES } from '../../../src/math/cividis.ts';
import { BassPlots } from '../../../src/panels/bass/BassPlots.tsx';
import { BassTrust } from '../../../src/panels/bass/BassTrust.tsx';
import { CurvesTable } from '../../../src/panels/bass/CurvesTable.tsx';
import { DECAY_SPAN_DB, decayAt, decayPixels, decayTopDb, timeTicks } from '../../../src/panels/bass/decay-draw.ts';
import { ModeList } from '../../../src/panels/bass/ModeList.tsx';
import { bandPath, levelPath, plotFrame, xOf, yOf } from '../../../src/panels/bass/plot.ts';
import { SliceControls } from '../../../src/panels/bass/SliceControls.tsx';
import { SliceLegend } from '../../../src/panels/bass/SliceLegend.tsx';
import { sliceWords } from '../../../src/panels/bass/words.ts';
import type { View } from '../../../src/state/view.tsx';
import { plausibleView } from './fixture.ts';
import { click, mount, only } from './mount.tsx';

const keyed = <T,>(value: T) => ({ variant: 'main', revision: 0, inputsKey: 'test', value });

const heard: HeardModes = {
  seatId: 'front-2',
  modes: Array.from({ length: 12 }, (_, i) => ({
    hz: 28.14 + 9 * i,
    order: i === 3 ? null : [0, i, 1],
    decayS: 0.4 + i / 100,
    levelDb: 20 - 3 * i,
  })),
  thirds: [],
};

const withHeard = (): View => {
  const view = plausibleView();
  view.results.setState({ heard: keyed(heard) });
  return view;
};

describe('the list of modes', () => {
  it('shows the loudest, all on request, and puts the cursor on one', () => {
    const view = withHeard();
    const host = mount(view, <ModeList />);
    const rows = () => [...host.querySelectorAll('tbody tr')].map((row) => row.textContent);
    expect(rows().length).toBe(8);
    expect(rows()[0]).toBe('28.10\u2009·\u20090\u2009·\u200910.40 s20.0');
    expect(rows()[3]).toContain('–');
    click(host.querySelectorAll('tbody button')[2]);
    expect(view.session.getState().frequencyHz).toBeCloseTo(46.14, 9);
    expect(only(host, 'tr.is-chosen').textContent).toContain('46.1');
    click(only(host, '.modes > button'));
    expect(rows().length).toBe(12);
  });
});

describe('where a slice lies', () => {
  it('is said with its side', () => {
    const slice = plausibleView().results.getState().slice?.value;
    if (!slice) throw new Error('no slice');
    const words = (normal: 'x' | 'z', atM: number) => sliceWords({ ...slice, cut: { normal, atM } }, 'metric');
    expect(words('x', -0.4)).toBe('40.0 Hz, standing 0.40 m left of the middle');
    expect(words('x', 0.4)).toBe('40.0 Hz, standing 0.40 m right of the middle');
    expect(words('x', -0.004)).toBe('40.0 Hz, standing on the middle line');
    expect(words('z', 2)).toBe('40.0 Hz, standing 2.00 m from the front');
    expect(sliceWords({ ...slice, bandHz: [20, 80] }, 'metric')).toBe('mean of 20 to 80 Hz, 1.11 m above the floor');
  });
});

describe('the legend of the bass floor', () => {
  const legend = (host: HTMLElement) => only(host, '.legend').dataset;
  it('says what the colours mean, marks the pointer’s value, and that a better answer is coming', () => {
    const view = plausibleView();
    const host = mount(view, <SliceLegend />);
    expect(legend(host).kind).toBe('level');
    expect(Number(legend(host).high) - Number(legend(host).low)).toBe(24);
    expect(host.textContent).toContain('40.0 Hz, 1.11 m above the floor');
    const middle = (Number(legend(host).high) + Number(legend(host).low)) / 2;
    act(() => view.session.setState({ probe: { atM: [0, 1, 2], levelDb: middle, value: middle } }));
    expect(only(host, '.legend-bar i').style.left).toBe('50%');
    act(() => view.results.setState({ refining: true }));
    expect(host.textContent).toContain('an estimate so far, being refined');
    act(() => view.session.setState({ mode: 'sit' }));
    expect(host.querySelector('.legend')).toBeNull();
  });

  it('is the seats’ unless the slice has one to itself', () => {
    const view = plausibleView();
    const host = mount(view, <SliceLegend />);
    const before = view.results.getState().slice?.value;
    if (!before) throw new Error('no slice');
    const levelDb = before.levelDb.map((_, i) => -41 + 5 * (i / before.levelDb.length));
    act(() => view.results.setState({ slice: keyed({ ...before, levelDb }) }));
    const common = [legend(host).low, legend(host).high];
    act(() => view.session.setState((state) => ({ slice: { ...state.slice, ownScale: true } })));
    expect(Number(common[1]) - Number(common[0])).toBe(24);
    expect([legend(host).low, legend(host).high]).toEqual(['-42', '-36']);
    expect(host.textContent).toContain('Level, own scale');
    expect(host.textContent).toContain('\u221240.5');
  });

  it('runs 12 dB either way of the seats’ mean, and as far either way as a pressure’s level goes', () => {
    const view = plausibleView();
    const before = view.results.getState().slice?.value;
    if (!before) throw new Error('no slice');
    const put = (part: Partial<typeof before>) =>
      act(() => view.results.setState({ slice: keyed({ ...before, ...part }) }));
    const host = mount(view, <SliceLegend />);
    put({ as: 'difference', meanDb: 4 });
    expect([legend(host).kind, legend(host).low, legend(host).high]).toEqual(['difference', '-12', '12']);
    expect(host.textContent).toContain('+12');
    const ones = new Float32Array(before.levelDb.length).fill(1);
    put({ as: 'pressure', pressure: { re: ones, im: ones } });
    expect(legend(host).kind).toBe('pressure');
    expect(Number(legend(host).low)).toBe(-Number(legend(host).high));
  });
});

describe('curves and decay', () => {
  it('say that there is no subwoofer instead of drawing silence', () => {
    const view = plausibleView();
    const host = mount(view, <BassPlots shown="curves" />);
    expect(host.textContent).not.toContain('No subwoofer yet');
    const { project } = view.document.getState();
    act(() => view.document.actions.load({ ...project, subwoofers: [] }));
    expect(only(host, '.bass-plot').textContent).toBe(
      'No subwoofer yet: curves and decay are drawn once there is one.',
    );
    expect(only(host, '.bass-reading').textContent).toBe('');
  });
});

describe('how far the bass is to be trusted', () => {
  it('is said with the room’s own figures, and not where there is nothing to trust', () => {
    const view = plausibleView();
    const host = mount(view, <BassTrust />);
    expect(host.textContent).toContain('below 28 Hz');
    expect(host.textContent).toContain('above 149 Hz');
    expect(host.textContent).toContain('nearer to a subwoofer than its own size');
    const { project } = view.document.getState();
    act(() => view.document.actions.load({ ...project, subwoofers: [] }));
    expect(host.textContent).toBe('');
  });
});

describe('the controls of the slice', () => {
  it('keep a pressure to one frequency and a height to a place of its own', () => {
    const view = plausibleView();
    const host = mount(view, <SliceControls />);
    const press = (word: string) => {
      const label = [...host.querySelectorAll('label')].find((one) => one.textContent === word);
      if (!label) throw new Error(`no ${word}`);
      click(label.querySelector('input') ?? label);
    };
    press('20 to 120');
    expect(view.session.getState().slice).toMatchObject({ span: 'band', bandHz: [20, 120] });
    press('Pressure');
    expect(view.session.getState().slice).toMatchObject({ as: 'pressure', span: 'one' });
    press('20 to 80');
    expect(view.session.getState().slice).toMatchObject({ as: 'level', span: 'band' });
    press('Across');
    expect(view.session.getState().slice).toMatchObject({ plane: 'across', acrossZM: null });
  });
});

describe('curves as drawn and as numbers', () => {
  it('runs through its points and closes its band', () => {
    const frame = plotFrame(600, 300);
    const axis = { lowDb: -12, highDb: 12 };
    const hz = [20, 200];
    expect(levelPath(frame, axis, hz, [12, -12])).toBe(
      `M${frame.left.toFixed(1)} ${frame.top.toFixed(1)}L${frame.right.toFixed(1)} ${frame.bottom.toFixed(1)}`,
    );
    expect(bandPath(frame, axis, hz, [-6, -6], [6, 6]).match(/[ML]/g)?.length).toBe(4);
    expect(bandPath(frame, axis, hz, [-6, -6], [6, 6]).endsWith('Z')).toBe(true);
    expect(xOf(frame, Math.sqrt(20 * 200))).toBeCloseTo((frame.left + frame.right) / 2, 9);
    expect(yOf(frame, axis, 0)).toBeCloseTo((frame.top + frame.bottom) / 2, 9);
  });

  it('stands in a table a twelfth of an octave a row, a seat a column', () => {
    const view = plausibleView();
    const bass = view.results.getState().bass?.value;
    if (!bass) throw new Error('no bass');
    view.results.setState({ curves: keyed({ frequenciesHz: bass.frequenciesHz, seats: bass.seats, fine: false }) });
    const host = mount(view, <CurvesTable />);
    expect([...host.querySelectorAll('thead th')].map((cell) => cell.textContent)).toEqual([
      'Hz',
      ...bass.seats.map((_, i) => (i < 3 ? `R1 s${i + 1}` : `R2 s${i - 2}`)),
    ]);
    expect(host.querySelector('thead abbr')?.getAttribute('title')).toBe('Row 1, seat 1');
    const rows = host.querySelectorAll('tbody tr');
    expect(rows.length).toBe(40);
    expect(rows[12].querySelector('th')?.textContent).toBe('40.0');
    expect(rows[12].querySelectorAll('td')[1].textContent).toBe(
      bass.seats[1].levelDb[24].toFixed(1).replace('-', '\u2212'),
    );
  });
});

describe('the picture of a decay as drawn', () => {
  const frequenciesHz = Float64Array.from({ length: 11 }, (_, i) => 20 * 10 ** (i / 10));
  const timesS = Float64Array.from({ length: 6 }, (_, i) => i / 5);
  /** 17 dB at the beginning, 50 dB less after a second, at every frequency. */
  const decay: DecayReadout = {
    seatId: 'front-2',
    frequenciesHz,
    timesS,
    levelDb: Float32Array.from({ length: 66 }, (_, i) => 17 - 50 * timesS[Math.floor(i / 11)]),
  };

  it('is read straight between its points', () => {
    expect(decayTopDb(decay)).toBe(18);
    expect(decayAt(decay, 63, 0.3)).toBeCloseTo(17 - 15, 5);
    expect(decayAt(decay, 20, 1)).toBeCloseTo(-33, 5);
  });

  it('has round times along its axis, written as they are', () => {
    expect(timeTicks(1.2).map(({ text }) => text)).toEqual(['0.0', '0.2', '0.4', '0.6', '0.8', '1.0', '1.2 s']);
    expect(timeTicks(0.75).map(({ timeS }) => timeS)).toEqual([0, 0.2, 0.4, 3 * 0.2]);
    for (const lastS of [0.08, 0.25, 0.4, 1, 1.23, 3, 7.7, 20]) {
      const ticks = timeTicks(lastS);
      expect(ticks.length).toBeGreaterThan(2);
      expect(ticks.length).toBeLessThanOrEqual(7);
      for (const { timeS, text } of ticks) expect(Number.parseFloat(text)).toBeCloseTo(timeS, 9);
      expect(ticks[ticks.length - 1].timeS).toBeLessThanOrEqual(lastS + 1e-6);
    }
  });

  it('has at a row the colour of its level', () => {
    const rows = 500;
    const pixels = decayPixels(decay, 18, 20, rows);
    // Rows between contours: 17 - 50 t half way between multiples of 6.
    for (const level of [15, 9, -9, -27]) {
      const row = Math.round(((17 - level) / 50) * rows - 0.5);
      const entry = Math.round(((level - 18) / DECAY_SPAN_DB + 1) * 255) * 3;
      for (let k = 0; k < 3; k += 1)
        expect(Math.abs(pixels[(row * 20 + 10) * 4 + k] - CIVIDIS_BYTES[entry + k])).toBeLessThanOrEqual(3);
    }
    // A contour at 12 dB is darker or lighter than the map beside it.
    const at = Math.round((5 / 50) * rows - 0.5);
    const green = (row: number) => pixels[(row * 20 + 10) * 4 + 1];
    expect(Math.abs(green(at) - green(at + 15))).toBeGreaterThan(20);
  });
});
