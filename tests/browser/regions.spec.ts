import type { Page } from '@playwright/test';
import { expect, probe, settled, test } from './support.ts';

/** What has the focus, in a few words of its own. */
const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const at = document.activeElement as HTMLElement | null;
    if (!at || at === document.body) return 'nothing';
    return (
      at.dataset.key ??
      at.dataset.path ??
      at.dataset.seat ??
      at.getAttribute('aria-label') ??
      (at as HTMLInputElement).value
    );
  });

const round = async (page: Page, key: string, times: number): Promise<readonly string[]> => {
  const stops: string[] = [];
  for (let press = 0; press < times; press += 1) {
    await page.keyboard.press(key);
    stops.push(await focused(page));
  }
  return stops;
};

const ROOM = expect.stringMatching(/^The room in three dimensions/);

test('F6 goes from region to region and round, Shift with it back', async ({ app }) => {
  const stops = ['overlook', 'room', 'name', ROOM, 'seat', 'front-2', 'Frequency of the bass floor'];
  expect(await round(app, 'F6', 8)).toEqual([...stops, 'overlook']);
  expect(await round(app, 'Shift+F6', 7)).toEqual([...stops].reverse());
  // From a field that is being written in, and with the curves over the band.
  await app.getByRole('textbox', { name: 'Project' }).focus();
  await probe(app, ({ view }) => view.session.setState({ bassSheet: 'curves' }));
  expect(await round(app, 'F6', 3)).toEqual([ROOM, 'seat', 'curves']);
});

test('the focus goes along with what is opened, shown and cleared', async ({ app }) => {
  await app.keyboard.press('r');
  await app.getByRole('button', { name: 'Lime tree room' }).focus();
  await app.keyboard.press('Enter');
  await expect(app.getByRole('dialog', { name: 'Rooms' })).toBeHidden();
  await settled(app);
  expect(await focused(app)).toBe('room');

  expect(await round(app, 'f', 2)).toEqual(['bass', 'subwoofers']);
  await app.keyboard.press('Tab');
  expect(await app.evaluate(() => document.activeElement?.closest('.column.is-right') !== null)).toBe(true);
  await app.keyboard.press('i');
  await expect(app.getByRole('button', { name: 'Improve' })).toBeFocused();
  await app.keyboard.press('Enter');
  await expect(app.getByRole('button', { name: 'Stop' })).toBeFocused();
  await app.keyboard.press('Enter');
  await expect(app.getByRole('button', { name: 'Improve' })).toBeFocused();

  await app.getByRole('treeitem', { name: /^Row 1/ }).focus();
  await app.keyboard.press('Enter');
  await app.getByRole('textbox', { name: 'Middle of the row' }).focus();
  for (const back of ['Escape', 'h']) {
    // Letters are written into a field: there the stage is cleared by its button.
    await probe(app, ({ view }) => view.session.setState({ stageCleared: true }));
    await expect(app.getByRole('button', { name: /Bring the panels back/ })).toBeVisible();
    await app.keyboard.press(back);
    await expect.poll(() => focused(app)).toBe('rows[0]:Middle of the row');
  }
  await app.locator('[role="treeitem"][data-key="row:sofa"]').focus();
  await app.keyboard.press('h');
  await app.keyboard.press('h');
  await expect.poll(() => focused(app)).toBe('row:sofa');
});

test.describe('on a small screen', () => {
  test.use({ viewport: { width: 390, height: 844 } });

  test('F6 goes over what is there', async ({ app }) => {
    expect(await round(app, 'F6', 5)).toEqual(['overlook', ROOM, '', 'front-2', 'overlook']);
  });
});
