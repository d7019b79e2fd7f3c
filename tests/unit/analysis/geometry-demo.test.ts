import { describe, expect, it } from 'vitest';
import { geometryReadout } from '../../../src/analysis/geometry.ts';
import { demo } from './rooms.ts';

// Every expected value is worked out here from the fixture's own lengths by plane geometry; nothing of src is called for it.
const deg = (radians: number): number => (radians * 180) / Math.PI;
const readout = geometryReadout(demo());
const seat = (id: string) => readout.seats.find((one) => one.id === id)!;
const loudspeaker = (seatId: string, id: string) => seat(seatId).loudspeakers.find((one) => one.id === id)!;
/** Nine decimals: all of it is one chain of a dozen double-precision steps on metres. */
const close = 9;

const widthM = 2.6;
const heightM = 2.6 / 1.7778;
/** Eye of the front row: floor 0 + pan 0.43 + 0.69 at z 3.3; of the back row: 0.36 + 0.43 + 0.69 at z 4.95. */
const frontEyeM = 1.12;
const backEyeM = 1.48;
/** Ears: 0.01 lower and 0.1 farther back. */
const frontEar = { y: 1.11, z: 3.4 };
const backEar = { y: 1.47, z: 5.05 };

describe('the two-row room by hand', () => {
  it('eyes and ears', () => {
    expect(seat('front-3').eyeM.map((v) => v.toFixed(9))).toEqual(['0.720000000', '1.120000000', '3.300000000']);
    expect(seat('back-1').earM.map((v) => v.toFixed(9))).toEqual(['-1.200000000', '1.470000000', '5.050000000']);
  });

  it('the picture’s size', () => {
    expect(readout.picture.heightM).toBeCloseTo(1.462481719, close);
    expect(readout.picture.diagonalM).toBeCloseTo(Math.sqrt(widthM ** 2 + heightM ** 2), close);
  });

  it('the reference seat: distances and angles of the picture', () => {
    const { picture } = seat('front-2');
    const squareM = 3.3 - 0.4;
    const centreM = 0.72 + heightM / 2;
    const rise = centreM - frontEyeM;
    expect(picture.distanceM).toBeCloseTo(Math.sqrt(squareM ** 2 + rise ** 2), close);
    expect(picture.distanceHeights).toBeCloseTo(squareM / heightM, close);
    expect(picture.horizontalDeg).toBeCloseTo(deg(2 * Math.atan(1.3 / Math.hypot(squareM, rise))), close);
    const top = Math.atan((0.72 + heightM - frontEyeM) / squareM);
    const bottom = Math.atan((frontEyeM - 0.72) / squareM);
    expect(picture.verticalDeg).toBeCloseTo(deg(top + bottom), close);
    expect(picture.topElevationDeg).toBeCloseTo(deg(top), close);
    expect(picture.centreElevationDeg).toBeCloseTo(deg(Math.atan(rise / squareM)), close);
    expect(picture.offAxisDeg).toBeCloseTo(deg(Math.atan(rise / squareM)), close);
    expect(picture.pixelsPerDegree).toBeCloseTo((3840 / widthM) * squareM * (Math.PI / 180), close);
    expect(picture.clearanceMm).toBeNull();
    expect(picture.worstCase.clearanceMm).toBeNull();
  });

  it('an outer seat of the back row: the picture from the side', () => {
    const { picture } = seat('back-1');
    const [dx, dy, dz] = [1.2, 0.72 + heightM / 2 - backEyeM, 4.95 - 0.4];
    expect(picture.distanceM).toBeCloseTo(Math.sqrt(dx * dx + dy * dy + dz * dz), close);
    expect(picture.offAxisDeg).toBeCloseTo(deg(Math.acos(dz / Math.sqrt(dx * dx + dy * dy + dz * dz))), 6);
    expect(picture.topElevationDeg).toBeCloseTo(
      deg(Math.atan((0.72 + heightM - backEyeM) / Math.hypot(dx, dz))),
      close,
    );
    // Rays to the middles of the left and right edges: cosine of the angle between them.
    const left = [-1.3 + 1.2, dy, -dz];
    const right = [1.3 + 1.2, dy, -dz];
    const dot = left.reduce((sum, v, i) => sum + v * right[i], 0);
    const angle = Math.acos(dot / (Math.hypot(...left) * Math.hypot(...right)));
    expect(picture.horizontalDeg).toBeCloseTo(deg(angle), 6);
  });

  it('C-value over the front row, like for like and in the worst case', () => {
    // The line falls from the eye to the picture's lower edge (0.72 m at z 0.4); the front row's eyes are at z 3.3.
    const share = (3.3 - 0.4) / (4.95 - 0.4);
    const overM = 0.72 + (backEyeM - 0.72) * share - frontEyeM;
    expect(seat('back-2').picture.clearanceMm).toBeCloseTo(overM * 1000, 6);
    expect(overM * 1000).toBeCloseTo(84.3956, 4);
    // Short (eye 0.705 over the pan, DIN 33402-2 women's 5th) behind tall (0.855, men's 95th).
    const shortM = 0.72 + (0.36 + 0.43 + 0.705 - 0.72) * share - (0.43 + 0.855);
    expect(seat('back-2').picture.worstCase.clearanceMm).toBeCloseTo(shortM * 1000, 6);
  });

  it('a loudspeaker of each layer at the reference seat', () => {
    const l = loudspeaker('front-2', 'L');
    const [dx, dy, dz] = [-1.36, 1.15 - frontEar.y, 0.22 - frontEar.z];
    const d = Math.sqrt(dx * dx + dy * dy + dz * dz);
    expect(l.azimuthDeg).toBeCloseTo(-deg(Math.atan(1.36 / 3.18)), close);
    expect(l.elevationDeg).toBeCloseTo(deg(Math.atan(0.04 / Math.hypot(1.36, 3.18))), close);
    expect(l.distanceM).toBeCloseTo(d, close);
    expect(l.arrivalMs).toBeCloseTo((d / 343.2) * 1000, close);
    expect(l.offAxisDeg).toBeCloseTo(0, 6);
    expect(l.levelDb).toBeCloseTo(-20 * Math.log10(d), close);
    expect(l.maxLevelDb).toBeCloseTo(90 + 10 * Math.log10(200) - 20 * Math.log10(d), close);
    expect(loudspeaker('front-2', 'Rrs').azimuthDeg).toBeCloseTo(180 - deg(Math.atan(1.35 / 2.6)), close);
    const up = deg(Math.atan((2.65 - frontEar.y) / Math.hypot(1.2, frontEar.z - 1.95)));
    expect(loudspeaker('front-2', 'Ltf').elevationDeg).toBeCloseTo(up, close);
  });

  it('off the axis of a loudspeaker that faces the reference seat', () => {
    const c = loudspeaker('back-1', 'C');
    // From C at (0, 1.15, 0.22): to the reference ear, and to this ear.
    const axis = [0, frontEar.y - 1.15, frontEar.z - 0.22];
    const ray = [-1.2, backEar.y - 1.15, backEar.z - 0.22];
    const cosine = axis.reduce((sum, v, i) => sum + v * ray[i], 0) / (Math.hypot(...axis) * Math.hypot(...ray));
    expect(c.offAxisDeg).toBeCloseTo(deg(Math.acos(cosine)), 6);
    expect(c.azimuthDeg).toBeCloseTo(deg(Math.atan(1.2 / 4.83)), close);
  });

  it('volume, boundary, Eyring time and Schroeder frequency from areas', () => {
    const { room } = readout;
    const volume = 4.3 * 6.1 * 2.7;
    const surface = 2 * (4.3 * 6.1 + 4.3 * 2.7 + 6.1 * 2.7);
    expect(room.volumeM3).toBeCloseTo(volume, close);
    expect(room.surfaceM2).toBeCloseTo(surface, close);
    const [door, window] = [0.85 * 2, 1.2 * 1.15];
    const [front, side, floor] = [4.3 * 2.7, 6.1 * 2.7, 4.3 * 6.1];
    // 500 Hz, handbook absorptions (facts 4.5, read): board on studs 0.05, plaster on brick 0.02, boards on joists 0.10
    // (floor; the closed door too), window glass 0.18.
    const at500 =
      front * 0.05 +
      front * 0.02 +
      (side - window) * 0.05 +
      window * 0.18 +
      (side - door) * 0.02 +
      door * 0.1 +
      floor * 0.1 +
      floor * 0.05;
    const at1000 =
      front * 0.04 +
      front * 0.03 +
      (side - window) * 0.04 +
      window * 0.12 +
      (side - door) * 0.03 +
      door * 0.07 +
      floor * 0.07 +
      floor * 0.04;
    const eyring = (area: number) => (24 * Math.LN10 * volume) / (343.2 * -surface * Math.log(1 - area / surface));
    expect(room.rt60S['500']).toBeCloseTo(eyring(at500), close);
    expect(room.rt60S['1000']).toBeCloseTo(eyring(at1000), close);
    const mean = (eyring(at500) + eyring(at1000)) / 2;
    expect(room.schroederHz).toBeCloseTo(2000 * Math.sqrt(mean / volume), 6);
    expect(Object.keys(room.rt60S)).toEqual(['125', '250', '500', '1000', '2000', '4000']);
  });
});
