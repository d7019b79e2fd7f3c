import type { CDPSession, Page } from '@playwright/test';
import type { Project } from '../../src/model/project.ts';
import type { Spot } from './gestures.ts';
import { probe } from './support.ts';

export const projectNow = (page: Page): Promise<Project> => probe(page, ({ view }) => view.document.getState().project);

/** Waits until the page has drawn what was done and nothing moves; jobs may still run. */
export const drawn = (page: Page): Promise<void> =>
  probe(page, async ({ stage }) => {
    for (let calm = 0; calm < 3; calm = (stage()?.resting() ?? true) ? calm + 1 : 0)
      await new Promise(requestAnimationFrame);
  });

/** Where a handle stands on the page; null while it is not shown. */
export const spotOf = (page: Page, id: string): Promise<Spot | null> =>
  page.evaluate((wanted) => {
    const mark = document.querySelector<SVGGElement>(`[data-handle="${wanted}"]`);
    const disc = mark?.querySelector('circle')?.getBoundingClientRect();
    if (!mark || !disc || mark.style.visibility === 'hidden') return null;
    return { x: disc.left + disc.width / 2, y: disc.top + disc.height / 2 };
  }, id);

/** Where a point of the room lies on the page. */
export const seenAt = async (page: Page, atM: readonly number[]): Promise<Spot> => {
  const spot = await probe(
    page,
    ({ stage }, point) => stage()?.project(point as [number, number, number]) ?? null,
    atM,
  );
  if (!spot) throw new Error('the point is behind the camera');
  return spot;
};

/** How a hand drags: from a place of the page by so many CSS pixels, and then until `then` is done. */
export type Drag = (
  page: Page,
  from: Spot,
  by: Spot,
  steps?: number,
  then?: (page: Page) => Promise<void>,
) => Promise<void>;

export const mouseDrag: Drag = async (page, from, by, steps = 12, then = drawn) => {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  for (let step = 1; step <= steps; step += 1)
    await page.mouse.move(from.x + (by.x * step) / steps, from.y + (by.y * step) / steps);
  await page.evaluate(() => new Promise(requestAnimationFrame));
  await page.mouse.up();
  await then(page);
};

export const fingers = (session: CDPSession, type: string, spots: readonly Spot[]) =>
  session.send('Input.dispatchTouchEvent', {
    type: type as 'touchStart',
    touchPoints: spots.map(({ x, y }, id) => ({ x, y, id })),
  });

/** With `restMs` the finger rests so long before it is lifted: nothing is thrown then. */
export const touchDrag = async (
  page: Page,
  from: Spot,
  by: Spot,
  steps = 8,
  then = drawn,
  restMs = 0,
): Promise<void> => {
  const session = await page.context().newCDPSession(page);
  await fingers(session, 'touchStart', [from]);
  for (let step = 1; step <= steps; step += 1)
    await fingers(session, 'touchMove', [{ x: from.x + (by.x * step) / steps, y: from.y + (by.y * step) / steps }]);
  await page.evaluate(() => new Promise(requestAnimationFrame));
  await page.waitForTimeout(restMs);
  await fingers(session, 'touchEnd', []);
  await session.detach();
  await then(page);
};
