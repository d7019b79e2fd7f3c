import { describe, expect, it } from 'vitest';
import { createBoxField } from '../../../../../src/engines/bass/box-field.ts';
import { createPatchedBoxField } from '../../../../../src/engines/bass/patches/patched-box-field.ts';
import type { Admittance, BoxSpec, SlicePlane, WallPatch } from '../../../../../src/engines/bass/room-field.ts';

const walls: Admittance[] = [
  [0.03, 0],
  [0.02, 0.01],
  [0.02, 0],
  [0.04, 0],
  [0.015, 0],
  [0.03, 0],
];
const box: BoxSpec = { sizeM: [6.1, 4.3, 2.7], soundSpeed: 343.2, admittance: walls };
const patch = (wall: number, fromM: [number, number], toM: [number, number], re: number, im = 0): WallPatch => ({
  wall,
  fromM,
  toM,
  admittance: [re, im],
});
const several = [
  patch(2, [1.6, 0.5], [3.4, 1.7], 0.35),
  patch(1, [0.5, 0], [1.4, 2], 0.06, 0.05),
  patch(5, [2, 1.2], [4.4, 3], 0.25, 0.2),
  patch(3, [4.3, 0], [5.4, 2.1], 1),
];
const sources = Float64Array.of(0.3, 0.3, 0.2, 5.6, 3.9, 0.3);
const receivers = Float64Array.of(3.4, 1.05, 1.1, 4.9, 3.1, 1.3, 2, 2.1, 1.1);
const frequencies = Float64Array.of(21, 47, 63, 88, 120, 161, 197);

interface Field {
  re: Float64Array;
  im: Float64Array;
}

/** Largest difference over the rms of the second field. */
const apart = (a: Field, b: Field): number => {
  let worst = 0;
  let square = 0;
  for (let i = 0; i < b.re.length; i++) {
    worst = Math.max(worst, Math.hypot(a.re[i] - b.re[i], a.im[i] - b.im[i]));
    square += b.re[i] ** 2 + b.im[i] ** 2;
  }
  return worst / Math.sqrt(square / b.re.length);
};

const respond = (spec: BoxSpec): Field => createPatchedBoxField(spec).unitResponses(sources, receivers, frequencies);

describe('patches that change nothing or everything', () => {
  it('no patch, and patches of their wall’s own admittance: the even box, bit for bit', () => {
    const even = createBoxField(box).unitResponses(sources, receivers, frequencies);
    const own = [patch(0, [0.5, 0.5], [2, 2], 0.03), patch(1, [0, 0], [4.3, 2.7], 0.02, 0.01)];
    expect(apart(respond(box), even)).toBe(0);
    expect(apart(respond({ ...box, patches: own }), even)).toBe(0);
  });

  it('a patch over a whole wall is that wall, bit for bit', () => {
    const lined = walls.map((value, i): Admittance => (i === 5 ? [0.4, 0.1] : value));
    const whole = { ...box, patches: [patch(5, [0, 0], [6.1, 4.3], 0.4, 0.1)] };
    expect(
      apart(
        respond(whole),
        createBoxField({ ...box, admittance: lined }).unitResponses(sources, receivers, frequencies),
      ),
    ).toBe(0);
  });

  const ceiling = [
    patch(5, [0, 0], [2.2, 4.3], 0.4, 0.1),
    patch(5, [2.2, 0], [6.1, 1.9], 0.4, 0.1),
    patch(5, [2.2, 1.9], [6.1, 4.3], 0.4, 0.1),
  ];
  const side = [patch(0, [0, 0], [4.3, 1.1], 0.2), patch(0, [0, 1.1], [4.3, 2.7], 0.2)];

  it.each([
    // between 120 and 200 Hz the two walls together ask for more functions than a room may have
    ['ceiling', ceiling, 8e-4],
    ['side wall', side, 8e-4],
    ['both, which meet', [...ceiling, ...side], 2.5e-2],
  ])('%s covered piece by piece: as if of one piece', (_, pieces, most) => {
    const lined = walls.map((value, i): Admittance => pieces.find(({ wall }) => wall === i)?.admittance ?? value);
    const exact = createBoxField({ ...box, admittance: lined }).unitResponses(sources, receivers, frequencies);
    const error = apart(respond({ ...box, patches: pieces }), exact);
    expect(error).toBeGreaterThan(0);
    expect(error).toBeLessThan(most);
  });

  it('one patch in four pieces is the one patch, to 2e-4 of the rms', () => {
    const four = [
      patch(2, [1.6, 0.5], [2.3, 1.1], 0.35),
      patch(2, [2.3, 0.5], [3.4, 1.1], 0.35),
      patch(2, [1.6, 1.1], [2.3, 1.7], 0.35),
      patch(2, [2.3, 1.1], [3.4, 1.7], 0.35),
    ];
    expect(apart(respond({ ...box, patches: four }), respond({ ...box, patches: several.slice(0, 1) }))).toBeLessThan(
      2e-4,
    );
  });

  it('patches outside their wall are cut to it, and nothing is left of those beyond it', () => {
    const wide = [patch(1, [-1, -2], [1.4, 2], 0.5), patch(3, [7, 0], [8, 1], 1)];
    expect(
      apart(respond({ ...box, patches: wide }), respond({ ...box, patches: [patch(1, [0, 0], [1.4, 2], 0.5)] })),
    ).toBe(0);
  });
});

