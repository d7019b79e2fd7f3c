import { spawn } from 'node:child_process';
import { chromium, type Page } from '@playwright/test';
import { findBrowser } from '../browser/chromium.ts';
import { probe, settled } from '../browser/support.ts';

/** Makes the README's pictures from the built app: `npm run pictures` (run `npm run build` first). */
const PORT = 4318;

const SHOTS: { name: string; prepare: (page: Page) => Promise<unknown> }[] = [
  { name: 'overlook', prepare: () => Promise.resolve() },
  {
    name: 'sit',
    prepare: (page) => probe(page, ({ view }) => view.session.setState({ seatId: 'back-2', mode: 'sit' })),
  },
  {
    name: 'findings',
    prepare: (page) => probe(page, ({ view }) => view.session.setState({ mode: 'overlook', rightColumn: 'findings' })),
  },
];

const ADDRESS = `http://localhost:${PORT}/`;

/** The server takes a moment to begin, on a busy machine a long one. */
const listening = async (): Promise<void> => {
  for (let tries = 0; tries < 100; tries += 1) {
    const answers = await fetch(ADDRESS).then(
      ({ ok }) => ok,
      () => false,
    );
    if (answers) return;
    await new Promise((later) => setTimeout(later, 200));
  }
  throw new Error(`nothing answers at ${ADDRESS}`);
};

const server = spawn('npx', ['vite', 'preview', '--port', String(PORT), '--strictPort'], { stdio: 'ignore' });
const browser = await chromium.launch(await findBrowser());
try {
  const page = await browser.newPage({ viewport: { width: 1600, height: 1000 } });
  await listening();
  await page.goto(ADDRESS, { waitUntil: 'load' });
  for (const { name, prepare } of SHOTS) {
    await settled(page);
    await prepare(page);
    await settled(page);
    await page.screenshot({ path: `tests/pictures/${name}.png` });
    console.log(`tests/pictures/${name}.png`);
  }
} finally {
  await browser.close();
  server.kill();
}
