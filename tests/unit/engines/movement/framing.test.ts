import { describe, expect, it } from 'vitest';
import {
  corners,
  type FreeArea,
  fitPoints,
  focalPx,
  naturalFovDeg,
  orbitEye,
  timesSmaller,
} from '../../../../src/engines/movement/framing.ts';

const FREE: FreeArea = { left: 300, top: 56, width: 660, height: 594, canvasWidth: 1280, canvasHeight: 800 };

/** A pinhole camera written out by hand: yaw about y, then pitch, the axis meeting the canvas at the free area's middle. */
const pinhole = (
  eye: readonly number[],
  yawDeg: number,
  pitchDeg: number,
  fovYDeg: number,
  point: readonly number[],
): readonly [number, number] => {
  const yaw = (yawDeg * Math.PI) / 180;
  const pitch = (pitchDeg * Math.PI) / 180;
  const [x, y, z] = point.map((value, axis) => value - eye[axis]);
  const across = x * Math.cos(yaw) + z * Math.sin(yaw);
  const level = x * Math.sin(yaw) - z * Math.cos(yaw);
  const depth = level * Math.cos(pitch) + y * Math.sin(pitch);
  const up = y * Math.cos(pitch) - level * Math.sin(pitch);
  const focal = 400 / Math.tan((fovYDeg * Math.PI) / 360);
  return [300 + 330 + (focal * across) / depth, 56 + 297 - (focal * up) / depth];
};

describe('framing', () => {
  it.each([
    [-27, -31],
    [40, -60],
    [0, -5],
    [165, -20],
  ])('holds a room seen from yaw %d, pitch %d wholly in the free area and touches its edge', (yawDeg, pitchDeg) => {
    const points = corners([-2.15, 0, 0], [2.15, 2.7, 6.1]);
    const orbit = fitPoints(points, yawDeg, pitchDeg, 36, FREE, 1);
    const eye = orbitEye(orbit);
    const seen = points.map((point) => pinhole(eye, yawDeg, pitchDeg, 36, point));
    const xs = seen.map(([x]) => x);
    const ys = seen.map(([, y]) => y);
    const slack = 0.01; // a hundredth of a pixel: rounding only
    expect(Math.min(...xs)).toBeGreaterThan(300 - slack);
    expect(Math.max(...xs)).toBeLessThan(960 + slack);
    expect(Math.min(...ys)).toBeGreaterThan(56 - slack);
    expect(Math.max(...ys)).toBeLessThan(650 + slack);
    const touches = [Math.min(...xs) - 300, 960 - Math.max(...xs), Math.min(...ys) - 56, 650 - Math.max(...ys)];
    expect(touches.filter((gap) => gap < slack).length).toBeGreaterThanOrEqual(2);
  });

  it('centres what the tighter side leaves free', () => {
    const points = corners([-1, 0.5, 0], [1, 1.5, 0]);
    const eye = orbitEye(fitPoints(points, 0, 0, 40, FREE, 0.9));
    expect(eye[0]).toBeCloseTo(0, 9);
    expect(eye[1]).toBeCloseTo(1, 9);
  });

  it('opens the view until a picture fills its share, within limits', () => {
    // Worked by hand: 48 degrees must span 0.9 x 660 px, so the focal length is 594 / (2 tan 24) = 667.07 px.
    const fov = naturalFovDeg(48, 20, FREE, 0.9, 30, 90);
    expect(focalPx(fov, 800)).toBeCloseTo(594 / (2 * Math.tan((24 * Math.PI) / 180)), 6);
    expect(naturalFovDeg(10, 5, FREE, 0.9, 50, 75)).toBe(50);
    expect(naturalFovDeg(120, 90, FREE, 0.9, 50, 75)).toBe(75);
  });

  it('says how much smaller than life a view is: a 900 px high canvas is 19.0 degrees high at arm and desk length', () => {
    // CSS reference pixel: 1/96 inch at 28 inches, so 900 px subtend 2 atan(900 / 5376) = 19.01 degrees.
    const life = 2 * ((Math.atan(900 / 5376) * 180) / Math.PI);
    expect(life).toBeCloseTo(19.0, 1);
    expect(timesSmaller(life, 900)).toBeCloseTo(1, 9);
    expect(timesSmaller(60, 800)).toBeCloseTo((Math.tan(Math.PI / 6) * 5376) / 800, 9);
  });
});
