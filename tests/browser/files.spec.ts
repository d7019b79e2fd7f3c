import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { DEMO, demoProject, expect, probe, settled, test } from './support.ts';

const text = readFileSync(DEMO, 'utf8');
const asFile = (name: string, content: string | Buffer) => ({
  name,
  mimeType: 'application/json',
  buffer: Buffer.isBuffer(content) ? content : Buffer.from(content),
});

const open = async (app: Page, file: ReturnType<typeof asFile>) => {
  const chooser = app.waitForEvent('filechooser');
  await app.getByRole('button', { name: 'Open', exact: true }).click();
  await (await chooser).setFiles(file);
};

const nameOf = (app: Page) => probe(app, ({ view }) => view.document.getState().project.name);

test('a file is opened, and what it holds is shown', async ({ app }) => {
  const project = { ...demoProject(), name: 'Ropewalk', picture: { ...demoProject().picture, widthM: 2 } };
  await open(app, asFile('ropewalk.json', JSON.stringify(project)));
  await expect.poll(() => nameOf(app)).toBe('Ropewalk');
  await settled(app);
  await expect(app.getByText('Ropewalk').first()).toBeVisible();
  const widthM = await probe(app, ({ view }) => view.results.getState().geometry?.value.picture.widthM);
  expect(widthM).toBe(2);
});

test('a file dropped on the window is opened', async ({ app }) => {
  const project = JSON.stringify({ ...demoProject(), name: 'Dropped in' });
  await app.evaluate((content) => {
    const data = new DataTransfer();
    data.items.add(new File([content], 'dropped.json', { type: 'application/json' }));
    for (const type of ['dragenter', 'dragover', 'drop']) {
      const event = new DragEvent(type, { bubbles: true, cancelable: true, dataTransfer: data });
      document.querySelector('canvas')?.dispatchEvent(event);
    }
  }, project);
  await expect.poll(() => nameOf(app)).toBe('Dropped in');
});

const HOSTILE: [string, string | Buffer, RegExp][] = [
  ['truncated', text.slice(0, 3000), /line \d+, column \d+/],
  ['nested', '['.repeat(1_000_000), /32|deep|nest/i],
  ['not-a-number', text.replace('"widthM": 4.3', '"widthM": NaN'), /line \d+, column \d+/],
  ['too-wide', text.replace('"widthM": 4.3', '"widthM": 1e308'), /room\.plan\.widthM.*1\.5 to 30/],
  ['same-id', text.replace('"id": "front-2"', '"id": "front-1"'), /front-1/],
  ['proto', text.replace('"notes":', '"__proto__": { "polluted": true }, "notes":'), /__proto__/],
  ['marked', Buffer.concat([Buffer.from([0xef, 0xbb, 0xbf]), Buffer.from(text)]), /byte-order mark/],
  ['utf16', Buffer.from(`\ufeff${text}`, 'utf16le'), /UTF-16/],
  ['empty', '', /nothing/],
  ['huge', Buffer.alloc(50_000_000, 0x20), /5 MB/],
  ['newer', text.replace('"version": 1', '"version": 2'), /newer/],
  [
    'crossing',
    text.replace(/"plan": \{[^}]*\}/, '"plan": { "shape": "polygon", "cornersM": [[-2,0],[2,6],[2,0],[-2,6]] }'),
    /room\.plan\.cornersM.*cross/,
  ],
];

test('hostile files are refused line by line and leave the open project untouched', async ({ app }) => {
  const before = await probe(app, ({ view }) => JSON.stringify(view.document.getState().project));
  for (const [name, content, says] of HOSTILE) {
    await open(app, asFile(`${name}.json`, content));
    const notice = app.getByText(`${name}.json was not opened; your project is as it was`);
    await expect(notice, name).toBeVisible();
    const [line] = await probe(app, ({ view }) => view.session.getState().notices[0].lines);
    expect(line, name).toMatch(says);
    await expect(app.getByText(line, { exact: true }), name).toBeVisible();
    expect(await probe(app, ({ view }) => JSON.stringify(view.document.getState().project)), name).toBe(before);
    await probe(app, ({ view }) => view.session.setState({ notices: [] }));
  }
  expect(await app.evaluate(() => ({}) as { polluted?: boolean })).toEqual({});
});

test('a saved file holds the project as it stands', async ({ app }) => {
  await probe(app, ({ view }) => {
    view.document.actions.apply('rename', (project) => ({ ok: true, project: { ...project, name: 'Kept: a "room"' } }));
  });
  const download = app.waitForEvent('download');
  await app.getByRole('button', { name: 'Save', exact: true }).click();
  const saved = await download;
  expect(saved.suggestedFilename()).toBe('Kept- a -room.parterre.json');
  const project = JSON.parse(readFileSync(await saved.path(), 'utf8'));
  expect(project).toEqual({ ...demoProject(), name: 'Kept: a "room"' });
});

test('the project is kept in the browser at each change and is there after a reload', async ({ app }) => {
  await probe(app, ({ view }) => {
    view.document.actions.apply('rename', (project) => ({ ok: true, project: { ...project, name: 'Still here' } }));
  });
  await expect.poll(() => probe(app, ({ view }) => view.document.getState().savedAtMs)).not.toBeNull();
  await app.reload();
  await settled(app);
  expect(await nameOf(app)).toBe('Still here');
});
