import { describe, expect, it } from 'vitest';
import { createBoxField } from '../../../../src/engines/bass/box-field.ts';
import type { Axis, BoxSpec, SlicePlane } from '../../../../src/engines/bass/room-field.ts';

const SPEC: BoxSpec = {
  sizeM: [4.3, 2.7, 6.1],
  soundSpeed: 343.2,
  admittance: [
    [0.05, 0.1],
    [0.2, -0.15],
    [0.03, 0.05],
    [0.05, 0],
    [0.02, 0],
    [0.3, 0.1],
  ],
};
const SOURCES = Float64Array.of(0.3, 0.2, 0.3, 2.15, 0.2, 0.3, 4, 0.2, 5.8, 2, 1, 5.9);
const WEIGHTS = Float64Array.of(1, 0, 0.5, 0.2, -1, 0.3, 0.2, 0.9);

const points = (length: number, count: number): Float64Array =>
  Float64Array.from({ length: count }, (_, i) => (length * (i + 0.5)) / count);

const planeOf = (normal: Axis, uAxis: Axis, vAxis: Axis, atM: number, spec = SPEC): SlicePlane => ({
  normal,
  atM,
  uAxis,
  vAxis,
  uM: points(spec.sizeM[uAxis], 13),
  vM: points(spec.sizeM[vAxis], 11),
});

/** The slice point by point from unit responses, whose closed axis is another one. */
const pointwise = (spec: BoxSpec, plane: SlicePlane, sources: Float64Array, weights: Float64Array, hz: number) => {
  const { normal, uAxis, vAxis, uM, vM, atM } = plane;
  const receivers = new Float64Array(3 * uM.length * vM.length);
  for (let iv = 0; iv < vM.length; iv++) {
    for (let iu = 0; iu < uM.length; iu++) {
      const o = 3 * (iv * uM.length + iu);
      receivers[o + normal] = atM;
      receivers[o + uAxis] = uM[iu];
      receivers[o + vAxis] = vM[iv];
    }
  }
  const h = createBoxField(spec).unitResponses(sources, receivers, Float64Array.of(hz));
  const re = new Float64Array(h.receivers);
  const im = new Float64Array(h.receivers);
  for (let s = 0; s < h.sources; s++) {
    for (let r = 0; r < h.receivers; r++) {
      const [a, b] = [h.re[s * h.receivers + r], h.im[s * h.receivers + r]];
      re[r] += a * weights[2 * s] - b * weights[2 * s + 1];
      im[r] += a * weights[2 * s + 1] + b * weights[2 * s];
    }
  }
  return { re, im };
};

const worstOverRms = (a: { re: Float64Array; im: Float64Array }, b: { re: Float64Array; im: Float64Array }): number => {
  let worst = 0;
  let squares = 0;
  for (let i = 0; i < a.re.length; i++) {
    worst = Math.max(worst, Math.hypot(a.re[i] - b.re[i], a.im[i] - b.im[i]));
    squares += b.re[i] ** 2 + b.im[i] ** 2;
  }
  return worst / Math.sqrt(squares / a.re.length);
};

