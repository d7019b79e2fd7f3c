import { expect, it } from 'vitest';
import { decay } from '../../../../src/engines/bass/decay.ts';
import { seededRandom } from '../../../../src/math/random.ts';

it('is the exponential of the library, to a few units in the last place', () => {
  const random = seededRandom(11);
  const places = [0, 1e-300, 1e-17, 1e-9, Math.LN2 / 64, Math.LN2, 1, 600, 700];
  for (let i = 0; i < 20_000; i++) places.push(700 * random() ** 4);
  for (const t of places) expect(Math.abs(decay(t) / Math.exp(-t) - 1), `t ${t}`).toBeLessThanOrEqual(7e-16);
});

it('passes without a step from one table entry to the next', () => {
  for (let m = 0; m < 200; m++) {
    const edge = ((m + 0.5) * Math.LN2) / 32;
    expect(Math.abs(decay(edge * (1 + 1e-15)) / decay(edge * (1 - 1e-15)) - 1)).toBeLessThanOrEqual(1e-14);
  }
});
