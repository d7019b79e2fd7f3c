import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import asc from 'assemblyscript/asc';

const fromHere = (path: string): string => fileURLToPath(new URL(`../engines/bass/kernels/${path}`, import.meta.url));

/** Kernels by name: NAME.as becomes NAME-wasm.ts. */
export const KERNELS = ['placement', 'symmetric'] as const;
export type KernelName = (typeof KERNELS)[number];

export const kernelFile = (name: KernelName): string => fromHere(`${name}-wasm.ts`);

/** Compiles a kernel's source; the same compiler gives the same bytes. */
export const compileKernel = async (name: KernelName): Promise<Uint8Array> => {
  let binary: Uint8Array | null = null;
  const source = readFileSync(fromHere(`${name}.as`), 'utf8');
  const { error, stderr } = await asc.main(
    [`${name}.ts`, '--outFile', `${name}.wasm`, '-O3', '--runtime', 'stub', '--noAssert', '--enable', 'simd'],
    {
      readFile: (asked) => (asked === `${name}.ts` ? source : null),
      writeFile: (written, contents) => {
        if (written === `${name}.wasm` && typeof contents !== 'string') binary = contents;
      },
      listFiles: () => [],
    },
  );
  if (error !== null || binary === null)
    throw new Error(`the kernel ${name} does not compile: ${error?.message}\n${stderr.toString()}`);
  return binary;
};

/** The binary as a module, so that nothing has to be fetched. */
export const kernelModule = (name: KernelName, binary: Uint8Array): string => {
  const text = Buffer.from(binary).toString('base64');
  const lines = text.match(/.{1,110}/g) ?? [];
  return [
    `/** Made by src/build/kernels.ts from ${name}.as; a test builds it again and compares. Base64 of the WebAssembly. */`,
    `export const ${name.toUpperCase()}_WASM =`,
    `${lines.map((line) => `  '${line}'`).join(' +\n')};`,
    '',
  ].join('\n');
};

if (process.argv[1] === fileURLToPath(import.meta.url))
  for (const name of KERNELS) writeFileSync(kernelFile(name), kernelModule(name, await compileKernel(name)));
