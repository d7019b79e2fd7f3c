import { readFileSync, writeFileSync } from 'node:fs';
import { expect, probe, settled, test } from './support.ts';

const WORKER = 'dist/sw.js';

test('a newer version is offered, waits, and is used only when the person says so', async ({ app }) => {
  await app.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  // The first worker takes pages over from their next load on; only then can a newer one wait.
  await app.reload();
  await settled(app);
  await probe(app, ({ view }) => {
    view.document.actions.apply('rename', (project) => ({ ok: true, project: { ...project, name: 'Kept across' } }));
  });
  const before = readFileSync(WORKER, 'utf8');
  try {
    writeFileSync(WORKER, `${before}\n// a newer build`);
    await app.evaluate(() => navigator.serviceWorker.ready.then((registration) => registration.update()));
    await expect(app.getByText('A newer version is ready')).toBeVisible();
    await app.evaluate(() => Object.assign(window, { sameVisit: true }));
    await settled(app);
    expect(await app.evaluate(() => 'sameVisit' in window)).toBe(true);
    await app.getByRole('button', { name: 'Use it now' }).click();
    await app.waitForFunction(() => !('sameVisit' in window));
    await settled(app);
    expect(await probe(app, ({ view }) => view.document.getState().project.name)).toBe('Kept across');
  } finally {
    writeFileSync(WORKER, before);
  }
});
