// No eigenvalue of an axis may be lost or found twice, whatever the walls: 4,000 random axes over the whole right half plane
// of the admittance, solved cold, also at high frequency. The count comes from the argument principle (axis-count.ts,
// nothing shared with src).
import { expect, it } from 'vitest';
import { solveAxis } from '../../src/engines/bass/axis-solver.ts';
import { seededRandom } from '../../src/math/random.ts';
import { faultIn, randomWalls } from '../unit/engines/bass/axis-count.ts';

const SEED = 20261124;

it('4,000 cold axes: no mode lost, none doubled', () => {
  const random = seededRandom(SEED);
  const faults: string[] = [];
  for (let i = 0; i < 4000; i++) {
    const { b0, b1, ka } = randomWalls(random);
    const count = Math.ceil((1.2 * ka) / Math.PI) + 16;
    const { w } = solveAxis(count, Float64Array.of(...b0, ...b1));
    const fault = faultIn({ b0, b1 }, w);
    if (fault !== '') faults.push(`axis ${i} of seed ${SEED}: b0 ${b0}, b1 ${b1}: ${fault}`);
  }
  expect(faults).toEqual([]);
});
