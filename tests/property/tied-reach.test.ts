import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createPatchedBoxField } from '../../src/engines/bass/patches/patched-box-field.ts';
import { boxTiedToHz } from '../../src/engines/bass/patches/tied-reach.ts';
import { prismTiedToHz } from '../../src/engines/bass/prism/tied-reach.ts';
import type { Admittance, BoxSpec, PrismSpec, WallPatch } from '../../src/engines/bass/room-field.ts';

// How far up patches are tied together is decided before any of it is worked out, by an estimate of the work.
const TOP_HZ = 205;
const MOST_PATCHES = 200;

const room = (top: { sizeM: readonly [number, number, number]; patches: number }) =>
  fc.record({
    sizeM: fc.tuple(...([0, 1, 2] as const).map((i) => fc.double({ min: 2, max: top.sizeM[i], noNaN: true }))),
    patches: fc.array(
      fc.record({
        wall: fc.integer({ min: 0, max: 5 }),
        share: fc.double({ min: 0.05, max: 0.9, noNaN: true }),
        re: fc.double({ min: 0.1, max: 1, noNaN: true }),
      }),
      { minLength: 1, maxLength: top.patches },
    ),
  });
type Room = ReturnType<typeof room> extends fc.Arbitrary<infer T> ? T : never;

/** Patches laid out on each wall in a row. */
const specOf = ({ sizeM, patches }: Room): BoxSpec => {
  const [x, y, z] = sizeM;
  const made = patches.map(({ wall, share, re }, i): WallPatch => {
    const [u, v] = [0, 1, 2].filter((axis) => axis !== wall >> 1).map((axis) => [x, y, z][axis]);
    const row = patches.filter((other) => other.wall === wall);
    const from = patches.slice(0, i).filter((other) => other.wall === wall).length;
    const per = u / row.length;
    return { wall, fromM: [per * from, 0], toM: [per * (from + share), share * v], admittance: [re, 0.1] };
  });
  return {
    sizeM: [x, y, z],
    soundSpeed: 343.2,
    admittance: Array.from({ length: 6 }, (): Admittance => [0.02, 0]),
    patches: made,
  };
};

describe('the frequency to which the decays of a box take its patches together', () => {
  it('is the whole range in rooms to 150 m3 with a few patches', () => {
    fc.assert(
      fc.property(room({ sizeM: [7.5, 3.6, 5.5], patches: 5 }), (drawn) => {
        expect(boxTiedToHz(specOf(drawn), TOP_HZ)).toBe(TOP_HZ);
      }),
    );
  });

  it('falls as the room grows and does not depend on how far up it is asked', () => {
    fc.assert(
      fc.property(room({ sizeM: [20, 8, 20], patches: MOST_PATCHES }), (drawn) => {
        const hz = boxTiedToHz(specOf(drawn), TOP_HZ);
        const [x, y, z] = drawn.sizeM;
        const larger = boxTiedToHz(specOf({ ...drawn, sizeM: [1.5 * x, 1.25 * y, 1.5 * z] }), TOP_HZ);
        expect(hz).toBeLessThanOrEqual(TOP_HZ);
        expect(larger).toBeLessThanOrEqual(hz);
        expect(boxTiedToHz(specOf(drawn), TOP_HZ / 2)).toBe(Math.min(hz, TOP_HZ / 2));
      }),
      { numRuns: 30 },
    );
  });

  it('leaves little to do in a large hall: its modes above are damped in first order', () => {
    const spec: BoxSpec = {
      ...specOf({ sizeM: [22, 8, 24], patches: [] }),
      patches: [
        { wall: 0, fromM: [0, 3], toM: [3, 5], admittance: [0.4, 0] },
        { wall: 3, fromM: [8, 5], toM: [11, 9], admittance: [0.5, 0] },
      ],
    };
    const reachHz = boxTiedToHz(spec, TOP_HZ);
    expect(reachHz).toBeGreaterThan(10);
    expect(reachHz).toBeLessThan(70);
    const modes = createPatchedBoxField(spec).modes(80);
    // a mode in first order keeps the frequency it has between rigid walls
    const isTied = modes.map(({ hz, dampedHz }) => Math.abs(dampedHz - hz) > 1e-9);
    expect(isTied.filter((tied, i) => tied !== modes[i].hz <= reachHz)).toHaveLength(0);
    for (const { decayS } of modes) expect(decayS).toBeGreaterThan(0.1);
  });
});

/** An L of three quarters of wide x long, with patches in a row on its longest walls. */
const ell = (wide: number, long: number, heightM: number, patches: number, im: number): PrismSpec => ({
  axis: 1,
  lengthM: heightM,
  cornersM: [
    [0, 0],
    [wide, 0],
    [wide, long / 2],
    [wide / 2, long / 2],
    [wide / 2, long],
    [0, long],
  ],
  soundSpeed: 343.2,
  edges: Array.from({ length: 6 }, (): Admittance => [0.02, 0]),
  ends: [
    [0.02, 0],
    [0.02, 0],
  ],
  patches: Array.from({ length: patches }, (_, i): WallPatch => {
    const [side, per] = [i % 2 === 0 ? wide : long, Math.ceil(patches / 2)];
    const fromM = (side * (i >> 1)) / per;
    return {
      wall: i % 2 === 0 ? 0 : 5,
      fromM: [fromM, 0.2],
      toM: [fromM + (0.9 * side) / per, 1.8],
      admittance: [0.4, im],
    };
  }),
});

describe('the frequency to which the decays of a prism take its patches together', () => {
  const size = fc.record({
    wide: fc.double({ min: 4, max: 8, noNaN: true }),
    long: fc.double({ min: 4, max: 7, noNaN: true }),
    heightM: fc.double({ min: 2.2, max: 2.8, noNaN: true }),
  });

  it('is the whole range in plans to 42 m2 with a few patches', () => {
    fc.assert(
      fc.property(size, fc.integer({ min: 1, max: 6 }), ({ wide, long, heightM }, patches) => {
        expect(prismTiedToHz(ell(wide, long, heightM, patches, 0.1), TOP_HZ)).toBe(TOP_HZ);
      }),
    );
  });

  it('falls as the room or its patches grow, and does not depend on how far up it is asked', () => {
    fc.assert(
      fc.property(size, fc.integer({ min: 1, max: MOST_PATCHES }), ({ wide, long, heightM }, patches) => {
        const hz = prismTiedToHz(ell(2 * wide, 2 * long, 2 * heightM, patches, 0.1), TOP_HZ);
        expect(hz).toBeLessThanOrEqual(prismTiedToHz(ell(wide, long, heightM, patches, 0.1), TOP_HZ));
        expect(prismTiedToHz(ell(wide, long, heightM, patches, 0.5), TOP_HZ)).toBeLessThanOrEqual(
          prismTiedToHz(ell(wide, long, heightM, patches, 0.1), TOP_HZ),
        );
      }),
      { numRuns: 30 },
    );
  });

  it('is nothing in a hall of 300 m2, and everything where nothing stands out', () => {
    expect(prismTiedToHz(ell(20, 20, 4, 3, 0), TOP_HZ)).toBe(0);
    expect(prismTiedToHz(ell(20, 20, 4, 0, 0), TOP_HZ)).toBe(TOP_HZ);
  });
});
