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

it('300 random axes followed from 20 to 200 Hz in twelfths of an octave end where cold starts end', () => {
  const random = seededRandom(SEED + 1);
  for (let i = 0; i < 300; i++) {
    const { b0, b1 } = randomWalls(random);
    const count = 24;
    let ratio = 1;
    // the first frequency is a tenth of the last, so that the random walls are those of the last
    let roots = solveAxis(
      count,
      Float64Array.of(...b0, ...b1).map((part) => part / 10),
    );
    for (let step = 1; step <= 40; step++) {
      const next = 10 ** (step / 40);
      const walls = Float64Array.of(...b0, ...b1).map((part) => (part * next) / 10);
      roots = solveAxis(count, walls, roots, [next / ratio, 0]);
      ratio = next;
    }
    const fault = faultIn({ b0, b1 }, roots.w);
    // a mode may have left the list of the first 24 on one way and not on the other: the count decides
    expect(fault, `axis ${i} of seed ${SEED + 1}: b0 ${b0}, b1 ${b1}`).toBe('');
  }
});
