import { describe, expect, it } from 'vitest';
import { METRIC_FREQUENCIES_HZ, spreadOf } from '../../../../src/engines/bass/metrics.ts';
import type { UnitResponses } from '../../../../src/engines/bass/room-field.ts';
import { driveWeights, levelsDb, superpose } from '../../../../src/engines/bass/superpose.ts';

const PLAIN = { gainDb: 0, delayMs: 0, inverted: false };

/** Two sources, three receivers, two frequencies, H = 1 at every receiver from both. */
const ones: UnitResponses = {
  sources: 2,
  receivers: 3,
  frequencies: 2,
  re: new Float64Array(12).fill(1),
  im: new Float64Array(12),
  moved: new Uint8Array(6),
};

describe('drives', () => {
  it('gain, delay and polarity as a complex weight', () => {
    // 5 ms at 50 Hz is a quarter period: e^(-j pi / 2) = -j
    const weights = driveWeights(
      [PLAIN, { gainDb: -6, delayMs: 5, inverted: false }, { ...PLAIN, inverted: true }],
      50,
    );
    const expected = [1, 0, 0, -(10 ** -0.3), -1, 0];
    for (const [i, value] of expected.entries()) expect(weights[i]).toBeCloseTo(value, 12);
  });
});

describe('sum', () => {
  it('two in phase: +6.02 dB; one turned round: silence with a number', () => {
    const loud = levelsDb(superpose(ones, [PLAIN, PLAIN], [40, 80]));
    expect(loud).toHaveLength(6);
    for (const level of loud) expect(level).toBeCloseTo(20 * Math.log10(2), 12);
    const silent = levelsDb(superpose(ones, [PLAIN, { ...PLAIN, inverted: true }], [40, 80]));
    for (const level of silent) expect(level).toBe(-300);
  });

  it('half a period of delay cancels at that frequency only', () => {
    const levels = levelsDb(superpose(ones, [PLAIN, { ...PLAIN, delayMs: 12.5 }], [40, 80]));
    expect(levels[0]).toBeLessThan(-200);
    expect(levels[1]).toBeCloseTo(20 * Math.log10(2), 9);
  });

  it('keeps sources, receivers and frequencies apart', () => {
    const re = Float64Array.from({ length: 12 }, (_, i) => 10 ** i / 1e6);
    const sum = superpose({ ...ones, re }, [PLAIN, PLAIN], [40, 80]);
    // (source * 3 + receiver) * 2 + frequency
    for (let r = 0; r < 3; r++) {
      for (let f = 0; f < 2; f++) expect(sum.re[2 * r + f]).toBeCloseTo(re[2 * r + f] + re[2 * (3 + r) + f], 12);
    }
  });
});

describe('seat-to-seat figures', () => {
  it('stand on 20 x 2^(i/24), 20 to 80 Hz', () => {
    expect(METRIC_FREQUENCIES_HZ).toHaveLength(49);
    expect(METRIC_FREQUENCIES_HZ[0]).toBe(20);
    expect(METRIC_FREQUENCIES_HZ[24]).toBeCloseTo(40, 10);
    expect(METRIC_FREQUENCIES_HZ[48]).toBeCloseTo(80, 10);
  });

  it('worked by hand: 3 seats, 2 frequencies, divisor n - 1', () => {
    // 40 Hz: 1, 2, 6 (mean 3, squares 4 + 1 + 9 = 14, variance 7, range 5); 80 Hz: 4, 4, 4
    const spread = spreadOf(Float64Array.of(1, 4, 2, 4, 6, 4), 3, 2);
    expect(spread?.spreadDb[0]).toBeCloseTo(Math.sqrt(7), 12);
    expect(spread?.spreadDb[1]).toBe(0);
    expect(spread?.meanSpreadDb).toBeCloseTo(Math.sqrt(7) / 2, 12);
    expect(spread?.meanVarianceDb2).toBeCloseTo(3.5, 12);
    expect(spread?.maxMinDb).toBeCloseTo(2.5, 12);
  });

  it('one seat has none', () => {
    expect(spreadOf(Float64Array.of(1, 2), 1, 2)).toBeNull();
  });
});
