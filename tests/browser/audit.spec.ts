import type { Page } from '@playwright/test';
import { violations } from './audit.ts';
import { pageStates, visit } from './states.ts';
import { expect, settled, test, withoutDrawing } from './support.ts';

// What hangs over the drawn room is audited in accessible.spec.ts; all the rest of the page is the same without it.
test.beforeEach(({ page }) => withoutDrawing(page));

const openDemo = async (app: Page, name: string) => {
  await app.keyboard.press('r');
  await app.getByRole('button', { name }).click();
  await app.locator('dialog.sheet').waitFor({ state: 'detached' });
  await settled(app);
};

for (const size of [
  { name: 'desk', width: 1280, height: 800, touch: false },
  { name: 'phone', width: 390, height: 844, touch: true },
]) {
  test.describe(`at a ${size.name}`, () => {
    test.use({ viewport: size, hasTouch: size.touch, isMobile: size.touch });
    test.setTimeout(600_000);

    test('nothing against the accessibility rules in any panel or mode', async ({ app }) => {
      const found = new Map<string, string>();
      for (const state of pageStates(size.touch)) {
        await visit(app, state, async () => {
          for (const one of await violations(app)) if (!found.has(one)) found.set(one, state.name);
        });
      }
      expect([...found].map(([one, where]) => `${where}: ${one}`)).toEqual([]);
    });

    test('nor with a room of seven walls open', async ({ app }) => {
      await openDemo(app, 'Ferryman');
      const found: string[] = [];
      const names = ['overlook', 'sit', 'seat card', 'bass', 'findings', 'plan board', 'curves', 'decay as a table'];
      const states = pageStates(size.touch).filter(({ name }) => names.includes(name));
      expect(states).toHaveLength(names.length);
      for (const state of states) {
        await visit(app, state, async () => {
          found.push(...(await violations(app)).map((one) => `${state.name}: ${one}`));
        });
      }
      expect(found).toEqual([]);
    });
  });
}
