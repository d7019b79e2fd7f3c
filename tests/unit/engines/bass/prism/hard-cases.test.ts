import { describe, expect, it } from 'vitest';
import { createRoomField } from '../../../../../src/engines/bass/create-room-field.ts';
import type {
  Admittance,
  BoxSpec,
  PrismSpec,
  RoomSpec,
  WallPatch,
} from '../../../../../src/engines/bass/room-field.ts';

const C = 343.2;
const even = (beta: Admittance, corners: readonly (readonly [number, number])[], lengthM = 2.6): PrismSpec => ({
  axis: 1,
  lengthM,
  cornersM: corners,
  soundSpeed: C,
  edges: corners.map(() => beta),
  ends: [beta, beta],
});
const rectangle = (width: number, length: number): [number, number][] => [
  [0, 0],
  [width, 0],
  [width, length],
  [0, length],
];
const L_PLAN: [number, number][] = [
  [0, 0],
  [6, 0],
  [6, 3],
  [3.5, 3],
  [3.5, 5],
  [0, 5],
];
const HZ = Float64Array.of(20, 43, 71, 100, 140);
const boxOf = (size: readonly [number, number, number], beta: Admittance): BoxSpec => ({
  sizeM: size,
  soundSpeed: C,
  admittance: Array.from({ length: 6 }, () => beta),
});

/** Largest |a - b| over the rms of b, over all frequencies. */
const apart = (one: RoomSpec, other: RoomSpec, source: number[], seats: number[], hz = HZ): number => {
  const a = createRoomField(one, 'fine').unitResponses(Float64Array.from(source), Float64Array.from(seats), hz);
  const b = createRoomField(other, 'fine').unitResponses(Float64Array.from(source), Float64Array.from(seats), hz);
  let squares = 0;
  let worst = 0;
  for (let i = 0; i < b.re.length; i++) {
    squares += b.re[i] ** 2 + b.im[i] ** 2;
    worst = Math.max(worst, Math.hypot(a.re[i] - b.re[i], a.im[i] - b.im[i]));
  }
  return worst / Math.sqrt(squares / b.re.length);
};

