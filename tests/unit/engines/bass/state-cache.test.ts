import { describe, expect, it } from 'vitest';
import { boxGeometry, bytesOfState } from '../../../../src/engines/bass/box-state.ts';
import { createStateCache } from '../../../../src/engines/bass/state-cache.ts';

const geometry = () =>
  boxGeometry({
    sizeM: [4.3, 2.7, 6.1],
    soundSpeed: 343.2,
    admittance: Array.from({ length: 6 }, () => [0.05, 0] as const),
  });

describe('states by wavenumber', () => {
  it('are solved once and handed out again', () => {
    const cache = createStateCache(geometry(), 1e6);
    const first = cache.at(50, 0);
    expect(cache.at(50, 0)).toBe(first);
    expect(cache.at(50, 1)).not.toBe(first);
    expect(cache.size).toBe(2);
  });

  it('are dropped, oldest first, when the limit is passed', () => {
    const own = geometry();
    const bytes = bytesOfState(createStateCache(own, 1e6).at(50, 0));
    const cache = createStateCache(own, 10.5 * bytes);
    const kept = cache.at(20, 0);
    for (let hz = 21; hz <= 60; hz++) {
      cache.at(hz, 0);
      cache.at(20, 0);
    }
    cache.trim(() => 0);
    expect(cache.size).toBe(10);
    expect(cache.at(20, 0)).toBe(kept);
    cache.trim(() => 5 * bytes);
    expect(cache.size).toBe(1);
  });

  it('follow from a neighbour to the same eigenvalues as from rigid walls', () => {
    const followed = createStateCache(geometry(), 1e6);
    for (let hz = 20; hz < 180; hz *= 1.03) followed.at(hz, 0);
    const warm = followed.at(181, 0);
    const cold = createStateCache(geometry(), 1e6).at(181, 0);
    for (const axis of [0, 1, 2]) {
      const { w, count } = cold.axes[axis].roots;
      for (let i = 0; i < 2 * count; i++) {
        expect(Math.abs(warm.axes[axis].roots.w[i] - w[i])).toBeLessThanOrEqual(1e-9 * (1 + Math.abs(w[i])));
      }
    }
  });
});
