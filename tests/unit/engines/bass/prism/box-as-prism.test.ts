import { describe, expect, it } from 'vitest';
import { createBoxField } from '../../../../../src/engines/bass/box-field.ts';
import { createRoomField } from '../../../../../src/engines/bass/create-room-field.ts';
import type { Admittance, Axis, BoxSpec, PrismSpec, SlicePlane } from '../../../../../src/engines/bass/room-field.ts';

// The box field is exact (published/reference-boxes.test.ts): a box given as a prism along any of its axes has to agree.
const SIZE = [4.3, 2.7, 6.1] as const;
const C = 343.2;
const HZ = Float64Array.from({ length: 20 }, (_, i) => 20 * 2 ** (i / 6));

/** A box as a prism whose even direction is `axis`; `reversed` takes the corners the other way round. */
const asPrism = ({ sizeM, admittance, soundSpeed }: BoxSpec, axis: Axis, reversed = false): PrismSpec => {
  const [u, v] = ([0, 1, 2] as const).filter((a) => a !== axis);
  const corners: [number, number][] = [
    [0, 0],
    [sizeM[u], 0],
    [sizeM[u], sizeM[v]],
    [0, sizeM[v]],
  ];
  const edges: Admittance[] = [admittance[2 * v], admittance[2 * u + 1], admittance[2 * v + 1], admittance[2 * u]];
  return {
    axis,
    lengthM: sizeM[axis],
    // backwards, edge i runs between what were corners 3 - i and 2 - i
    cornersM: reversed ? corners.reverse() : corners,
    soundSpeed,
    edges: reversed ? [edges[2], edges[1], edges[0], edges[3]] : edges,
    ends: [admittance[2 * axis], admittance[2 * axis + 1]],
  };
};

const box = (...betas: readonly (readonly [number, number])[]): BoxSpec => ({
  sizeM: SIZE,
  soundSpeed: C,
  admittance: Array.from({ length: 6 }, (_, wall) => betas[wall % betas.length]),
});
const LIGHT = box([0.01, 0], [0.02, 0], [0.015, 0], [0.01, 0], [0.02, 0], [0.01, 0]);
const MID = box([0.05, 0], [0.15, 0], [0.1, 0], [0.08, 0], [0.05, 0], [0.1, 0]);
const REACTIVE = box([0.05, 0.1], [0.2, -0.15], [0.03, 0.05], [0.05, 0], [0.02, 0], [0.3, 0.1]);
const HEAVY = box([0.3, 0]);
const MIXED = box([0.005, 0], [0.3, 0], [0.05, 0], [0.02, 0], [0.15, 0], [0.01, 0]);

const SOURCES = Float64Array.of(0.3, 0.2, 0.3, 3.9, 0.25, 3);
/** Seats, and places at a subwoofer's height 0.35 to 2 m from it. */
const FAR = Float64Array.from([0.7, 1.9, 3.1].flatMap((x) => [2.9, 3.7, 4.5, 5.3].flatMap((z) => [x, 1.1, z])));
const NEAR = Float64Array.from(Array.from({ length: 8 }, (_, i) => [0.6 + 0.25 * i, 0.3, 0.5 + 0.2 * (i % 4)]).flat());

