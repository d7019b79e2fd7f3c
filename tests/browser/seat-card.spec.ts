import type { Page } from '@playwright/test';
import { DEMO, evaluate, expect, idle, probe, type Report, test } from './support.ts';

/** The ribbon's cursor stands on a frequency of the report: 20 x 2^(24/24) Hz. */
const CURSOR = 24;

/** The report's value for the place a figure names, for example `seats[3].picture.worstCase.clearanceMm`. */
const reported = (report: Report, place: string): unknown => {
  const value = place.split(/[.[\]]+/).reduce<unknown>((inside, key) => {
    if (Array.isArray(inside)) return inside.find((entry) => entry?.id === key) ?? inside[Number(key)];
    return (inside as Record<string, unknown> | undefined)?.[key];
  }, report);
  return Array.isArray(value) ? value[CURSOR] : value;
};

const figures = (app: Page) =>
  app.locator('[data-field]').evaluateAll((nodes) =>
    nodes.map((node) => ({
      place: node.getAttribute('data-field') ?? '',
      value: Number(node.getAttribute('data-value')),
      step: Number(node.getAttribute('data-step')),
      text: node.querySelector('b')?.textContent ?? '',
    })),
  );

test('every figure on every seat card is the report’s, rounded', async ({ app }) => {
  const report = evaluate(DEMO);
  let compared = 0;
  for (const [index, seat] of report.seats.entries()) {
    await probe(
      app,
      ({ view }, id) => view.session.setState({ seatId: id, rightColumn: 'seat', frequencyHz: 40 }),
      seat.id,
    );
    await idle(app);
    const shown = await figures(app);
    expect(shown.filter(({ place }) => place.startsWith(`seats[${index}].`)).length).toBeGreaterThan(12);
    for (const { place, value, step, text } of shown) {
      const path = place.startsWith('loudspeakers.') ? `seats[${index}].${place}` : place;
      const wanted = reported(report, path);
      expect(typeof wanted, `${path} is in the report`).toBe('number');
      // Half a step, and a hair for the report's own nine decimals.
      expect(Math.abs(value - Number(wanted)), `${path}: shown ${text}, report ${wanted}`).toBeLessThanOrEqual(
        step / 2 + 1e-8,
      );
      const read = Number(text.replace('−', '-').replace('+', '')) / (path.endsWith('visibleFraction') ? 100 : 1);
      expect(read, `${path} reads ${text}`).toBeCloseTo(value, 6);
      compared += 1;
    }
  }
  expect(compared).toBeGreaterThan(7 * (12 + 11 * 5));
});
