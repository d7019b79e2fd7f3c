import { defineConfig } from '@playwright/test';
import { findBrowser } from './chromium.ts';

const PORT = 4317;
const browser = await findBrowser();

export default defineConfig({
  testDir: '.',
  testMatch: '*.spec.ts',
  outputDir: '../../.cache/browser',
  workers: 1,
  retries: 0,
  timeout: 120_000,
  expect: { timeout: 20_000 },
  reporter: process.env.PARTERRE_REPORT ? [['list'], ['json', { outputFile: process.env.PARTERRE_REPORT }]] : 'list',
  use: {
    baseURL: `http://localhost:${PORT}/`,
    viewport: { width: 1280, height: 800 },
    launchOptions: { executablePath: browser.executablePath, args: browser.args },
  },
  webServer: {
    command: `npx vite preview --port ${PORT} --strictPort`,
    cwd: '../..',
    url: `http://localhost:${PORT}/`,
    reuseExistingServer: false,
  },
});
