import type { BrowserContext, Page } from '@playwright/test';
import { expect, probe, settled, test } from './support.ts';

const nameOf = (page: Page) => probe(page, ({ view }) => view.document.getState().project.name);
const projectOf = (page: Page) => probe(page, ({ view }) => JSON.stringify(view.document.getState().project));
const keptAt = (page: Page) => probe(page, ({ view }) => view.document.getState().savedAtMs);
const isReadOnly = (page: Page) => probe(page, ({ view }) => view.document.getState().readOnly);

const rename = async (page: Page, name: string) => {
  await probe(
    page,
    ({ view }, next) => {
      view.document.actions.apply('rename', (project) => ({ ok: true, project: { ...project, name: next } }));
    },
    name,
  );
  await expect
    .poll(() => page.evaluate(() => indexedDB.databases().then((all) => all.map(({ name: one }) => one))))
    .toContain('parterre-rooms');
  await expect.poll(() => keptAt(page)).not.toBeNull();
};

const openRooms = async (page: Page) => {
  await page.getByRole('button', { name: 'Rooms', exact: true }).click();
  await expect(page.getByRole('dialog', { name: 'Rooms' })).toBeVisible();
};

const secondTab = async (context: BrowserContext) => {
  const page = await context.newPage();
  await page.goto('./');
  await settled(page);
  return page;
};

test('an empty room begins with three lengths, in one step, and a length out of range is refused with its range', async ({
  app,
}) => {
  await openRooms(app);
  await app.getByLabel('Wide').fill('80 m');
  await app.getByRole('button', { name: 'Begin this room' }).click();
  await expect(app.getByRole('alert')).toContainText('1.50 m to 30.00 m');
  await app.getByLabel('Wide').fill('3,8');
  await app.getByLabel('Long').fill('5.1 m');
  await app.getByLabel('High').fill('240 cm');
  await app.getByRole('button', { name: 'Begin this room' }).click();
  await expect(app.getByRole('dialog')).toHaveCount(0);
  await settled(app);
  const room = await probe(app, ({ view }) => {
    const { room: built, loudspeakers, subwoofers, rows } = view.document.getState().project;
    return { plan: built.plan, ceiling: built.ceiling, counts: [loudspeakers.length, subwoofers.length, rows.length] };
  });
  expect(room).toEqual({
    plan: { shape: 'rectangle', widthM: 3.8, lengthM: 5.1 },
    ceiling: { shape: 'flat', heightM: 2.4 },
    counts: [0, 0, 1],
  });
});

test('rooms are listed, opened, removed and put back; what was open stays as it was', async ({ app }) => {
  await rename(app, 'First of two');
  const first = await projectOf(app);
  await openRooms(app);
  await app.getByRole('button', { name: /^Old dairy, two rows/ }).click();
  await settled(app);
  await rename(app, 'Second of two');
  await openRooms(app);
  await app.getByRole('button', { name: /^First of two/ }).click();
  await expect.poll(() => nameOf(app)).toBe('First of two');
  expect(await projectOf(app)).toBe(first);
  await openRooms(app);
  await app.getByRole('button', { name: 'Remove Second of two' }).click();
  await expect(app.getByRole('button', { name: /^Second of two/ })).toHaveCount(0);
  await app.getByRole('button', { name: 'Put it back' }).click();
  await expect(app.getByRole('button', { name: /^Second of two/ })).toBeVisible();
});

test('a second tab is told, only shows, follows, and takes over when the first closes', async ({ app, context }) => {
  await rename(app, 'Two tabs');
  const other = await secondTab(context);
  await expect(other.getByText('This room is open in another tab. Here it is only shown')).toBeVisible();
  expect(await nameOf(other)).toBe('Two tabs');
  const refused = await probe(other, ({ view }) =>
    view.document.actions.apply('rename', (project) => ({ ok: true, project: { ...project, name: 'stolen' } })),
  );
  expect(refused?.allowed.kind).toBe('otherTab');
  await rename(app, 'Two tabs, changed');
  await expect.poll(() => nameOf(other)).toBe('Two tabs, changed');
  await app.goto('about:blank');
  await expect.poll(() => isReadOnly(other)).toBe(false);
  await expect(other.getByText('This room is open in another tab')).toHaveCount(0);
  await rename(other, 'Taken over');
  await other.reload();
  await settled(other);
  expect(await nameOf(other)).toBe('Taken over');
  await app.goto('./');
  await settled(app);
  await other.close();
});