describe('limits and symmetries', () => {
  it('towards 0 Hz all of the boundary acts at once: H = 4 pi / (j k sum of beta S - k^2 V) (derived: even pressure)', () => {
    const hz = 0.5;
    const k = (2 * Math.PI * hz) / box.soundSpeed;
    const h = createPatchedBoxField({ ...box, patches: several }).unitResponses(
      sources,
      receivers,
      Float64Array.of(hz),
    );
    const [x, y, z] = box.sizeM;
    const areas = [y * z, y * z, x * z, x * z, x * y, x * y];
    let re = 0;
    let im = 0;
    for (const [i, [a, b]] of walls.entries()) {
      re += a * areas[i];
      im += b * areas[i];
    }
    for (const { wall, fromM, toM, admittance } of several) {
      const area = (toM[0] - fromM[0]) * (toM[1] - fromM[1]);
      re += (admittance[0] - walls[wall][0]) * area;
      im += (admittance[1] - walls[wall][1]) * area;
    }
    // 4 pi / (j k (re + j im) - k^2 V)
    const [dRe, dIm] = [-k * im - k * k * x * y * z, k * re];
    const square = dRe * dRe + dIm * dIm;
    for (let i = 0; i < h.re.length; i++) {
      const error = Math.hypot(h.re[i] - (4 * Math.PI * dRe) / square, h.im[i] + (4 * Math.PI * dIm) / square);
      // 4 pi / |d| = 400 against which the direct sound of 1 / r stands aside
      expect(error * Math.sqrt(square)).toBeLessThan(4 * Math.PI * 0.01);
    }
  });

  it('the ends exchanged, the response is the same', () => {
    const field = createPatchedBoxField({ ...box, patches: several });
    const there = field.unitResponses(sources, receivers, frequencies);
    const back = field.unitResponses(receivers, sources, frequencies);
    const turned = { re: new Float64Array(there.re.length), im: new Float64Array(there.re.length) };
    const count = frequencies.length;
    for (let s = 0; s < 2; s++)
      for (let r = 0; r < 3; r++)
        for (let f = 0; f < count; f++) {
          turned.re[(s * 3 + r) * count + f] = back.re[(r * 2 + s) * count + f];
          turned.im[(s * 3 + r) * count + f] = back.im[(r * 2 + s) * count + f];
        }
    // the even box sums each way to 5e-5
    expect(apart(turned, there)).toBeLessThan(2e-4);
  });

  it('mirrored with its patches, the room answers the same', () => {
    const [x] = box.sizeM;
    const mirrored: BoxSpec = {
      ...box,
      admittance: [walls[1], walls[0], ...walls.slice(2)],
      patches: several.map(({ wall, fromM, toM, admittance }) =>
        wall < 2
          ? { wall: 1 - wall, fromM, toM, admittance }
          : { wall, fromM: [x - toM[0], fromM[1]], toM: [x - fromM[0], toM[1]], admittance },
      ),
    };
    const flip = (points: Float64Array): Float64Array => points.map((value, i) => (i % 3 === 0 ? x - value : value));
    const there = createPatchedBoxField(mirrored).unitResponses(flip(sources), flip(receivers), frequencies);
    expect(apart(there, respond({ ...box, patches: several }))).toBeLessThan(1e-8);
  });

  it('with growth (impulse responses) the order of asking changes nothing, and a moved source is a source there', () => {
    const spec = { ...box, patches: several };
    const field = createPatchedBoxField(spec);
    field.unitResponses(Float64Array.of(1, 1, 1), receivers, frequencies, 9);
    field.unitResponses(receivers, sources, frequencies, 9);
    const kept = field.unitResponses(sources, receivers, frequencies, 9);
    const again = field.unitResponses(sources, receivers, frequencies, 9);
    const fresh = createPatchedBoxField(spec).unitResponses(sources, receivers, frequencies, 9);
    expect(apart(again, kept)).toBeLessThan(1e-12);
    expect(apart(kept, fresh)).toBeLessThan(1e-7);
    expect(apart(fresh, respond(spec))).toBeGreaterThan(1e-3);
  });
});

