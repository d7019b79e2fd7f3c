import { createSymmetricKernel } from '../../src/engines/bass/kernels/symmetric-kernel.ts';
import { plainSymmetricKernel } from '../../src/engines/bass/kernels/symmetric-plain.ts';
import { seededRandom } from '../../src/math/random.ts';
import { solvePlainly } from './baselines/plain-symmetric.ts';
import { type createLedger, interleave } from './timing.ts';

/** Functions of a living room's plan with patches, and the parts its patches have over it. */
const SIZE = 146;
const COUNT = 50;

/** Systems of a prism: compiled, in plain TypeScript, and in the plainest code there is. */
export const benchSymmetric = (ledger: ReturnType<typeof createLedger>): void => {
  const random = seededRandom(31);
  const vectors = Array.from({ length: SIZE }, () => Float64Array.from({ length: SIZE }, () => random() - 0.5));
  const full = new Float64Array(2 * SIZE * SIZE);
  for (let i = 0; i < SIZE; i++) {
    full[2 * (i * SIZE + i)] = 60 - (60 * i) / SIZE - 11.3;
    for (let j = 0; j < SIZE; j++) for (const v of vectors) full[2 * (i * SIZE + j) + 1] += 0.03 * v[i] * v[j];
  }
  const packed: number[] = [];
  for (let i = 0; i < SIZE; i++) packed.push(...full.subarray(2 * (i * SIZE + i), 2 * (i + 1) * SIZE));
  const sides = Float64Array.from({ length: 2 * SIZE * COUNT }, () => random() - 0.5);
  const bySide = new Float64Array(sides.length);
  for (let i = 0; i < SIZE; i++)
    for (let r = 0; r < COUNT; r++)
      for (const part of [0, 1]) bySide[2 * (r * SIZE + i) + part] = sides[2 * (i * COUNT + r) + part];
  const compiled = createSymmetricKernel();
  let ours: Float64Array = sides;
  let plain: Float64Array = bySide;
  const run = (kernel: typeof compiled): void => {
    const factor = Float64Array.from(packed);
    kernel.factorise(SIZE, factor);
    ours = sides.slice();
    kernel.solve(SIZE, factor, ours, COUNT);
  };
  const [twin, fast, plainest] = interleave(9, [
    { label: 'twin', run: () => run(plainSymmetricKernel) },
    { label: 'compiled', run: () => run(compiled) },
    {
      label: 'plain',
      run: () => {
        plain = solvePlainly(SIZE, full, bySide, COUNT);
      },
    },
  ]);
  let worst = 0;
  for (let i = 0; i < SIZE; i++)
    for (let r = 0; r < COUNT; r++)
      for (const part of [0, 1])
        worst = Math.max(worst, Math.abs(ours[2 * (i * COUNT + r) + part] - plain[2 * (r * SIZE + i) + part]));
  ledger.bound(`${SIZE} unknowns, ${COUNT} right sides: worst difference from plain code`, worst, 1e-11);
  ledger.ratio('a system of a prism, factorised and solved', fast, plainest, 10, ' for plain code');
  ledger.ratio('a system of a prism, factorised and solved', fast, twin, 4, ' for the twin in TypeScript');
};
