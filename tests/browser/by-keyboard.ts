import type { Page } from '@playwright/test';

/** One stop of the Tab key: what it is called and whether the page shows that it has the focus. */
export interface Stop {
  readonly name: string;
  readonly seen: boolean;
  readonly inView: boolean;
  readonly left: number;
  readonly top: number;
  /** Its place in the page's order, to tell whether Tab goes on. */
  readonly order: number;
}

/** Where the focus is now; null on the page itself. A ring is an outline or a shadow, on the thing or on its label. */
const stopNow = (page: Page): Promise<Stop | null> =>
  page.evaluate(() => {
    const at = document.activeElement;
    if (!(at instanceof HTMLElement) || at === document.body || at.tagName === 'DIALOG') return null;
    const rung = (node: Element | null): boolean => {
      if (!node) return false;
      const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(node);
      return (outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 1) || boxShadow !== 'none';
    };
    const shown = at.closest('.unseen') ? at.parentElement : at.closest('label');
    const box = (shown ?? at).getBoundingClientRect();
    const words = at.getAttribute('aria-label') ?? (at as HTMLInputElement).labels?.[0]?.textContent ?? at.textContent;
    const name = `${at.tagName.toLowerCase()} ${(words ?? '').trim().slice(0, 40)}`;
    const inView = box.bottom > 0 && box.top < innerHeight && box.right > 0 && box.left < innerWidth;
    const order = [...document.querySelectorAll('*')].indexOf(at);
    const seen = [at, shown, at.nextElementSibling, at.closest('.ribbon-plot')].some(rung);
    return { name, seen, inView, left: box.left, top: box.top, order };
  });

const MOST_STOPS = 400;

/** Tab from the top of the page until it leaves it, comes round or is caught; every stop in turn. */
export const tabThrough = async (page: Page): Promise<readonly Stop[]> => {
  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
  const stops: Stop[] = [];
  while (stops.length < MOST_STOPS) {
    await page.keyboard.press('Tab');
    const stop = await stopNow(page);
    if (!stop || (stops.length > 0 && stop.order === stops[0].order)) return stops;
    stops.push(stop);
  }
  return stops;
};
