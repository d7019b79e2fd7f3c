import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createPatchedBoxField } from '../../src/engines/bass/patches/patched-box-field.ts';
import { createPrismField } from '../../src/engines/bass/prism/prism-field.ts';
import type { Admittance, Axis, BoxSpec, PrismSpec, RoomMode, WallPatch } from '../../src/engines/bass/room-field.ts';

// One rectangle by both methods: as a box (exact walls, patches by a boundary integral) and as a prism along any axis (plan modes and
// functions by finite elements). They share the patches' functions and the coupled system, nothing of how the room itself is made.

/** The box as a prism along `axis`: its section's edges run round from the origin, first along the lower of the two other axes. */
const asPrism = (box: BoxSpec, axis: Axis): PrismSpec => {
  const { sizeM, admittance, soundSpeed, patches = [] } = box;
  const [u, v] = ([0, 1, 2] as const).filter((other) => other !== axis);
  const walls = [2 * v, 2 * u + 1, 2 * v + 1, 2 * u];
  const turnedTo = (patch: WallPatch): WallPatch => {
    const normal = patch.wall >> 1;
    if (normal === axis) return { ...patch, wall: 4 + (patch.wall & 1) };
    const edge = walls.indexOf(patch.wall);
    const along = normal === v ? u : v;
    const [i, j] = along < axis ? [0, 1] : [1, 0];
    const ends = [patch.fromM[i], patch.toM[i]];
    const [from, to] = edge < 2 ? ends : [sizeM[along] - ends[1], sizeM[along] - ends[0]];
    return { ...patch, wall: edge, fromM: [from, patch.fromM[j]], toM: [to, patch.toM[j]] };
  };
  return {
    axis,
    lengthM: sizeM[axis],
    cornersM: [
      [0, 0],
      [sizeM[u], 0],
      [sizeM[u], sizeM[v]],
      [0, sizeM[v]],
    ],
    soundSpeed,
    edges: walls.map((wall) => admittance[wall]),
    ends: [admittance[2 * axis], admittance[2 * axis + 1]],
    patches: patches.map(turnedTo),
  };
};

const share = fc.double({ min: 0, max: 1, noNaN: true });
const room = fc.record({
  sizeM: fc.tuple(
    fc.double({ min: 3, max: 5.5, noNaN: true }),
    fc.double({ min: 2.2, max: 2.8, noNaN: true }),
    fc.double({ min: 3, max: 6, noNaN: true }),
  ),
  walls: fc.array(fc.double({ min: 0.01, max: 0.06, noNaN: true }), { minLength: 6, maxLength: 6 }),
  axis: fc.constantFrom<Axis>(0, 1, 2),
  patches: fc.array(
    fc.record({
      wall: fc.integer({ min: 0, max: 5 }),
      at: fc.tuple(share, share),
      size: fc.tuple(share, share),
      admittance: fc.tuple(
        fc.double({ min: 0.05, max: 0.4, noNaN: true }),
        fc.double({ min: -0.1, max: 0.2, noNaN: true }),
      ),
    }),
    { minLength: 1, maxLength: 3 },
  ),
});
type Room = typeof room extends fc.Arbitrary<infer T> ? T : never;

const boxOf = ({ sizeM, walls, patches }: Room): BoxSpec => {
  const kept = patches.filter(({ wall }, i) => patches.findIndex((other) => other.wall === wall) === i);
  return {
    sizeM,
    soundSpeed: 343.2,
    admittance: walls.map((re): Admittance => [re, 0]),
    patches: kept.map(({ wall, at, size, admittance }): WallPatch => {
      const sides = [0, 1, 2].filter((axis) => axis !== wall >> 1).map((axis) => sizeM[axis]);
      const long = sides.map((side, i) => side * (0.25 + 0.35 * size[i]));
      const fromM = [at[0] * (sides[0] - long[0]), at[1] * (sides[1] - long[1])] as const;
      return { wall, admittance, fromM, toM: [fromM[0] + long[0], fromM[1] + long[1]] };
    }),
  };
};

/** Distance of two modes in the plane of k, Hz. */
const apart = (a: RoomMode, b: RoomMode): number =>
  Math.hypot(a.dampedHz - b.dampedHz, ((3 * Math.LN10) / (2 * Math.PI)) * (1 / a.decayS - 1 / b.decayS));

describe('a rectangle with absorbers and panels', () => {
  it('has the same modes to 100 Hz as a box and as a prism: within 0.03 Hz and 1 % of the decay', () => {
    fc.assert(
      fc.property(room, (drawn) => {
        const box = boxOf(drawn);
        const left: RoomMode[] = createPatchedBoxField(box).modes(112);
        const modes = createPrismField(asPrism(box, drawn.axis), 'fine').modes(100);
        expect(modes.length).toBeGreaterThan(3);
        for (const mode of modes) {
          const nearest = left.reduce((best, other) => (apart(other, mode) < apart(best, mode) ? other : best));
          left.splice(left.indexOf(nearest), 1);
          expect(Math.abs(nearest.dampedHz - mode.dampedHz)).toBeLessThan(0.03);
          expect(Math.abs(nearest.decayS / mode.decayS - 1)).toBeLessThan(0.01);
        }
      }),
      { numRuns: 10, endOnFailure: true },
    );
  });
});
