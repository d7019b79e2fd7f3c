// @vitest-environment happy-dom
import { act } from 'react';
import { describe, expect, it } from 'vitest';
import { SeatCard } from '../../../src/panels/card/SeatCard.tsx';
import { plausibleView } from './fixture.ts';
import { click, mount, only } from './mount.tsx';

const MINUS = '\u2212';

const card = (seatId: string) => {
  const view = plausibleView();
  view.session.setState({ seatId });
  return { view, host: mount(view, <SeatCard />) };
};

const figures = (host: HTMLElement) => [...host.querySelectorAll<HTMLElement>('[data-field]')];

const shownNumber = (element: HTMLElement): number =>
  Number((element.querySelector('b')?.textContent ?? '').replace(MINUS, '-'));

describe('seat card', () => {
  it('shows every figure of the picture with the report’s number, rounded as shown', () => {
    const { view, host } = card('back-2');
    const seats = view.results.getState().geometry?.value.seats ?? [];
    const i = seats.findIndex(({ id }) => id === 'back-2');
    const { picture } = seats[i];
    const expected: Record<string, [number, number]> = {
      distanceM: [picture.distanceM, 2],
      distanceHeights: [picture.distanceHeights, 2],
      horizontalDeg: [picture.horizontalDeg, 1],
      verticalDeg: [picture.verticalDeg, 1],
      offAxisDeg: [picture.offAxisDeg, 1],
      topElevationDeg: [picture.topElevationDeg, 1],
      centreElevationDeg: [picture.centreElevationDeg, 1],
      pixelsPerDegree: [picture.pixelsPerDegree, 0],
      clearanceMm: [picture.clearanceMm ?? Number.NaN, 0],
      'worstCase.clearanceMm': [picture.worstCase.clearanceMm ?? Number.NaN, 0],
    };
    for (const [name, [value, decimals]] of Object.entries(expected)) {
      const element = only(host, `[data-field="seats[${i}].picture.${name}"]`);
      expect(shownNumber(element), name).toBeCloseTo(Number(value.toFixed(decimals)), 9);
      expect(Number(element.dataset.value), name).toBe(shownNumber(element));
    }
    const seen = only(host, `[data-field="seats[${i}].picture.visibleFraction"]`);
    expect(shownNumber(seen)).toBe(Math.round(picture.visibleFraction * 100));
    expect(Number(seen.dataset.value)).toBeCloseTo(picture.visibleFraction, 1);
  });

  it('shows six figures of each of the eleven loudspeakers', () => {
    const { view, host } = card('front-2');
    const seat = view.results.getState().geometry?.value.seats.find(({ id }) => id === 'front-2');
    expect(host.querySelectorAll('[data-field^="loudspeakers."]').length).toBe(11 * 6);
    for (const one of seat?.loudspeakers ?? []) {
      const azimuth = only(host, `[data-field="loudspeakers.${one.id}.azimuthDeg"]`);
      expect(shownNumber(azimuth)).toBeCloseTo(Number(one.azimuthDeg.toFixed(1)), 9);
      const far = only(host, `[data-field="loudspeakers.${one.id}.distanceM"]`);
      expect(shownNumber(far)).toBeCloseTo(Number(one.distanceM.toFixed(2)), 9);
    }
  });

  it('gives no field twice and leaves out what does not exist', () => {
    const { host } = card('front-2');
    const names = figures(host).map(({ dataset }) => dataset.field);
    expect(new Set(names).size).toBe(names.length);
    expect(names.some((name) => name?.endsWith('clearanceMm'))).toBe(false);
  });

  it('shows the bass at the cursor and marks it stale when the document moved on', () => {
    const { view, host } = card('front-2');
    const bass = view.results.getState().bass?.value;
    const level = bass?.seats[1].levelDb[24] ?? Number.NaN;
    expect(shownNumber(only(host, '[data-field="seats[1].bass.levelDb"]'))).toBeCloseTo(Number(level.toFixed(1)), 9);
    expect(host.querySelectorAll('[aria-busy="true"]').length).toBe(0);
    act(() => view.document.setState({ revision: 1 }));
    expect(host.querySelectorAll('[aria-busy="true"]').length).toBe(2);
  });

  it('sits on request', () => {
    const { view, host } = card('back-1');
    const button = [...host.querySelectorAll('button')].find(({ textContent }) => textContent === 'Sit here');
    if (button) click(button);
    expect(view.session.getState()).toMatchObject({ mode: 'sit', seatId: 'back-1' });
  });
});
