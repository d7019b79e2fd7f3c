// Where lines can be told apart. Design viewing distance of ITU-R BT.500: adjacent pixels subtend 1 arcminute (read in a
// quotation). ITU-R BT.1845 and BT.2022 print 4.8, 3.1 to 3.2, 1.5 to 1.6 and 0.75 to 0.8 H and 21, 31, 58, 96 degrees
// (remembered; 3.2 H read in a second source). The finer figures are derived.
import { describe, expect, it } from 'vitest';
import { acuityDistanceHeights, lineArcminutes, linesForDistance } from '../../src/engines/sight/acuity.ts';
import { uprightTarget } from '../../src/engines/sight/flat-target.ts';
import { pictureGeometry } from '../../src/engines/sight/picture-geometry.ts';
import { horizontalDegAtHeights } from '../../src/engines/sight/picture-size.ts';

describe('acuity', () => {
  it.each([
    [720, 4.775, 4.75, 4.85, 21.1, 21],
    [1080, 3.183, 3.1, 3.2, 31.2, 31],
    [2160, 1.592, 1.5, 1.6, 58.4, 58],
    [4320, 0.796, 0.75, 0.8, 96.3, 96],
  ])('%d lines', (lines, exact, printedLow, printedHigh, deg, printedDeg) => {
    const heights = acuityDistanceHeights(lines);
    expect(Math.abs(heights - exact)).toBeLessThanOrEqual(0.005);
    expect(heights).toBeGreaterThanOrEqual(printedLow);
    expect(heights).toBeLessThanOrEqual(printedHigh);
    const angle = horizontalDegAtHeights(heights, 16 / 9);
    expect(Math.abs(angle - deg)).toBeLessThanOrEqual(0.1);
    // Printed in whole degrees.
    expect(Math.abs(angle - printedDeg)).toBeLessThanOrEqual(0.5);
  });

  it('a line then fills 1 arcminute, 60 pixels a degree', () => {
    expect(lineArcminutes(1080, acuityDistanceHeights(1080))).toBeCloseTo(1, 9);
    const heights = acuityDistanceHeights(2160);
    const g = pictureGeometry([0, 1, heights], uprightTarget([0, 1, 0], 16 / 9, 1), 3840);
    // Square pixels; the small-angle figure against the exact tangent: 3e-8.
    expect(g.pixelsPerDegree).toBeCloseTo(60, 4);
  });

  it('the rule of thumb D/H = 3400 / lines (read) is low by a hundredth: 1 / tan(1 arcminute) = 3438', () => {
    expect(Math.abs(acuityDistanceHeights(1) - 3438)).toBeLessThanOrEqual(0.5);
    expect(acuityDistanceHeights(1080) / (3400 / 1080)).toBeGreaterThan(1);
    expect(acuityDistanceHeights(1080) / (3400 / 1080)).toBeLessThan(1.012);
  });

  it('nearer than 3.2 H asks for more than 1080 lines, nearer than 1.6 H for more than 2160', () => {
    expect(linesForDistance(3.17)).toBeGreaterThan(1080);
    expect(linesForDistance(3.2)).toBeLessThan(1080);
    expect(linesForDistance(1.58)).toBeGreaterThan(2160);
    expect(linesForDistance(1.6)).toBeLessThan(2160);
  });
});
