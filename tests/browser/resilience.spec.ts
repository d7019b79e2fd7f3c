import { expect, probe, settled, test } from './support.ts';

test('the loss of the graphics context is said, survived and leaves nothing behind', async ({ app }) => {
  await app.locator('[data-seat="back-1"]').click();
  await settled(app);
  const before = await probe(app, ({ stage }) => stage()?.memory());
  await app.evaluate(() => {
    const canvas = document.querySelector('canvas');
    const away = canvas?.getContext('webgl2')?.getExtension('WEBGL_lose_context');
    Object.assign(window, { away });
    away?.loseContext();
  });
  await expect(app.getByText('The picture of the room is away for a moment').first()).toBeVisible();
  await probe(app, ({ view }) => view.session.setState({ frequencyHz: 50 }));
  await expect(app.locator('.ribbon-plot input')).toHaveAttribute('aria-valuetext', /^50/);
  await app.evaluate(() => (window as unknown as { away?: { restoreContext(): void } }).away?.restoreContext());
  await expect(app.getByText('The picture of the room is away for a moment')).toHaveCount(0);
  await settled(app);
  const counts = (await probe(app, ({ stage }) => stage()?.objects(640, 400))) ?? {};
  expect(Object.keys(counts).length).toBeGreaterThan(20);
  expect(await app.locator('canvas[data-engine]').count()).toBe(1);
  const after = await probe(app, ({ stage }) => stage()?.memory());
  expect(after?.geometries ?? 0).toBeLessThanOrEqual((before?.geometries ?? 0) + 2);
});

test('the same room opened twenty times keeps the count of graphics objects', async ({ app }) => {
  const memory = () => probe(app, ({ stage }) => stage()?.memory());
  const reload = () =>
    probe(app, ({ view }) => view.document.actions.load(structuredClone(view.document.getState().project)));
  await reload();
  await settled(app);
  const before = await memory();
  for (let times = 0; times < 20; times += 1) await reload();
  await settled(app);
  expect(await memory()).toEqual(before);
});

test('a room without subwoofers, and one seat alone, are shown without a fault', async ({ app }) => {
  await probe(app, ({ view }) => {
    const { project } = view.document.getState();
    const [row] = project.rows;
    view.document.actions.load({
      ...project,
      subwoofers: [],
      loudspeakers: [],
      rows: [{ ...row, seats: [row.seats[1]] }],
    });
  });
  await settled(app);
  await expect(app.locator('[data-seat-card]')).toContainText('Row 1, seat 1');
  await probe(app, ({ view }) => view.session.setState({ mode: 'sit' }));
  await settled(app);
  const counts = (await probe(app, ({ stage }) => stage()?.objects(640, 400))) ?? {};
  expect(counts['picture:picture'] ?? 0).toBeGreaterThan(2000);
});