describe('slices', () => {
  const evenly = (lengthM: number, count: number): Float64Array =>
    Float64Array.from({ length: count }, (_, i) => (lengthM * i) / (count - 1));
  const weights = Float64Array.of(1, 0, 0.5, -0.5);

  it.each([
    [2, 1.2],
    [2, 2.6],
    [1, 1],
    [1, 4.2],
    [0, 2.5],
    [0, 6.1],
  ] as const)('across axis %i at %f m: what the responses give at the grid’s points', (normal, atM) => {
    const [uAxis, vAxis] = (
      [
        [1, 2],
        [0, 2],
        [0, 1],
      ] as const
    )[normal];
    const plane: SlicePlane = {
      normal,
      atM,
      uAxis,
      vAxis,
      uM: evenly(box.sizeM[uAxis], 9),
      vM: evenly(box.sizeM[vAxis], 7),
    };
    const field = createPatchedBoxField({ ...box, patches: several });
    const points = new Float64Array(3 * 63);
    for (let j = 0; j < 7; j++)
      for (let i = 0; i < 9; i++) {
        const at = 3 * (9 * j + i);
        points[at + normal] = atM;
        points[at + uAxis] = plane.uM[i];
        points[at + vAxis] = plane.vM[j];
      }
    for (const hz of [40, 150]) {
      const slice = field.slice(plane, sources, weights, hz);
      const h = field.unitResponses(sources, points, Float64Array.of(hz));
      const sum = { re: new Float64Array(63), im: new Float64Array(63) };
      for (let p = 0; p < 63; p++) {
        sum.re[p] = h.re[p] + 0.5 * h.re[63 + p] + 0.5 * h.im[63 + p];
        sum.im[p] = h.im[p] + 0.5 * h.im[63 + p] - 0.5 * h.re[63 + p];
      }
      // a slice leaves out what responses add near a patch's wall (near-loads.ts): 4 % of the rms in an opening, nothing from 0.7 m on
      expect(apart(slice, sum)).toBeLessThan(5e-2);
      const clear = [...sum.re.keys()].filter((p) => {
        const [x, y, z] = points.subarray(3 * p, 3 * p + 3);
        return x < 5.4 && y > 0.7 && y < 3.6 && z < 2;
      });
      const only = ({ re, im }: Field): Field => ({
        re: Float64Array.from(clear, (p) => re[p]),
        im: Float64Array.from(clear, (p) => im[p]),
      });
      if (atM < 2.6) expect(clear.length).toBeGreaterThan(10);
      if (clear.length > 0) expect(apart(only(slice), only(sum))).toBeLessThan(2e-4);
    }
  });

  it('of a dragged source from a warm room are those of a fresh one', () => {
    const plane: SlicePlane = { normal: 2, atM: 1.2, uAxis: 1, vAxis: 0, uM: evenly(4.3, 8), vM: evenly(6.1, 9) };
    const warm = createPatchedBoxField({ ...box, patches: several });
    warm.slice(plane, sources, weights, 70);
    warm.slice(plane, sources, weights, 90);
    const moved = sources.map((value) => value + 0.1);
    const fresh = createPatchedBoxField({ ...box, patches: several }).slice(plane, moved, weights, 70);
    expect(apart(warm.slice(plane, moved, weights, 70), fresh)).toBeLessThan(1e-7);
  });
});

describe('many patches', () => {
  const strewn = (count: number): WallPatch[] =>
    Array.from({ length: count }, (_, i) => {
      const cell = Math.floor(i / 6);
      const [u, v] = [0.1 + 0.24 * (cell % 10), 0.1 + 0.6 * Math.floor(cell / 10)];
      return patch(i % 6, [u, v], [u + 0.2, v + 0.5], 0.1 + 0.004 * i);
    });

  it.each([40, 200])('%i of them: finite, and a sealed room with a known loss at 0.5 Hz', (count) => {
    const patches = strewn(count);
    const rigid: BoxSpec = { ...box, admittance: walls.map((): Admittance => [0, 0]), patches };
    const h = createPatchedBoxField(rigid).unitResponses(sources, receivers, Float64Array.of(0.5, 120));
    const loss = patches.reduce((sum, { admittance }) => sum + admittance[0] * 0.1, 0);
    const k = Math.PI / 343.2;
    const expected = (4 * Math.PI) / Math.hypot(k * loss, k * k * 6.1 * 4.3 * 2.7);
    for (let i = 0; i < h.re.length; i += 2) {
      expect(Math.abs(Math.hypot(h.re[i], h.im[i]) / expected - 1)).toBeLessThan(0.02);
      expect(Number.isFinite(h.re[i + 1] + h.im[i + 1])).toBe(true);
    }
  });
});