describe('prisms where something coincides', () => {
  it('a cube, threefold modes and all: as the box', () => {
    const seats = [1.1, 1.1, 1.3, 2.9, 1.2, 3.1, 2, 2, 2];
    // 1 % is 0.09 dB
    expect(
      apart(even([0.05, 0], rectangle(4, 4), 4), boxOf([4, 4, 4], [0.05, 0]), [0.3, 0.2, 0.3], seats),
    ).toBeLessThan(0.01);
  });

  it('rigid walls, away from and exactly on a resonance: finite, and as the box away from it', () => {
    const spec = even([0, 0], rectangle(4.3, 6.1), 2.7);
    const seats = [3.1, 1.1, 4.4, 1.3, 1.2, 3.3];
    const hz = Float64Array.of(22, 35.5, 52, 75.3);
    expect(apart(spec, boxOf([4.3, 2.7, 6.1], [0, 0]), [0.3, 0.2, 0.3], seats, hz)).toBeLessThan(0.01);
    const field = createRoomField(spec, 'fine');
    for (const { hz: resonance } of field.modes(60)) {
      const h = field.unitResponses(
        Float64Array.of(0.3, 0.2, 0.3),
        Float64Array.from(seats),
        Float64Array.of(resonance),
      );
      for (const part of [...h.re, ...h.im]) expect(Number.isFinite(part)).toBe(true);
    }
  });

  it('admittance 1 everywhere: as the box within 1 dB, which is what is said of walls so heavy', () => {
    const spec = even([1, 0], rectangle(4.3, 6.1), 2.7);
    const seats = [3.1, 1.1, 4.4, 1.3, 1.2, 3.3];
    expect(apart(spec, boxOf([4.3, 2.7, 6.1], [1, 0]), [0.3, 0.2, 0.3], seats)).toBeLessThan(0.12);
  });

  it('a subwoofer in the very corner, and on a wall', () => {
    const seats = [3.1, 1.1, 4.4, 1.3, 1.2, 3.3];
    for (const place of [
      [0, 0, 0],
      [4.3, 0, 6.1],
      [2, 0.2, 0],
      [0, 1.3, 3],
    ])
      expect(
        apart(even([0.03, 0], rectangle(4.3, 6.1), 2.7), boxOf([4.3, 2.7, 6.1], [0.03, 0]), place, seats),
      ).toBeLessThan(0.01);
  });

  it('a seat at, and close to, a subwoofer is heard at 0.1 m, as in the box', () => {
    const source = [1.2, 0.4, 2.1];
    const seats = [1.2, 0.4, 2.1, 1.23, 0.41, 2.1, 1.2, 0.55, 2.1];
    const spec = even([0.05, 0], rectangle(4.3, 6.1), 2.7);
    const h = createRoomField(spec, 'fine').unitResponses(Float64Array.from(source), Float64Array.from(seats), HZ);
    expect([...h.moved]).toEqual([1, 1, 0]);
    // the even part of the field stays where the seat is: 3 % of some 12
    expect(apart(spec, boxOf([4.3, 2.7, 6.1], [0.05, 0]), source, seats)).toBeLessThan(0.03);
  });

  it('a subwoofer at the inward corner of an L, within and on its walls: finite and smooth', () => {
    const field = createRoomField(even([0.05, 0], L_PLAN), 'fine');
    const seats = Float64Array.of(2.6, 1.1, 1.6, 1.2, 1.6, 4.2, 4.9, 1.1, 1.3);
    let before: Float64Array | null = null;
    for (let step = 0; step <= 20; step++) {
      const h = field.unitResponses(Float64Array.of(3.1 + 0.04 * step, 0.2, 2.85), seats, Float64Array.of(60));
      if (before !== null)
        h.re.forEach((re, i) => {
          expect(Math.abs(re - (before as Float64Array)[i])).toBeLessThan(0.25);
        });
      before = h.re;
    }
  });

  it('places outside the walls are brought onto them', () => {
    const field = createRoomField(even([0.05, 0], L_PLAN), 'fine');
    const seat = Float64Array.of(1.2, 1.1, 4.2);
    const out = field.unitResponses(Float64Array.of(3.6, -1, 4), seat, HZ);
    const on = field.unitResponses(Float64Array.of(3.5, 0, 4), seat, HZ);
    for (let i = 0; i < HZ.length; i++) expect(out.re[i]).toBeCloseTo(on.re[i], 6);
  });

  it('refuses frequencies it has no answer for', () => {
    const field = createRoomField(even([0.05, 0], L_PLAN), 'first');
    const place = Float64Array.of(1, 1, 1);
    for (const hz of [0, -5, 601, Number.NaN])
      expect(() => field.unitResponses(place, place, Float64Array.of(hz))).toThrow(RangeError);
  });

  it('complex frequencies: as the box', () => {
    const spec = even([0.05, 0], rectangle(4.3, 6.1), 2.7);
    const a = createRoomField(spec, 'fine').unitResponses(
      Float64Array.of(0.3, 0.2, 0.3),
      Float64Array.of(3.1, 1.1, 4.4),
      HZ,
      9,
    );
    const b = createRoomField(boxOf([4.3, 2.7, 6.1], [0.05, 0]), 'fine').unitResponses(
      Float64Array.of(0.3, 0.2, 0.3),
      Float64Array.of(3.1, 1.1, 4.4),
      HZ,
      9,
    );
    for (let i = 0; i < HZ.length; i++)
      expect(Math.hypot(a.re[i] - b.re[i], a.im[i] - b.im[i])).toBeLessThan(
        0.01 * Math.hypot(b.re[i], b.im[i]) + 0.005,
      );
  });

  it('what is kept for a drag changes nothing', () => {
    const spec = even([0.05, 0.02], L_PLAN);
    const used = createRoomField(spec, 'fine');
    const seats = Float64Array.of(2.6, 1.1, 1.6, 1.2, 1.6, 4.2);
    used.warmUp(HZ);
    used.unitResponses(Float64Array.of(1, 0.2, 1), seats, HZ);
    const source = Float64Array.of(0.3, 0.2, 0.4);
    const warm = used.unitResponses(source, seats, HZ);
    const cold = createRoomField(spec, 'fine').unitResponses(source, seats, HZ);
    warm.re.forEach((re, i) => {
      expect(re).toBeCloseTo(cold.re[i], 8);
    });
  });
});

