import type { Vec3 } from '../../math/vec3.ts';
import { addQuad, addTriangle, addVertex, emptyMesh, type RawMesh } from './raw.ts';

/**
 * A skin over rings of equally many points, closed by a point at each end. Rings turn counter-clockwise seen from the
 * last ring's side. `first` and `last` are the end points.
 */
export const loft = (first: Vec3, rings: readonly (readonly Vec3[])[], last: Vec3): RawMesh => {
  const mesh = emptyMesh();
  const start = addVertex(mesh, ...first);
  const numbered = rings.map((ring) => ring.map((p) => addVertex(mesh, ...p)));
  const end = addVertex(mesh, ...last);
  const count = rings[0].length;
  for (let i = 0; i < count; i += 1) {
    const next = (i + 1) % count;
    addTriangle(mesh, start, numbered[0][next], numbered[0][i]);
    for (let k = 0; k + 1 < numbered.length; k += 1) {
      addQuad(mesh, numbered[k][i], numbered[k][next], numbered[k + 1][next], numbered[k + 1][i]);
    }
    addTriangle(mesh, end, numbered[numbered.length - 1][i], numbered[numbered.length - 1][next]);
  }
  return mesh;
};

/**
 * A body of revolution about the y axis from (radius, height) pairs, bottom first. A pair of radius 0 at an end closes
 * it in a point; other ends are closed by a flat disc.
 */
export const revolved = (profile: readonly (readonly [number, number])[], segments: number): RawMesh => {
  const inner = profile.filter(([radius]) => radius > 0);
  const rings = inner.map(([radius, y]) =>
    Array.from({ length: segments }, (_, i): Vec3 => {
      // Seen from above (+y) counter-clockwise is from z to x.
      const angle = (2 * Math.PI * i) / segments;
      return [radius * Math.sin(angle), y, radius * Math.cos(angle)];
    }),
  );
  return loft([0, profile[0][1], 0], rings, [0, profile[profile.length - 1][1], 0]);
};

/** Lays a body of revolution on its back: its y axis comes to point to the front (-z). */
export const facingFront = (p: Vec3): Vec3 => [p[0], p[2], -p[1]];
