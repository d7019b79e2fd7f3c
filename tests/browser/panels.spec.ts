import type { Page } from '@playwright/test';
import type { ItemKind } from '../../src/model/project.ts';
import { violations } from './audit.ts';
import { drawn, touchDrag } from './hand.ts';
import { expect, probe, settled, test, withoutDrawing } from './support.ts';

test.beforeEach(({ page }) => withoutDrawing(page));

const choose = (app: Page, kind: ItemKind, id: string) =>
  probe(app, ({ view }, item) => view.session.setState({ selection: item }), { kind, id });

/** What can be pressed in outline and form and is smaller than a finger, or a pointer, needs. */
const tooSmall = (app: Page, least: number) =>
  app.evaluate((size) => {
    const targets = document.querySelectorAll<HTMLElement>(
      ':is(.outline, .parameters) :is(button, input:not([type="radio"]), select, [role="treeitem"])',
    );
    return [...targets]
      .filter((target) => target.offsetParent !== null && getComputedStyle(target).visibility === 'visible')
      .map((target) => {
        // A tick is met by its words as well: they are the larger part of what can be pressed.
        const words = target instanceof HTMLInputElement && target.type === 'checkbox' ? target.labels?.[0] : null;
        return { name: target.outerHTML.slice(0, 80), box: (words ?? target).getBoundingClientRect() };
      })
      .filter(({ box }) => box.height < size || box.width < Math.min(size, 24))
      .map(({ name, box }) => `${name} ${Math.round(box.width)} x ${Math.round(box.height)}`);
  }, least);

const cut = (app: Page) =>
  app.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('.parameters .field label, .parameters .field input')]
      .filter((each) => each.scrollWidth > each.clientWidth + 1)
      .map((each) => each.outerHTML.slice(0, 100)),
  );

test('outline and form at a desk: nothing against the accessibility rules, nothing too small, nothing cut', async ({
  app,
}) => {
  for (const [kind, id] of [
    ['surface', 'left'],
    ['row', 'back'],
    ['seat', 'front-2'],
    ['subwoofer', 'S1'],
    ['picture', 'picture'],
  ] as const) {
    await choose(app, kind, id);
    await settled(app);
    expect(await violations(app), kind).toEqual([]);
    expect(await tooSmall(app, 24), kind).toEqual([]);
    expect(await cut(app), kind).toEqual([]);
  }
  await app.getByRole('button', { name: 'Add', exact: true }).click();
  expect(await violations(app)).toEqual([]);
  await app.keyboard.press('Escape');
  await choose(app, 'subwoofer', 'S1');
  await app.locator('[data-key="subwoofer:S1"]').focus();
  await app.keyboard.press('F2');
  await expect(app.locator('.line-name')).toBeFocused();
  expect(await violations(app)).toEqual([]);
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  /** Swipes up from the middle of the first of these that is in the sheet until the last one is, or the sheet goes no farther. */
  const swipeToLast = async (app: Page, things: string): Promise<void> => {
    const last = app.locator(things).last();
    const from = await app.locator(things).first().boundingBox();
    const tabs = await app.getByRole('tablist').boundingBox();
    if (!from || !tabs) throw new Error('there is nothing to swipe over');
    const foot = async () => {
      const box = await last.boundingBox();
      return (box?.y ?? Number.POSITIVE_INFINITY) + (box?.height ?? 0);
    };
    const at = { x: from.x + from.width / 3, y: Math.max(from.y + from.height / 2, tabs.y - 60) };
    for (let times = 0; times < 14 && (await foot()) > tabs.y; times += 1) await touchDrag(app, at, { x: 0, y: -240 });
    expect(await foot(), `the last of ${things}`).toBeLessThanOrEqual(tabs.y);
  };

  test('a swipe over the form and over the outline moves the sheet to its last line', async ({ app }) => {
    test.slow();
    await app.getByRole('tab', { name: 'Parameters' }).tap();
    await swipeToLast(app, '.parameters .field label');
    await app.getByText('Choose from the outline').tap();
    await swipeToLast(app, '.outline [role="treeitem"]');
  });

  test('each tab opens at its top, and again where it was left', async ({ app }) => {
    const down = () => app.locator('.pocket-scroll').evaluate((box) => box.scrollTop);
    const tab = async (name: string) => {
      await app.getByRole('tab', { name }).tap();
      await expect(app.getByRole('tab', { name })).toHaveAttribute('aria-selected', 'true');
    };
    const sheet = await app.locator('.pocket-sheet').boundingBox();
    if (!sheet) throw new Error('there is no sheet');
    await tab('Findings');
    // Lifted after a rest, so that nothing coasts on.
    await touchDrag(app, { x: 40, y: sheet.y + sheet.height - 80 }, { x: 0, y: -240 }, 8, drawn, 300);
    await expect.poll(down).toBeGreaterThan(100);
    const left = await down();
    await tab('Floor');
    expect(await down()).toBe(0);
    await tab('Parameters');
    expect(await down()).toBe(0);
    await tab('Findings');
    expect(await down()).toBe(left);
    // What is chosen in the room is read from its beginning.
    await choose(app, 'subwoofer', 'S1');
    await expect.poll(down).toBe(0);
  });

  test('everything can be met by a thumb', async ({ app }) => {
    await app.getByRole('tab', { name: 'Parameters' }).tap();
    await app.getByText('Choose from the outline').tap();
    expect(await violations(app)).toEqual([]);
    expect(await tooSmall(app, 44)).toEqual([]);
    await app.locator('[data-key="picture:picture"] .line-title').tap();
    await app.getByText('Choose from the outline').tap();
    await expect(app.getByLabel('Picture width', { exact: true })).toBeVisible();
    const widthM = () => probe(app, ({ view }) => view.document.getState().project.picture.widthM);
    const before = await widthM();
    await app.getByRole('button', { name: 'More: Picture width' }).tap();
    expect(await widthM()).toBeCloseTo(before + 0.01, 9);
    await app.locator('.pocket-history').getByRole('button', { name: 'Undo: Change picture width' }).tap();
    expect(await widthM()).toBe(before);
    expect(await violations(app)).toEqual([]);
    expect(await tooSmall(app, 44)).toEqual([]);
  });
});

