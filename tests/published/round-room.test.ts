// Modes of a round room: k R = zeros of J'_m (Abramowitz and Stegun, Handbook of Mathematical Functions, table 9.5; standing:
// from memory). The room here has 64 corners on the circle, its area 0.16 % less, so that frequencies lie up to 0.1 % higher.
import { describe, expect, it } from 'vitest';
import { createPlanBasis } from '../../src/engines/bass/plan/create-plan-basis.ts';
import { PLAN_DETAIL } from '../../src/engines/bass/plan/element-choice.ts';

/** [k R, 1 for m = 0 and 2 for the pairs of the others]. */
const ZEROS: readonly [number, number][] = [
  [1.84118, 2],
  [3.05424, 2],
  [3.83171, 1],
  [4.20119, 2],
  [5.31755, 2],
  [5.33144, 2],
  [6.41562, 2],
  [6.70613, 2],
  [7.01559, 1],
  [7.50127, 2],
  [8.01524, 2],
];
const RADIUS_M = 3;

describe('a round room of 64 corners', () => {
  const corners = Array.from({ length: 64 }, (_, i): [number, number] => [
    RADIUS_M * Math.cos((i * Math.PI) / 32),
    RADIUS_M * Math.sin((i * Math.PI) / 32),
  ]);
  const expected = ZEROS.flatMap(([zero, times]) => Array.from({ length: times }, () => zero));

  it.each([
    // elements reach 7e-4 and 8e-3 at the bound (element-choice.ts), the corners 1e-3
    ['fine', 2e-3],
    ['first', 1e-2],
  ] as const)('%s: 20 modes to 150 Hz, in pairs, within %f', (detail, within) => {
    const { rigid } = createPlanBasis(corners, {
      maxHz: 150,
      soundSpeed: 343.2,
      wallFunctions: 0,
      ...PLAN_DETAIL[detail],
    });
    expect(rigid).toHaveLength(1 + expected.length);
    for (const [i, zero] of expected.entries()) {
      const found = RADIUS_M * Math.sqrt(rigid[i + 1]);
      expect(found / zero).toBeGreaterThan(1 - 1e-4);
      expect(found / zero).toBeLessThan(1 + within);
    }
  });
});
