import type { PlacementKernel } from './placement-kernel.ts';

const FLOATS_A_SEAT = 8;
const LANES = 4;
/** Powers below this (-1400 dB) are one silence, so that it has a logarithm. */
const LEAST_POWER = 1e-140;

/**
 * The kernel in plain TypeScript: the fallback where WebAssembly is not to be had, and the oracle of placement.as. Same
 * layout, sums in double precision, logarithms exact.
 */
export const createPlainKernel = (floats: number): PlacementKernel => {
  const memory = new Float32Array(floats);
  const log2 = new Float64Array(LANES * 64);
  return {
    place: 'plain',
    floats: memory,
    add: (to, a, b, length) => {
      for (let i = 0; i < length; i++) memory[to + i] = memory[a + i] + memory[b + i];
    },
    scores: (partial, fields, stride, count, groups, seats, scale, out) => {
      for (let c = 0; c < count; c++) {
        let total = 0;
        for (let lane = 0; lane < groups * LANES; lane++) {
          const at = Math.floor(lane / LANES) * seats * FLOATS_A_SEAT + (lane % LANES);
          let sum = 0;
          for (let s = 0; s < seats; s++) {
            const p = partial + at + s * FLOATS_A_SEAT;
            const f = fields + c * stride + at + s * FLOATS_A_SEAT;
            const re = memory[p] + memory[f];
            const im = memory[p + LANES] + memory[f + LANES];
            log2[s] = Math.log2(Math.max(LEAST_POWER, re * re + im * im));
            sum += log2[s];
          }
          let squares = 0;
          for (let s = 0; s < seats; s++) squares += (log2[s] - sum / seats) ** 2;
          total += Math.sqrt(squares / (seats - 1));
        }
        memory[out + c] = total * scale;
      }
    },
  };
};
