import { describe, expect, it } from 'vitest';
import { peak, peakDb } from '../../../../src/engines/bass/filters.ts';
import { greatestPeaks } from '../../../../src/engines/bass/headroom.ts';
import { freeFieldRms, outputAt } from '../../../../src/engines/bass/output.ts';
import type { UnitResponses } from '../../../../src/engines/bass/room-field.ts';
import {
  fillDip,
  lossDb,
  meanLossDb,
  throughCrossover,
  togetherDb,
} from '../../../../src/engines/bass/through-crossover.ts';

const PLAIN = { gainDb: 0, delayMs: 0, inverted: false, highPassHz: 20, output: null };

/** Responses of sources at so many metres in the open air: e^(-jkr) / r. */
const open = (metres: readonly (readonly number[])[], frequenciesHz: ArrayLike<number>): UnitResponses => {
  const [sources, receivers, frequencies] = [metres.length, metres[0].length, frequenciesHz.length];
  const re = new Float64Array(sources * receivers * frequencies);
  const im = new Float64Array(re.length);
  for (let i = 0; i < re.length; i++) {
    const r = metres[Math.floor(i / frequencies / receivers)][Math.floor(i / frequencies) % receivers];
    const phase = (2 * Math.PI * frequenciesHz[i % frequencies] * r) / 343.2;
    re[i] = Math.cos(phase) / r;
    im[i] = -Math.sin(phase) / r;
  }
  return { sources, receivers, frequencies, re, im, moved: new Uint8Array(sources * receivers) };
};

const GRID = Float64Array.from({ length: 80 }, (_, i) => 20 * 2 ** (i / 24));

describe('output by band', () => {
  it('half-space peak figures lose 6.02 + 3.01 dB, free-field rms ones nothing', () => {
    const half = freeFieldRms({ bandsDb: { '31.5': 109, '20': 100 }, space: 'half', kind: 'peak' });
    expect([...half.frequenciesHz]).toEqual([20, 31.5]);
    expect(half.rmsDb[0]).toBeCloseTo(90.97, 2);
    expect(half.rmsDb[1]).toBeCloseTo(99.97, 2);
    expect(freeFieldRms({ bandsDb: { '50': 105 }, space: 'full', kind: 'rms' }).rmsDb[0]).toBe(105);
  });

  it('straight in dB over the logarithm of frequency; nothing beyond the end bands', () => {
    const output = freeFieldRms({ bandsDb: { '20': 90, '40': 102, '80': 108 }, space: 'full', kind: 'rms' });
    expect(outputAt(output, 20 * Math.SQRT2)).toBeCloseTo(96, 9);
    expect(outputAt(output, 80)).toBe(108);
    expect(outputAt(output, 18)).toBe(90);
    expect(outputAt(output, 17)).toBeNull();
    expect(outputAt(output, 89)).toBe(108);
    expect(outputAt(output, 91)).toBeNull();
  });
});

describe('headroom', () => {
  const output = freeFieldRms({ bandsDb: { '40': 110 }, space: 'full', kind: 'rms' });

  it('one in the open air at 2 m: its peak less 6.02 dB, whatever its gain and high-pass', () => {
    for (const gainDb of [0, -7]) {
      const [peakDb] = greatestPeaks(open([[2]], [40]), [{ ...PLAIN, gainDb, output }], [40]);
      expect(peakDb).toBeCloseTo(110 + 3.01 - 6.02, 2);
    }
  });

  it('two alike: 6.02 dB more; with one turned up by 6 dB that one limits both', () => {
    const unit = open([[1], [1]], [40]);
    const both = [
      { ...PLAIN, output },
      { ...PLAIN, output },
    ];
    expect(greatestPeaks(unit, both, [40])[0]).toBeCloseTo(113.01 + 6.02, 2);
    const uneven = [
      { ...PLAIN, output },
      { ...PLAIN, gainDb: 6, output },
    ];
    // the louder at its limit gives 1, the other 10^(-6/20) = 0.501: 20 log10 1.501 = 3.53 dB
    expect(greatestPeaks(unit, uneven, [40])[0]).toBeCloseTo(113.01 + 3.53, 2);
  });

  it('says nothing where one of them states nothing', () => {
    const unit = open([[1], [1]], [40]);
    expect(greatestPeaks(unit, [{ ...PLAIN, output }, PLAIN], [40])[0]).toBeNaN();
  });
});

