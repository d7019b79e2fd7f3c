import type { Vec3 } from '../../math/vec3.ts';
import { addQuad, addTriangle, addVertex, emptyMesh, type RawMesh } from './raw.ts';

/**
 * A box by its least and greatest corner whose edges are cut off by one flat bevel, closed: 44 triangles, for boards and
 * bars that are seen from afar. Where its normals are softened (finish.ts) it reads as a small rounding.
 */
export const bevelledBox = (min: Vec3, max: Vec3, bevelM: number): RawMesh => {
  const mesh = emptyMesh();
  const middle = min.map((low, axis) => (low + max[axis]) / 2);
  const half = min.map((low, axis) => (max[axis] - low) / 2);
  const bevel = Math.min(bevelM, half[0] / 2, half[1] / 2, half[2] / 2);
  /** The corner of the face across `axis` nearest to the box's corner `signs`. */
  const made = [0, 1, 2].map((axis) =>
    [0, 1, 2, 3, 4, 5, 6, 7].map((corner) => {
      const at = [0, 1, 2].map((k) => {
        const sign = (corner >> k) & 1 ? 1 : -1;
        return middle[k] + sign * (half[k] - (k === axis ? 0 : bevel));
      });
      return addVertex(mesh, at[0], at[1], at[2]);
    }),
  );
  for (let axis = 0; axis < 3; axis += 1) {
    const a = 1 << ((axis + 1) % 3);
    const b = 1 << ((axis + 2) % 3);
    const own = made[axis];
    const top = 1 << axis;
    addQuad(mesh, own[top], own[top + a], own[top + a + b], own[top + b]);
    addQuad(mesh, own[b], own[a + b], own[a], own[0]);
    // The four bevels that run along this axis, between the faces across the other two.
    const [across, along] = [made[(axis + 1) % 3], made[(axis + 2) % 3]];
    for (const corner of [0, a, b, a + b]) {
      const turned = corner === 0 || corner === a + b;
      const ends = turned ? [corner, corner + top] : [corner + top, corner];
      addQuad(mesh, across[ends[0]], along[ends[0]], along[ends[1]], across[ends[1]]);
    }
  }
  for (let corner = 0; corner < 8; corner += 1) {
    const [x, y, z] = [made[0][corner], made[1][corner], made[2][corner]];
    const odd = ((corner & 1) + ((corner >> 1) & 1) + ((corner >> 2) & 1)) % 2 === 1;
    if (odd) addTriangle(mesh, x, y, z);
    else addTriangle(mesh, x, z, y);
  }
  return mesh;
};

/** As bevelledBox, bevelled round its front (-z) only and square behind, for what lies against a wall: 20 triangles. */
export const bevelledFront = (min: Vec3, max: Vec3, bevelM: number): RawMesh => {
  const mesh = emptyMesh();
  const bevel = Math.min(bevelM, (max[2] - min[2]) / 2, (max[0] - min[0]) / 4, (max[1] - min[1]) / 4);
  // Counter-clockwise seen from the back (+z).
  const ring = (inset: number, z: number): number[] =>
    [
      [min[0] + inset, min[1] + inset],
      [max[0] - inset, min[1] + inset],
      [max[0] - inset, max[1] - inset],
      [min[0] + inset, max[1] - inset],
    ].map(([x, y]) => addVertex(mesh, x, y, z));
  const rings = [ring(bevel, min[2]), ring(0, min[2] + bevel), ring(0, max[2])];
  addQuad(mesh, rings[0][3], rings[0][2], rings[0][1], rings[0][0]);
  addQuad(mesh, rings[2][0], rings[2][1], rings[2][2], rings[2][3]);
  for (let k = 0; k < 2; k += 1)
    for (let i = 0; i < 4; i += 1) {
      const next = (i + 1) % 4;
      addQuad(mesh, rings[k][i], rings[k][next], rings[k + 1][next], rings[k + 1][i]);
    }
  return mesh;
};
