import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { compileKernel, KERNEL_FILE, kernelModule } from '../../../src/build/kernels.ts';
import { bytesOf } from '../../../src/engines/bass/kernels/placement-kernel.ts';
import { PLACEMENT_WASM } from '../../../src/engines/bass/kernels/placement-wasm.ts';

it('the committed kernel is what its source compiles to, byte for byte', async () => {
  const binary = await compileKernel();
  expect(Buffer.from(bytesOf(PLACEMENT_WASM)).equals(Buffer.from(binary))).toBe(true);
  expect(readFileSync(KERNEL_FILE, 'utf8')).toBe(kernelModule(binary));
}, 60_000);
