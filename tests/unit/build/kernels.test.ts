import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { compileKernel, KERNELS, kernelFile, kernelModule } from '../../../src/build/kernels.ts';
import { bytesOf } from '../../../src/engines/bass/kernels/compiled.ts';
import { PLACEMENT_WASM } from '../../../src/engines/bass/kernels/placement-wasm.ts';
import { SYMMETRIC_WASM } from '../../../src/engines/bass/kernels/symmetric-wasm.ts';

const committed = { placement: PLACEMENT_WASM, symmetric: SYMMETRIC_WASM };

it.each(KERNELS)(
  'the committed kernel %s is what its source compiles to, byte for byte',
  async (name) => {
    const binary = await compileKernel(name);
    expect(Buffer.from(bytesOf(committed[name])).equals(Buffer.from(binary))).toBe(true);
    expect(readFileSync(kernelFile(name), 'utf8')).toBe(kernelModule(name, binary));
  },
  60_000,
);
