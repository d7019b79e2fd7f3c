import { describe, expect, it } from 'vitest';
import { createBoxField } from '../../../../src/engines/bass/box-field.ts';
import type { BoxSpec } from '../../../../src/engines/bass/room-field.ts';

const C = 343.2;
const walls = (...betas: [number, number][]): BoxSpec['admittance'] =>
  Array.from({ length: 6 }, (_, i) => betas[i % betas.length]);
const RIGID = walls([0, 0]);
const ROOM: BoxSpec = { sizeM: [4.3, 2.7, 6.1], soundSpeed: C, admittance: RIGID };

/** Sum over the images of a rigid box of e^(-jkR) / R with k = kRe - j decay; image strengths all 1. */
const imageSum = (
  size: readonly number[],
  source: number[],
  at: number[],
  kRe: number,
  decay: number,
): [number, number] => {
  const reach = 24 / decay;
  let re = 0;
  let im = 0;
  const images = (axis: number): number[] => {
    const list: number[] = [];
    const most = Math.ceil(reach / (2 * size[axis])) + 1;
    for (let n = -most; n <= most; n++) for (const sign of [1, -1]) list.push(2 * n * size[axis] + sign * source[axis]);
    return list;
  };
  const [xs, ys, zs] = [images(0), images(1), images(2)];
  for (const x of xs) {
    for (const y of ys) {
      for (const z of zs) {
        const r = Math.hypot(x - at[0], y - at[1], z - at[2]);
        if (r > reach) continue;
        const amplitude = Math.exp(-decay * r) / r;
        re += amplitude * Math.cos(kRe * r);
        im -= amplitude * Math.sin(kRe * r);
      }
    }
  }
  return [re, im];
};

describe('rigid box at complex frequency against the sum over its images (an identity)', () => {
  const field = createBoxField(ROOM);
  it.each([
    [[0.3, 0.2, 0.3], [3.1, 1.1, 4.9], 2e-4],
    [[0, 0, 0], [2.15, 1.1, 3.4], 2e-4],
    [[4.3, 0, 6.1], [0.1, 2.6, 0.2], 2e-4],
    // nearer than 0.64 m along every axis the screened rest stands in for the cut terms
    [[1.3, 0.9, 2.3], [1.6, 1.1, 2.6], 5e-3],
    [[1.3, 0.9, 2.3], [1.4, 0.95, 2.35], 5e-3],
  ])('%j to %j', (source, at, tolerance) => {
    for (const hz of [30, 80, 150]) {
      const decay = 0.25;
      const [re, im] = imageSum(ROOM.sizeM, source, at, (2 * Math.PI * hz) / C, decay);
      const h = field.unitResponses(Float64Array.from(source), Float64Array.from(at), Float64Array.of(hz), decay * C);
      // scale: the direct sound, since the sum itself may cancel
      const direct = Math.exp(-decay * Math.hypot(...source.map((x, i) => x - at[i])));
      const scale = Math.max(Math.hypot(re, im), direct / 6);
      expect(Math.hypot(h.re[0] - re, h.im[0] - im) / scale, `${hz} Hz`).toBeLessThanOrEqual(tolerance);
    }
  });
});

