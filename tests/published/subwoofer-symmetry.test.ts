// Symmetry rules of subwoofer placement in a rigid box (exact; derived from the cosine shapes, see any text on room modes).
// A mode's share in the field is its residue: the field is integrated once round the mode's frequency in the complex plane,
// on a circle that holds no other mode; everything else drops out.
import { describe, expect, it } from 'vitest';
import { createBoxField } from '../../src/engines/bass/box-field.ts';

const WIDTH = 4.3;
const HEIGHT = 2.7;
const LENGTH = 6.1;
const C = 343.2;
const field = createBoxField({
  sizeM: [WIDTH, HEIGHT, LENGTH],
  soundSpeed: C,
  admittance: Array.from({ length: 6 }, () => [0, 0] as const),
});
const SEAT = Float64Array.of(0.9, 1.1, 2.3);
/**
 * Radius of the circle and points on it. The nearest other mode is 0.35 Hz away: error (0.002 / 0.35)^8 = 1e-18. Rounding of
 * the frequency costs 1e-16 x 100 / 0.002 = 5e-12. Small, so that the sum is cut at the same term all round.
 */
const RADIUS_HZ = 0.002;
const POINTS = 8;

/** Places on the floor as shares of length (z) and width (x). */
type Place = readonly [alongLength: number, alongWidth: number];
const CORNER: Place[] = [[0, 0]];
const WALL_MIDDLES: Place[] = [
  [0, 0.5],
  [1, 0.5],
  [0.5, 0],
  [0.5, 1],
];
const CORNERS: Place[] = [
  [0, 0],
  [0, 1],
  [1, 0],
  [1, 1],
];

const resonanceHz = (nz: number, nx: number): number => (C / 2) * Math.hypot(nz / LENGTH, nx / WIDTH);

/** Residue in omega^2 of the pressure of equal sources in phase at a seat, at mode (nz, nx) along length and width. */
const residue = (places: readonly Place[], nz: number, nx: number, seat = SEAT): [number, number] => {
  const sources = Float64Array.from(places.flatMap(([z, x]) => [x * WIDTH, 0, z * LENGTH]));
  let re = 0;
  let im = 0;
  for (let i = 0; i < POINTS; i++) {
    const cos = Math.cos((2 * Math.PI * (i + 0.5)) / POINTS);
    const sin = Math.sin((2 * Math.PI * (i + 0.5)) / POINTS);
    const hz = resonanceHz(nz, nx) + RADIUS_HZ * cos;
    const h = field.unitResponses(sources, seat, Float64Array.of(hz), -2 * Math.PI * RADIUS_HZ * sin);
    const hRe = h.re.reduce((sum, part) => sum + part, 0);
    const hIm = h.im.reduce((sum, part) => sum + part, 0);
    // times omega d(omega), but for constants
    const wRe = hz * cos - RADIUS_HZ * sin * sin;
    const wIm = hz * sin + RADIUS_HZ * sin * cos;
    re += hRe * wRe - hIm * wIm;
    im += hRe * wIm + hIm * wRe;
  }
  return [re, im];
};

/** How strongly the places drive a mode, one corner = 1, with its sign. */
const drive = (places: readonly Place[], nz: number, nx: number): number => {
  const [aRe, aIm] = residue(places, nz, nx);
  const [bRe, bIm] = residue(CORNER, nz, nx);
  return (aRe * bRe + aIm * bIm) / (bRe * bRe + bIm * bIm);
};

const expectSilent = (places: readonly Place[], nz: number, nx: number): void => {
  expect(Math.abs(drive(places, nz, nx)), `(${nz}, ${nx})`).toBeLessThanOrEqual(1e-9 * places.length);
};
const expectDrive = (places: readonly Place[], nz: number, nx: number, expected: number): void => {
  expect(Math.abs(drive(places, nz, nx) - expected), `(${nz}, ${nx})`).toBeLessThanOrEqual(1e-9 * places.length);
};

