import { describe, expect, it } from 'vitest';
import { subdivide } from '../../../../src/scene/objects/subdivide.ts';
import type { MeshGeometry } from '../../../../src/shapes/solid.ts';

const quad: MeshGeometry = {
  positions: Float32Array.of(0, 0, 0, 3, 0, 0, 3, 0, 2, 0, 0, 2),
  normals: Float32Array.of(0, 1, 0, 0, 1, 0, 0, 1, 0, 0, 1, 0),
  uvs: Float32Array.of(0, 0, 3, 0, 3, 2, 0, 2),
  indices: Uint32Array.of(0, 2, 1, 0, 3, 2),
};

const edgesOf = ({ indices, positions }: MeshGeometry) => {
  const edges = new Map<string, number>();
  let longest = 0;
  let area = 0;
  for (let t = 0; t < indices.length; t += 3) {
    const [a, b, c] = [indices[t], indices[t + 1], indices[t + 2]];
    for (const [i, j] of [
      [a, b],
      [b, c],
      [c, a],
    ]) {
      longest = Math.max(
        longest,
        Math.hypot(positions[i * 3] - positions[j * 3], positions[i * 3 + 2] - positions[j * 3 + 2]),
      );
      const key = i < j ? `${i} ${j}` : `${j} ${i}`;
      edges.set(key, (edges.get(key) ?? 0) + 1);
    }
    const at = (i: number, axis: number) => positions[i * 3 + axis];
    // Twice the signed area seen from above: a flipped triangle would take away.
    area += (at(b, 2) - at(a, 2)) * (at(c, 0) - at(a, 0)) - (at(b, 0) - at(a, 0)) * (at(c, 2) - at(a, 2));
  }
  return { edges, longest, area: area / 2 };
};

describe('subdivide', () => {
  it('leaves no long edge, keeps area, turning sense and closed seams', () => {
    const fine = subdivide(quad, 0.4);
    const { edges, longest, area } = edgesOf(fine);
    expect(longest).toBeLessThanOrEqual(0.4);
    expect(area).toBeCloseTo(6, 4);
    // Inner edges have two triangles; those with one lie on the outline: no crack, no doubled point.
    for (const [key, count] of edges) {
      if (count === 2) continue;
      const [i, j] = key.split(' ').map(Number);
      const p = fine.positions;
      const onOutline =
        (p[i * 3] === p[j * 3] && (p[i * 3] === 0 || p[i * 3] === 3)) ||
        (p[i * 3 + 2] === p[j * 3 + 2] && (p[i * 3 + 2] === 0 || p[i * 3 + 2] === 2));
      expect(count === 1 && onOutline).toBe(true);
    }
    for (let i = 0; i < fine.uvs.length / 2; i++) {
      expect(fine.uvs[i * 2]).toBeCloseTo(fine.positions[i * 3], 5);
      expect(fine.uvs[i * 2 + 1]).toBeCloseTo(fine.positions[i * 3 + 2], 5);
    }
  });

  it('gives back what is fine enough as it is', () => {
    expect(subdivide(quad, 5)).toBe(quad);
  });
});
