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

const server = spawn('npx', ['vite', 'preview', '--port', String(PORT), '--strictPort'], { stdio: 'ignore' });
const browser = await chromium.launch(await findBrowser());
try {
  const page = await browser.newPage({ viewport: { width: 1600, height: 1000 } });
  await page.goto(`http://localhost:${PORT}/`, { waitUntil: 'load' });
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
