import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createBoxField } from '../../src/engines/bass/box-field.ts';
import { createPatchedBoxField } from '../../src/engines/bass/patches/patched-box-field.ts';
import type { BoxSpec, WallPatch } from '../../src/engines/bass/room-field.ts';

// Random boxes with up to five patches. fast-check prints seed and counterexample of a failure.
const share = fc.double({ min: 0, max: 1, noNaN: true });
const beta = fc.tuple(fc.double({ min: 0.002, max: 1, noNaN: true }), fc.double({ min: -0.3, max: 0.3, noNaN: true }));
const extremeBeta = fc.tuple(
  fc.double({ min: 0, max: 10, noNaN: true }),
  fc.double({ min: -10, max: 10, noNaN: true }),
);
const length = fc.double({ min: 1.8, max: 9, noNaN: true });
const long = fc.oneof(length, fc.double({ min: 9, max: 30, noNaN: true }));
const patchOf = (admittance: typeof beta) =>
  fc.record({ wall: fc.integer({ min: 0, max: 5 }), a: fc.tuple(share, share), b: fc.tuple(share, share), admittance });
const roomOf = (side: typeof length, admittance: typeof beta) =>
  fc.record({
    sizeM: fc.tuple(side, side, side),
    admittance: fc.array(admittance, { minLength: 6, maxLength: 6 }),
    patches: fc.array(patchOf(admittance), { minLength: 1, maxLength: 5 }),
  });
const place = fc.tuple(share, share, share);
const hertz = fc.double({ min: 15, max: 220, noNaN: true });
const RUNS = { numRuns: 40, endOnFailure: true };

interface Room {
  sizeM: [number, number, number];
  admittance: [number, number][];
  patches: { wall: number; a: [number, number]; b: [number, number]; admittance: [number, number] }[];
}

/** The room with its patches; of several on one wall the first is kept, so that none overlap. */
const specOf = ({ sizeM, admittance, patches }: Room): BoxSpec => {
  const seen = new Set<number>();
  const kept: WallPatch[] = [];
  for (const { wall, a, b, admittance: own } of patches) {
    if (seen.has(wall)) continue;
    seen.add(wall);
    const sides = [0, 1, 2].filter((axis) => axis !== wall >> 1).map((axis) => sizeM[axis]);
    kept.push({
      wall,
      fromM: [Math.min(a[0], b[0]) * sides[0], Math.min(a[1], b[1]) * sides[1]],
      toM: [Math.max(a[0], b[0]) * sides[0], Math.max(a[1], b[1]) * sides[1]],
      admittance: own,
    });
  }
  return { sizeM, soundSpeed: 343.2, admittance, patches: kept };
};

const at = ({ sizeM }: Room, shares: readonly number[], inset = 0): Float64Array =>
  Float64Array.from(shares, (x, axis) => inset + x * (sizeM[axis] - 2 * inset));

const respond = (spec: BoxSpec, source: Float64Array, seat: Float64Array, hz: number): [number, number] => {
  const h = createPatchedBoxField(spec).unitResponses(source, seat, Float64Array.of(hz));
  return [h.re[0], h.im[0]];
};

/** Free field at one metre over the distance: what differences are held against besides the responses themselves. */
const direct = (a: Float64Array, b: Float64Array): number =>
  1 / Math.max(0.1, Math.hypot(...a.map((x, i) => x - b[i])));

describe('boxes with patches', () => {
  it('source and seat exchanged: the same response', () => {
    fc.assert(
      fc.property(roomOf(length, beta), place, place, hertz, (room, p, q, hz) => {
        const [a, b] = [at(room, p, 0.2), at(room, q, 0.2)];
        const [there, back] = [respond(specOf(room), a, b, hz), respond(specOf(room), b, a, hz)];
        const scale = Math.max(Math.hypot(...there), direct(a, b));
        // each way the even box is summed to 5e-5 of its least attenuated term, or moved out of 0.1 m
        if (Math.hypot(...a.map((x, i) => x - b[i])) < 0.15) return;
        expect(Math.hypot(there[0] - back[0], there[1] - back[1])).toBeLessThan(2e-3 * scale);
      }),
      RUNS,
    );
  });

  it('patches of their wall’s own admittance change nothing, whatever walls there are', () => {
    fc.assert(
      fc.property(roomOf(long, extremeBeta), place, place, hertz, (room, p, q, hz) => {
        const spec = specOf(room);
        const same = spec.patches?.map((patch) => ({ ...patch, admittance: spec.admittance[patch.wall] }));
        const even = createBoxField(spec).unitResponses(at(room, p), at(room, q), Float64Array.of(hz));
        expect(respond({ ...spec, patches: same }, at(room, p), at(room, q), hz)).toEqual([even.re[0], even.im[0]]);
      }),
      RUNS,
    );
  });

  it('finite anywhere, for any passive walls and patches up to 30 m', () => {
    fc.assert(
      fc.property(roomOf(long, extremeBeta), place, place, hertz, (room, p, q, hz) => {
        const [re, im] = respond(specOf(room), at(room, p), at(room, q), hz);
        expect(Number.isFinite(re) && Number.isFinite(im)).toBe(true);
      }),
      RUNS,
    );
  });

  it('all lengths and the wavelength doubled: half the response', () => {
    fc.assert(
      fc.property(roomOf(fc.double({ min: 2, max: 5, noNaN: true }), beta), place, place, (room, p, q) => {
        const [a, b] = [at(room, p, 0.4), at(room, q, 0.4)];
        if (Math.hypot(...a.map((x, i) => x - b[i])) < 0.5) return;
        const spec = specOf(room);
        const twice = (numbers: readonly number[]): number[] => numbers.map((x) => 2 * x);
        const larger: BoxSpec = {
          ...spec,
          sizeM: [2 * room.sizeM[0], 2 * room.sizeM[1], 2 * room.sizeM[2]],
          patches: spec.patches?.map(({ fromM, toM, ...rest }) => ({
            ...rest,
            fromM: [2 * fromM[0], 2 * fromM[1]],
            toM: [2 * toM[0], 2 * toM[1]],
          })),
        };
        const small = respond(spec, a, b, 150);
        const large = respond(larger, Float64Array.from(twice([...a])), Float64Array.from(twice([...b])), 75);
        const scale = Math.max(Math.hypot(...small), direct(a, b));
        // two truncations, fixed in metres, of one and the same thing
        expect(Math.hypot(small[0] - 2 * large[0], small[1] - 2 * large[1])).toBeLessThan(1e-2 * scale);
      }),
      RUNS,
    );
  });

  it('each mode loses energy, or none where nothing absorbs', () => {
    fc.assert(
      fc.property(roomOf(fc.double({ min: 2, max: 5, noNaN: true }), beta), (room) => {
        for (const { decayS, dampedHz } of createPatchedBoxField(specOf(room)).modes(70)) {
          expect(decayS).toBeGreaterThan(0);
          expect(Number.isFinite(dampedHz)).toBe(true);
        }
      }),
      { numRuns: 12, endOnFailure: true },
    );
  });
});