test('each part of the right column opens at its top', async ({ app }) => {
  const column = app.locator('.column-scroll');
  const down = () => column.evaluate((box) => box.scrollTop);
  const part = (word: string) => app.locator('.column-tabs label', { hasText: word }).click();
  await part('Findings');
  await column.hover();
  await app.mouse.wheel(0, 600);
  await expect.poll(down).toBeGreaterThan(100);
  await part('Bass');
  expect(await down()).toBe(0);
});

test('dials turn the document and follow it', async ({ app }) => {
  await choose(app, 'loudspeaker', 'L');
  await app.locator('.way').getByText('Dials').click();
  const knob = app.locator('.dials .knob').first();
  await expect(knob).toBeVisible();
  expect(await violations(app)).toEqual([]);
  const across = () => probe(app, ({ view }) => view.document.getState().project.loudspeakers[0].atM[0]);
  const before = await across();
  const box = await knob.boundingBox();
  if (!box) throw new Error('the knob is nowhere');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await app.mouse.move(x, y);
  await app.mouse.down();
  for (let step = 1; step <= 12; step += 1) await app.mouse.move(x + step * 3, y);
  await app.mouse.up();
  const turned = await across();
  expect(turned).toBeGreaterThan(before + 0.05);
  const input = app.locator('.dials .dial input').first();
  expect(Number((await input.inputValue()).replace('\u2212', '-').replace(' m', ''))).toBeCloseTo(turned, 2);
  await input.focus();
  await app.keyboard.press('Control+z');
  expect(await across()).toBe(before);
  expect(Number((await input.inputValue()).replace('\u2212', '-').replace(' m', ''))).toBeCloseTo(before, 2);
  expect(await probe(app, ({ view }) => view.document.getState().canUndo)).toBe(false);

  await app.keyboard.press('Control+a');
  await app.keyboard.type('-3\' 3 3/8"');
  await app.keyboard.press('Enter');
  // 39.375 in x 0.0254 m
  expect(await across()).toBeCloseTo(-1.000125, 6);
  await app.keyboard.press('Control+a');
  await app.keyboard.type('900 m');
  await app.keyboard.press('Enter');
  await expect(app.locator('.dials [role="alert"]')).toContainText('out of range');
  await app.keyboard.press('Escape');
  await app.keyboard.press('ArrowUp');
  expect(await across()).toBeCloseTo(-0.990125, 6);
  await choose(app, 'subwoofer', 'S1');
  await expect(app.locator('.dials')).toContainText('Gain');
  await app.locator('.way').getByText('Form').click();
  await expect(app.getByLabel('Gain', { exact: true })).toBeVisible();
});
