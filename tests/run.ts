import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';

/**
 * Runs every check one after the other and ends with `N passed, N failed`: lint and format, types, unit and published
 * checks, then the page in a real browser. With --long it runs the slow checks instead.
 */
interface Tally {
  passed: number;
  failed: number;
}

const CACHE = '.cache';
const long = process.argv.includes('--long');
mkdirSync(CACHE, { recursive: true });

const run = (title: string, command: string, args: string[], env: Record<string, string> = {}): boolean => {
  console.log(`\n== ${title}`);
  const outcome = spawnSync(command, args, { stdio: 'inherit', env: { ...process.env, ...env } });
  return outcome.status === 0;
};

const step = (title: string, command: string, args: string[]): Tally =>
  run(title, command, args) ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 };

/** A suite that died before it wrote its report counts as one failure, never as none. */
const reported = (ok: boolean, file: string, read: (report: string) => Tally): Tally => {
  try {
    const tally = read(readFileSync(file, 'utf8'));
    return ok || tally.failed > 0 ? tally : { ...tally, failed: 1 };
  } catch {
    return { passed: 0, failed: 1 };
  }
};

const vitest = (title: string, extra: string[] = []): Tally => {
  const file = `${CACHE}/vitest.json`;
  rmSync(file, { force: true });
  const ok = run(title, 'npx', [
    'vitest',
    'run',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${file}`,
    ...extra,
  ]);
  return reported(ok, file, (text) => {
    const report = JSON.parse(text) as { numPassedTests: number; numTotalTests: number };
    return { passed: report.numPassedTests, failed: report.numTotalTests - report.numPassedTests };
  });
};

const built = () => run('build', 'npx', ['vite', 'build', '--logLevel', 'warn']);

/** On the page as it was built last. */
const browser = (title: string, extra: string[], env: Record<string, string> = {}): Tally => {
  const file = `${CACHE}/browser.json`;
  rmSync(file, { force: true });
  const args = ['playwright', 'test', '-c', 'tests/browser/playwright.config.ts', ...extra];
  const ok = run(title, 'npx', args, { ...env, PARTERRE_REPORT: `${process.cwd()}/${file}` });
  return reported(ok, file, (text) => {
    const { stats } = JSON.parse(text) as {
      stats: { expected: number; unexpected: number; flaky: number; skipped: number };
    };
    return { passed: stats.expected, failed: stats.unexpected + stats.flaky + stats.skipped };
  });
};

const inBrowser = (checks: () => Tally[]): Tally[] => (built() ? checks() : [{ passed: 0, failed: 1 }]);

const started = Date.now();
const tallies = long
  ? [
      vitest('long checks', ['--config', 'tests/long/vitest.config.ts']),
      ...inBrowser(() => [
        browser('every field of every demo in a browser', ['every-field'], { PARTERRE_EVERY_FIELD: '1' }),
      ]),
    ]
  : [
      step('lint and format', 'npx', ['biome', 'check', '.']),
      step('types of the page', 'npx', ['tsc', '-p', 'tsconfig.json']),
      step('types of the pure folders, without the DOM', 'npx', ['tsc', '-p', 'src/tsconfig.pure.json']),
      step('types of the tests', 'npx', ['tsc', '-p', 'tests/tsconfig.json']),
      vitest('unit, property and published checks'),
      ...inBrowser(() => [
        browser('what of the page needs no drawing, in a browser', ['--project=undrawn']),
        browser('the page in a browser', ['--project=drawn']),
      ]),
    ];

const passed = tallies.reduce((sum, tally) => sum + tally.passed, 0);
const failed = tallies.reduce((sum, tally) => sum + tally.failed, 0);
console.log(`\n${Math.round((Date.now() - started) / 1000)} s`);
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed > 0 || passed === 0 ? 1 : 0);
