// White of the cinema screen: 48 cd/m2 or 14 foot-lamberts at the centre (SMPTE 431-1, read in a second source); the foot-lambert
// and the projector's flux from the definition of a Lambertian surface (derived).
import { describe, expect, it } from 'vitest';
import {
  cinemaWhiteCdM2,
  footLambertCdM2,
  lumensForLuminance,
  screenLuminance,
} from '../../src/engines/sight/luminance.ts';

describe('units', () => {
  it.each([
    [1, 3.42626, 0.00001],
    [14, 47.97, 0.005],
    [16, 54.82, 0.005],
  ])('%d foot-lamberts', (feet, candela, tolerance) => {
    expect(Math.abs(feet * footLambertCdM2 - candela)).toBeLessThanOrEqual(tolerance);
  });

  it('48 cd/m2 is 14.009 foot-lamberts', () => {
    expect(Math.abs(cinemaWhiteCdM2 / footLambertCdM2 - 14.009)).toBeLessThanOrEqual(0.0005);
  });
});

describe('flux', () => {
  const area = 2.5 * (2.5 / (16 / 9));

  it('a 2.5 m wide 16:9 picture of gain 1 (3.5156 m2) wants 530.1 lumens for 48 cd/m2', () => {
    expect(Math.abs(area - 3.5156)).toBeLessThanOrEqual(0.00005);
    expect(Math.abs(lumensForLuminance(48, area) - 530.1)).toBeLessThanOrEqual(0.5);
  });

  it('lumens are foot-lamberts times square feet over gain', () => {
    const squareFeet = area / 0.3048 ** 2;
    expect(lumensForLuminance(14 * footLambertCdM2, area, 1.3)).toBeCloseTo((14 * squareFeet) / 1.3, 6);
  });

  it('gain and losses count both ways alike', () => {
    const lumens = lumensForLuminance(48, area, 1.2, 0.6);
    expect(lumens).toBeCloseTo(530.1 / 1.2 / 0.6, 0);
    expect(screenLuminance(lumens, area, 1.2, 0.6)).toBeCloseTo(48, 9);
  });
});
