import { describe, expect, it } from 'vitest';
import type { Cut } from '../../../../src/analysis/slice/wish.ts';
import type { Point2 } from '../../../../src/math/polyline.ts';
import { pointOnSlice, sliceGeometry, slicePoint } from '../../../../src/scene/overlays/slice-geometry.ts';

const corners: Point2[] = [
  [0, 0],
  [4, 0],
  [4, 1],
  [2, 1],
  [2, 3],
  [0, 3],
];

describe('the geometry of a slice', () => {
  it.each([
    ['y', [0, 1, 0]],
    ['z', [0, 0, 1]],
    ['x', [1, 0, 0]],
  ] as const)('across %s covers the outline once and looks along %j', (normal, faces) => {
    const cut: Cut = { normal, atM: 1.5 };
    for (const outline of [corners, [...corners].reverse()]) {
      const geometry = sliceGeometry(cut, [outline]);
      const at = geometry.getAttribute('position');
      const index = geometry.getIndex();
      if (!index) throw new Error('no faces');
      let area = 0;
      for (let i = 0; i < index.count; i += 3) {
        const [a, b, c] = [0, 1, 2].map((k) => {
          const n = index.getX(i + k);
          return [at.getX(n), at.getY(n), at.getZ(n)] as const;
        });
        const [p, q] = [b, c].map((to) => [to[0] - a[0], to[1] - a[1], to[2] - a[2]] as const);
        const cross = [p[1] * q[2] - p[2] * q[1], p[2] * q[0] - p[0] * q[2], p[0] * q[1] - p[1] * q[0]];
        const along = cross.reduce((sum, part, k) => sum + part * faces[k], 0);
        expect(along).toBeGreaterThan(0);
        area += along / 2;
      }
      // An L of 4 by 1 and 2 by 2.
      expect(area).toBeCloseTo(8, 6);
    }
  });

  it('finds a point of the room on the slice and back', () => {
    for (const normal of ['x', 'y', 'z'] as const) {
      const cut: Cut = { normal, atM: 1.5 };
      expect(pointOnSlice(cut, slicePoint(cut, [0.3, 0.7]))).toEqual([0.3, 0.7]);
    }
  });
});
