import { describe, expect, it } from 'vitest';
import { answerOfPatches, couplePatches } from '../../../../../src/engines/bass/patches/coupled-system.ts';

describe('the system of coupled patches', () => {
  it('one function by hand: k = 2, D = 0.5, W = 1 + j, so y = j v / (1 + j (1 + j)) = v', () => {
    const system = couplePatches(1, Float64Array.of(1, 1), Float64Array.of(0.5, 0), 2, 0);
    expect(system).not.toBeNull();
    if (system === null) return;
    // 1 + j (1 + j) = j, and j v / j = v
    const values = Float64Array.of(9, 9, 3, -4);
    answerOfPatches(system, values, 2);
    expect([values[0], values[1]]).toEqual([9, 9]);
    expect(Math.abs(values[2] - 3)).toBeLessThan(1e-14);
    expect(Math.abs(values[3] + 4)).toBeLessThan(1e-14);
  });

  it('growth (complex k) and reactive patches: load = j k D', () => {
    const system = couplePatches(1, Float64Array.of(0, 0), Float64Array.of(0.3, 0.2), 2, -0.5);
    // j (2 - 0.5 j)(0.3 + 0.2 j) = (0.5 + 2 j)(0.3 + 0.2 j) = -0.25 + 0.7 j
    expect(system?.load[0]).toBeCloseTo(-0.25, 14);
    expect(system?.load[1]).toBeCloseTo(0.7, 14);
  });

  it('v(r) . y(s) is the same with r and s exchanged, though the system is not symmetric', () => {
    const couplings = Float64Array.of(1, 0.2, 0.3, -0.1, 0.3, -0.1, 0.7, 0.4);
    const system = couplePatches(2, couplings, Float64Array.of(0.4, 0, 0.1, 0.6), 1.7, 0.1);
    if (system === null) throw new Error('singular');
    const [a, b] = [Float64Array.of(1, 2, -0.5, 0.3), Float64Array.of(0.2, -1, 0.9, 0.8)];
    const dot = (x: Float64Array, y: Float64Array): [number, number] => [
      x[0] * y[0] - x[1] * y[1] + x[2] * y[2] - x[3] * y[3],
      x[0] * y[1] + x[1] * y[0] + x[2] * y[3] + x[3] * y[2],
    ];
    const [ya, yb] = [a.slice(), b.slice()];
    answerOfPatches(system, ya);
    answerOfPatches(system, yb);
    const [there, back] = [dot(a, yb), dot(b, ya)];
    expect(Math.hypot(there[0] - back[0], there[1] - back[1])).toBeLessThan(1e-13);
    expect(Math.hypot(...there)).toBeGreaterThan(0.1);
  });

  it('patches that absorb less than their walls beside others that absorb more: pivots are exchanged where they must be', () => {
    // W + 1 / j k D has nothing on its diagonal: 1 / (j D) = -j / D with k = 1, W_aa = j / D_a; W_ab = 0.5
    const delta = Float64Array.of(0.5, 0, -0.25, 0);
    const system = couplePatches(2, Float64Array.of(0, 2, 0.5, 0, 0.5, 0, 0, -4), delta, 1, 0);
    if (system === null) throw new Error('singular');
    const y = Float64Array.of(3, 1, -2, 5);
    answerOfPatches(system, y);
    // 0.5 y_b = v_a, 0.5 y_a = v_b
    for (const [i, expected] of [-4, 10, 6, 2].entries()) expect(Math.abs(y[i] - expected)).toBeLessThan(1e-13);
  });

  it('null where the system is singular: 1 + j k W D = 0', () => {
    expect(couplePatches(1, Float64Array.of(0, 1), Float64Array.of(1, 0), 1, 0)).toBeNull();
  });
});
