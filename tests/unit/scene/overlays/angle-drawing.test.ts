import { describe, expect, it } from 'vitest';
import {
  around,
  levelArc,
  placeDirections,
  rangeHatch,
  uprightArc,
} from '../../../../src/scene/overlays/angle-drawing.ts';

const EAR = [0.2, 1.1, 3.4] as const;

describe('drawing of angles', () => {
  it('counts azimuth from the picture, positive to the right, and elevation upwards', () => {
    const [x, y, z] = around(EAR, 2, 0);
    expect([x, y, z]).toEqual([0.2, 1.1, 1.4]);
    expect(around(EAR, 2, 90)[0]).toBeCloseTo(2.2, 12);
    expect(around(EAR, 2, 0, 90)[1]).toBeCloseTo(3.1, 12);
  });

  it('gives every ear-level direction of one side an arc of its own, heights the ring', () => {
    const placed = placeDirections([
      { id: 'Ls', channel: 'M+090', azimuthDeg: -104, elevationDeg: 13 },
      { id: 'L', channel: 'M+030', azimuthDeg: -25, elevationDeg: 0 },
      { id: 'R', channel: 'M-030', azimuthDeg: 25, elevationDeg: 0 },
      { id: 'Ltf', channel: 'U+045', azimuthDeg: -39, elevationDeg: 18 },
    ]);
    const radius = Object.fromEntries(placed.map(({ id, radiusM }) => [id, radiusM]));
    const group = Object.fromEntries(placed.map(({ id, group: name }) => [id, name]));
    expect(radius.L).toBeLessThan(radius.Ls);
    expect(radius.R).toBe(radius.L);
    expect(group).toEqual({ L: 'left', Ls: 'left', R: 'right', Ltf: 'height' });
    expect(radius.Ltf).toBeLessThan(radius.L);
  });

  it('ends arcs where they should and keeps to the radius', () => {
    for (const point of [...levelArc(EAR, 0.5, 0, -104), ...uprightArc(EAR, 0.5, 40, 38)]) {
      expect(Math.hypot(point[0] - EAR[0], point[1] - EAR[1], point[2] - EAR[2])).toBeCloseTo(0.5, 12);
    }
    expect(levelArc(EAR, 0.5, 0, -104).at(-1)).toEqual(around(EAR, 0.5, -104));
  });

  it('keeps its hatching inside the range', () => {
    for (const [x, , z] of rangeHatch(EAR, 0.5, 22, 32)) {
      const azimuthDeg = (Math.atan2(x - EAR[0], EAR[2] - z) * 180) / Math.PI;
      expect(azimuthDeg).toBeGreaterThan(21.99);
      expect(azimuthDeg).toBeLessThan(32.01);
    }
  });
});
