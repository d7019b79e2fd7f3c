import { describe, expect, it } from 'vitest';
import { createDriveSearch, USUAL_BOUNDS } from '../../../../src/engines/bass/drive-search.ts';
import { bytesOf } from '../../../../src/engines/bass/kernels/compiled.ts';
import { createPlacementKernel } from '../../../../src/engines/bass/kernels/placement-kernel.ts';
import { createPlainKernel } from '../../../../src/engines/bass/kernels/placement-plain.ts';
import { choose, combinationAt, createPlacementSearch } from '../../../../src/engines/bass/placement-search.ts';
import type { UnitResponses } from '../../../../src/engines/bass/room-field.ts';
import { plainFourSearch } from '../../../bench/baselines/placement.ts';

/** Numbers without a pattern, made here. */
const noise = (count: number, seed: number): Float64Array => {
  let state = seed;
  return Float64Array.from({ length: count }, () => {
    state = (state * 16807) % 2147483647;
    return (2 * state) / 2147483647 - 1;
  });
};
const fields = (sources: number, receivers: number, frequencies: number, seed = 7): UnitResponses => ({
  sources,
  receivers,
  frequencies,
  re: noise(sources * receivers * frequencies, seed),
  im: noise(sources * receivers * frequencies, seed + 1),
  moved: new Uint8Array(sources * receivers),
});

/** The definition, summed straight: standard deviation over seats of 20 log10 |sum|, mean over frequency. */
const straight = (
  unit: UnitResponses,
  chosen: readonly number[],
  base: { re: Float64Array; im: Float64Array } | null,
) => {
  let spreads = 0;
  for (let f = 0; f < unit.frequencies; f++) {
    const levels = Array.from({ length: unit.receivers }, (_, r) => {
      let re = base?.re[r * unit.frequencies + f] ?? 0;
      let im = base?.im[r * unit.frequencies + f] ?? 0;
      for (const s of chosen) {
        re += unit.re[(s * unit.receivers + r) * unit.frequencies + f];
        im += unit.im[(s * unit.receivers + r) * unit.frequencies + f];
      }
      return 20 * Math.log10(Math.hypot(re, im));
    });
    const mean = levels.reduce((sum, level) => sum + level, 0) / levels.length;
    spreads += Math.sqrt(levels.reduce((sum, level) => sum + (level - mean) ** 2, 0) / (levels.length - 1));
  }
  return spreads / unit.frequencies;
};

/** Largest difference of two lists. */
const worst = (a: ArrayLike<number>, b: ArrayLike<number>): number => {
  let most = 0;
  for (let i = 0; i < a.length; i++) most = Math.max(most, Math.abs(a[i] - b[i]));
  return most;
};

describe('kernel', () => {
  it('runs compiled here', () => {
    expect(createPlacementKernel(16).place).toBe('wasm');
    expect(createPlainKernel(16).place).toBe('plain');
  });

  it('reads base64 as RFC 4648 tests it', () => {
    const text = (base64: string) => String.fromCharCode(...bytesOf(base64));
    expect(['Zg==', 'Zm8=', 'Zm9v', 'Zm9vYg==', 'Zm9vYmE=', 'Zm9vYmFy'].map(text)).toEqual([
      'f',
      'fo',
      'foo',
      'foob',
      'fooba',
      'foobar',
    ]);
  });

  // One level may be off by 4e-5 dB (the polynomial) and more in a deep null (single precision); over a job's seats and
  // frequencies that averages below 3e-5 dB, over a handful it does not.
  it.each([
    [14, 12, 49, 3e-5],
    [12, 12, 63, 3e-5],
    [9, 2, 1, 1e-4],
    [11, 64, 6, 1e-4],
    [12, 5, 21, 1e-4],
  ])('agrees with twin and plain code: %d places, %d seats, %d frequencies to %d dB', (n, seats, f, most) => {
    const candidates = fields(n, seats, f);
    const compiled = createPlacementSearch({ candidates, base: null, choose: 4 });
    const twin = createPlacementSearch({ candidates, base: null, choose: 4 }, createPlainKernel);
    while (!compiled.step(1000));
    twin.step(Number.POSITIVE_INFINITY);
    expect(worst(compiled.spreadDb, twin.spreadDb)).toBeLessThanOrEqual(most);
    const plain = plainFourSearch(candidates.re, candidates.im, n, seats, f);
    expect(plain).toHaveLength(choose(n, 4));
    expect(worst(compiled.spreadDb, plain)).toBeLessThanOrEqual(most);
  });
});