describe('rules', () => {
  it('1: a source in the middle of a dimension drives no odd mode along it, and even ones fully', () => {
    for (const n of [1, 3, 5]) expectSilent([[0.5, 0]], n, 0);
    expectDrive([[0.5, 0]], 2, 0, -1);
    expectDrive([[0.5, 0]], 4, 0, 1);
  });

  it('2: equal sources at x and L - x cancel the odd modes', () => {
    const pair: Place[] = [
      [0.2, 0.1],
      [0.8, 0.1],
    ];
    for (const n of [1, 3, 5]) expectSilent(pair, n, 0);
    expectDrive(pair, 2, 0, 2 * Math.cos(0.4 * Math.PI));
  });

  it('3: two at opposite wall middles: the second is the first axial mode that survives', () => {
    const pair: Place[] = [
      [0, 0.5],
      [1, 0.5],
    ];
    for (const [nz, nx] of [
      [1, 0],
      [3, 0],
      [0, 1],
      [0, 3],
      [1, 1],
      [2, 1],
      [1, 2],
    ]) {
      expectSilent(pair, nz, nx);
    }
    expectDrive(pair, 2, 0, 2);
  });

  it('4: four corners cancel all odd modes and drive even ones fourfold', () => {
    for (const [nz, nx] of [
      [1, 0],
      [0, 1],
      [1, 1],
      [2, 1],
      [1, 2],
      [3, 2],
    ]) {
      expectSilent(CORNERS, nz, nx);
    }
    for (const [nz, nx] of [
      [2, 0],
      [0, 2],
      [2, 2],
    ]) {
      expectDrive(CORNERS, nz, nx, 4);
    }
  });

  it('5: four wall middles: (2,0) 0, (0,2) 0, (1,1) 0, (2,2) -4, (4,0) +4, (4,2) 0', () => {
    expectSilent(WALL_MIDDLES, 2, 0);
    expectSilent(WALL_MIDDLES, 0, 2);
    expectSilent(WALL_MIDDLES, 1, 1);
    expectSilent(WALL_MIDDLES, 1, 0);
    expectSilent(WALL_MIDDLES, 4, 2);
    expectDrive(WALL_MIDDLES, 2, 2, -4);
    expectDrive(WALL_MIDDLES, 4, 0, 4);
  });

  it('6: quarter points: no second mode; a pair drives no axial mode below the fourth', () => {
    expectSilent([[0.25, 0]], 2, 0);
    const pair: Place[] = [
      [0.25, 0],
      [0.75, 0],
    ];
    for (const n of [1, 2, 3]) expectSilent(pair, n, 0);
    expectDrive(pair, 4, 0, -2);
  });

  it('7: a seat at half the length hears no odd length mode', () => {
    const middle = Float64Array.of(0.9, 1.1, LENGTH / 2);
    for (const n of [1, 3]) {
      const there = Math.hypot(...residue(CORNER, n, 0, middle));
      expect(there / Math.hypot(...residue(CORNER, n, 0))).toBeLessThanOrEqual(1e-9);
    }
  });

  it('8: N equal subwoofers in one place: 20 log10 N', () => {
    for (const n of [2, 4]) {
      const together = Math.hypot(...residue(Array(n).fill([0.1, 0.2]) as Place[], 1, 1));
      const one = Math.hypot(...residue([[0.1, 0.2]], 1, 1));
      expect(Math.abs(20 * Math.log10(together / one) - 20 * Math.log10(n))).toBeLessThanOrEqual(1e-8);
    }
  });
});

it('a field driven symmetrically is symmetrical to 1e-9 at every frequency', () => {
  const left = Float64Array.of(0.7, 1.2, 2.1);
  const mirrored = Float64Array.of(WIDTH - 0.7, 1.2, LENGTH - 2.1);
  const sources = Float64Array.from(WALL_MIDDLES.flatMap(([z, x]) => [x * WIDTH, 0, z * LENGTH]));
  const frequencies = Float64Array.of(21.3, 37.7, 55.1, 78.9, 113.3, 160.7);
  const sum = (seat: Float64Array): number[] => {
    const h = field.unitResponses(sources, seat, frequencies);
    return Array.from(frequencies, (_, f) => [0, 1, 2, 3].reduce((total, s) => total + h.re[s * 6 + f], 0));
  };
  const a = sum(left);
  const b = sum(mirrored);
  for (const [f, value] of a.entries()) expect(Math.abs(value / b[f] - 1)).toBeLessThanOrEqual(1e-9);
});
