import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { test as base, expect, type Page } from '@playwright/test';
import type { Probe } from '../../src/app/probe.ts';
import type { Project } from '../../src/model/project.ts';
import { projectSchema } from '../../src/model/schema/project.ts';

export { expect };

/** Fiber's use of a class that three deprecated, and software rendering's remarks on reading pixels back. */
const KNOWN_REMARKS = [/THREE\.Clock: This module has been deprecated/, /GPU stall due to ReadPixels/];

/** A page that fails its test when it logs an error or a warning, throws, or asks any other origin for anything. */
export const test = base.extend<{ app: Page }>({
  app: async ({ page, baseURL }, use) => {
    const troubles: string[] = [];
    page.on('pageerror', (error) => troubles.push(`threw: ${error.message}`));
    page.on('console', (message) => {
      const remarkable = message.type() === 'error' || message.type() === 'warning';
      if (remarkable && !KNOWN_REMARKS.some((known) => known.test(message.text()))) troubles.push(message.text());
    });
    page.on('request', (request) => {
      const url = request.url();
      const own = url.startsWith(baseURL ?? '') || url.startsWith('blob:') || url.startsWith('data:');
      if (!own) troubles.push(`asked ${url}`);
    });
    await page.goto('./');
    await settled(page);
    await use(page);
    expect(troubles).toEqual([]);
  },
});

/** The page opened after this has no WebGL: as in a browser that draws nothing, and quick where drawing is not the matter. */
export const withoutDrawing = (page: Page): Promise<unknown> =>
  page.addInitScript(() => {
    const { getContext } = HTMLCanvasElement.prototype;
    HTMLCanvasElement.prototype.getContext = function (this: HTMLCanvasElement, kind: string, ...rest: unknown[]) {
      return kind.startsWith('webgl') ? null : Reflect.apply(getContext, this, [kind, ...rest]);
    } as typeof getContext;
  });

/** Waits until what is shown is the document's and nothing moves; the background may still add to it. */
export const settled = async (page: Page): Promise<void> => {
  await page.waitForFunction(() => window.parterre !== undefined);
  await page.evaluate(() => window.parterre?.settled());
};

/** Waits for the background's answers as well: modes, damping band, curves, decay. */
export const idle = async (page: Page): Promise<void> => {
  await page.waitForFunction(() => window.parterre !== undefined);
  await page.evaluate(() => window.parterre?.idle());
};

/** Runs in the page with the probe; what comes back must be plain data. */
export const probe = <T, A>(
  page: Page,
  look: (probe: Probe, argument: A) => T | Promise<T>,
  argument?: A,
): Promise<T> =>
  page.evaluate(
    ([source, given]) => {
      const run = new Function(`return (${source})`)() as (probe: Probe, argument: unknown) => unknown;
      return run(window.parterre as Probe, given);
    },
    [look.toString(), argument] as const,
  ) as Promise<T>;

export interface Report {
  readonly seats: readonly {
    readonly id: string;
    readonly eyeM: readonly number[];
    readonly earM: readonly number[];
    readonly picture: Record<string, number | null> & { readonly worstCase: Record<string, number | null> };
    readonly loudspeakers: readonly ({ readonly id: string } & Record<string, number>)[];
    readonly bass: { readonly levelDb: number[]; readonly lowDb: number[]; readonly highDb: number[] };
  }[];
  readonly bass: { readonly frequenciesHz: number[]; readonly meanSpreadDb: number };
  readonly findings: readonly { readonly id: string; readonly verdict: string }[];
}

/** What the command line says of a project file. */
export const evaluate = (file: string): Report =>
  JSON.parse(execFileSync('npx', ['tsx', 'src/evaluate.ts', file], { encoding: 'utf8', maxBuffer: 64_000_000 }));

export const DEMO = 'public/demos/two-row.json';

export const demoProject = (): Project => projectSchema.parse(JSON.parse(readFileSync(DEMO, 'utf8')));