interface Field {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** Level differences in dB, ascending, of points not more than 20 dB under the rms of `of`. */
const differencesDb = (a: Field, of: Field): number[] => {
  let squares = 0;
  for (let i = 0; i < of.re.length; i++) squares += of.re[i] ** 2 + of.im[i] ** 2;
  const rms = Math.sqrt(squares / of.re.length);
  const found: number[] = [];
  for (let i = 0; i < of.re.length; i++) {
    const size = Math.hypot(of.re[i], of.im[i]);
    if (size > 0.1 * rms) found.push(Math.abs(20 * Math.log10(Math.hypot(a.re[i], a.im[i]) / size)));
  }
  return found.sort((x, y) => x - y);
};
const share = (ascending: readonly number[], part: number): number =>
  ascending[Math.floor(part * (ascending.length - 1))];

describe.each([
  // what 95 % of points keep to, by the issue 0.5 dB; these are twice what was measured
  ['light', LIGHT, 0.1],
  ['middling', MID, 0.2],
  ['reactive', REACTIVE, 0.25],
  ['heavy', HEAVY, 0.5],
  ['mixed', MIXED, 0.3],
] as const)('a box as a prism, %s walls', (_, spec, most) => {
  it.each([0, 1, 2] as const)('along axis %i: responses far and near', (axis) => {
    const exact = createBoxField(spec);
    const field = createRoomField(asPrism(spec, axis), 'fine');
    for (const seats of [FAR, NEAR]) {
      const db = differencesDb(field.unitResponses(SOURCES, seats, HZ), exact.unitResponses(SOURCES, seats, HZ));
      expect(db.length).toBeGreaterThan(200);
      expect(share(db, 0.95)).toBeLessThanOrEqual(most);
      expect(share(db, 0.5)).toBeLessThanOrEqual(0.03);
    }
  });
});

describe('a box as a prism', () => {
  it('does not mind the turning sense of its corners', () => {
    const one = createRoomField(asPrism(MIXED, 1), 'fine').unitResponses(SOURCES, FAR, HZ);
    const other = createRoomField(asPrism(MIXED, 1, true), 'fine').unitResponses(SOURCES, FAR, HZ);
    // two meshes of one room
    expect(share(differencesDb(one, other), 0.95)).toBeLessThanOrEqual(0.1);
  });

  it.each([
    [1, 1, 1.2],
    [1, 1, 0.2],
    [1, 0, 0.3],
    [2, 1, 1.2],
    [2, 2, 0.3],
    [0, 1, 0.2],
    [0, 2, 3],
  ] as const)('even along axis %i, slice across axis %i at %f m, through subwoofers too', (axis, normal, atM) => {
    const [u, v] = ([0, 1, 2] as const).filter((a) => a !== normal);
    const line = (a: Axis, count: number) =>
      Float64Array.from({ length: count }, (_, i) => (SIZE[a] * (i + 0.5)) / count);
    const weights = Float64Array.of(1, 0, 0.5, 0.5);
    const exact = createBoxField(MID);
    const field = createRoomField(asPrism(MID, axis), 'fine');
    for (const [uAxis, vAxis] of [
      [u, v],
      [v, u],
    ] as const) {
      const plane: SlicePlane = { normal, atM, uAxis, vAxis, uM: line(uAxis, 31), vM: line(vAxis, 44) };
      const db = differencesDb(field.slice(plane, SOURCES, weights, 90), exact.slice(plane, SOURCES, weights, 90));
      expect(db.length).toBeGreaterThan(1000);
      expect(share(db, 0.95)).toBeLessThanOrEqual(0.2);
      expect(db[db.length - 1]).toBeLessThanOrEqual(3);
    }
  });

  it('answers a slice as it answers seats at the same places', () => {
    const field = createRoomField(asPrism(MID, 1), 'fine');
    const uM = Float64Array.of(0.5, 1.3, 3.9);
    const vM = Float64Array.of(0.4, 3.1);
    const slice = field.slice(
      { normal: 1, atM: 0.6, uAxis: 0, vAxis: 2, uM, vM },
      SOURCES.slice(0, 3),
      Float64Array.of(1, 0),
      63,
    );
    const places = [...vM].flatMap((z) => [...uM].flatMap((x) => [x, 0.6, z]));
    const seats = field.unitResponses(SOURCES.slice(0, 3), Float64Array.from(places), Float64Array.of(63));
    for (let i = 0; i < 6; i++) {
      // the slice's functions are kept in single precision
      expect(slice.re[i]).toBeCloseTo(seats.re[i], 4);
      expect(slice.im[i]).toBeCloseTo(seats.im[i], 4);
    }
  });

  it('is nothing outside the cross-section', () => {
    const field = createRoomField(asPrism(MID, 2), 'fine');
    const plane: SlicePlane = {
      normal: 0,
      atM: 2,
      uAxis: 1,
      vAxis: 2,
      uM: Float64Array.of(1.5, 2.8),
      vM: Float64Array.of(1, 4),
    };
    const { re } = field.slice(plane, SOURCES, Float64Array.of(1, 0, 0, 0), 50);
    expect(Number.isFinite(re[0])).toBe(true);
    expect(re[1]).toBeNaN();
  });

  it('has the modes of the box, their decays and shapes', () => {
    for (const [spec, most] of [
      [LIGHT, 0.0005],
      [MID, 0.002],
    ] as const) {
      const modes = createRoomField(asPrism(spec, 2), 'fine').modes(150);
      const exact = createBoxField(spec).modes(150);
      expect(modes.length).toBe(exact.length);
      modes.forEach(({ hz, order, decayS, dampedHz }, i) => {
        expect(order).toBeNull();
        expect(Math.abs(hz / exact[i].hz - 1)).toBeLessThan(3e-4);
        expect(Math.abs(decayS / exact[i].decayS - 1)).toBeLessThan(most);
        expect(Math.abs(dampedHz - exact[i].dampedHz)).toBeLessThan(0.03);
      });
    }
    const points = Float64Array.of(0.3, 0.2, 0.3, 2, 1.1, 3.7);
    const shapes = createRoomField(asPrism(LIGHT, 2), 'fine').modeShapes?.(60, points) ?? new Float64Array(0);
    const exact = createBoxField(LIGHT).modeShapes?.(60, points) ?? new Float64Array(0);
    expect(shapes.length).toBe(exact.length);
    // a shape's sign is free
    for (let m = 0; m < shapes.length; m += 2) {
      const sign = shapes[m] * exact[m] > 0 ? 1 : -1;
      expect(Math.abs(sign * shapes[m] - exact[m])).toBeLessThan(1e-3);
      expect(Math.abs(sign * shapes[m + 1] - exact[m + 1])).toBeLessThan(1e-3);
    }
  });

  it('decays not at all between rigid walls', () => {
    const modes = createRoomField(asPrism(box([0, 0]), 1), 'fine').modes(80);
    expect(modes.length).toBeGreaterThan(5);
    for (const { decayS } of modes) expect(decayS).toBe(Number.POSITIVE_INFINITY);
  });
});
