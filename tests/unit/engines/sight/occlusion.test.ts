import { describe, expect, it } from 'vitest';
import { targetFacing, uprightTarget } from '../../../../src/engines/sight/flat-target.ts';
import { blockersOf, visibleFraction } from '../../../../src/engines/sight/occlusion.ts';
import type { Vec3 } from '../../../../src/math/vec3.ts';
import { boxMesh, sphereMesh, triangleMesh } from './meshes.ts';

const picture = uprightTarget([0, 1.2, 0], 2, 1);
const eye: Vec3 = [0, 1.2, 4];
const size = { columns: 320, rows: 160 };

/**
 * The share of the picture inside a sphere's shadow, found by another road: a ray to each of 4 million points, tested
 * against the sphere by the discriminant of the line-sphere equation. No projection, no triangles.
 */
const sphereShadow = (from: Vec3, centre: Vec3, radius: number, n = 2000): number => {
  const [cx, cy, cz] = [centre[0] - from[0], centre[1] - from[1], centre[2] - from[2]];
  const outside = cx * cx + cy * cy + cz * cz - radius * radius;
  let hidden = 0;
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j < n; j += 1) {
      const dx = -1 + (2 * (i + 0.5)) / n - from[0];
      const dy = 0.7 + (j + 0.5) / n - from[1];
      const dz = -from[2];
      const along = dx * cx + dy * cy + dz * cz;
      if (along > 0 && along * along >= outside * (dx * dx + dy * dy + dz * dz)) hidden += 1;
    }
  }
  return hidden / (n * n);
};

describe('visible fraction: exact cases', () => {
  it('is 1 with nothing in the way', () => {
    expect(visibleFraction(eye, picture, [], size)).toBe(1);
  });

  it('is 0 behind a wall that fills the view', () => {
    expect(visibleFraction(eye, picture, [boxMesh('wall', [-3, 0, 2], [3, 3, 2.1])], size)).toBe(0);
  });

  it('is a half behind a box whose edge runs through the middle', () => {
    const left = boxMesh('left', [-3, 0, 1], [0, 3, 1.5]);
    expect(visibleFraction(eye, picture, [left], size)).toBe(0.5);
  });

  it('is a half behind a box that hides the lower half of the picture', () => {
    expect(visibleFraction(eye, picture, [boxMesh('low', [-3, 0, 1], [3, 1.2, 1.5])], size)).toBe(0.5);
  });

  it('throws a box on the picture at the scale of its nearest face', () => {
    // Face at z = 2, half way: its 0.25 x 0.125 half sizes double, so 0.5 of the width and 0.5 of the height is hidden.
    const box = boxMesh('box', [-0.25, 1.075, 1.5], [0.25, 1.325, 2]);
    expect(visibleFraction(eye, picture, [box], size)).toBe(0.75);
  });

  it('does not count twice what two boxes hide together', () => {
    const left = boxMesh('left', [-3, 0, 1], [0, 3, 1.5]);
    const again = boxMesh('again', [-3, 0, 2], [0, 3, 2.5]);
    expect(visibleFraction(eye, picture, [left, again], size)).toBe(0.5);
  });

  it('hides half of the picture with a triangle cut along its diagonal', () => {
    // The picture's lower left triangle, a hair before it; the diagonal passes cell corners, one cell a row at most.
    const share = visibleFraction(
      eye,
      picture,
      [triangleMesh('t', [-1, 0.7, 0.001], [1, 0.7, 0.001], [-1, 1.7, 0.001])],
      size,
    );
    expect(Math.abs(share - 0.5)).toBeLessThanOrEqual(1 / size.columns);
  });
});

describe('visible fraction: what does not count', () => {
  it.each([
    ['behind the eye', boxMesh('b', [-3, 0, 4.2], [3, 3, 5])],
    ['behind the picture', boxMesh('b', [-3, 0, -1], [3, 3, -0.1])],
    ['in the plane of the picture', boxMesh('b', [-3, 0, -0.2], [3, 3, 0])],
    ['beside the view', boxMesh('b', [2, 0, 1], [3, 3, 3])],
  ])('an occluder %s', (_where, occluder) => {
    expect(visibleFraction(eye, picture, [occluder], size)).toBe(1);
  });

  it('counts of a wall crossing the plane only the part before it', () => {
    // A wall along x = 0.4 .. 0.5 from z = -1 to 1: its outline from the eye is set by the corner (0.4, 0) at the plane
    // and (0.5, 1), thrown to x = 0.5 * 4/3 = 2/3. Hidden from 0.4 to 2/3 of 2 m width.
    const wall = boxMesh('wall', [0.4, 0, -1], [0.5, 3, 1]);
    const hidden = (2 / 3 - 0.4) / 2;
    expect(1 - visibleFraction(eye, picture, [wall], size)).toBeCloseTo(hidden, 2);
  });

  it('cuts a floor that runs from behind the eye to beyond the picture', () => {
    // A sheet at y = 1.0, eye 0.2 above it: it meets the picture plane at its own height; lower 0.3 of 1 m is hidden.
    const sheet = boxMesh('sheet', [-9, 0.99, -3], [9, 1, 9]);
    expect(1 - visibleFraction(eye, picture, [sheet], size)).toBeCloseTo(0.3, 4);
  });

  it('looks out through the triangles of an object whose bounds hold the eye', () => {
    const shade = boxMesh('shade', [-0.3, 0.9, 3.8], [0.3, 1.5, 4.2]);
    expect(visibleFraction(eye, picture, [shade], size)).toBe(0);
    const corner = triangleMesh('corner', [-2, 0, 5], [2, 0, 5], [0, 0, 2]);
    expect(visibleFraction(eye, picture, [corner], size)).toBe(1);
  });

  it('gives 0 from behind the picture or in its plane', () => {
    expect(visibleFraction([0, 1, -1], picture, [], size)).toBe(0);
    expect(visibleFraction([3, 1, 0], picture, [], size)).toBe(0);
  });
});

