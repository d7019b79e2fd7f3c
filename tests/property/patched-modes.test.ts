import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxModes } from '../../src/engines/bass/box-modes.ts';
import { AXES, type BoxGeometry, boxGeometry, readyTerms, solveState } from '../../src/engines/bass/box-state.ts';
import { type BoxPatch, divideBox } from '../../src/engines/bass/patches/box-patches.ts';
import { patchCouplings } from '../../src/engines/bass/patches/patch-couplings.ts';
import { allModeIntegrals, wallFactors } from '../../src/engines/bass/patches/patch-integrals.ts';
import { createLayouts, MODES, type PatchLayout } from '../../src/engines/bass/patches/patch-layout.ts';
import { createPatchedBoxField } from '../../src/engines/bass/patches/patched-box-field.ts';
import type { Admittance, BoxMode, BoxSpec, WallPatch } from '../../src/engines/bass/room-field.ts';

// The free oscillations of a box with patches are the zeros of det(1 + j k W D) (coupled-system.ts), whose poles are the modes of
// the even box. How many zeros lie inside a loop follows from how often the determinant turns round along it, without
// looking for any: here in plain code, with W as the responses have it, whatever the search for modes does.

/** log of the determinant: the logarithm of its size, and its phase. */
const determinant = (
  geometry: BoxGeometry,
  patches: readonly BoxPatch[],
  layout: PatchLayout,
  kRe: number,
  kIm: number,
): [number, number] => {
  const state = solveState(geometry, kRe, kIm, null);
  for (const axis of AXES) readyTerms(geometry, state, axis, layout.counts[axis]);
  const walls = AXES.map((axis) =>
    patches.some(({ normal }) => normal === axis) ? wallFactors(geometry, state, axis, layout.counts[axis]) : null,
  );
  const integrals = allModeIntegrals(state, patches, layout);
  const w = patchCouplings({ geometry, state, patches, layout, integrals, walls });
  const { count, delta } = layout.functions;
  const rows = Array.from({ length: count }, (_, i) => {
    const row = new Float64Array(2 * count);
    for (let j = 0; j < count; j++) {
      const [re, im] = [w[2 * (i * count + j)], w[2 * (i * count + j) + 1]];
      const [dRe, dIm] = [delta[2 * j], delta[2 * j + 1]];
      const [loadRe, loadIm] = [-(kRe * dIm + kIm * dRe), kRe * dRe - kIm * dIm];
      row[2 * j] = re * loadRe - im * loadIm + (i === j ? 1 : 0);
      row[2 * j + 1] = re * loadIm + im * loadRe;
    }
    return row;
  });
  let [size, phase] = [0, 0];
  for (let c = 0; c < count; c++) {
    const weight = (i: number): number => Math.hypot(rows[i][2 * c], rows[i][2 * c + 1]);
    let pivot = c;
    for (let i = c + 1; i < count; i++) if (weight(i) > weight(pivot)) pivot = i;
    if (pivot !== c) {
      [rows[c], rows[pivot]] = [rows[pivot], rows[c]];
      phase += Math.PI;
    }
    const [pRe, pIm] = [rows[c][2 * c], rows[c][2 * c + 1]];
    const square = pRe * pRe + pIm * pIm;
    size += Math.log(square) / 2;
    phase += Math.atan2(pIm, pRe);
    for (let i = c + 1; i < count; i++) {
      const [re, im] = [rows[i][2 * c], rows[i][2 * c + 1]];
      const [fRe, fIm] = [(re * pRe + im * pIm) / square, (im * pRe - re * pIm) / square];
      for (let j = 2 * c; j < 2 * count; j += 2) {
        rows[i][j] -= fRe * rows[c][j] - fIm * rows[c][j + 1];
        rows[i][j + 1] -= fRe * rows[c][j + 1] + fIm * rows[c][j];
      }
    }
  }
  return [size, phase];
};

const C = 343.2;
const TO_HZ = C / (2 * Math.PI);
const turned = (phase: number): number => phase - 2 * Math.PI * Math.round(phase / (2 * Math.PI));
/** Where a mode lies: Re and Im of k, in Hz. */
const placeOf = ({ dampedHz, decayS }: BoxMode): [number, number] => [
  dampedHz,
  (3 * Math.LN10) / decayS / (2 * Math.PI),
];

/** How often the determinant turns along the straight lines between corners (Hz), with as many steps between as its phase asks for. */
const windingOf = (phaseAt: (hz: number, imHz: number) => number, corners: readonly [number, number][]): number => {
  const along = (a: readonly number[], pa: number, b: readonly number[], pb: number, depth: number): number => {
    const middle = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] as const;
    const pm = phaseAt(middle[0], middle[1]);
    const [first, second] = [turned(pm - pa), turned(pb - pm)];
    if (depth > 12 || (Math.abs(first) < 0.8 && Math.abs(second) < 0.8)) return first + second;
    return along(a, pa, middle, pm, depth + 1) + along(middle, pm, b, pb, depth + 1);
  };
  let total = 0;
  let before = phaseAt(...corners[0]);
  for (let i = 1; i < corners.length; i++) {
    const [a, b] = [corners[i - 1], corners[i]];
    const pieces = Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / 4);
    let from = a;
    for (let n = 1; n <= pieces; n++) {
      const to: [number, number] = [a[0] + ((b[0] - a[0]) * n) / pieces, a[1] + ((b[1] - a[1]) * n) / pieces];
      const after = phaseAt(...to);
      total += along(from, before, to, after, 0);
      before = after;
      from = to;
    }
  }
  return total / (2 * Math.PI);
};

