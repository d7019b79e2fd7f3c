import type { Page } from '@playwright/test';
import { violations } from './audit.ts';
import { faultsOfLayout } from './measure.ts';
import { pageStates, visit } from './states.ts';
import { expect, settled, test, withoutDrawing } from './support.ts';

test.beforeEach(({ page }) => withoutDrawing(page));

/** What needs no thing of the first room. */
const STATES = ['overlook', 'sit', 'seat card', 'bass', 'findings', 'plan board', 'add menu', 'cleared stage'];

/** Where the page differs from the one with a room drawn in it, it is held to the accessibility rules as well. */
const AUDITED = ['overlook', 'findings'];
const against = async (app: Page, state: string): Promise<string[]> => (AUDITED.includes(state) ? violations(app) : []);

for (const { name, viewport, touch, leastPx } of [
  { name: 'desk', viewport: { width: 1280, height: 800 }, touch: false, leastPx: 24 },
  { name: 'phone', viewport: { width: 390, height: 844 }, touch: true, leastPx: 40 },
]) {
  test.describe(`at a ${name}`, () => {
    const pocket = name === 'phone';
    test.use({ viewport, hasTouch: touch, isMobile: touch });
    test.setTimeout(480_000);

    test('without 3-D the page says so in full view, and an empty room is laid out as it should be', async ({
      app,
    }) => {
      const says = app.locator('.no-scene p');
      await expect(says).toContainText('The plan, the numbers and the files work all the same.');
      const covered = await says.evaluate((sentence) => {
        const { left, top, right, bottom } = sentence.getBoundingClientRect();
        const corners = [left + 2, right - 2].flatMap((x) => [top + 2, bottom - 2].map((y) => [x, y] as const));
        return corners.filter(([x, y]) => document.elementFromPoint(x, y)?.closest('.no-scene') === null).length;
      });
      expect(covered, 'corners of the sentence under something else').toBe(0);

      await app.keyboard.press('r');
      await app.getByRole('button', { name: 'Begin this room' }).click();
      await app.locator('dialog.sheet').waitFor({ state: 'detached' });
      await settled(app);
      await expect(app.locator('.chair')).toHaveCount(1);
      const found: string[] = [];
      const states = pageStates(pocket).filter((state) => STATES.includes(state.name));
      expect(states).toHaveLength(STATES.length);
      for (const state of states) {
        await visit(app, state, async () => {
          const faults = await faultsOfLayout(app, leastPx);
          found.push(...[...(await against(app, state.name)), ...faults].map((one) => `${state.name}: ${one}`));
        });
      }
      expect(found).toEqual([]);
    });
  });
}