describe('exhaustive search', () => {
  it('numbers combinations in order, every one once', () => {
    const all = Array.from({ length: choose(7, 3) }, (_, i) => combinationAt(7, 3, i).join());
    expect(all).toHaveLength(35);
    expect(new Set(all).size).toBe(35);
    expect(all[0]).toBe('0,1,2');
    expect(all[34]).toBe('4,5,6');
    expect(choose(40, 4)).toBe(91390);
  });

  it.each([1, 2, 3, 4])('scores every choice of %d as the definition does, with and without what stays', (k) => {
    const candidates = fields(8, 3, 7, 5 * k);
    const held = fields(1, 3, 7, 91);
    for (const base of [null, held]) {
      const search = createPlacementSearch({ candidates, base, choose: k });
      while (!search.step(3));
      expect(search.done).toBe(search.total);
      let best = Number.POSITIVE_INFINITY;
      let bestAt = -1;
      for (let i = 0; i < search.total; i++) {
        const expected = straight(candidates, search.combination(i), base);
        expect(Math.abs(search.spreadDb[i] - expected)).toBeLessThanOrEqual(5e-5);
        if (expected < best) {
          best = expected;
          bestAt = i;
        }
      }
      expect(search.spreadDb.indexOf(Math.min(...search.spreadDb))).toBe(bestAt);
    }
  });

  it('refuses one seat and more than there is', () => {
    expect(() => createPlacementSearch({ candidates: fields(3, 1, 2), base: null, choose: 1 })).toThrow(RangeError);
    expect(() => createPlacementSearch({ candidates: fields(3, 2, 2), base: null, choose: 4 })).toThrow(RangeError);
  });
});

describe('drives', () => {
  const hz = [30, 45, 60];
  const start = [0, 0, 0].map(() => ({ gainDb: 0, delayMs: 0, inverted: false }));
  const search = (unit: UnitResponses, seed: number, held = [false, false, false]) => {
    let state = seed;
    const drives = createDriveSearch({
      unit,
      frequenciesHz: hz,
      start,
      held,
      bounds: USUAL_BOUNDS,
      random: () => {
        state = (state * 16807) % 2147483647;
        return state / 2147483647;
      },
    });
    while (!drives.step());
    return drives.best();
  };

  it('undoes what a delay and a swapped polarity did to an even field', () => {
    // three sources whose shares add up to 1 at every seat; then the last one comes 4 ms late and turned round
    const shares = [
      [0.5, 0.1, 0.3, 0.35],
      [0.45, 0.25, 0.4, 0.15],
      [0.05, 0.65, 0.3, 0.5],
    ];
    const unit = fields(3, 4, 3);
    for (let i = 0; i < unit.re.length; i++) {
      const share = shares[Math.floor(i / 12)][Math.floor(i / 3) % 4];
      const phase = i >= 24 ? Math.PI - (2 * Math.PI * hz[i % 3] * 4) / 1000 : 0;
      unit.re[i] = share * Math.cos(phase);
      unit.im[i] = share * Math.sin(phase);
    }
    expect(straight(unit, [0, 1, 2], null)).toBeGreaterThan(2);
    const { spreadDb, drives } = search(unit, 11);
    expect(spreadDb).toBeLessThan(0.3);
    expect(drives.map(({ inverted }) => inverted)).toEqual([false, false, true]);
    for (const [s, delayMs] of [4, 4, 0].entries()) expect(Math.abs(drives[s].delayMs - delayMs)).toBeLessThan(0.5);
    for (const { gainDb } of drives) expect(Math.abs(gainDb)).toBeLessThanOrEqual(0.5);
  });

  it('is the same again with the same seed, and leaves held ones alone', () => {
    const unit = fields(3, 5, 3, 33);
    expect(search(unit, 5)).toEqual(search(unit, 5));
    const held = search(unit, 5, [true, false, true]);
    expect(held.drives[0]).toEqual(start[0]);
    expect(held.drives[2]).toEqual(start[2]);
    expect(held.spreadDb).toBeLessThanOrEqual(straight(unit, [0, 1, 2], null) + 1e-9);
  });
});