const share = fc.double({ min: 0, max: 1, noNaN: true });
const room = fc.record({
  sizeM: fc.tuple(
    fc.double({ min: 2.4, max: 6, noNaN: true }),
    fc.double({ min: 2.1, max: 3, noNaN: true }),
    fc.double({ min: 2.4, max: 7, noNaN: true }),
  ),
  square: fc.boolean(),
  wall: fc.array(fc.double({ min: 0.002, max: 0.08, noNaN: true }), { minLength: 6, maxLength: 6 }),
  patches: fc.array(
    fc.record({
      wall: fc.integer({ min: 0, max: 5 }),
      from: fc.tuple(share, share),
      to: fc.tuple(share, share),
      admittance: fc.tuple(
        fc.oneof(fc.constant(1), fc.double({ min: 0.05, max: 0.6, noNaN: true })),
        fc.double({ min: -0.2, max: 0.3, noNaN: true }),
      ),
    }),
    { minLength: 1, maxLength: 4 },
  ),
});
type Room = typeof room extends fc.Arbitrary<infer T> ? T : never;

/**
 * One patch a wall, a third to two thirds of each side long, so that all of them matter; at most one opening, in an upright
 * wall: between two of them, or under one, the modes across have no oscillation left.
 */
const specOf = ({ sizeM: [x, y, z], square, wall, patches }: Room): BoxSpec => {
  const sizeM = [x, y, square ? x : z] as const;
  const seen = new Set<number>();
  const kept: WallPatch[] = [];
  for (const patch of patches) {
    if (seen.has(patch.wall)) continue;
    seen.add(patch.wall);
    const sides = [0, 1, 2].filter((axis) => axis !== patch.wall >> 1).map((axis) => sizeM[axis]);
    const long = sides.map((side, i) => side * (0.33 + 0.33 * patch.to[i]));
    const fromM = [patch.from[0] * (sides[0] - long[0]), patch.from[1] * (sides[1] - long[1])] as const;
    const [re, im] = patch.admittance;
    const admittance = [patch.wall >> 1 === 1 || kept.length > 0 ? 0.5 * re : re, im] as const;
    kept.push({ wall: patch.wall, admittance, fromM, toM: [fromM[0] + long[0], fromM[1] + long[1]] });
  }
  return { sizeM, soundSpeed: C, admittance: wall.map((re): Admittance => [re, 0]), patches: kept };
};

const TOP_HZ = 110;
/** Above the deepest damping there is between such walls. */
const CEILING_HZ = 45;
const FLOOR_HZ = -2;
const EVEN_TOP_HZ = 150;

describe('modes of random boxes with random patches', () => {
  it('are all there are and none twice, each a zero of the determinant of the coupled patches', () => {
    fc.assert(
      fc.property(room, (drawn) => {
        const spec = specOf(drawn);
        const { even, patches } = divideBox(spec);
        const geometry = boxGeometry(even);
        const rigid = boxModes(geometry, TOP_HZ);
        const modes = createPatchedBoxField(spec).modes(EVEN_TOP_HZ);
        const own = modes.filter(({ hz }) => hz <= TOP_HZ);
        // every rigid mode has an oscillation, its own
        expect(own.map(({ order }) => order.join())).toEqual(rigid.map(({ order }) => order.join()));
        for (const [i, mode] of own.entries()) {
          expect(mode.dampedHz).not.toBe(mode.hz);
          for (const other of own.slice(0, i))
            expect(Math.hypot(mode.dampedHz - other.dampedHz, mode.decayS - other.decayS)).toBeGreaterThan(1e-6);
        }
        const layoutFor = createLayouts(geometry, patches, MODES);
        const at = (hz: number, imHz: number, layoutHz = TOP_HZ): [number, number] =>
          determinant(geometry, patches, layoutFor(layoutHz / TO_HZ), hz / TO_HZ, imHz / TO_HZ);
        const poles = boxModes(geometry, EVEN_TOP_HZ).map(placeOf);
        const zeros = modes.map(placeOf);
        // a loop that keeps clear of both
        const clearOf = (hz: number): number => {
          const gap = (x: number): number => Math.min(...[...poles, ...zeros].map(([re]) => Math.abs(re - x)));
          return Array.from({ length: 81 }, (_, i) => hz + 0.05 * (i - 40)).reduce((a, b) => (gap(b) > gap(a) ? b : a));
        };
        const [fromHz, toHz] = [0.6 * rigid[0].hz, clearOf(TOP_HZ - 8)];
        const winding = windingOf(
          (hz, imHz) => at(hz, imHz)[1],
          [
            [fromHz, FLOOR_HZ],
            [toHz, FLOOR_HZ],
            [toHz, CEILING_HZ],
            [fromHz, CEILING_HZ],
            [fromHz, FLOOR_HZ],
          ],
        );
        const inside = (list: readonly [number, number][]): number =>
          list.filter(([re, im]) => re > fromHz && re < toHz && im < CEILING_HZ).length;
        expect(Math.abs(winding - Math.round(winding))).toBeLessThan(1e-6);
        expect(inside(zeros)).toBe(inside(poles) + Math.round(winding));
        // beside a zero of its own the determinant grows in proportion to the distance
        for (const [re, im] of zeros.filter(([hz]) => hz > fromHz && hz < toHz)) {
          const near = [...poles, ...zeros].map((place) => Math.hypot(place[0] - re, place[1] - im));
          const clear = near.filter((distance) => distance > 0).reduce((a, b) => Math.min(a, b));
          const aside = Math.min(0.02 * re, 0.25 * clear);
          // what lies nearer than the error of both cannot be told apart
          if (aside < 2e-3 * re) continue;
          const drop = at(re, im, re)[0] - at(re + aside, im, re)[0];
          expect(drop).toBeLessThan(Math.log(0.05));
        }
      }),
      { numRuns: 14, endOnFailure: true },
    );
  });
});
