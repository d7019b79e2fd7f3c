import type { Locator, Page } from '@playwright/test';

export interface Spot {
  readonly x: number;
  readonly y: number;
}

/**
 * A person at the page: everything that is done to it goes through here and is counted. A gesture is one click or tap, one
 * drag, one key, a run of the same key, or one value typed with the Enter behind it.
 */
export class Person {
  readonly did: string[] = [];
  private readonly page: Page;
  private readonly startMs = performance.now();

  constructor(page: Page) {
    this.page = page;
  }

  get gestures(): number {
    return this.did.length;
  }

  async click(what: string, target: Locator): Promise<void> {
    this.did.push(`click ${what}`);
    await target.click();
  }

  async tap(what: string, target: Locator): Promise<void> {
    this.did.push(`tap ${what}`);
    await target.tap();
  }

  async tapAt(what: string, { x, y }: Spot): Promise<void> {
    this.did.push(`tap ${what}`);
    await this.page.touchscreen.tap(x, y);
  }

  async key(key: string): Promise<void> {
    this.did.push(`press ${key}`);
    await this.page.keyboard.press(key);
  }

  /** The same key again and again until the focus is on what is meant: one gesture, as a finger left on the key. */
  async run(key: string, to: Locator, most = 60): Promise<void> {
    this.did.push(`press ${key} until there`);
    for (let presses = 0; presses < most; presses += 1) {
      await this.page.keyboard.press(key);
      if (await to.evaluate((element) => element === document.activeElement)) return;
    }
    throw new Error(`${key} does not lead to ${to}`);
  }

  /** So many times the same key. */
  async times(key: string, count: number): Promise<void> {
    this.did.push(`press ${key} ${count} times`);
    for (let presses = 0; presses < count; presses += 1) await this.page.keyboard.press(key);
  }

  /** Writes over what is selected and ends it with Enter. */
  async type(text: string): Promise<void> {
    this.did.push(`type ${text}`);
    await this.page.keyboard.type(text);
    await this.page.keyboard.press('Enter');
  }

  /** Writes over what is selected and leaves it so. */
  async write(text: string): Promise<void> {
    this.did.push(`write ${text}`);
    await this.page.keyboard.type(text);
  }

  async drag(what: string, from: Spot, to: Spot): Promise<void> {
    this.did.push(`drag ${what}`);
    await this.page.mouse.move(from.x, from.y);
    await this.page.mouse.down();
    await this.page.mouse.move(to.x, to.y, { steps: 10 });
    await this.page.evaluate(() => new Promise(requestAnimationFrame));
    await this.page.mouse.up();
  }

  /** One finger put down, moved and lifted. */
  async swipe(what: string, from: Spot, to: Spot): Promise<void> {
    this.did.push(`swipe ${what}`);
    const session = await this.page.context().newCDPSession(this.page);
    const finger = (type: 'touchStart' | 'touchMove' | 'touchEnd', spots: readonly Spot[]) =>
      session.send('Input.dispatchTouchEvent', { type, touchPoints: spots.map(({ x, y }) => ({ x, y, id: 0 })) });
    await finger('touchStart', [from]);
    for (let step = 1; step <= 10; step += 1)
      await finger('touchMove', [
        { x: from.x + ((to.x - from.x) * step) / 10, y: from.y + ((to.y - from.y) * step) / 10 },
      ]);
    await this.page.evaluate(() => new Promise(requestAnimationFrame));
    await finger('touchEnd', []);
    await session.detach();
  }

  /** For the log only: how long a machine took is no one's verdict. */
  log(goal: string): void {
    const seconds = ((performance.now() - this.startMs) / 1000).toFixed(1);
    console.log(`${goal}: ${this.gestures} gestures in ${seconds} s\n  ${this.did.join('\n  ')}`);
  }
}
