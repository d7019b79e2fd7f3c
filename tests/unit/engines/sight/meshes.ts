import { type Occluder, occluderOf } from '../../../../src/engines/sight/sight-pyramid.ts';
import type { Vec3 } from '../../../../src/math/vec3.ts';

/** A closed box of 12 triangles. */
export const boxMesh = (id: string, low: Vec3, high: Vec3): Occluder => {
  const positions: number[] = [];
  for (let i = 0; i < 8; i += 1) {
    positions.push(i & 1 ? high[0] : low[0], i & 2 ? high[1] : low[1], i & 4 ? high[2] : low[2]);
  }
  const faces = [
    [0, 1, 3, 2],
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 3, 7, 6],
    [0, 2, 6, 4],
    [1, 3, 7, 5],
  ];
  const indices = faces.flatMap(([a, b, c, d]) => [a, b, c, a, c, d]);
  return occluderOf(id, new Float64Array(positions), new Uint32Array(indices));
};

/** A sphere of `rings` x `sectors` quads, corners on the sphere. */
export const sphereMesh = (id: string, centre: Vec3, radius: number, rings = 64, sectors = 128): Occluder => {
  const positions: number[] = [];
  for (let r = 0; r <= rings; r += 1) {
    const polar = (Math.PI * r) / rings;
    for (let s = 0; s < sectors; s += 1) {
      const turn = (2 * Math.PI * s) / sectors;
      positions.push(
        centre[0] + radius * Math.sin(polar) * Math.cos(turn),
        centre[1] + radius * Math.cos(polar),
        centre[2] + radius * Math.sin(polar) * Math.sin(turn),
      );
    }
  }
  const indices: number[] = [];
  for (let r = 0; r < rings; r += 1) {
    for (let s = 0; s < sectors; s += 1) {
      const next = (s + 1) % sectors;
      const a = r * sectors + s;
      const b = r * sectors + next;
      indices.push(a, b, a + sectors, b, b + sectors, a + sectors);
    }
  }
  return occluderOf(id, new Float64Array(positions), new Uint32Array(indices));
};

/** One loose triangle. */
export const triangleMesh = (id: string, a: Vec3, b: Vec3, c: Vec3): Occluder =>
  occluderOf(id, new Float64Array([...a, ...b, ...c]), new Uint32Array([0, 1, 2]));
