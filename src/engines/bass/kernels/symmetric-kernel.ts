import { compiledKernel, type KernelMemory, PAGE_BYTES } from './compiled.ts';
import { MOST_GROWTH, plainSymmetricKernel } from './symmetric-plain.ts';
import { SYMMETRIC_WASM } from './symmetric-wasm.ts';

/** Complex symmetric systems and products with real matrices; layouts and meaning in symmetric-plain.ts. */
export interface SymmetricKernel {
  readonly place: 'wasm' | 'plain';
  /** A = L D L^T in place, packed; false where a pivot vanishes or a multiplier grows too far: `a` is spoilt then. */
  factorise(n: number, a: Float64Array): boolean;
  /** Solves A X = B for `count` right sides at once, overwritten: entry (i, r) as re, im at 2 (i count + r) of `x`. */
  solve(n: number, factor: Float64Array, x: Float64Array, count: number): void;
  /** out[m][l] = sum over i of p[i][m] x[i][l]: `p` real, `rows` by `left`; `x` and `out` re, im, `rows` and `left` by `right`. */
  products(rows: number, p: Float64Array, left: number, x: Float64Array, right: number, out: Float64Array): void;
}

interface Exports {
  readonly memory: KernelMemory;
  factorise(n: number, a: number, scratch: number, mostGrowth: number): number;
  solve(n: number, a: number, x: number, count: number, scratch: number): void;
  products(rows: number, p: number, left: number, x: number, right: number, out: number): void;
}

const NUMBER_BYTES = 8;
/** The kernel keeps nothing of its own in memory; the first page is left alone all the same. */
const FIRST = PAGE_BYTES / NUMBER_BYTES;
/** Rows of the kernel's blocks, and its scratch for n rows, re, im each. */
const BLOCK = 16;
const scratchFor = (n: number): number => 2 * ((2 * BLOCK + 2) * n + 8 * BLOCK);

const createWasmKernel = (): SymmetricKernel | null => {
  const exports = compiledKernel<Exports>(SYMMETRIC_WASM);
  if (exports === null) return null;
  let memory = new Float64Array(exports.memory.buffer);
  /** Memory for so many numbers after the first page; more is asked for with half as much again. */
  const withRoom = (numbers: number): Float64Array => {
    const missing = FIRST + numbers - memory.length;
    if (missing > 0) {
      exports.memory.grow(Math.ceil((1.5 * missing * NUMBER_BYTES) / PAGE_BYTES));
      memory = new Float64Array(exports.memory.buffer);
    }
    return memory;
  };
  const byte = (index: number): number => index * NUMBER_BYTES;
  return {
    place: 'wasm',
    factorise: (n, a) => {
      const held = withRoom(a.length + scratchFor(n));
      held.set(a, FIRST);
      const done = exports.factorise(n, byte(FIRST), byte(FIRST + a.length), MOST_GROWTH) === 1;
      a.set(held.subarray(FIRST, FIRST + a.length));
      return done;
    },
    solve: (n, factor, x, count) => {
      const length = 2 * n * count;
      const from = FIRST + factor.length;
      const held = withRoom(factor.length + length + scratchFor(n));
      held.set(factor, FIRST);
      held.set(length === x.length ? x : x.subarray(0, length), from);
      exports.solve(n, byte(FIRST), byte(from), count, byte(from + length));
      x.set(held.subarray(from, from + length));
    },
    products: (rows, p, left, x, right, out) => {
      const fromX = FIRST + rows * left;
      const fromOut = fromX + 2 * rows * right;
      const held = withRoom(rows * left + 2 * (rows + left) * right);
      held.set(p.subarray(0, rows * left), FIRST);
      held.set(x.subarray(0, 2 * rows * right), fromX);
      exports.products(rows, byte(FIRST), left, byte(fromX), right, byte(fromOut));
      out.set(held.subarray(fromOut, fromOut + 2 * left * right));
    },
  };
};

/** Compiled where that is allowed, else the plain twin. */
export const createSymmetricKernel = (): SymmetricKernel => createWasmKernel() ?? plainSymmetricKernel;

let shared: SymmetricKernel | null = null;

/** The kernel all systems of a thread share: it keeps nothing between two calls. */
export const symmetricKernel = (): SymmetricKernel => {
  shared ??= createSymmetricKernel();
  return shared;
};
