import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createBoxField } from '../../src/engines/bass/box-field.ts';
import type { BoxSpec } from '../../src/engines/bass/room-field.ts';

// Random rooms 1.5 to 30 m, each wall with its own admittance. fast-check prints seed and counterexample of a failure.
const share = fc.double({ min: 0, max: 1, noNaN: true });
const beta = fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: -0.5, max: 0.5, noNaN: true }));
const walls = fc.array(beta, { minLength: 6, maxLength: 6 });
const length = fc.oneof(fc.double({ min: 1.5, max: 8, noNaN: true }), fc.double({ min: 8, max: 30, noNaN: true }));
const room = fc.record({ sizeM: fc.tuple(length, length, length), admittance: walls });
const place = fc.tuple(share, share, share);
const hertz = fc.double({ min: 15, max: 220, noNaN: true });
const RUNS = { numRuns: 60 };

const spec = (room: { sizeM: [number, number, number]; admittance: [number, number][] }): BoxSpec => ({
  ...room,
  soundSpeed: 343.2,
});
const at = ({ sizeM }: { sizeM: readonly number[] }, shares: readonly number[]): number[] =>
  shares.map((x, axis) => x * sizeM[axis]);

const response = (box: BoxSpec, source: number[], seat: number[], hz: number): [number, number] => {
  const h = createBoxField(box).unitResponses(Float64Array.from(source), Float64Array.from(seat), Float64Array.of(hz));
  return [h.re[0], h.im[0]];
};

const expectEqual = (a: readonly number[], b: readonly number[], relative: number): void => {
  const scale = Math.max(Math.hypot(...a), Math.hypot(...b));
  expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeLessThanOrEqual(relative * scale + 1e-9);
};

describe('random boxes', () => {
  it('answer the same when source and seat change places', () => {
    fc.assert(
      fc.property(room, place, place, hertz, (box, a, b, hz) => {
        const [source, seat] = [at(box, a), at(box, b)];
        fc.pre(Math.hypot(...source.map((x, i) => x - seat[i])) > 0.1);
        expectEqual(response(spec(box), source, seat, hz), response(spec(box), seat, source, hz), 1e-8);
      }),
      RUNS,
    );
  });

  it('answer the same in a mirror', () => {
    fc.assert(
      fc.property(room, place, place, hertz, fc.constantFrom(0, 1, 2), (box, a, b, hz, axis) => {
        fc.pre(Math.hypot(...at(box, a).map((x, i) => x - at(box, b)[i])) > 0.1);
        const mirror = (shares: readonly number[]): number[] => shares.map((x, i) => (i === axis ? 1 - x : x));
        const admittance = box.admittance.map((_, i) => box.admittance[i >> 1 === axis ? i ^ 1 : i]);
        const turned = { ...box, admittance };
        expectEqual(
          response(spec(box), at(box, a), at(box, b), hz),
          response(spec(turned), at(box, mirror(a)), at(box, mirror(b)), hz),
          1e-6,
        );
      }),
      RUNS,
    );
  });

  it('answer the same when the axes are exchanged', () => {
    fc.assert(
      fc.property(room, place, place, hertz, (box, a, b, hz) => {
        fc.pre(Math.hypot(...at(box, a).map((x, i) => x - at(box, b)[i])) > 0.1);
        const turn = <T>(list: readonly T[]): [T, T, T] => [list[2], list[0], list[1]];
        const admittance = [4, 5, 0, 1, 2, 3].map((i) => box.admittance[i]);
        const turned = { sizeM: turn(box.sizeM), admittance };
        expectEqual(
          response(spec(box), at(box, a), at(box, b), hz),
          response(spec(turned), at(turned, turn(a)), at(turned, turn(b)), hz),
          1e-6,
        );
      }),
      RUNS,
    );
  });

  it('scale: a room s times larger at f / s answers 1 / s times as loud (far from the source)', () => {
    fc.assert(
      fc.property(room, place, place, hertz, (box, a, b, hz) => {
        const small = { ...box, sizeM: box.sizeM.map((x) => Math.min(x, 15)) as [number, number, number] };
        const large = { ...small, sizeM: small.sizeM.map((x) => 2 * x) as [number, number, number] };
        // both well separated along one axis: then no term is cut by a fixed frequency in either room
        fc.pre(Math.max(...at(small, a).map((x, i) => Math.abs(x - at(small, b)[i]))) > 0.8);
        const [re, im] = response(spec(small), at(small, a), at(small, b), hz);
        const [re2, im2] = response(spec(large), at(large, a), at(large, b), hz / 2);
        expectEqual([re, im], [2 * re2, 2 * im2], 1e-6);
      }),
      RUNS,
    );
  });

  it('stay finite everywhere, at walls, in corners and on top of the source', () => {
    const edge = fc.constantFrom(0, 0.5, 1);
    const edgePlace = fc.tuple(edge, edge, edge);
    const special = fc.constantFrom<[number, number]>([0, 0], [1, 0], [0, 0.4], [0, -0.4], [0.05, 0]);
    fc.assert(
      fc.property(
        room,
        fc.array(special, { minLength: 6, maxLength: 6 }),
        edgePlace,
        edgePlace,
        hertz,
        (box, faces, a, b, hz) => {
          const odd = { ...box, admittance: faces };
          for (const [source, seat] of [
            [a, b],
            [a, a],
          ]) {
            for (const part of response(spec(odd), at(odd, source), at(odd, seat), hz))
              expect(Number.isFinite(part)).toBe(true);
          }
        },
      ),
      RUNS,
    );
  });
});
