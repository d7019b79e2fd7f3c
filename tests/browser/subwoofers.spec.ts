import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { violations } from './audit.ts';
import { expect, probe, settled, test } from './support.ts';

/** Counts what a person does: every click, tap or key is one action. */
const hand = () => {
  let actions = 0;
  return {
    click: async (target: ReturnType<Page['locator']>) => {
      actions += 1;
      await target.click();
    },
    get actions() {
      return actions;
    },
  };
};

/** Pixels of the panel that lie beyond its edge. */
const cutOff = (app: Page) =>
  app.evaluate(() => {
    const panel = document.querySelector('.bass-choice');
    return panel ? panel.scrollWidth - panel.clientWidth : 1;
  });

const spread = (app: Page) => probe(app, ({ view }) => view.results.getState().bass?.value.meanSpreadDb ?? null);
const count = (app: Page) => probe(app, ({ view }) => view.document.getState().project.subwoofers.length);
const showChoice = async (app: Page) => {
  await app.locator('.column-tabs label', { hasText: 'Subwoofers' }).click();
  await settled(app);
};

test('from the corner room a good arrangement of four takes at most eight actions, and one undo', async ({ app }) => {
  test.setTimeout(480_000);
  const does = hand();
  await does.click(app.getByRole('button', { name: 'Rooms' }).first());
  await does.click(app.getByRole('button', { name: /Ferryman/ }).first());
  const name = () => probe(app, ({ view }) => view.document.getState().project.name);
  await expect.poll(name, { timeout: 60_000 }).toContain('Ferryman');
  await settled(app);
  const before = await spread(app);
  expect(await count(app)).toBe(1);
  await does.click(app.locator('.column-tabs label', { hasText: 'Subwoofers' }));
  await does.click(app.locator('.bass-choice .choice label', { hasText: /^4$/ }));
  await does.click(app.getByRole('button', { name: 'Improve' }));
  await expect(app.locator('.proposal').first()).toBeVisible({ timeout: 120_000 });
  await does.click(
    app
      .locator('.proposal')
      .first()
      .getByRole('button', { name: /Use this/ }),
  );
  expect(does.actions).toBeLessThanOrEqual(8);
  await settled(app);
  expect(await count(app)).toBe(4);
  // good: less than half as uneven as the one it began with, and as even as the four corners of a box in facts 5.3 twice over
  const after = await spread(app);
  expect(after).toBeLessThan((before ?? 0) / 2);
  expect(after).toBeLessThan(2.2);
  await app.keyboard.press('Control+z');
  expect(await count(app)).toBe(1);
});

test('a search tells where it is and can be stopped; what changed meanwhile is offered as an alternative', async ({
  app,
}) => {
  await showChoice(app);
  await app.getByRole('button', { name: 'Improve' }).click();
  await expect(app.getByRole('progressbar', { name: 'Search' })).toBeVisible();
  await app.getByRole('button', { name: 'Stop' }).click();
  await expect(app.getByRole('button', { name: 'Improve' })).toBeVisible();
  await settled(app);
  expect(await app.locator('.proposal').count()).toBe(0);
  await app.locator('.bass-choice .choice label', { hasText: /^2$/ }).click();
  await app.getByRole('button', { name: 'Improve' }).click();
  await expect(app.locator('.proposal').first()).toBeVisible({ timeout: 60_000 });
  // One is used, and another instead: choosing between what was found asks for no new search.
  const use = (nth: number) =>
    app
      .locator('.proposal')
      .nth(nth)
      .getByRole('button', { name: /Use this|In use/ });
  await use(0).click();
  await expect(use(0)).toHaveText(/^In use/);
  await use(1).click();
  await expect(use(1)).toHaveText(/^In use/);
  await expect(use(0)).toHaveText(/^Use this/);
  await expect(app.getByText('The room has changed since')).toHaveCount(0);
  await probe(app, ({ view }) =>
    view.document.actions.apply('Warm', (project) => ({
      ok: true,
      project: { ...project, air: { ...project.air, temperatureC: project.air.temperatureC + 5 } },
    })),
  );
  await expect(app.getByText('The room has changed since')).toBeVisible();
  const first = app.locator('.proposal').first();
  await expect(first.getByRole('button', { name: /Use this/ })).toHaveCount(0);
  await first.getByRole('button', { name: /Keep beside/ }).click();
  const kept = await probe(app, ({ view }) => view.document.getState().project.alternatives as { name: string }[]);
  expect(kept).toHaveLength(1);
  expect(kept[0].name).toMatch(/^Two subwoofers, \d\.\d dB$/);
});