test('a second tab works on a copy without touching the first', async ({ app, context }) => {
  await rename(app, 'The original');
  const before = await projectOf(app);
  const other = await secondTab(context);
  await other.getByRole('button', { name: 'Work on a copy' }).click();
  await expect.poll(() => isReadOnly(other)).toBe(false);
  expect(await nameOf(other)).toBe('The original, copy');
  await rename(other, 'The copy');
  expect(await projectOf(app)).toBe(before);
  await other.close();
});

test('a tab killed in the middle of a drag loses at most the drag', async ({ app, context }) => {
  await rename(app, 'Before the drag');
  const before = await projectOf(app);
  await probe(app, ({ view }) => {
    view.document.actions.mark('Move S1');
    for (let step = 1; step <= 20; step += 1)
      view.document.actions.apply('Move S1', (project) => ({
        ok: true,
        project: { ...project, name: `dragged ${step}` },
      }));
  });
  await app.goto('about:blank');
  const again = await secondTab(context);
  expect(await projectOf(again)).toBe(before);
  await again.close();
  await app.goto('./');
  await settled(app);
});

test('after the first load every mode opens without a network', async ({ app, context }) => {
  await app.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await context.setOffline(true);
  await app.reload();
  await settled(app);
  await probe(app, ({ view }) => view.session.setState({ mode: 'sit' }));
  await settled(app);
  const seen = (await probe(app, ({ stage }) => stage()?.objects(640, 400))) ?? {};
  expect(seen['picture:picture'] ?? 0).toBeGreaterThan(2000);
  await probe(app, ({ view }) => view.session.setState({ mode: 'overlook' }));
  await openRooms(app);
  await expect(app.getByRole('button', { name: /^Old dairy, two rows/ })).toBeVisible();
  await app.keyboard.press('Escape');
  await context.setOffline(false);
});

test('a room kept by a newer version stays as it is, and that is said', async ({ app }) => {
  await rename(app, 'From the future');
  await app.evaluate(async () => {
    const database = await new Promise<IDBDatabase>((resolve, reject) => {
      const asked = indexedDB.open('parterre-rooms');
      asked.onsuccess = () => resolve(asked.result);
      asked.onerror = () => reject(asked.error);
    });
    const writing = database.transaction('rooms', 'readwrite');
    const shelf = writing.objectStore('rooms');
    await new Promise<void>((resolve, reject) => {
      writing.oncomplete = () => resolve();
      writing.onabort = () => reject(writing.error);
      const all = shelf.getAll();
      all.onsuccess = () => {
        for (const room of all.result) {
          shelf.put({ ...room, text: room.text.replace('"version": 1', '"version": 99') }, room.id);
        }
      };
    });
    database.close();
  });
  await app.reload();
  await settled(app);
  await expect(app.getByText('That room was kept by another version of Parterre')).toBeVisible();
  const download = app.waitForEvent('download');
  await app.getByRole('button', { name: 'Save it as a file' }).click();
  expect((await download).suggestedFilename()).toBe('kept-room.parterre.json');
});

test('a browser that keeps nothing says so once, and work goes on', async ({ app }) => {
  await app.addInitScript(() => {
    const refuse = () => {
      throw new DOMException('refused', 'SecurityError');
    };
    Object.defineProperty(IDBFactory.prototype, 'open', { value: refuse });
    Object.defineProperty(Storage.prototype, 'setItem', { value: refuse });
    Object.defineProperty(Storage.prototype, 'getItem', { value: refuse });
  });
  await app.reload();
  await settled(app);
  for (const name of ['one', 'two'])
    await probe(
      app,
      ({ view }, next) => {
        view.document.actions.apply('rename', (project) => ({ ok: true, project: { ...project, name: next } }));
      },
      name,
    );
  await expect(app.getByText('This browser does not keep your room')).toHaveCount(1);
  expect(await nameOf(app)).toBe('two');
  await openRooms(app);
  await expect(app.getByText('This browser does not let Parterre keep rooms')).toBeVisible();
});
