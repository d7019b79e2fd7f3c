import { describe, expect, it } from 'vitest';
import { MOST_FUNCTIONS } from '../../../../../src/engines/bass/patches/patch-functions.ts';
import { dividePrism, spreadExcess } from '../../../../../src/engines/bass/prism/patch-division.ts';
import { prismGeometry } from '../../../../../src/engines/bass/prism/prism-geometry.ts';
import type { Admittance, PrismSpec, WallPatch } from '../../../../../src/engines/bass/room-field.ts';

const CORNERS: [number, number][] = [
  [0, 0],
  [12, 0],
  [12, 3],
  [6, 3],
  [6, 5],
  [0, 5],
];
/** Patches of 0.1 m2 in rows of 50 on the first edge (12 m by 3 m), the later ones absorbing less. */
const patches = (count: number): WallPatch[] =>
  Array.from({ length: count }, (_, i): WallPatch => {
    const at = [0.1 + 0.22 * (i % 50), 0.1 + 0.6 * Math.floor(i / 50)];
    return { wall: 0, fromM: [at[0], at[1]], toM: [at[0] + 0.2, at[1] + 0.5], admittance: [0.9 - 0.002 * i, 0.05] };
  });
const room = (count: number): PrismSpec => ({
  axis: 1,
  lengthM: 3,
  cornersM: CORNERS,
  soundSpeed: 343.2,
  edges: CORNERS.map((): Admittance => [0.02, 0]),
  ends: [
    [0.02, 0],
    [0.05, 0],
  ],
  patches: patches(count),
});

describe('more patches on a prism than are worked out one by one', () => {
  it('as many as there may be stay as they are', () => {
    const spec = room(MOST_FUNCTIONS);
    expect(spreadExcess(spec, prismGeometry(spec))).toBe(spec);
  });

  it('of more, the strongest stay and the wall takes the mean of the others', () => {
    const spec = room(200);
    const spread = spreadExcess(spec, prismGeometry(spec));
    const { patches: kept } = dividePrism(spread, prismGeometry(spread));
    expect(kept).toHaveLength(MOST_FUNCTIONS);
    // the 40 weakest are the last: 0.1 m2 each of 36 m2, their mean admittance 0.9 - 0.002 * 179.5
    const mean = 0.02 + (40 * 0.1 * (0.9 - 0.002 * 179.5 - 0.02)) / 36;
    // rounding only
    expect(spread.edges[0][0]).toBeCloseTo(mean, 12);
    expect(spread.edges[0][1]).toBeCloseTo((40 * 0.1 * 0.05) / 36, 12);
    expect(spread.edges.slice(1)).toEqual(spec.edges.slice(1));
    for (const { delta, fromM } of kept) {
      const own = spec.patches?.find((patch) => patch.fromM[0] === fromM[0] && patch.fromM[1] === fromM[1]);
      expect(delta[0] + spread.edges[0][0]).toBeCloseTo(own?.admittance[0] ?? Number.NaN, 12);
    }
  });
});
