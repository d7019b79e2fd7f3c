// The C-value of grandstand design, C = D (N + R) / (D + T) - R, and its worked problem D 30 m, R 10 m, T 1 m (formula and
// problem read in a public collection of teaching material; the answers to C derived). Bodies: DIN 33402-2:2005-12
// (read in a second source).
import { describe, expect, it } from 'vitest';
import {
  clearanceForRiserM,
  headClearanceMm,
  leastClearance,
  riserForClearanceM,
} from '../../src/engines/sight/c-value.ts';
import { crownAboveEye, eyeAboveSeat } from '../../src/engines/sight/people.ts';

const stand = { frontDistanceM: 30, frontEyeAboveFocusM: 10, pitchM: 1 };
const home = { frontDistanceM: 3, frontEyeAboveFocusM: 0.4, pitchM: 1.5 };

describe('worked examples', () => {
  it.each([
    [0.15, 0.48833],
    [0.12, 0.45733],
    [0.09, 0.42633],
    [0.06, 0.39533],
  ])('stand: riser for C = %d m', (clearance, riser) => {
    expect(Math.abs(riserForClearanceM(stand, clearance) - riser)).toBeLessThanOrEqual(1e-4);
    expect(Math.abs(clearanceForRiserM(stand, riser) - clearance)).toBeLessThanOrEqual(1e-4);
  });

  it('home: a riser of 0.30 m gives 66.7 mm; 120 and 60 mm want 380 and 290 mm', () => {
    expect(Math.abs(clearanceForRiserM(home, 0.3) * 1000 - 66.7)).toBeLessThanOrEqual(0.1);
    expect(Math.abs(riserForClearanceM(home, 0.12) * 1000 - 380)).toBeLessThanOrEqual(0.5);
    expect(Math.abs(riserForClearanceM(home, 0.06) * 1000 - 290)).toBeLessThanOrEqual(0.5);
  });

  it('the line drawn in the room says the same: focus at 0.75 m, eyes at 1.15 and 1.45 m', () => {
    const front = [{ id: 'front', eyeHeightM: 1.15, eyeZM: 3.06 }];
    const found = leastClearance([0, 1.45, 4.56], [0, 0.75, 0.06], front);
    expect(found?.rowId).toBe('front');
    expect(Math.abs((found?.clearanceMm ?? Number.NaN) - 66.7)).toBeLessThanOrEqual(0.1);
  });

  it('a focus above the eye (negative R) is a picture hung high: the stand then needs less rise', () => {
    const hung = { ...home, frontEyeAboveFocusM: -0.2 };
    // (-0.2 + 0.12) x 4.5 / 3 + 0.2 = 0.08 m, by hand.
    expect(riserForClearanceM(hung, 0.12)).toBeCloseTo(0.08, 9);
  });
});

describe('one head', () => {
  it('crown less eye of one person: 115 mm for the middle man, 105 mm for the middle woman', () => {
    expect(crownAboveEye.men.p50 * 1000).toBeCloseTo(115, 6);
    expect(crownAboveEye.women.p50 * 1000).toBeCloseTo(105, 6);
  });

  it('so a C of 120 mm just clears the middle man and 60 mm clears nobody', () => {
    expect(headClearanceMm(120, crownAboveEye.men.p50)).toBeCloseTo(5, 6);
    expect(headClearanceMm(60, crownAboveEye.women.p50)).toBeLessThan(0);
  });

  it('seated eye heights: 740 / 795 / 855 and 705 / 755 / 805 mm', () => {
    expect(Object.values(eyeAboveSeat.men).map((m) => Math.round(m * 1000))).toEqual([740, 795, 855]);
    expect(Object.values(eyeAboveSeat.women).map((m) => Math.round(m * 1000))).toEqual([705, 755, 805]);
  });
});