describe('patches on a prism', () => {
  // The patched box is held to spectral elements (published/patched-box.test.ts); here the same room as a prism.
  const SIZE = [4.3, 2.7, 6.1] as const;
  const WALLS: readonly Admittance[] = [
    [0.02, 0],
    [0.02, 0],
    [0.015, 0],
    [0.03, 0],
    [0.03, 0],
    [0.04, 0],
  ];
  const box = (patches: readonly WallPatch[]): BoxSpec => ({ sizeM: SIZE, soundSpeed: C, admittance: WALLS, patches });
  const prism = (patches: readonly WallPatch[]): PrismSpec => ({
    axis: 1,
    lengthM: SIZE[1],
    cornersM: rectangle(SIZE[0], SIZE[2]),
    soundSpeed: C,
    edges: [WALLS[4], WALLS[1], WALLS[5], WALLS[0]],
    ends: [WALLS[2], WALLS[3]],
    patches,
  });
  const SEATS = [0.7, 1.9, 3.1].flatMap((x) => [2.9, 4.5].flatMap((z) => [x, 1.1, z]));

  it.each([
    // box wall (least x: y, z), prism edge 3 runs from z = 6.1 to 0
    [
      'on a wall',
      { wall: 0, fromM: [0.5, 1.5], toM: [1.7, 3.4] },
      { wall: 3, fromM: [2.7, 0.5], toM: [4.6, 1.7] },
      5e-4,
    ],
    [
      'from floor to ceiling',
      { wall: 0, fromM: [0, 1.5], toM: [2.7, 3.4] },
      { wall: 3, fromM: [2.7, 0], toM: [4.6, 2.7] },
      1e-6,
    ],
    ['on the floor', { wall: 2, fromM: [1.2, 2], toM: [3, 4.4] }, { wall: 4, fromM: [1.2, 2], toM: [3, 4.4] }, 0.005],
    ['on the ceiling', { wall: 3, fromM: [1.2, 2], toM: [3, 4.4] }, { wall: 5, fromM: [1.2, 2], toM: [3, 4.4] }, 0.015],
  ] as const)('%s: responses and slices as in the box', (_, onBox, onPrism, sliceShare) => {
    const admittance: Admittance = [0.35, 0.05];
    const patched = prism([{ ...onPrism, admittance }]);
    const source = [0.3, 0.2, 0.3];
    expect(apart(patched, box([{ ...onBox, admittance }]), source, SEATS)).toBeLessThan(0.004);
    // and the patch matters at all
    expect(apart(patched, box([]), source, SEATS)).toBeGreaterThan(0.1);
    const field = createRoomField(patched, 'fine');
    const uM = Float64Array.of(0.7, 1.9, 3.1);
    const vM = Float64Array.of(2.9, 4.5);
    const slice = field.slice(
      { normal: 1, atM: 1.1, uAxis: 0, vAxis: 2, uM, vM },
      Float64Array.from(source),
      Float64Array.of(1, 0),
      71,
    );
    const seats = field.unitResponses(Float64Array.from(source), Float64Array.from(SEATS), Float64Array.of(71));
    // A patch sees the near field of a seat, not that of a slice's points. Over the whole height the axis leaves nothing of it
    // out, and both are one sum; on the ceiling it is worth 1.4 %, 0.12 dB.
    for (let v = 0; v < 2; v++) {
      for (let u = 0; u < 3; u++) {
        const seat = u * 2 + v;
        const gap = Math.hypot(slice.re[v * 3 + u] - seats.re[seat], slice.im[v * 3 + u] - seats.im[seat]);
        expect(gap).toBeLessThan(sliceShare * Math.hypot(seats.re[seat], seats.im[seat]));
      }
    }
  });

  it('shorten the decay of every mode', () => {
    const bare = createRoomField(prism([]), 'fine').modes(80);
    const patch: WallPatch = { wall: 3, fromM: [2.7, 0.5], toM: [4.6, 1.7], admittance: [0.35, 0] };
    const patched = createRoomField(prism([patch]), 'fine').modes(80);
    expect(patched.length).toBe(bare.length);
    patched.forEach(({ decayS }, i) => {
      expect(decayS).toBeLessThan(bare[i].decayS);
      expect(decayS).toBeGreaterThan(0.05);
    });
  });
});
