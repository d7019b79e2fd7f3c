import { describe, expect, it } from 'vitest';
import { PALETTE } from '../../../../src/scene/materials/palette.ts';
import { patchMeans } from '../../../../src/scene/materials/still/paint.ts';
import { cloudNoise, paintPattern } from '../../../../src/scene/materials/textures/noise.ts';

describe('tiles', () => {
  it('repeat without a seam', () => {
    const noise = cloudNoise(5, 6, 4, 3);
    for (let k = 0; k < 20; k++) {
      const v = k / 20;
      expect(noise(0, v)).toBeCloseTo(noise(1, v), 9);
      expect(noise(v, 0)).toBeCloseTo(noise(v, 1), 9);
    }
  });

  it('are the same every time and near 1 in the mean, so that a finish keeps its colour', () => {
    for (const [name, { tile }] of Object.entries(PALETTE)) {
      if (!tile) continue;
      const image = paintPattern(64, 64, tile.pattern());
      expect(paintPattern(64, 64, tile.pattern()).data).toEqual(image.data);
      let sum = 0;
      for (let i = 0; i < image.data.length; i += 4) sum += image.data[i + 1] / 128;
      const mean = sum / (64 * 64);
      expect(mean, name).toBeGreaterThan(0.6);
      expect(mean, name).toBeLessThan(1.25);
    }
  });
});

describe('mean colours of a picture', () => {
  it('are linear, bottom row first', () => {
    // Two by two pixels: white, black / sRGB 188 grey (linear 0.5029, IEC 61966-2-1 by hand), red.
    const pixels = Uint8ClampedArray.of(255, 255, 255, 255, 0, 0, 0, 255, 188, 188, 188, 255, 255, 0, 0, 255);
    const means = patchMeans(pixels, 2, 2, 2, 2);
    expect(means[0]).toBeCloseTo(0.5029, 3);
    expect([...means.slice(3, 6)]).toEqual([1, 0, 0]);
    expect([...means.slice(6, 9)]).toEqual([1, 1, 1]);
    expect([...means.slice(9)]).toEqual([0, 0, 0]);
  });
});
