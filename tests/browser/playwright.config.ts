import { defineConfig } from '@playwright/test';
import { findBrowser, WITHOUT_GRAPHICS } from './chromium.ts';

const PORT = 4317;
const { executablePath, args } = await findBrowser();

/** What draws no room at all: these open their pages with `withoutDrawing`. */
const UNDRAWN = ['audit', 'bare', 'every-field', 'panels'].map((name) => `${name}.spec.ts`);

export default defineConfig({
  testDir: '.',
  testMatch: '*.spec.ts',
  outputDir: '../../.cache/browser',
  workers: 2,
  retries: 0,
  // Against hanging only: how fast a processor draws says nothing of the page.
  timeout: 300_000,
  expect: { timeout: 60_000 },
  reporter: process.env.PARTERRE_REPORT ? [['list'], ['json', { outputFile: process.env.PARTERRE_REPORT }]] : 'list',
  use: {
    baseURL: `http://localhost:${PORT}/`,
    viewport: { width: 1280, height: 800 },
  },
  projects: [
    // Drawing by a processor keeps two of them busy: a second page beside it gains nothing.
    { name: 'drawn', testIgnore: UNDRAWN, workers: 1, use: { launchOptions: { executablePath, args } } },
    {
      name: 'undrawn',
      testMatch: UNDRAWN,
      fullyParallel: true,
      use: { launchOptions: { executablePath, args: [...args, ...WITHOUT_GRAPHICS] } },
    },
  ],
  webServer: {
    command: `npx vite preview --port ${PORT} --strictPort`,
    cwd: '../..',
    url: `http://localhost:${PORT}/`,
    reuseExistingServer: false,
  },
});
