import { describe, expect, it } from 'vitest';
import { memoOf } from '../../../src/shapes/memo.ts';
import { baffle } from '../../../src/shapes/mesh/baffle.ts';
import { finished } from '../../../src/shapes/mesh/finish.ts';
import { revolved } from '../../../src/shapes/mesh/loft.ts';
import { leaned, mirrored, turned } from '../../../src/shapes/mesh/raw.ts';
import { cushion, roundedBox } from '../../../src/shapes/mesh/rounded-box.ts';
import { facing, placed, placementMatrix } from '../../../src/shapes/placement.ts';
import { openEdges, volumeOf } from './support.ts';

describe('rounded boxes', () => {
  it('hold width x height x depth when sharp', () => {
    const box = finished(roundedBox([2, 3, 5], { radiusM: 0, cuts: [3, 2, 4] }));
    expect(volumeOf(box)).toBeCloseTo(30, 5);
    expect(openEdges(box)).toBe(0);
  });

  it('come near the volume of a truly rounded box as their edges are cut finer', () => {
    // Box swept by a sphere: abc + 2r(ab + bc + ca) + pi r^2 (a + b + c) + 4/3 pi r^3 for inner sides a, b, c (Steiner).
    const r = 0.1;
    const [a, b, c] = [0.8, 0.6, 0.4];
    const exact =
      a * b * c + 2 * r * (a * b + b * c + c * a) + Math.PI * r * r * (a + b + c) + (4 / 3) * Math.PI * r ** 3;
    const short = [1, 2, 4, 8].map((arc) => {
      const box = finished(roundedBox([1, 0.8, 0.6], { radiusM: r, arc }));
      expect(openEdges(box)).toBe(0);
      return exact - volumeOf(box);
    });
    for (let i = 1; i < short.length; i += 1) {
      // Chords miss their arc by the square of the piece: a quarter each time the pieces are halved.
      expect(short[i] / short[i - 1]).toBeGreaterThan(0.2);
      expect(short[i] / short[i - 1]).toBeLessThan(0.3);
    }
  });

  it('are fullest in the middle as cushions', () => {
    const { positions } = cushion([1, 0.2, 1], 1, 0.3, { radiusM: 0.03, arc: 2, cuts: [2, 1, 2] });
    let top = 0;
    for (let i = 0; i < positions.length; i += 3) {
      if (positions[i + 1] > 0.0999) {
        top += 1;
        expect(Math.hypot(positions[i], positions[i + 2])).toBeLessThan(1e-9);
      }
    }
    expect(top).toBe(1);
  });
});

describe('turned bodies and plates', () => {
  it('a turned cylinder holds the prism of its polygon', () => {
    const cylinder = finished(
      revolved(
        [
          [0.5, 0],
          [0.5, 2],
        ],
        12,
      ),
    );
    // Area of a regular 12-gon of circumradius 0.5: 12/2 r^2 sin(30 deg) = 0.75.
    expect(volumeOf(cylinder)).toBeCloseTo(0.75 * 2, 5);
    expect(openEdges(cylinder)).toBe(0);
  });

  it('a baffle is closed and lacks its holes', () => {
    const holes = [
      { x: 0, y: -0.2, radiusM: 0.1 },
      { x: 0, y: 0.1, radiusM: 0.05 },
      { x: 0, y: 0.3, radiusM: 0.08 },
    ];
    const plate = finished(baffle(0.3, 0.9, 0.03, holes));
    expect(openEdges(plate)).toBe(0);
    const polygon = (r: number) => 8 * r * r * Math.sin(Math.PI / 8);
    const full = (0.3 * 0.9 - polygon(0.1) - polygon(0.05) - polygon(0.08)) * 0.03;
    // The rim's chamfer of 5 mm takes 5 x 5 / 2 mm2 along 2.4 m, less at the corners.
    expect(volumeOf(plate)).toBeLessThan(full);
    expect(volumeOf(plate)).toBeGreaterThan(full - 12.5e-6 * 2.4);
  });
});

describe('moves', () => {
  const point = { positions: [0, 0, -1], indices: [] };

  it('turn as azimuths do, lean back, mirror without turning inside out', () => {
    expect(turned(point, 90).positions.map((v) => Math.round(v * 1e9) / 1e9 + 0)).toEqual([1, 0, 0]);
    const up = leaned({ positions: [0, 1, 0], indices: [] }, 90, [0, 0]).positions;
    expect(up.map((v) => Math.round(v * 1e9) / 1e9 + 0)).toEqual([0, 0, 1]);
    expect(volumeOf(finished(mirrored(roundedBox([1, 1, 1], { radiusM: 0 }))))).toBeCloseTo(1, 6);
  });

  it('place as the matrix does: yaw to the right, then pitch up', () => {
    const placement = { positionM: [1, 2, 3] as const, yawDeg: 90, pitchDeg: 30 };
    // Front (-z) turned to +x and raised by 30 degrees: (cos 30, sin 30, 0).
    const [x, y, z] = placed(new Float32Array([0, 0, -1]), placement);
    expect(x).toBeCloseTo(1 + Math.sqrt(3) / 2, 6);
    expect(y).toBeCloseTo(2.5, 6);
    expect(z).toBeCloseTo(3, 6);
    const m = placementMatrix(placement);
    expect([m[12] - m[8], m[13] - m[9], m[14] - m[10]].map((v) => Math.fround(v))).toEqual([x, y, z]);
  });

  it('find yaw and pitch of a direction', () => {
    expect(facing([0, 0, -1])).toEqual({ yawDeg: 0, pitchDeg: 0 });
    expect(facing([1, 0, 0]).yawDeg).toBeCloseTo(90, 12);
    expect(facing([0, 1, -1]).pitchDeg).toBeCloseTo(45, 12);
  });
});

describe('the memo', () => {
  it('keeps the most recently used and no more than its limit', () => {
    let made = 0;
    const memo = memoOf<number>(2);
    const take = (key: string) => memo(key, () => ++made);
    expect([take('a'), take('b'), take('a')]).toEqual([1, 2, 1]);
    expect(take('c')).toBe(3);
    expect(take('a')).toBe(1);
    expect(take('b')).toBe(4);
  });
});
