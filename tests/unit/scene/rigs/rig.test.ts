import { describe, expect, it, vi } from 'vitest';
import { freeAreaOf, usualInsets } from '../../../../src/scene/rigs/free-area.ts';
import { createResolution, pixelRatios } from '../../../../src/scene/rigs/resolution.ts';
import { Rig, type RigScene } from '../../../../src/scene/rigs/rig.ts';

const FREE = freeAreaOf(1280, 800, usualInsets(1280, 800, false));
const scene = (change: Partial<RigScene> = {}): RigScene => ({
  mode: 'overlook',
  seatId: 'a',
  wholeViews: 0,
  reducedMotion: false,
  minM: [-2, 0, 0],
  maxM: [2, 2.7, 6],
  eyeM: [0, 1.1, 3.5],
  pictureCentreM: [0, 1.4, 0.06],
  horizontalDeg: 44,
  verticalDeg: 26,
  free: FREE,
  ...change,
});
const rest = (rig: Rig): number => {
  let seconds = 0;
  while (rig.step(0.02)) {
    seconds += 0.02;
    if (seconds > 5) throw new Error('the camera never rested');
  }
  return seconds;
};
const started = (change: Partial<RigScene> = {}): Rig => {
  const rig = new Rig();
  rig.read(scene(change));
  rest(rig);
  return rig;
};

describe('the rig', () => {
  it('is at rest from the start, its axis in the middle of the free area', () => {
    const rig = new Rig();
    rig.read(scene());
    expect(rig.step(0.016)).toBe(false);
    expect(rig.shot.axisX).toBe(300 + 660 / 2);
    expect(rig.shot.axisY).toBe(56 + 594 / 2);
  });

  it('goes from overlook to the eye in 0.6 to 0.9 s and looks at the picture', () => {
    const rig = started();
    rig.read(scene({ mode: 'sit' }));
    const seconds = rest(rig);
    expect(seconds).toBeGreaterThan(0.6);
    expect(seconds).toBeLessThan(0.9);
    const { atM, yawDeg, pitchDeg, fovYDeg } = rig.shot.pose;
    expect(atM).toEqual([0, 1.1, 3.5]);
    expect(yawDeg).toBeCloseTo(0, 9);
    expect(pitchDeg).toBeCloseTo((Math.atan2(0.3, 3.44) * 180) / Math.PI, 9);
    expect(fovYDeg).toBeGreaterThanOrEqual(50);
    expect(fovYDeg).toBeLessThanOrEqual(75);
  });

  it('does not jump at the first step of a transition, however long the rest was', () => {
    const rig = started();
    const before = rig.shot.pose.atM;
    rig.read(scene({ mode: 'sit' }));
    rig.step(0.1);
    expect(rig.shot.pose.atM).toEqual(before);
  });

  it('needs one step with reduced motion, by the same path', () => {
    const rig = started({ reducedMotion: true });
    rig.read(scene({ mode: 'sit', reducedMotion: true }));
    expect(rig.step(0.016)).toBe(false);
    expect(rig.shot.pose.atM).toEqual([0, 1.1, 3.5]);
    rig.read(scene({ mode: 'sit', seatId: 'b', eyeM: [1, 1.1, 3.5], reducedMotion: true }));
    expect(rig.step(0.016)).toBe(false);
    expect(rig.shot.pose.atM).toEqual([1, 1.1, 3.5]);
    expect(rig.shot.fade).toBe(0);
  });

  it('cuts from seat to seat through the dark within 200 ms and is in no place between', () => {
    const rig = started({ mode: 'sit' });
    rig.read(scene({ mode: 'sit', seatId: 'b', eyeM: [1, 1.1, 3.5] }));
    let seconds = 0;
    let darkest = 0;
    const places = new Set<number>();
    while (rig.step(0.01)) {
      seconds += 0.01;
      darkest = Math.max(darkest, rig.shot.fade);
      places.add(rig.shot.pose.atM[0]);
    }
    places.add(rig.shot.pose.atM[0]);
    expect(seconds).toBeLessThanOrEqual(0.2);
    expect(darkest).toBeGreaterThan(0.85);
    expect([...places]).toEqual([0, 1]);
    expect(rig.shot.fade).toBe(0);
  });

  it('fits the picture into what a sheet leaves of an upright phone', () => {
    const free = freeAreaOf(390, 844, { left: 0, right: 0, top: 52, bottom: 455 });
    const rig = started({ mode: 'sit', free });
    const focal = 422 / Math.tan((rig.shot.pose.fovYDeg * Math.PI) / 360);
    const widthPx = 2 * focal * Math.tan((22 * Math.PI) / 180);
    expect(widthPx).toBeGreaterThan(0.9 * 390);
    expect(widthPx).toBeLessThan(390);
  });

  it('turns a seated head no farther than a neck', () => {
    const rig = started({ mode: 'sit' });
    rig.turn(500, 500);
    rest(rig);
    expect(rig.shot.pose.yawDeg).toBeCloseTo(100, 6);
    expect(rig.shot.pose.pitchDeg).toBeCloseTo(60, 6);
    rig.turn(-900, -900);
    rest(rig);
    expect(rig.shot.pose.yawDeg).toBeCloseTo(-100, 6);
    expect(rig.shot.pose.pitchDeg).toBeCloseTo(-60, 6);
  });

  it('never looks from under the floor, and comes home', () => {
    const rig = started();
    const home = rig.shot.pose;
    rig.turn(30, 500);
    rig.zoom(3);
    rest(rig);
    expect(rig.shot.pose.atM[1]).toBeGreaterThan(0.1);
    rig.home();
    rest(rig);
    expect(rig.shot.pose.atM.map((v) => Math.round(v * 1e6))).toEqual(home.atM.map((v) => Math.round(v * 1e6)));
  });

  it('shows the whole of the room again when that is asked for, wherever a hand had left the view', () => {
    const rig = started();
    const home = rig.shot.pose;
    rig.turn(120, 10);
    rig.zoom(0.3);
    rest(rig);
    expect(rig.shot.pose.atM).not.toEqual(home.atM);
    rig.read(scene({ wholeViews: 1 }));
    rest(rig);
    expect(rig.shot.pose).toEqual(home);
  });

  it('goes along with the axes while a wall is moved, keeps that when it is let go, and gives it back when it is not', () => {
    const rig = started();
    const from = rig.shot.pose.atM;
    rig.carry([0.4, 0, -0.25]);
    // What the hand's ray is told from is the view as drawn, not as it will be.
    expect(rig.carriedM).toEqual([0, 0, 0]);
    rest(rig);
    expect(rig.carriedM).toEqual([0.4, 0, -0.25]);
    const by = () => rig.shot.pose.atM.map((value, axis) => Math.round((value - from[axis]) * 1e6) / 1e6);
    expect(by()).toEqual([0.4, 0, -0.25]);
    rig.carry([0, 0, 0]);
    rest(rig);
    expect(by()).toEqual([0, 0, 0]);
    rig.turn(20, 0);
    rest(rig);
    const turned = rig.shot.pose.atM;
    rig.carry([0.4, 0, 0]);
    rig.keepCarried();
    rest(rig);
    expect(rig.carriedM).toEqual([0, 0, 0]);
    expect(rig.shot.pose.atM[0] - turned[0]).toBeCloseTo(0.4, 9);
  });

  it('fits the room again when the free area changes, until a hand has chosen a view', () => {
    const rig = started();
    const before = rig.shot.pose.atM;
    const wide = freeAreaOf(1280, 800, usualInsets(1280, 800, true));
    rig.read(scene({ free: wide }));
    rest(rig);
    const closer = rig.shot.pose.atM;
    expect(Math.hypot(...closer)).toBeLessThan(Math.hypot(...before));
    rig.turn(5, 0);
    rest(rig);
    const chosen = rig.shot.pose.atM;
    rig.read(scene());
    rest(rig);
    expect(rig.shot.pose.atM).toEqual(chosen);
  });
});

