import { describe, expect, it } from 'vitest';
import { CIVIDIS_BYTES, cividis, cividisCss } from '../../../src/math/cividis.ts';
import { DIVERGING_BYTES, diverging } from '../../../src/math/diverging.ts';

/** CIE lightness of an sRGB colour (IEC 61966-2-1 transfer curve, CIE 1976 L*; from memory). */
const lightness = (rgb: readonly number[]): number => {
  const [r, g, b] = rgb.map((byte) => {
    const v = byte / 255;
    return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
  });
  const y = 0.2126 * r + 0.7152 * g + 0.0722 * b;
  return y > 0.008856 ? 116 * Math.cbrt(y) - 16 : 903.3 * y;
};

describe('cividis', () => {
  it('has the published ends and quarter points (table of Nunez, Anderton, Renslow 2018, read)', () => {
    expect(CIVIDIS_BYTES.length).toBe(768);
    // Entries 0, 63 and 102 as printed: (0, 0.135112, 0.304751), (0.25974, 0.30512, 0.42281), (0.401418, 0.41179, 0.440708).
    expect(cividis(0)).toEqual([0, 34, 78]);
    expect(cividis(63 / 255)).toEqual([66, 78, 108]);
    expect(cividis(102 / 255)).toEqual([102, 105, 112]);
    expect(cividisCss(-1)).toBe('rgb(0 34 78)');
    expect(cividis(2)).toEqual(cividis(1));
  });

  it('grows lighter with every step of a sixteenth', () => {
    const steps = Array.from({ length: 17 }, (_, i) => lightness(cividis(i / 16)));
    for (let i = 1; i < steps.length; i++) expect(steps[i] - steps[i - 1]).toBeGreaterThan(2);
    // L* 13 to 92 for this map: an independent measurement of ours, printed in whole numbers, hence one either way.
    expect(Math.abs(steps[0] - 13)).toBeLessThanOrEqual(1);
    expect(Math.abs(steps[16] - 92)).toBeLessThanOrEqual(1);
  });
});

describe('the map for values with a sign', () => {
  it('is purple below, orange above, dark and without colour in the middle', () => {
    expect(DIVERGING_BYTES.length).toBe(768);
    const [purple, middle, orange] = [diverging(0), diverging(0.5), diverging(1)];
    expect(purple[2]).toBeGreaterThan(purple[0]);
    expect(purple[0]).toBeGreaterThan(purple[1]);
    expect(orange[0]).toBeGreaterThan(orange[1]);
    expect(orange[1]).toBeGreaterThan(orange[2]);
    expect(Math.max(...middle) - Math.min(...middle)).toBeLessThan(12);
    expect(diverging(-1)).toEqual(purple);
    expect(diverging(2)).toEqual(orange);
  });

  it('grows lighter either way by even steps, alike on both sides', () => {
    const steps = Array.from({ length: 9 }, (_, i) => [
      lightness(diverging(0.5 - i / 16)),
      lightness(diverging(0.5 + i / 16)),
    ]);
    for (let i = 1; i < steps.length; i++)
      for (const side of [0, 1]) expect(steps[i][side] - steps[i - 1][side]).toBeGreaterThan(4);
    // OKLab's lightness and CIE's differ by a few units for saturated colours (from memory): alike to 4 of 100.
    for (const [low, high] of steps) expect(Math.abs(low - high)).toBeLessThan(4);
  });
});