describe('physics', () => {
  it('below all modes absorbing walls give 4 pi / (j k sum beta S), rigid ones -4 pi / (V k^2)', () => {
    const k = (2 * Math.PI * 0.02) / C;
    const [x, y, z] = ROOM.sizeM;
    const source = Float64Array.of(0.3, 0.2, 0.3);
    const seat = Float64Array.of(3.1, 1.1, 4.9);
    const at = Float64Array.of(0.02);
    const absorbing = createBoxField({ ...ROOM, admittance: walls([0.1, 0]) }).unitResponses(source, seat, at);
    const surface = 2 * (x * y + y * z + z * x);
    expect(absorbing.im[0] / ((-4 * Math.PI) / (k * 0.1 * surface))).toBeCloseTo(1, 3);
    const rigid = createBoxField(ROOM).unitResponses(source, seat, at);
    expect(rigid.re[0] / ((-4 * Math.PI) / (x * y * z * k * k))).toBeCloseTo(1, 5);
  });

  it('a large absorbing room is nearly free field: 1 / r near the source', () => {
    const field = createBoxField({ sizeM: [30, 30, 30], soundSpeed: C, admittance: walls([1, 0]) });
    const h = field.unitResponses(Float64Array.of(15, 15, 15), Float64Array.of(15, 15, 17), Float64Array.of(60, 120));
    // walls of beta 1 throw back nothing straight on and little at an angle, from 13 m away
    for (const f of [0, 1]) expect(Math.abs(Math.hypot(h.re[f], h.im[f]) * 2 - 1)).toBeLessThanOrEqual(0.03);
  });

  it('in a rigid corner the pressure is eight times the free field near by (image sources)', () => {
    const h = createBoxField({ sizeM: [30, 30, 30], soundSpeed: C, admittance: walls([0.5, 0]) });
    const corner = createBoxField({
      sizeM: [30, 30, 30],
      soundSpeed: C,
      admittance: [
        [0, 0],
        [1, 0],
        [0, 0],
        [1, 0],
        [0, 0],
        [1, 0],
      ],
    });
    const seat = Float64Array.of(0.5, 0.5, 0.5);
    const inCorner = corner.unitResponses(new Float64Array(3), seat, Float64Array.of(40));
    const free = h.unitResponses(Float64Array.of(15, 15, 15), Float64Array.of(15.5, 15.5, 15.5), Float64Array.of(40));
    const gain = 20 * Math.log10(Math.hypot(inCorner.re[0], inCorner.im[0]) / Math.hypot(free.re[0], free.im[0]));
    expect(Math.abs(gain - 18.06)).toBeLessThanOrEqual(0.6);
  });
});

describe('corner cases stay finite and right', () => {
  const finite = (values: Float64Array): boolean => values.every((value) => Number.isFinite(value));

  it.each([
    ['a rigid cube', [3, 3, 3], RIGID],
    ['a cube of one material', [3, 3, 3], walls([0.05, 0])],
    ['a black cube', [3, 3, 3], walls([1, 0])],
    ['a small room', [1.5, 1.5, 1.5], walls([0.02, 0.3])],
    ['a large hall', [30, 12, 30], walls([0.03, 0], [0, 0])],
    ['stiff walls all round', [5, 3, 4], walls([0.02, 2])],
    ['mass-like walls', [5, 3, 4], walls([0.3, -1.5])],
  ] as const)('%s', (_, sizeM, admittance) => {
    const field = createBoxField({ sizeM: [...sizeM], soundSpeed: C, admittance });
    const [x, y, z] = sizeM;
    const sources = Float64Array.of(0, 0, 0, x, y, z, x / 2, y / 2, z / 2);
    const receivers = Float64Array.of(0, 0, 0, x, 0, z, x / 2, y / 2, z / 2, 0.4, 0.4, 0.4, x / 2 + 0.05, y / 2, z / 2);
    const h = field.unitResponses(sources, receivers, Float64Array.of(20, 57.2, 114.4, 200, C / 6, C / 3));
    expect(finite(h.re)).toBe(true);
    expect(finite(h.im)).toBe(true);
    for (const { hz, decayS, dampedHz } of field.modes(120)) {
      expect(hz).toBeGreaterThan(0);
      expect(decayS).toBeGreaterThan(0);
      expect(Number.isFinite(dampedHz)).toBe(true);
    }
  });

  it('a rigid room exactly on a resonance: very loud, finite', () => {
    const hz = C / (2 * 6.1);
    const h = createBoxField(ROOM).unitResponses(new Float64Array(3), Float64Array.of(1, 1, 1), Float64Array.of(hz));
    expect(Math.hypot(h.re[0], h.im[0])).toBeGreaterThan(1e6);
    expect(finite(h.re) && finite(h.im)).toBe(true);
  });

  it('a receiver within 0.1 m is heard from 0.1 m and marked', () => {
    const field = createBoxField({ ...ROOM, admittance: walls([0.05, 0]) });
    const source = Float64Array.of(2, 1, 3);
    const seats = Float64Array.of(2, 1, 3, 2.03, 1, 3, 2.1, 1, 3, 1.9, 1, 3, 2, 1.02, 3);
    const h = field.unitResponses(source, seats, Float64Array.of(50));
    expect(Array.from(h.moved)).toEqual([1, 1, 0, 0, 1]);
    for (const r of [0, 1]) expect(Math.hypot(h.re[r] - h.re[2], h.im[r] - h.im[2])).toBeLessThanOrEqual(1e-9);
    const exact = field.unitResponses(source, Float64Array.of(2, 1.1, 3), Float64Array.of(50));
    expect(Math.hypot(h.re[4] - exact.re[0], h.im[4] - exact.im[0])).toBeLessThanOrEqual(1e-9);
  });

  it('a source in the corner hears itself inside the room', () => {
    const field = createBoxField({ ...ROOM, admittance: walls([0.05, 0]) });
    for (const corner of [Float64Array.of(0, 0, 0), Float64Array.of(4.3, 2.7, 6.1)]) {
      const h = field.unitResponses(corner, corner, Float64Array.of(50));
      expect(h.moved[0]).toBe(1);
      // eight images at 0.1 m weigh far more than the room
      expect(Math.hypot(h.re[0], h.im[0])).toBeGreaterThan(60);
      expect(Math.hypot(h.re[0], h.im[0])).toBeLessThan(120);
    }
  });

  it.each([0, -20, 601, Number.NaN, Number.POSITIVE_INFINITY])('%d Hz is refused', (hz) => {
    const ask = () =>
      createBoxField(ROOM).unitResponses(new Float64Array(3), Float64Array.of(1, 1, 1), Float64Array.of(hz));
    expect(ask).toThrow(RangeError);
  });

  it('no sources, no receivers, no frequencies: empty', () => {
    const field = createBoxField(ROOM);
    const none = new Float64Array(0);
    expect(field.unitResponses(none, Float64Array.of(1, 1, 1), Float64Array.of(50)).re).toHaveLength(0);
    expect(field.unitResponses(Float64Array.of(1, 1, 1), none, Float64Array.of(50)).re).toHaveLength(0);
    expect(field.unitResponses(Float64Array.of(1, 1, 1), Float64Array.of(2, 1, 1), none).re).toHaveLength(0);
  });
});

