import type { Page } from '@playwright/test';
import { violations } from './audit.ts';
import { tabThrough } from './by-keyboard.ts';
import { expect, idle, probe, settled, test } from './support.ts';

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
    // What hangs over the drawing: handles with their words, and what is said while a window is drawn.
    await probe(app, ({ view }) => view.session.setState({ selection: { kind: 'row', id: 'back' } }));
    await settled(app);
    await expect(app.locator('[data-handle]').first()).toBeAttached();
    expect(await violations(app)).toEqual([]);
    await probe(app, ({ view }) => view.session.setState({ tool: { kind: 'opening', what: 'window' } }));
    await settled(app);
    expect(await violations(app)).toEqual([]);
    await probe(app, ({ view }) =>
      view.session.setState({ tool: null, selection: null, mode: 'sit', rightColumn: 'findings' }),
    );
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

/** Names that Tab has to come by, in this order, besides whatever lies between them. */
const ON_THE_WAY = ['Rooms', 'Clear stage', 'Save', 'Before you build', 'Keys', 'Add', 'Project', 'Seat', 'Frequency'];

test('Tab comes by everything in order, always seen, and leaves the page again', async ({ app }) => {
  const stops = await tabThrough(app);
  const names = stops.map(({ name }) => name);
  expect(stops.filter(({ seen }) => !seen).map(({ name }) => name)).toEqual([]);
  expect(stops.filter(({ inView }) => !inView).map(({ name }) => name)).toEqual([]);
  expect(new Set(stops.map(({ order }) => order)).size, 'no stop twice').toBe(stops.length);
  let from = -1;
  for (const wanted of ON_THE_WAY) {
    const at = names.findIndex((name, i) => i > from && name.includes(wanted));
    expect(at, `${wanted} after stop ${from} of ${names.join(' | ')}`).toBeGreaterThan(from);
    from = at;
  }
});

test('a sheet keeps the focus while it is open and gives it back', async ({ app }) => {
  for (const [button, sheet] of [
    ['Rooms', 'Rooms'],
    ['Before you build', 'Before you build'],
    ['Keys', 'Keys'],
  ]) {
    const opener = app.getByRole('button', { name: button, exact: true });
    await opener.focus();
    await app.keyboard.press('Enter');
    await app.locator('dialog.sheet').waitFor();
    const inside = async () =>
      app.evaluate(
        () => document.activeElement?.closest('dialog') !== null || document.activeElement === document.body,
      );
    for (let i = 0; i < 12; i += 1) {
      expect(await inside(), `${sheet} after ${i} tabs`).toBe(true);
      await app.keyboard.press('Tab');
    }
    await app.keyboard.press('Escape');
    await app.locator('dialog.sheet').waitFor({ state: 'detached' });
    await expect(opener, sheet).toBeFocused();
  }
});

test('with reduced motion a signed slice stands still', async ({ app }) => {
  await app.emulateMedia({ reducedMotion: 'reduce' });
  await settled(app);
  await probe(app, ({ view }) =>
    view.session.setState(({ slice }) => ({ slice: { ...slice, shown: true, span: 'one', as: 'pressure' } })),
  );
  // Answers of the background are shown when they come: that is news, not movement.
  await idle(app);
  const drawn = await probe(app, async ({ frames }) => {
    const before = frames();
    for (let i = 0; i < 60; i += 1) await new Promise((resolve) => requestAnimationFrame(resolve));
    return frames() - before;
  });
  expect(drawn).toBe(0);
});