describe('a slice is the field of all sources at its points', () => {
  it.each([
    ['floor plan at ear height, away from the sources', planeOf(1, 0, 2, 1.85)],
    ['the same, axes exchanged', planeOf(1, 2, 0, 1.85)],
    ['upright across', planeOf(2, 0, 1, 3)],
    ['upright along', planeOf(0, 2, 1, 1.2)],
  ])('%s: within 1e-3 of the rms', (_, plane) => {
    const field = createBoxField(SPEC);
    for (const hz of [25, 60, 120, 200]) {
      const slice = field.slice(plane, SOURCES, WEIGHTS, hz);
      expect(slice.re).toHaveLength(13 * 11);
      expect(worstOverRms(slice, pointwise(SPEC, plane, SOURCES, WEIGHTS, hz)), `${hz} Hz`).toBeLessThanOrEqual(1e-3);
    }
  });

  it.each([
    ['through the sources on the floor', planeOf(1, 0, 2, 0.2)],
    ['just above them', planeOf(1, 0, 2, 0.45)],
    ['on the floor', planeOf(1, 0, 2, 0)],
  ])('%s, completed by the screened rest: within 2e-3 of the rms, 2e-2 beside soft walls', (_, plane) => {
    // no grid point within 0.1 m of a source: there slice and response clamp differently
    const clear = SOURCES.map((x, i) => (i === 3 ? x + 0.16 : x));
    const light = { ...SPEC, admittance: SPEC.admittance.map(() => [0.03, 0] as const) };
    // the rest is made for rigid walls: 0.05 dB off at 0.2 m from a source with walls of beta 0.2 - 0.15j around it
    for (const [spec, tolerance] of [
      [light, 2e-3],
      [SPEC, 2e-2],
    ] as const) {
      const field = createBoxField(spec);
      for (const hz of [25, 60, 120]) {
        const slice = field.slice(plane, clear, WEIGHTS, hz);
        const error = worstOverRms(slice, pointwise(spec, plane, clear, WEIGHTS, hz));
        expect(error, `${hz} Hz`).toBeLessThanOrEqual(tolerance);
      }
    }
  });

  it('stays finite on top of a source, and no louder than at 0.1 m', () => {
    const field = createBoxField(SPEC);
    const plane: SlicePlane = { ...planeOf(1, 0, 2, 0.2), uM: Float64Array.of(0.3, 0.4), vM: Float64Array.of(0.3) };
    const { re, im } = field.slice(plane, SOURCES.slice(0, 3), Float64Array.of(1, 0), 50);
    const [on, beside] = [0, 1].map((i) => Math.hypot(re[i], im[i]));
    expect(Math.abs(on / beside - 1)).toBeLessThanOrEqual(0.3);
  });

  it('one grid line, one point, no source', () => {
    const field = createBoxField(SPEC);
    const plane: SlicePlane = {
      normal: 1,
      atM: 1.85,
      uAxis: 0,
      vAxis: 2,
      uM: Float64Array.of(1.3),
      vM: Float64Array.of(2.2),
    };
    const one = field.slice(plane, SOURCES, WEIGHTS, 70);
    expect(worstOverRms(one, pointwise(SPEC, plane, SOURCES, WEIGHTS, 70))).toBeLessThanOrEqual(1e-3);
    const silent = field.slice(plane, new Float64Array(0), new Float64Array(0), 70);
    expect(Array.from(silent.re)).toEqual([0]);
  });

  it('does not depend on what was asked before', () => {
    const used = createBoxField(SPEC);
    const frequencies = [40, 80];
    for (const plane of [planeOf(1, 0, 2, 0.2), planeOf(1, 0, 2, 1.85), planeOf(1, 0, 2, 0.2)]) {
      for (const hz of frequencies) {
        for (const shift of [0, 0.1]) {
          const sources = SOURCES.map((x, i) => (i === 0 ? x + shift : x));
          const again = used.slice(plane, sources, WEIGHTS, hz);
          const fresh = createBoxField(SPEC).slice(plane, sources, WEIGHTS, hz);
          expect(worstOverRms(again, fresh)).toBeLessThanOrEqual(1e-9);
        }
      }
    }
  });

  it('is linear in the weights', () => {
    const field = createBoxField(SPEC);
    const plane = planeOf(1, 0, 2, 1.2);
    const double = field.slice(
      plane,
      SOURCES,
      WEIGHTS.map((w) => 2 * w),
      55,
    );
    const single = field.slice(plane, SOURCES, WEIGHTS, 55);
    for (let i = 0; i < single.re.length; i++) expect(double.re[i]).toBeCloseTo(2 * single.re[i], 10);
  });
});

it('in a rigid cube with a source in the middle every even plane shows the same picture', () => {
  const cube: BoxSpec = { sizeM: [3, 3, 3], soundSpeed: 343.2, admittance: SPEC.admittance.map(() => [0, 0] as const) };
  const field = createBoxField(cube);
  const middle = Float64Array.of(1.5, 1.5, 1.5);
  const slices = [planeOf(0, 1, 2, 0.4, cube), planeOf(1, 0, 2, 0.4, cube), planeOf(2, 0, 1, 0.4, cube)].map((plane) =>
    field.slice(plane, middle, Float64Array.of(1, 0), 70),
  );
  expect(worstOverRms(slices[1], slices[0])).toBeLessThanOrEqual(1e-9);
  expect(worstOverRms(slices[2], slices[0])).toBeLessThanOrEqual(1e-9);
});
