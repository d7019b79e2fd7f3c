import { expect, probe, settled, test } from './support.ts';

test('by mouse: sit from the plan, come back, sweep the ribbon, read the floor, be shown a cause', async ({ app }) => {
  const chair = app.locator('[data-seat="back-3"]');
  await chair.click();
  await settled(app);
  await expect(app.locator('[data-seat-card]')).toContainText('Row 2, seat 3');
  await chair.dblclick();
  await settled(app);
  expect(await probe(app, ({ view }) => view.session.getState().mode)).toBe('sit');
  const eye = await probe(app, ({ view, stage }) => {
    const seat = view.results.getState().geometry?.value.seats.find(({ id }) => id === 'back-3');
    const camera = stage()?.camera();
    return { seat: seat?.eyeM, camera: camera?.atM };
  });
  eye.camera?.forEach((value, axis) => {
    expect(Math.abs(value - (eye.seat?.[axis] ?? 0))).toBeLessThan(0.002);
  });

  await app.getByText('Overlook', { exact: true }).click();
  await settled(app);
  await expect(app.getByRole('slider', { name: 'Frequency of the bass floor' })).toBeAttached();
  const box = await app.locator('.ribbon-plot').boundingBox();
  if (!box) throw new Error('no ribbon');
  const before = await probe(app, ({ view }) => Array.from(view.results.getState().slice?.value.levelDb ?? []));
  await app.mouse.move(box.x + box.width * 0.3, box.y + box.height / 2);
  await app.mouse.down();
  await app.mouse.move(box.x + box.width * 0.62, box.y + box.height / 2, { steps: 4 });
  await app.mouse.up();
  await settled(app);
  const swept = await probe(app, ({ view }) => {
    const { slice: floor } = view.results.getState();
    const { frequencyHz } = view.session.getState();
    return { frequencyHz, floorHz: floor?.value.frequencyHz, levels: Array.from(floor?.value.levelDb ?? []) };
  });
  expect(swept.frequencyHz).toBeGreaterThan(70);
  expect(swept.floorHz).toBe(swept.frequencyHz);
  expect(swept.levels.some((level, i) => Math.abs(level - before[i]) > 3)).toBe(true);

  const spot = await probe(app, ({ view, stage }) => {
    const floor = view.results.getState().slice?.value;
    return floor ? stage()?.project([0.4, floor.cut.atM, 2.2]) : null;
  });
  if (!spot) throw new Error('the floor is not in view');
  await app.mouse.move(spot.x, spot.y);
  await expect.poll(() => probe(app, ({ view }) => view.session.getState().probe?.levelDb ?? null)).not.toBeNull();
  await expect(app.locator('[data-probe]').first()).toContainText('dB');

  await app.getByText('Findings', { exact: true }).first().click();
  const cameraBefore = await probe(app, ({ stage }) => stage()?.camera().atM.join());
  await app
    .getByRole('button', { name: /show me/i })
    .first()
    .click();
  await settled(app);
  const after = await probe(app, ({ view, stage }) => ({
    camera: stage()?.camera().atM.join(),
    lit: view.session.getState().spotlight?.items.length ?? 0,
  }));
  expect(after.lit).toBeGreaterThan(0);
  expect(after.camera).not.toBe(cameraBefore);
});

test('by keyboard alone: seats, sitting, frequency, a number changed and taken back', async ({ app }) => {
  await app.keyboard.press(']');
  expect(await probe(app, ({ view }) => view.session.getState().seatId)).toBe('front-3');
  await app.keyboard.press('2');
  await settled(app);
  expect(await probe(app, ({ view }) => view.session.getState().mode)).toBe('sit');
  await app.keyboard.press('1');
  await settled(app);
  expect(await probe(app, ({ view }) => view.session.getState().mode)).toBe('overlook');

  const focusIs = (selector: string) =>
    app.evaluate((wanted) => document.activeElement?.matches(wanted) ?? false, selector);
  const tabTo = async (selector: string) => {
    for (let presses = 0; presses < 80; presses += 1) {
      if (await focusIs(selector)) return;
      await app.keyboard.press('Tab');
    }
    throw new Error(`the Tab key does not reach ${selector}`);
  };
  await tabTo('.ribbon input[type="range"]');
  const hz = () => probe(app, ({ view }) => view.session.getState().frequencyHz);
  const from = await hz();
  await app.keyboard.press('ArrowRight');
  expect((await hz()) / from).toBeCloseTo(2 ** (1 / 24), 6);
  await app.keyboard.press('Home');
  expect(await hz()).toBe(20);

  await tabTo('[role="tree"] [tabindex="0"], [role="treeitem"][tabindex="0"]');
  await app.keyboard.press('Home');
  for (let presses = 0; presses < 40; presses += 1) {
    if ((await probe(app, ({ view }) => view.session.getState().selection?.kind)) === 'picture') break;
    await app.keyboard.press('ArrowDown');
    await app.keyboard.press('Enter');
  }
  expect(await probe(app, ({ view }) => view.session.getState().selection?.kind)).toBe('picture');
  await app.getByLabel('Picture width', { exact: true }).focus();
  await app.keyboard.press('Control+a');
  await app.keyboard.type('7 ft 6 in');
  await app.keyboard.press('Enter');
  const widthM = () => probe(app, ({ view }) => view.document.getState().project.picture.widthM);
  expect(await widthM()).toBeCloseTo(2.286, 3);
  await app.keyboard.press('Control+a');
  await app.keyboard.type('99 m');
  await app.keyboard.press('Enter');
  await expect(app.getByText(/0\.30 m to 12\.00 m/).first()).toBeVisible();
  expect(await widthM()).toBeCloseTo(2.286, 3);
  await app.keyboard.press('Escape');
  await app.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
  await app.keyboard.press('Control+z');
  expect(await widthM()).toBe(2.3);
  await app.keyboard.press('Control+Shift+z');
  expect(await widthM()).toBeCloseTo(2.286, 3);
});

test('a seat is moved on the floor by the mouse, and one undo takes it back', async ({ app }) => {
  await probe(app, ({ view }) => view.session.setState(({ slice }) => ({ slice: { ...slice, shown: false } })));
  await settled(app);
  const at = await probe(app, ({ view, stage }) => {
    const row = view.document.getState().project.rows[0];
    return stage()?.project([row.seats[2].xM, 0.75, row.eyeZM + 0.05]);
  });
  if (!at) throw new Error('the seat is not in view');
  await app.mouse.move(at.x, at.y);
  await app.mouse.down();
  for (let step = 1; step <= 6; step += 1) await app.mouse.move(at.x + step * 6, at.y - step * 4);
  await app.mouse.up();
  await settled(app);
  const rows = () => probe(app, ({ view }) => JSON.stringify(view.document.getState().project.rows[0]));
  const moved = await rows();
  await app.keyboard.press('Control+z');
  expect(await rows()).not.toBe(moved);
  expect(await probe(app, ({ view }) => view.document.getState().canUndo)).toBe(false);
});