describe('history does not matter', () => {
  const spec: BoxSpec = { ...ROOM, admittance: walls([0.05, 0.1], [0.2, -0.15], [0.02, 0]) };
  const frequencies = Float64Array.from({ length: 40 }, (_, i) => 20 * 2 ** (i / 12));
  const seats = Float64Array.of(1, 1.1, 3, 2, 1.1, 3, 3, 1.1, 3, 1, 1.3, 4.5, 2.3, 1.3, 4.7);

  it('a dragged source, a moved seat and a nearby source give what a fresh field gives', () => {
    const used = createBoxField(spec);
    const steps: [Float64Array, Float64Array][] = [
      [Float64Array.of(0.2, 0.2, 0.2), seats],
      [Float64Array.of(0.5, 0.2, 0.2), seats],
      [Float64Array.of(1.1, 1.0, 3.2), seats],
      [Float64Array.of(0.2, 0.2, 0.2), seats],
      [Float64Array.of(0.2, 0.2, 0.2), seats.map((x, i) => (i === 0 ? x + 0.3 : x))],
      [Float64Array.of(4, 0.2, 5, 1, 1.1, 3), seats],
    ];
    for (const [source, receivers] of steps) {
      const again = used.unitResponses(source, receivers, frequencies);
      const fresh = createBoxField(spec).unitResponses(source, receivers, frequencies);
      for (let i = 0; i < fresh.re.length; i++) {
        const size = 1 + Math.hypot(fresh.re[i], fresh.im[i]);
        expect(Math.hypot(again.re[i] - fresh.re[i], again.im[i] - fresh.im[i]) / size).toBeLessThanOrEqual(1e-8);
      }
    }
  });

  it('frequencies may come in any order and one at a time', () => {
    const source = Float64Array.of(0.2, 0.2, 0.2);
    const whole = createBoxField(spec).unitResponses(source, seats, frequencies);
    const backwards = createBoxField(spec);
    for (let f = frequencies.length - 1; f >= 0; f -= 3) {
      const one = backwards.unitResponses(source, seats, Float64Array.of(frequencies[f]));
      for (let r = 0; r < 5; r++) {
        const i = r * frequencies.length + f;
        expect(Math.hypot(one.re[r] - whole.re[i], one.im[r] - whole.im[i])).toBeLessThanOrEqual(
          1e-8 * (1 + Math.hypot(whole.re[i], whole.im[i])),
        );
      }
    }
  });
});
