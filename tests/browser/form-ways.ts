import type { Locator, Page } from '@playwright/test';
import type { Spot, Stop, Way } from './form-walk.ts';

const quoted = (text: string): string => text.replaceAll('\\', '\\\\').replaceAll('"', '\\"');
const inputAt = (page: Page, path: string): Locator => page.locator(`[data-path="${quoted(path)}"]`);
const fieldAt = (page: Page, path: string): Locator => page.locator('.parameters').locator(inputAt(page, path));
const lineAt = (page: Page, key: string): Locator => page.locator(`.outline-tree [data-key="${quoted(key)}"]`);

const focusedKey = (page: Page): Promise<string | undefined> =>
  page.evaluate(() => (document.activeElement as HTMLElement | null)?.dataset.key);
const focusedPath = (page: Page): Promise<string | undefined> =>
  page.evaluate(() => (document.activeElement as HTMLElement | null)?.dataset.path);

const pressUntil = async (
  page: Page,
  key: string,
  goal: string,
  reached: () => Promise<boolean>,
  most: number,
): Promise<void> => {
  for (let presses = 0; presses < most; presses += 1) {
    if (await reached()) return;
    await page.keyboard.press(key);
  }
  throw new Error(`${key} does not lead to ${goal}`);
};

/** From wherever the focus is to a line of the tree: Escape leads from a field to the tree, Home and Down from there. */
const toLine = async (page: Page, key: string): Promise<void> => {
  if ((await focusedPath(page)) !== undefined) {
    await page.keyboard.press('Escape');
    if ((await focusedPath(page)) !== undefined) await page.keyboard.press('Escape');
  }
  if ((await focusedKey(page)) === undefined)
    await pressUntil(page, 'Tab', 'the outline', async () => (await focusedKey(page)) !== undefined, 60);
  await page.keyboard.press('Home');
  await pressUntil(page, 'ArrowDown', key, async () => (await focusedKey(page)) === key, 60);
};

const toField = (page: Page, path: string): Promise<void> =>
  pressUntil(page, 'Tab', path, async () => (await focusedPath(page)) === path, 160);

/** The keyboard alone: arrows and Enter in the tree, Tab to a field, arrows, letters and Space in it, Ctrl+Z. */
export const byKeyboard: Way = {
  name: 'keyboard',
  async choose(page, { key, above }: Stop) {
    for (const parent of above) {
      await toLine(page, parent);
      const unfolded = await lineAt(page, parent).getAttribute('aria-expanded');
      if (unfolded === 'false') await page.keyboard.press('ArrowRight');
    }
    await toLine(page, key);
    await page.keyboard.press('Enter');
  },
  changes(page, spot: Spot) {
    const reach = async () => {
      if ((await focusedPath(page)) === spot.path) return;
      if ((await focusedKey(page)) === undefined && (await focusedPath(page)) === undefined) {
        // The control went with what it brought about: the page has the focus again.
        await page.keyboard.press('Tab');
      }
      await toField(page, spot.path);
    };
    const press = (key: string) => async () => {
      await reach();
      await page.keyboard.press(key);
    };
    const write = async () => {
      await reach();
      await page.keyboard.press('Control+a');
      await page.keyboard.type(spot.other);
      await page.keyboard.press('Enter');
    };
    if (spot.control === 'choice') return [press('ArrowDown'), press('ArrowUp')];
    if (spot.control === 'flag') return [press(' ')];
    return spot.steps ? [press('ArrowUp'), press('ArrowDown')] : [write];
  },
  undo: (page) => page.keyboard.press('Control+z'),
  redo: (page) => page.keyboard.press('Control+Shift+z'),
};

/** Where a hand meets a thing: scrolled to, and nothing lying over it. */
const placeOf = async (target: Locator): Promise<{ readonly x: number; readonly y: number }> => {
  const place = await target.evaluate((element) => {
    element.scrollIntoView({ block: 'center' });
    const { x, y, width, height } = element.getBoundingClientRect();
    const [middleX, middleY] = [x + width / 2, y + height / 2];
    const met = document.elementFromPoint(middleX, middleY);
    return { x: middleX, y: middleY, met: met !== null && element.contains(met) };
  });
  if (!place.met) throw new Error(`something lies over ${target}`);
  return place;
};

/** The two hands that point: what a tap does here, a click does there. */
const pointing = (name: string, hit: (page: Page, x: number, y: number) => Promise<void>): Way => {
  const touch = async (page: Page, target: Locator): Promise<void> => {
    const { x, y } = await placeOf(target);
    await hit(page, x, y);
  };
  return {
    name,
    async choose(page, { key, above }) {
      for (const parent of above) {
        const line = lineAt(page, parent);
        if ((await line.getAttribute('aria-expanded')) === 'false') await touch(page, line.locator('.twist'));
      }
      await touch(page, lineAt(page, key).locator('.line-title'));
    },
    changes(page, spot) {
      const field = fieldAt(page, spot.path);
      const write = (text: string) => async () => {
        await touch(page, field);
        await page.keyboard.press('Control+a');
        await page.keyboard.type(text);
        await page.keyboard.press('Enter');
      };
      // The list that a select opens belongs to the system: no test hand reaches it, so its choice is made here.
      if (spot.control === 'choice') return [async () => void (await field.selectOption(spot.other))];
      if (spot.control === 'flag') return [() => touch(page, field)];
      if (!spot.steps || spot.cell) return [write(spot.other), write(spot.else)];
      return ['more', 'less'].map((way) => () => touch(page, fieldAt(page, `${spot.path}:${way}`)));
    },
    undo: (page) => touch(page, page.locator('.top').getByRole('button', { name: /^Undo/ })),
    redo: (page) => touch(page, page.locator('.top').getByRole('button', { name: /^Redo/ })),
  };
};

export const byTouch: Way = pointing('touch', (page, x, y) => page.touchscreen.tap(x, y));

/** A drag along a number's label, two steps and then some. */
const turn = async (page: Page, spot: Spot, by: 1 | -1): Promise<void> => {
  const row = page.locator('.field', { has: inputAt(page, spot.path) });
  const { x, y } = await placeOf(row.locator('label'));
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + by * 6, y);
  await page.mouse.move(x + by * 9, y);
  await page.mouse.up();
};

const clicking = pointing('mouse', (page, x, y) => page.mouse.click(x, y));

export const byMouse: Way = {
  ...clicking,
  changes: (page, spot) =>
    spot.control === 'number' && spot.steps && !spot.cell
      ? [() => turn(page, spot, 1), () => turn(page, spot, -1)]
      : clicking.changes(page, spot),
};
