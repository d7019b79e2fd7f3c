import { radiansOf } from '../../math/angles.ts';
import type { Vec3 } from '../../math/vec3.ts';

/** Triangles before normals: x, y, z of each vertex in metres, three vertices a triangle, counter-clockwise from outside. */
export interface RawMesh {
  readonly positions: number[];
  readonly indices: number[];
}

export const emptyMesh = (): RawMesh => ({ positions: [], indices: [] });

/** Adds a vertex and returns its number. */
export const addVertex = (mesh: RawMesh, x: number, y: number, z: number): number =>
  mesh.positions.push(x, y, z) / 3 - 1;

export const addTriangle = (mesh: RawMesh, a: number, b: number, c: number): void => {
  if (a !== b && b !== c && c !== a) mesh.indices.push(a, b, c);
};

/** Four corners counter-clockwise from outside. */
export const addQuad = (mesh: RawMesh, a: number, b: number, c: number, d: number): void => {
  addTriangle(mesh, a, b, c);
  addTriangle(mesh, a, c, d);
};

/** The same triangles with every vertex moved by `shape`. */
export const shaped = (mesh: RawMesh, shape: (p: Vec3) => Vec3): RawMesh => {
  const positions: number[] = [];
  for (let i = 0; i < mesh.positions.length; i += 3) {
    const p = shape([mesh.positions[i], mesh.positions[i + 1], mesh.positions[i + 2]]);
    positions.push(p[0], p[1], p[2]);
  }
  return { positions, indices: mesh.indices };
};

export const moved = ({ positions, indices }: RawMesh, by: Vec3): RawMesh => ({
  positions: positions.map((value, i) => value + by[i % 3]),
  indices,
});

/** Tilted about a left-to-right axis through (y, z) = pivot; positive leans the top back (towards +z). */
export const leaned = (mesh: RawMesh, degrees: number, [pivotY, pivotZ]: readonly [number, number]): RawMesh => {
  const c = Math.cos(radiansOf(degrees));
  const s = Math.sin(radiansOf(degrees));
  return shaped(mesh, ([x, y, z]) => {
    const up = y - pivotY;
    const back = z - pivotZ;
    return [x, pivotY + up * c - back * s, pivotZ + up * s + back * c];
  });
};

/** Turned about the vertical through the origin; positive turns the front (-z) to the right (+x), as azimuths do. */
export const turned = (mesh: RawMesh, degrees: number): RawMesh => {
  const c = Math.cos(radiansOf(degrees));
  const s = Math.sin(radiansOf(degrees));
  return shaped(mesh, ([x, y, z]) => [x * c - z * s, y, x * s + z * c]);
};

/** The mirror image in the plane x = 0, still counter-clockwise from outside. */
export const mirrored = (mesh: RawMesh): RawMesh => {
  const { positions } = shaped(mesh, ([x, y, z]) => [-x, y, z]);
  const indices: number[] = [];
  for (let i = 0; i < mesh.indices.length; i += 3) {
    indices.push(mesh.indices[i], mesh.indices[i + 2], mesh.indices[i + 1]);
  }
  return { positions, indices };
};

/** Several meshes as one; their vertices stay apart. */
export const joined = (...meshes: readonly RawMesh[]): RawMesh => {
  const all = emptyMesh();
  for (const mesh of meshes) {
    const first = all.positions.length / 3;
    for (const value of mesh.positions) all.positions.push(value);
    for (const index of mesh.indices) all.indices.push(first + index);
  }
  return all;
};
