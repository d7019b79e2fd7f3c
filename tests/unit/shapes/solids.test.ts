import { describe, expect, it } from 'vitest';
import { roomSolids, type Solid } from '../../../src/shapes/index.ts';
import { bare, byId, facesOf, full, openEdges, volumeOf } from './support.ts';

const solids = roomSolids(full());
const name = ({ kind, id, part }: Solid) => `${kind} ${id} ${part}`;
/** The picture's lit face is a sheet: the one solid with no inside. */
const closed = solids.filter(({ part, kind }) => !(kind === 'picture' && part === 'face'));

describe('every solid', () => {
  it('covers each kind of thing there is', () => {
    expect(new Set(solids.map(({ kind }) => kind))).toEqual(
      new Set([
        'shell',
        'riser',
        'seat',
        'person',
        'loudspeaker',
        'subwoofer',
        'picture',
        'projector',
        'object',
        'opening',
        'patch',
      ]),
    );
    expect(solids.length).toBeGreaterThan(150);
  });

  it('has finite numbers, arrays that fit one another and indices within them', () => {
    for (const solid of solids) {
      const { positions, normals, uvs, indices } = solid.geometry;
      expect(positions.length, name(solid)).toBeGreaterThan(0);
      expect(normals.length, name(solid)).toBe(positions.length);
      expect(uvs.length, name(solid)).toBe((positions.length / 3) * 2);
      expect(indices.length % 3, name(solid)).toBe(0);
      expect(Math.max(...indices), name(solid)).toBeLessThan(positions.length / 3);
      for (const values of [positions, normals, uvs]) expect(values.every(Number.isFinite), name(solid)).toBe(true);
    }
  });

  it('has unit normals', () => {
    for (const solid of solids) {
      const { normals } = solid.geometry;
      let worst = 0;
      for (let i = 0; i < normals.length; i += 3) {
        worst = Math.max(worst, Math.abs(Math.hypot(normals[i], normals[i + 1], normals[i + 2]) - 1));
      }
      // Single precision: a unit vector keeps its length to about 1e-7.
      expect(worst, name(solid)).toBeLessThan(1e-6);
    }
  });

  it('is closed: each edge is walked as often one way as the other', () => {
    for (const solid of closed) expect(openEdges(solid.geometry), name(solid)).toBe(0);
  });

  it('turns outwards: it holds a positive volume', () => {
    for (const solid of closed) expect(volumeOf(solid.geometry), name(solid)).toBeGreaterThan(0);
  });

  it('has normals on the outer side of its triangles', () => {
    for (const solid of solids) {
      const { normals } = solid.geometry;
      let area = 0;
      let wrong = 0;
      for (const { vector, corners } of facesOf(solid.geometry)) {
        const size = Math.hypot(...vector);
        area += size;
        const facing = corners.every(
          (k) => normals[3 * k] * vector[0] + normals[3 * k + 1] * vector[1] + normals[3 * k + 2] * vector[2] > 0,
        );
        if (!facing) wrong += size;
      }
      // A figure's skin takes its normals from the smooth body it approximates; where limbs meet, and where it is
      // flattened against pan and back, a few of its hidden triangles lie across that smooth body.
      expect(wrong / area, name(solid)).toBeLessThan(solid.kind === 'person' ? 0.04 : 1e-6);
    }
  });

  it('gives a wall its triangles unfolded: the texture runs in metres', () => {
    const [front] = byId(roomSolids(bare()), 'front');
    const { positions, uvs, indices } = front.geometry;
    for (let i = 0; i < indices.length; i += 3) {
      const [a, b] = [indices[i], indices[i + 1]];
      const step = Math.hypot(
        positions[3 * a] - positions[3 * b],
        positions[3 * a + 1] - positions[3 * b + 1],
        positions[3 * a + 2] - positions[3 * b + 2],
      );
      expect(Math.hypot(uvs[2 * a] - uvs[2 * b], uvs[2 * a + 1] - uvs[2 * b + 1])).toBeCloseTo(step, 5);
    }
  });
});

describe('geometry kept between calls', () => {
  it('is the same object for equal parts, so that a drag changes placements only', () => {
    const before = roomSolids(bare());
    const after = roomSolids(
      bare({ rows: [{ id: 'r', eyeZM: 2.7, seats: [{ id: 's', xM: 0.2 }], furniture: 'single' }] }),
    );
    expect(after.length).toBe(before.length);
    const moved = before.filter((solid, i) => {
      expect(after[i].geometry).toBe(solid.geometry);
      return JSON.stringify(after[i].placement) !== JSON.stringify(solid.placement);
    });
    expect(new Set(moved.map(({ kind }) => kind))).toEqual(new Set(['seat', 'person']));
  });

  it('is shared by equal chairs', () => {
    const chairs = solids.filter(({ kind, id, part }) => kind === 'seat' && id.startsWith('back-') && part === 'seat');
    expect(chairs.length).toBe(4);
    expect(new Set(chairs.map(({ geometry }) => geometry)).size).toBe(1);
  });
});

describe('triangle budget', () => {
  // The brief's budget for a frame on two cores; common practice, no source.
  it.each([
    ['seat', 1700],
    ['person', 1800],
    ['loudspeaker', 1600],
    ['subwoofer', 1200],
  ] as const)('a %s stays under %i', (kind, limit) => {
    const counts = new Map<string, number>();
    for (const solid of solids.filter((s) => s.kind === kind)) {
      counts.set(solid.id, (counts.get(solid.id) ?? 0) + solid.geometry.indices.length / 3);
    }
    expect(counts.size).toBeGreaterThan(0);
    for (const [id, count] of counts) expect(count, id).toBeLessThanOrEqual(limit);
  });
});