describe('the free area', () => {
  it('is the canvas without its columns and band on a desk, upper half on an upright phone, all of it when cleared', () => {
    expect(FREE).toMatchObject({ left: 300, top: 56, width: 660, height: 594 });
    expect(freeAreaOf(390, 844, usualInsets(390, 844, false))).toMatchObject({
      left: 0,
      top: 48,
      width: 390,
      height: 374,
    });
    expect(freeAreaOf(1280, 800, usualInsets(1280, 800, true))).toMatchObject({ width: 1280, height: 800 });
  });

  it('never leaves less than a quarter', () => {
    const { width, height } = freeAreaOf(400, 200, { left: 300, right: 320, top: 150, bottom: 150 });
    expect(width).toBeCloseTo(100, 9);
    expect(height).toBeCloseTo(50, 9);
  });
});

describe('resolution', () => {
  it('is at most two pixels a CSS pixel, coarser in motion, never under one', () => {
    expect(pixelRatios(3)).toEqual({ rest: 2, moving: 1.2, slow: 0.72 });
    expect(pixelRatios(1)).toEqual({ rest: 1, moving: 1, slow: 0.6 });
    expect(pixelRatios(1.25)).toEqual({ rest: 1.25, moving: 1, slow: 0.6 });
  });

  it('falls below one pixel a pixel only after slow frames, and comes back at rest', () => {
    vi.useFakeTimers();
    const shown: number[] = [];
    const resolution = createResolution((dpr) => shown.push(dpr), 1);
    for (let frame = 0; frame < 50; frame += 1) resolution.lower(0.016);
    resolution.lower(0.4);
    resolution.lower(0.016);
    expect([shown, resolution.coarse]).toEqual([[], false]);
    for (let frame = 0; frame < 4; frame += 1) resolution.lower(0.09);
    for (let frame = 0; frame < 9; frame += 1) resolution.lower(0.03);
    expect([shown, resolution.coarse]).toEqual([[0.6], true]);
    vi.advanceTimersByTime(1000);
    expect([shown, resolution.coarse]).toEqual([[0.6, 1], false]);
    vi.useRealTimers();
  });
});
