import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect, probe, settled, test } from './support.ts';

const violations = async (app: Page) => {
  const { violations: found } = await new AxeBuilder({ page: app }).analyze();
  return found.map(({ id, nodes }) => `${id}: ${nodes[0].html.slice(0, 120)}`);
};

/** Whether anything a person reads is cut off sideways. */
const overflow = (app: Page) => app.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);

const notBlank = async (app: Page) => {
  const colours = await probe(app, ({ stage }) => {
    const drawn = stage();
    const area = drawn?.freeArea();
    if (!drawn || !area) return 0;
    const seen = new Set<string>();
    for (let i = 1; i < 8; i += 1) {
      for (let j = 1; j < 6; j += 1) {
        const colour = drawn.colourAt(area.left + (area.width * i) / 8, area.top + (area.height * j) / 6);
        seen.add(colour.map((channel) => channel >> 4).join());
      }
    }
    return seen.size;
  });
  expect(colours).toBeGreaterThan(6);
};

for (const [width, height] of [
  [1280, 800],
  [1920, 1080],
  [390, 844],
] as const) {
  test(`${width} x ${height}: drawn, nothing cut, nothing against the accessibility rules`, async ({ app }) => {
    await app.setViewportSize({ width, height });
    await settled(app);
    await notBlank(app);
    expect(await violations(app)).toEqual([]);
    expect(await overflow(app)).toBeLessThanOrEqual(0);
    await probe(app, ({ view }) => view.session.setState({ mode: 'sit', rightColumn: 'findings' }));
    await settled(app);
    await notBlank(app);
    expect(await violations(app)).toEqual([]);
    expect(await overflow(app)).toBeLessThanOrEqual(0);
  });
}

test('with reduced motion a change of place is immediate', async ({ app }) => {
  await app.emulateMedia({ reducedMotion: 'reduce' });
  await settled(app);
  expect(await probe(app, ({ view }) => view.session.getState().reducedMotion)).toBe(true);
  const moved = await probe(app, async ({ view, stage, frames }) => {
    const before = frames();
    view.session.setState({ mode: 'sit', seatId: 'back-1' });
    while (frames() === before) await new Promise((resolve) => requestAnimationFrame(resolve));
    const seat = view.results.getState().geometry?.value.seats.find(({ id }) => id === 'back-1');
    const at = stage()?.camera().atM ?? [0, 0, 0];
    return Math.hypot(...at.map((value, axis) => value - (seat?.eyeM[axis] ?? 0)));
  });
  expect(moved).toBeLessThan(0.002);
});
