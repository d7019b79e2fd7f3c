import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import asc from 'assemblyscript/asc';

const fromHere = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

const SOURCE = fromHere('../engines/bass/kernels/placement.as');
export const KERNEL_FILE = fromHere('../engines/bass/kernels/placement-wasm.ts');

/** Compiles the kernel's source; the same compiler gives the same bytes. */
export const compileKernel = async (): Promise<Uint8Array> => {
  let binary: Uint8Array | null = null;
  const source = readFileSync(SOURCE, 'utf8');
  const { error, stderr } = await asc.main(
    ['placement.ts', '--outFile', 'placement.wasm', '-O3', '--runtime', 'stub', '--noAssert', '--enable', 'simd'],
    {
      readFile: (name) => (name === 'placement.ts' ? source : null),
      writeFile: (name, contents) => {
        if (name === 'placement.wasm' && typeof contents !== 'string') binary = contents;
      },
      listFiles: () => [],
    },
  );
  if (error !== null || binary === null)
    throw new Error(`the kernel does not compile: ${error?.message}\n${stderr.toString()}`);
  return binary;
};

/** The binary as a module, so that nothing has to be fetched. */
export const kernelModule = (binary: Uint8Array): string => {
  const text = Buffer.from(binary).toString('base64');
  const lines = text.match(/.{1,110}/g) ?? [];
  return [
    '/** Made by src/build/kernels.ts from placement.as; a test builds it again and compares. Base64 of the WebAssembly. */',
    'export const PLACEMENT_WASM =',
    `${lines.map((line) => `  '${line}'`).join(' +\n')};`,
    '',
  ].join('\n');
};

if (process.argv[1] === fileURLToPath(import.meta.url)) writeFileSync(KERNEL_FILE, kernelModule(await compileKernel()));
