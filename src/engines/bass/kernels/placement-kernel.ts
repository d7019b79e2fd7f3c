import { compiledKernel, type KernelMemory, PAGE_BYTES } from './compiled.ts';
import { createPlainKernel } from './placement-plain.ts';
import { PLACEMENT_WASM } from './placement-wasm.ts';

/**
 * Sums and scores complex fields. A field holds [group of four frequencies][seat][re x 4, im x 4]; unused lanes of the last
 * group are 0 and count nothing. All places are indices into `floats`.
 */
export interface PlacementKernel {
  readonly place: 'wasm' | 'plain';
  readonly floats: Float32Array;
  /** to = a + b, `length` floats (a multiple of 4). */
  add(to: number, a: number, b: number, length: number): void;
  /**
   * For `count` fields from `fields` on, `stride` floats apart: standard deviation over the seats (divisor n - 1) of
   * log2 |partial + field|^2, summed over the frequencies, times `scale`, into `out`. At least two seats, at most 64.
   */
  scores(
    partial: number,
    fields: number,
    stride: number,
    count: number,
    groups: number,
    seats: number,
    scale: number,
    out: number,
  ): void;
}

interface Exports {
  readonly memory: KernelMemory;
  add(to: number, a: number, b: number, bytes: number): void;
  scores(
    partial: number,
    fields: number,
    stride: number,
    count: number,
    groups: number,
    seats: number,
    scale: number,
    out: number,
  ): void;
}

/** The kernel keeps nothing of its own in memory; the first page is left alone all the same. */
const FIRST = PAGE_BYTES;
const FLOAT_BYTES = 4;
/** 2^-23: the compiled kernel counts logarithms in the last bit of a float's mantissa. */
const BIT = 2 ** -23;

const createWasmKernel = (floats: number): PlacementKernel | null => {
  const exports = compiledKernel<Exports>(PLACEMENT_WASM);
  if (exports === null) return null;
  try {
    exports.memory.grow(Math.ceil((FIRST + floats * FLOAT_BYTES) / PAGE_BYTES));
  } catch {
    return null;
  }
  const memory = new Float32Array(exports.memory.buffer, FIRST, floats);
  const byte = (index: number): number => FIRST + index * FLOAT_BYTES;
  return {
    place: 'wasm',
    floats: memory,
    add: (to, a, b, length) => exports.add(byte(to), byte(a), byte(b), length * FLOAT_BYTES),
    scores: (partial, fields, stride, count, groups, seats, scale, out) =>
      exports.scores(byte(partial), byte(fields), stride * FLOAT_BYTES, count, groups, seats, scale * BIT, byte(out)),
  };
};

/** A kernel with room for so many floats: compiled where the browser allows it, else its plain twin. */
export const createPlacementKernel = (floats: number): PlacementKernel =>
  createWasmKernel(floats) ?? createPlainKernel(floats);
