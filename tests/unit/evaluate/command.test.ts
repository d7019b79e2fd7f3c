import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';

const root = resolve(import.meta.dirname, '../../..');
const good = join(root, 'tests/fixtures/projects/v1/two-row.json');
const folder = mkdtempSync(join(tmpdir(), 'parterre-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Runs the command as its npm script does, without npm's own start. */
const evaluate = (...args: string[]) => {
  const loader = pathToFileURL(join(root, 'node_modules/tsx/dist/loader.mjs')).href;
  const command = ['--import', loader, join(root, 'src/evaluate.ts'), ...args];
  return spawnSync(process.execPath, command, { cwd: folder, encoding: 'utf8', timeout: 60_000, maxBuffer: 64e6 });
};

const file = (name: string, content: string | Uint8Array): string => {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
};

/** Faults: exit 2, nothing on standard output, no trace, one line each. Returns the lines. */
const faults = (...args: string[]): string[] => {
  const { status, stdout, stderr } = evaluate(...args);
  expect([status, stdout]).toEqual([2, '']);
  const lines = stderr.split('\n');
  expect(lines.pop()).toBe('');
  expect(lines.length).toBeGreaterThan(0);
  expect(lines.filter((line) => /^\s+at |node:internal|Error:/.test(line))).toEqual([]);
  for (const line of lines) expect(line.length).toBeLessThan(400);
  return lines;
};

const text = readFileSync(good, 'utf8');
const changed = (edit: (project: Record<string, never>) => void): string => {
  const project = JSON.parse(text);
  edit(project);
  return JSON.stringify(project);
};

describe('npm run evaluate', { timeout: 60_000 }, () => {
  it('prints the report and exits 0; --out writes the same into a file', () => {
    const { status, stdout, stderr } = evaluate(good);
    expect([status, stderr]).toEqual([0, '']);
    const report = JSON.parse(stdout);
    expect(report.inputSha256).toBe(createHash('sha256').update(readFileSync(good)).digest('hex'));
    const out = join(folder, 'report.json');
    expect(evaluate(good, '--out', out)).toMatchObject({ status: 0, stdout: '', stderr: '' });
    expect(readFileSync(out, 'utf8')).toBe(stdout);
  });

  it('takes start:stop:step in hertz', () => {
    const { status, stdout } = evaluate(good, '--frequencies', '20:200:5');
    expect(status).toBe(0);
    const { bass } = JSON.parse(stdout);
    expect([bass.frequenciesHz.length, bass.frequenciesHz[0], bass.frequenciesHz[36]]).toEqual([37, 20, 200]);
  });

  it('says what is wrong with a command line in one line', () => {
    expect(faults()).toHaveLength(1);
    expect(faults(join(folder, 'nothing.json'))[0]).toContain('not there');
    expect(faults(folder)[0]).toContain('a folder');
    expect(faults(good, '--wrong')[0]).toContain('"--wrong"');
    expect(faults(good, good)).toHaveLength(1);
    expect(faults(good, '--frequencies')).toHaveLength(1);
    expect(faults(good, '--frequencies', '200:20:5')[0]).toMatch(/^--frequencies: holds "200:20:5"; allowed: /);
    expect(faults(good, '--out', join(folder, 'no', 'such', 'place'))[0]).toContain('not there');
  });

  it('gives hostile files one line a fault', () => {
    const hostile: [string, string | Uint8Array][] = [
      ['empty.json', ''],
      ['cut.json', text.slice(0, 3000)],
      ['nested.json', '['.repeat(1_000_000)],
      ['utf16.json', Buffer.from(`\ufeff${text}`, 'utf16le')],
      ['mark.json', `\ufeff${text}`],
      ['binary.json', Uint8Array.from({ length: 4096 }, (_, i) => (i * 37) % 256)],
      ['nan.json', text.replace('"widthM": 4.3', '"widthM": NaN')],
      ['list.json', '[]'],
      ['newer.json', changed((p) => Object.assign(p, { version: 2 }))],
    ];
    for (const [name, content] of hostile) expect([name, faults(file(name, content)).length]).toEqual([name, 1]);
  });

  it('names path, value and range of each of several faults', () => {
    const lines = faults(
      file(
        'two.json',
        changed((p) => {
          Object.assign(p, { air: { temperatureC: 99 }, referenceSeat: 'nobody' });
        }).replace('"lengthM":6.1', '"lengthM":1e308'),
      ),
    );
    expect(lines.find((line) => line.startsWith('air.temperatureC: '))).toMatch(/99.*-20 to 50/);
    expect(lines.find((line) => line.startsWith('room.plan.lengthM: '))).toMatch(/1e\+308.*1\.5 to 30/);
    expect(new Set(lines).size).toBe(lines.length);
  });

  it('refuses 50 MB by its size within half a second of the start', () => {
    const large = file('large.json', new Uint8Array(50_000_000).fill(32));
    const quickest = (run: () => unknown): number => {
      const times = [0, 1, 2].map(() => {
        const before = process.hrtime.bigint();
        run();
        return Number(process.hrtime.bigint() - before) / 1e9;
      });
      return Math.min(...times);
    };
    const start = quickest(() => faults());
    const refused = quickest(() => expect(faults(large)[0]).toContain('50000000 bytes'));
    expect(refused - start).toBeLessThan(0.5);
  });

  it('imports nothing of the browser’s: neither three nor react', () => {
    const seen = new Set<string>();
    const visit = (path: string): void => {
      if (seen.has(path)) return;
      seen.add(path);
      for (const [, from] of readFileSync(path, 'utf8').matchAll(/(?:from|import)\s*\(?\s*'([^']+)'/g)) {
        if (from.startsWith('.')) visit(resolve(path, '..', from.endsWith('.ts') ? from : `${from}.ts`));
        else seen.add(from);
      }
    };
    visit(join(root, 'src/evaluate.ts'));
    const packages = [...seen].filter((name) => !name.startsWith('/'));
    // The triangulation of plans is pure: arithmetic on arrays.
    const pure = ['@kninnug/constrainautor', 'delaunator', 'robust-predicates', 'zod'];
    expect(packages.filter((name) => !name.startsWith('node:')).sort()).toEqual(pure);
    expect(seen.size).toBeGreaterThan(60);
  });
});
