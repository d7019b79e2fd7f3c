import { radiansOf } from '../../math/angles.ts';
import type { MeshGeometry } from '../solid.ts';
import type { RawMesh } from './raw.ts';

/** Twice the area of each triangle along its outward normal, x y z a triangle. */
const faceVectors = ({ positions, indices }: RawMesh): Float64Array => {
  const faces = new Float64Array(indices.length);
  for (let i = 0; i < indices.length; i += 3) {
    const a = 3 * indices[i];
    const b = 3 * indices[i + 1];
    const c = 3 * indices[i + 2];
    const ux = positions[b] - positions[a];
    const uy = positions[b + 1] - positions[a + 1];
    const uz = positions[b + 2] - positions[a + 2];
    const vx = positions[c] - positions[a];
    const vy = positions[c + 1] - positions[a + 1];
    const vz = positions[c + 2] - positions[a + 2];
    faces[i] = uy * vz - uz * vy;
    faces[i + 1] = uz * vx - ux * vz;
    faces[i + 2] = ux * vy - uy * vx;
  }
  return faces;
};

/** Triangles smaller than this (twice the area, square metres) carry no direction and are left out. */
const LEAST_FACE_M2 = 1e-12;

const withoutSlivers = (mesh: RawMesh): RawMesh => {
  const faces = faceVectors(mesh);
  const indices: number[] = [];
  for (let i = 0; i < mesh.indices.length; i += 3) {
    if (Math.hypot(faces[i], faces[i + 1], faces[i + 2]) < LEAST_FACE_M2) continue;
    indices.push(mesh.indices[i], mesh.indices[i + 1], mesh.indices[i + 2]);
  }
  return { positions: mesh.positions, indices };
};

/** Which plane a triangle is papered in: the axis its normal is nearest to. */
const axisOf = (x: number, y: number, z: number): number => {
  const ax = Math.abs(x);
  const ay = Math.abs(y);
  const az = Math.abs(z);
  if (ay >= ax && ay >= az) return 1;
  return ax >= az ? 0 : 2;
};

/** Triangles around each vertex, as a list of face offsets a vertex. */
const facesAround = ({ positions, indices }: RawMesh): number[][] => {
  const around: number[][] = Array.from({ length: positions.length / 3 }, () => []);
  for (let i = 0; i < indices.length; i += 1) around[indices[i]].push(i - (i % 3));
  return around;
};

/**
 * Gives triangles their normals and their texture places. A corner's normal is the sum, weighted by area, of those faces
 * round its vertex that turn from its own face by at most `creaseDeg`, so bevels are soft, flats stay flat and true edges
 * stay sharp. Texture places are metres in the plane the face lies nearest to: (x, z), (z, y) or (x, y). Derived.
 */
export const finished = (raw: RawMesh, creaseDeg = 62): MeshGeometry => {
  const mesh = withoutSlivers(raw);
  const faces = faceVectors(mesh);
  const around = facesAround(mesh);
  const least = Math.cos(radiansOf(creaseDeg));
  const positions: number[] = [];
  const normals: number[] = [];
  const uvs: number[] = [];
  const indices = new Uint32Array(mesh.indices.length);
  const made: Map<string, number> = new Map();
  for (let corner = 0; corner < mesh.indices.length; corner += 1) {
    const vertex = mesh.indices[corner];
    const own = corner - (corner % 3);
    const ownLength = Math.hypot(faces[own], faces[own + 1], faces[own + 2]);
    let nx = 0;
    let ny = 0;
    let nz = 0;
    for (const face of around[vertex]) {
      const along = faces[face] * faces[own] + faces[face + 1] * faces[own + 1] + faces[face + 2] * faces[own + 2];
      const size = Math.hypot(faces[face], faces[face + 1], faces[face + 2]);
      if (along < least * size * ownLength) continue;
      nx += faces[face];
      ny += faces[face + 1];
      nz += faces[face + 2];
    }
    const size = Math.hypot(nx, ny, nz);
    const axis = axisOf(faces[own], faces[own + 1], faces[own + 2]);
    const key = `${vertex} ${axis} ${Math.round((nx / size) * 4096)} ${Math.round((ny / size) * 4096)} ${Math.round((nz / size) * 4096)}`;
    let index = made.get(key);
    if (index === undefined) {
      index = positions.length / 3;
      made.set(key, index);
      const x = mesh.positions[3 * vertex];
      const y = mesh.positions[3 * vertex + 1];
      const z = mesh.positions[3 * vertex + 2];
      positions.push(x, y, z);
      normals.push(nx / size, ny / size, nz / size);
      uvs.push(axis === 0 ? z : x, axis === 1 ? z : y);
    }
    indices[corner] = index;
  }
  return {
    positions: new Float32Array(positions),
    normals: new Float32Array(normals),
    uvs: new Float32Array(uvs),
    indices,
  };
};
