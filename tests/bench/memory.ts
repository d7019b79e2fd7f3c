import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { createLedger } from './timing.ts';

/** A worker of either lane may hold this much, MB. */
const MOST_MB = 150;

/** What a desk holds in an L of 40 m2 over a long session (session.ts), in a process of its own so that nothing else counts. */
export const benchMemory = (ledger: ReturnType<typeof createLedger>): void => {
  const session = fileURLToPath(new URL('./session.ts', import.meta.url));
  const text = execFileSync(process.execPath, ['--expose-gc', '--import', 'tsx', session, '40'], { encoding: 'utf8' });
  const { mostMb, endMb } = JSON.parse(text) as { mostMb: number; endMb: number };
  ledger.memory('heap of a worker after drags, slices, sweeps, band, curves, modes in an L of 40 m2', mostMb, MOST_MB);
  console.log(`        of which is left at the end: ${endMb.toFixed(0)} MB`);
};
