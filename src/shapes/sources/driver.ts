import type { RawPart } from '../geometries.ts';
import { type Hole, holeSegments } from '../mesh/baffle.ts';
import { facingFront, revolved } from '../mesh/loft.ts';
import { joined, moved, type RawMesh, shaped } from '../mesh/raw.ts';

/** How deep a cone may go behind the baffle's front. */
export const WELL_M = 0.03;

const put = (profile: readonly (readonly [number, number])[], hole: Hole, frontZ: number): RawMesh =>
  moved(shaped(revolved(profile, holeSegments(hole)), facingFront), [hole.x, hole.y, frontZ]);

/** The rubber half roll round a cone, filling its hole; its crest stays 1 mm behind the front. */
const surround = (hole: Hole, frontZ: number): RawMesh => {
  const r = hole.radiusM * 1.002;
  const roll = r * 0.075;
  return put(
    [
      [r, -WELL_M],
      [r, -0.004],
      [r - roll * 0.5, -0.001],
      [r - roll * 1.3, -0.0035],
      [r - 2 * roll, -0.008],
      [r - 2 * roll, 0.001 - WELL_M],
      [0, 0.001 - WELL_M],
    ],
    hole,
    frontZ,
  );
};

/** A paper cone: it runs back to its neck, where a domed cap closes it. */
const cone = (hole: Hole, frontZ: number): RawMesh => {
  const r = hole.radiusM * 0.855;
  const depth = Math.min(WELL_M - 0.0092, 0.004 + r * 0.3);
  const cap = r * 0.36;
  const rim = -0.0072;
  return put(
    [
      [cap, rim - depth - 0.001],
      [r, rim - 0.001],
      [r, rim],
      [r * 0.68, rim - depth * 0.45],
      [cap, rim - depth * 0.94],
      [cap * 0.6, rim - depth * 0.5],
      [0, rim - depth * 0.38],
    ],
    hole,
    frontZ,
  );
};

/** A tweeter's soft dome on its plate. */
const dome = (hole: Hole, frontZ: number): RawMesh => {
  const r = hole.radiusM * 1.002;
  return put(
    [
      [r, -WELL_M],
      [r, -0.003],
      [r * 0.62, -0.006],
      [r * 0.5, -0.0035],
      [r * 0.28, -0.0014],
      [0, -0.0008],
    ],
    hole,
    frontZ,
  );
};

/** The drivers in their holes; the smallest hole of several holds a dome. Nothing comes before the baffle's front. */
export const driverParts = (holes: readonly Hole[], frontZ: number): RawPart[] => {
  const least = Math.min(...holes.map(({ radiusM }) => radiusM));
  const domes = holes.length > 1 ? holes.filter(({ radiusM }) => radiusM === least) : [];
  const cones = holes.filter((hole) => !domes.includes(hole));
  return [
    {
      part: 'surrounds',
      material: 'rubber',
      mesh: joined(...cones.map((h) => surround(h, frontZ)), ...domes.map((h) => dome(h, frontZ))),
    },
    { part: 'cones', material: 'cone', mesh: joined(...cones.map((h) => cone(h, frontZ))) },
  ];
};
