import { appendFileSync, cpSync, rmSync } from 'node:fs';
import { preview } from 'vite';
import { test as base, expect, probe, settled } from './support.ts';

const BUILT = '.cache/newer-build';

/** A copy of the build at an address of its own: what is changed in it reaches no other test. */
const test = base.extend({
  // biome-ignore lint/correctness/noEmptyPattern: the fixture needs none of the others, and has to say so this way
  baseURL: async ({}, use) => {
    rmSync(BUILT, { recursive: true, force: true });
    cpSync('dist', BUILT, { recursive: true });
    const server = await preview({ build: { outDir: BUILT }, preview: { port: 4318 } });
    await use(server.resolvedUrls?.local[0]);
    await server.close();
  },
});

test('a newer version is offered, waits, and is used only when the person says so', async ({ app }) => {
  await app.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  // The first worker takes pages over from their next load on; only then can a newer one wait.
  await app.reload();
  await settled(app);
  await probe(app, ({ view }) => {
    view.document.actions.apply('rename', (project) => ({ ok: true, project: { ...project, name: 'Kept across' } }));
  });
  appendFileSync(`${BUILT}/sw.js`, '\n// a newer build');
  await app.evaluate(() => navigator.serviceWorker.ready.then((registration) => registration.update()));
  await expect(app.getByText('A newer version is ready')).toBeVisible();
  await app.evaluate(() => Object.assign(window, { sameVisit: true }));
  await settled(app);
  expect(await app.evaluate(() => 'sameVisit' in window)).toBe(true);
  await app.getByRole('button', { name: 'Use it now' }).click();
  await app.waitForFunction(() => !('sameVisit' in window));
  await settled(app);
  expect(await probe(app, ({ view }) => view.document.getState().project.name)).toBe('Kept across');
});