test('arrangements, chain and alternatives are tables a reader can use, by keyboard too', async ({ app }) => {
  await showChoice(app);
  for (const title of ['The trade’s arrangements', 'Through the crossover', 'Headroom', 'Equaliser', 'Alternatives']) {
    await app.locator('.bass-choice summary', { hasText: title }).focus();
    await app.keyboard.press('Enter');
  }
  await settled(app);
  await expect(app.locator('[data-arrangement]')).toHaveCount(12);
  const before = await probe(app, ({ view }) => view.document.getState().project.subwoofers.map(({ atM }) => atM));
  await app.locator('[data-arrangement="four-middles"] button').focus();
  await app.keyboard.press('Enter');
  await settled(app);
  const middles = await probe(app, ({ view }) => view.document.getState().project.subwoofers.map(({ atM }) => atM));
  expect(middles).not.toEqual(before);
  expect(middles.filter(([x]) => Math.abs(x) < 0.5)).toHaveLength(2);

  const download = app.waitForEvent('download');
  await app.getByRole('button', { name: 'Save as CSV' }).click();
  const file = await download;
  expect(file.suggestedFilename()).toMatch(/ equaliser\.csv$/);
  expect(readFileSync(await file.path(), 'utf8')).toMatch(/^frequencyHz,gainDb,q\r\n(?:[\d.]+,-?[\d.]+,[\d.]+\r\n)+$/);
  await app.getByRole('button', { name: 'Use these filters' }).click();
  await settled(app);
  const filters = await probe(app, ({ view }) => view.document.getState().project.equaliser as { filters: unknown[] });
  expect(filters.filters.length).toBeGreaterThan(0);
  await expect(app.getByRole('button', { name: 'Use these filters' })).toHaveCount(0);

  // The filters' effect at the chosen seat: over its curve, in the reading, and in numbers behind.
  await app.getByRole('button', { name: /^Over the curve of .*: the filters in use$/ }).click();
  await settled(app);
  await expect(app.locator('.rise .plot-curves path.is-beside')).toHaveCount(1);
  await expect(app.locator('.rise .plot-reading')).toContainText('the filters in use');
  await app.locator('.rise').getByRole('button', { name: 'Table', exact: true }).click();
  await expect(app.locator('.rise thead th')).toHaveCount(10);
  expect(await violations(app, '.bass-plots')).toEqual([]);
  await app.locator('.rise').getByRole('combobox', { name: 'Over it' }).selectOption('C and the crossover');
  await app.locator('.rise').getByRole('button', { name: 'Table', exact: true }).click();
  await settled(app);
  await expect(app.locator('.rise .plot-reading')).toContainText(/C and the crossover −?\d/);

  await app.getByRole('textbox', { name: 'Name', exact: true }).fill('Wall middles');
  await app.keyboard.press('Enter');
  await settled(app);
  await expect(app.locator('[data-alternative]')).toHaveCount(1);
  await app.keyboard.press('Control+z');
  await app.keyboard.press('Control+y');
  await probe(app, ({ view }) => view.document.actions.undo());
  // What is older than the document is dimmed until the new figures are there.
  await expect(app.locator('.bass-choice .is-stale')).toHaveCount(0);
  expect(await violations(app, '.bass-choice')).toEqual([]);
  expect(await cutOff(app)).toBeLessThanOrEqual(0);
});

test('on a phone the choice opens below the floor, breaks no rule of accessibility and cuts nothing off', async ({
  app,
}) => {
  await app.setViewportSize({ width: 390, height: 844 });
  await app.getByRole('tab', { name: 'Floor' }).click();
  await app.getByText('Where the subwoofers go').click();
  await app.getByRole('button', { name: 'Improve' }).click();
  await expect(app.locator('.proposal').first()).toBeVisible({ timeout: 60_000 });
  await app.evaluate(() => {
    for (const part of document.querySelectorAll<HTMLDetailsElement>('.bass-choice details')) part.open = true;
  });
  await settled(app);
  expect(await violations(app, '.bass-choice')).toEqual([]);
  expect(await cutOff(app)).toBeLessThanOrEqual(0);
});