describe('visible fraction: shadow of a sphere', () => {
  // Independent ray count over the same picture; tolerance: half a cell along the outline of the shadow (about 300
  // cells long) on 51 200 cells is 0.003; the 64 x 128 facets lie inside the sphere by at most 0.03 % of its radius.
  it.each<[string, Vec3, Vec3, number]>([
    ['in the middle', [0, 1.2, 4], [0, 1.2, 2], 0.12],
    ['off to the side, an ellipse', [1.5, 1.5, 3], [0.6, 1.1, 1.2], 0.15],
    ['over the lower edge', [0, 1.3, 3.5], [0.08, 1.15, 2.6], 0.1],
    ['near the eye, a long ellipse', [0.4, 1.4, 3], [0.1, 1.15, 2.5], 0.2],
  ])('%s', (_where, from, centre, radius) => {
    const hidden = 1 - visibleFraction(from, picture, [sphereMesh('s', centre, radius)], size);
    const expected = sphereShadow(from, centre, radius);
    expect(expected).toBeGreaterThan(0.01);
    expect(Math.abs(hidden - expected)).toBeLessThan(0.003);
  });

  it('agrees with the circle of a sphere straight ahead: tan of the half angle is r / sqrt(d^2 - r^2)', () => {
    const radius = 0.1;
    const shadowRadius = (4 * radius) / Math.sqrt(4 - radius * radius);
    const hidden =
      1 - visibleFraction(eye, picture, [sphereMesh('s', [0, 1.2, 2], radius)], { columns: 1280, rows: 640 });
    expect(Math.abs(hidden - (Math.PI * shadowRadius ** 2) / 2)).toBeLessThan(0.0005);
  });
});

describe('what blocks', () => {
  it('names each occluder that hides a cell, the largest share first', () => {
    const small = boxMesh('small', [0.6, 0, 1], [3, 3, 1.5]);
    const large = boxMesh('large', [-3, 0, 1], [0, 3, 1.5]);
    const clear = boxMesh('clear', [-3, 0, 4.5], [3, 3, 5]);
    const found = blockersOf(eye, picture, [small, clear, large], size);
    expect(found.map((b) => b.id)).toEqual(['large', 'small']);
    expect(found[0].share).toBe(0.5);
    // Its outline is the far edge, x = 0.6 at z = 1: thrown to 0.6 x 4 / 3 = 0.8, so 0.2 of 2 m is hidden.
    expect(found[1].share).toBeCloseTo(0.1, 10);
  });

  it('gives nothing from behind the target', () => {
    expect(blockersOf([0, 1, -1], picture, [boxMesh('b', [-1, 0, 1], [1, 2, 2])], size)).toEqual([]);
  });
});

describe('loudspeaker fronts', () => {
  it('sees a tilted front whole when nothing is in the way, and a cabinet hides not its own front', () => {
    const front = targetFacing([1, 0.5, 0.3], [-1, 0.7, 3], 0.2, 0.3);
    expect(visibleFraction([0, 1.2, 3.3], front, [], { columns: 32, rows: 32 })).toBe(1);
    const flush = targetFacing([0, 1, 0.3], [0, 0, 1], 0.2, 0.3);
    const cabinet = boxMesh('c', [-0.1, 0.85, 0], [0.1, 1.15, 0.3]);
    expect(visibleFraction([0.4, 1.2, 3.3], flush, [cabinet], { columns: 32, rows: 32 })).toBe(1);
  });

  it('faces a ceiling loudspeaker down', () => {
    const ceiling = targetFacing([0, 2.4, 2], [0, -1, 0], 0.2, 0.2);
    expect(visibleFraction([0, 1.1, 3], ceiling, [], { columns: 8, rows: 8 })).toBe(1);
    expect(visibleFraction([0, 3, 3], ceiling, [], { columns: 8, rows: 8 })).toBe(0);
  });
});

it('refuses a grid it cannot hold', () => {
  const wall = boxMesh('wall', [-3, 0, 2], [3, 3, 2.1]);
  expect(() => visibleFraction(eye, picture, [wall], { columns: 0, rows: 10 })).toThrow(/grid/);
  expect(() => visibleFraction(eye, picture, [wall], { columns: 10, rows: 2.5 })).toThrow(/grid/);
});
