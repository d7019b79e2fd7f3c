import { describe, expect, it } from 'vitest';
import {
  clearanceForRiserM,
  clearancesOver,
  headClearanceMm,
  leastClearance,
  riserForClearanceM,
} from '../../../../src/engines/sight/c-value.ts';
import type { Vec3 } from '../../../../src/math/vec3.ts';

const edge: Vec3 = [0, 0.75, 0];

describe('clearance over rows in front', () => {
  it('is null when no row is in front', () => {
    expect(leastClearance([0, 1.1, 3], edge, [])).toBeNull();
    const others = [
      { id: 'same', eyeHeightM: 1.1, eyeZM: 3 },
      { id: 'behind', eyeHeightM: 1.3, eyeZM: 4.5 },
      { id: 'beyond the picture', eyeHeightM: 1.1, eyeZM: -0.5 },
    ];
    expect(leastClearance([0, 1.1, 3], edge, others)).toBeNull();
  });

  it('takes the height of the straight line where it crosses the row, wherever the eye sits sideways', () => {
    // Half way: (0.75 + 1.55) / 2 = 1.15; eyes at 1.10: 50 mm.
    const rows = [{ id: 'front', eyeHeightM: 1.1, eyeZM: 2 }];
    expect(leastClearance([1.3, 1.55, 4], edge, rows)).toEqual({ rowId: 'front', clearanceMm: expect.closeTo(50, 9) });
  });

  it('takes the least of several rows and names it; negative where the line passes below', () => {
    const rows = [
      { id: 'second', eyeHeightM: 1.3, eyeZM: 3 },
      { id: 'first', eyeHeightM: 1.1, eyeZM: 1.5 },
    ];
    // Line from 0.75 at z 0 to 1.35 at z 4.5: 0.95 at 1.5 (-150 mm), 1.15 at 3 (-150 mm less 0: -150).
    const all = clearancesOver([0, 1.35, 4.5], edge, rows);
    expect(all.map((c) => c.rowId)).toEqual(['first', 'second']);
    expect(all[0].clearanceMm).toBeCloseTo(-150, 9);
    expect(all[1].clearanceMm).toBeCloseTo(-150, 9);
    expect(leastClearance([0, 1.5, 4.5], edge, rows)?.rowId).toBe('first');
  });

  it('agrees with the two-row formula of the grandstand', () => {
    const rows = { frontDistanceM: 3, frontEyeAboveFocusM: 0.4, pitchM: 1.5 };
    const c = leastClearance([0, 0.75 + 0.4 + 0.3, 4.5], edge, [{ id: 'f', eyeHeightM: 1.15, eyeZM: 3 }]);
    expect(c?.clearanceMm).toBeCloseTo(clearanceForRiserM(rows, 0.3) * 1000, 9);
  });

  it('keeps head clearance apart: C less the crown above the eye', () => {
    expect(headClearanceMm(120, 0.115)).toBeCloseTo(5, 9);
  });

  it('inverts: the riser for a clearance gives that clearance, also with the picture above the eye', () => {
    for (const frontEyeAboveFocusM of [0.4, -0.2]) {
      const rows = { frontDistanceM: 2.6, frontEyeAboveFocusM, pitchM: 1.7 };
      expect(clearanceForRiserM(rows, riserForClearanceM(rows, 0.09))).toBeCloseTo(0.09, 12);
    }
  });
});
