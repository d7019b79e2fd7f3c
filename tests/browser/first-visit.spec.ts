import { expect, idle, probe, settled, test } from './support.ts';

test('the demo room is there, drawn, and computed', async ({ app }) => {
  await expect(app).toHaveTitle(/Parterre/);
  const canvas = app.locator('canvas').first();
  await expect(canvas).toBeVisible();
  await idle(app);
  const state = await probe(app, ({ view }) => {
    const { geometry, bass, slice, findings, modes } = view.results.getState();
    return {
      seats: geometry?.value.seats.length,
      bassSeats: bass?.value.seats.length,
      band: bass?.value.seats.every((seat) => seat.lowDb !== null),
      floor: slice?.value.levelDb.length,
      findings: findings?.value.length,
      modes: modes?.value.length,
    };
  });
  expect(state.seats).toBe(7);
  expect(state.bassSeats).toBe(7);
  expect(state.band).toBe(true);
  expect(state.floor).toBeGreaterThan(5000);
  expect(state.findings).toBeGreaterThan(10);
  expect(state.modes).toBeGreaterThan(50);
});

test('an idle room draws nothing', async ({ app }) => {
  await idle(app);
  const drawn = await probe(app, async ({ frames }) => {
    const before = frames();
    await new Promise((resolve) => setTimeout(resolve, 2000));
    return frames() - before;
  });
  expect(drawn).toBe(0);
});

test('nothing is asked of the network after loading, and the app works on without it', async ({ app, context }) => {
  await context.setOffline(true);
  const asked: string[] = [];
  app.on('request', (request) => {
    if (!request.url().startsWith('blob:')) asked.push(request.url());
  });
  await probe(app, ({ view }) => view.session.setState({ mode: 'sit', seatId: 'back-2', frequencyHz: 63 }));
  await settled(app);
  await probe(app, ({ view }) => view.session.setState({ mode: 'overlook', rightColumn: 'findings' }));
  await settled(app);
  expect(asked).toEqual([]);
});