describe('centre and subwoofers through the crossover', () => {
  it('at one distance and without a high-pass of its own they add fully: no loss, nothing to cure', () => {
    const unit = open([[3, 4]], GRID);
    const field = throughCrossover(unit, unit, [{ ...PLAIN, highPassHz: 1e-3 }], 80, GRID);
    expect(field.trimDb).toBeCloseTo(0, 9);
    for (const loss of lossDb(field, GRID, { delayMs: 0, inverted: false })) expect(Math.abs(loss)).toBeLessThan(1e-6);
    const cure = fillDip(field, GRID, 80, 0, 15);
    expect(cure).toMatchObject({ delayMs: 0, inverted: false });
    // the sum is the response itself: 20 log10 (1 / 3) at every frequency
    for (const level of togetherDb(field, GRID, cure).slice(0, GRID.length)) expect(level).toBeCloseTo(-9.542, 3);
  });

  it('a centre 1.03 m farther than the subwoofer is cured by 3.0 ms of delay', () => {
    const field = throughCrossover(
      open([[3 + 1.0296]], GRID),
      open([[3]], GRID),
      [{ ...PLAIN, highPassHz: 1e-3 }],
      80,
      GRID,
    );
    const cure = fillDip(field, GRID, 80, 0, 15);
    expect(cure.delayMs).toBeCloseTo(3, 6);
    expect(cure.inverted).toBe(false);
    expect(cure.afterDb).toBeGreaterThan(-0.001);
    expect(cure.beforeDb).toBeLessThan(-0.5);
  });

  it('a subwoofer wired the wrong way round is found out', () => {
    const wrong = [{ ...PLAIN, inverted: true, highPassHz: 1e-3 }];
    const field = throughCrossover(open([[3]], GRID), open([[3]], GRID), wrong, 80, GRID);
    const cure = fillDip(field, GRID, 80, 0, 15);
    expect(cure).toMatchObject({ delayMs: 0, inverted: true });
    expect(cure.beforeDb).toBeLessThan(-6);
    expect(cure.afterDb).toBeGreaterThan(-1e-6);
  });

  it('no delay on a finer grid does better than the cure found', () => {
    const centre = open([[3.1, 4.2, 5.0]], GRID);
    const unit = open(
      [
        [4.4, 2.9, 3.3],
        [2.0, 5.5, 4.1],
      ],
      GRID,
    );
    const field = throughCrossover(centre, unit, [PLAIN, PLAIN], 80, GRID);
    const cure = fillDip(field, GRID, 80, 0, 15);
    for (const inverted of [false, true])
      for (let delayMs = 0; delayMs <= 15; delayMs += 0.023)
        expect(meanLossDb(field, GRID, 80, { delayMs, inverted })).toBeLessThan(cure.afterDb + 0.01);
  });
});

describe('peak filter', () => {
  it('its gain at its middle, none far away, half of it (in dB) where the cookbook puts the bandwidth', () => {
    const filter = { frequencyHz: 50, gainDb: -8, q: 3 };
    expect(peakDb(50, filter)).toBeCloseTo(-8, 12);
    expect(Math.abs(peakDb(5000, filter))).toBeLessThan(0.01);
    // edges at half the gain: f / f0 - f0 / f = 1 / Q
    const ratio = 1 / 6 + Math.sqrt(1 / 36 + 1);
    expect(peakDb(50 * ratio, filter)).toBeCloseTo(-4, 9);
    const out = new Float64Array(2);
    for (const hz of [20, 43, 50, 61, 150]) {
      peak(hz, filter, out);
      expect(20 * Math.log10(Math.hypot(out[0], out[1]))).toBeCloseTo(peakDb(hz, filter), 9);
    }
  });
});
