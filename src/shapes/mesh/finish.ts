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

/** The faces round each vertex: those of vertex v are `faces[first[v]]` to before `faces[first[v + 1]]`, as offsets. */
const facesAround = (indices: ArrayLike<number>, vertices: number): { first: Uint32Array; faces: Uint32Array } => {
  const first = new Uint32Array(vertices + 1);
  for (let i = 0; i < indices.length; i += 1) first[indices[i] + 1] += 1;
  for (let v = 0; v < vertices; v += 1) first[v + 1] += first[v];
  const next = first.slice();
  const faces = new Uint32Array(indices.length);
  for (let i = 0; i < indices.length; i += 1) {
    faces[next[indices[i]]] = i - (i % 3);
    next[indices[i]] += 1;
  }
  return { first, faces };
};

/** Corners whose normals agree to this fraction, and which are papered in the same plane, are one vertex. */
const SAME_NORMAL = 4096;

const sameNormal = (a: number, b: number): boolean => Math.round(a * SAME_NORMAL) === Math.round(b * SAME_NORMAL);

/**
 * Gives triangles their normals and their texture places. A corner's normal is the sum, weighted by area, of those faces
 * round its vertex that turn from its own face by at most `creaseDeg`, so bevels are soft, flats stay flat and true edges
 * stay sharp. Texture places are metres in the plane the face lies nearest to: (x, z), (z, y) or (x, y). Derived.
 */
export const finished = (raw: RawMesh, creaseDeg = 62): MeshGeometry => {
  const mesh = withoutSlivers(raw);
  const corners = mesh.indices.length;
  const vectors = faceVectors(mesh);
  const sizes = new Float64Array(corners);
  for (let i = 0; i < corners; i += 3) sizes[i] = Math.hypot(vectors[i], vectors[i + 1], vectors[i + 2]);
  const vertices = mesh.positions.length / 3;
  const around = facesAround(mesh.indices, vertices);
  const least = Math.cos(radiansOf(creaseDeg));
  const positions = new Float32Array(3 * corners);
  // In double precision until all are made, so that two corners are compared as they were worked out.
  const normals = new Float64Array(3 * corners);
  const uvs = new Float32Array(2 * corners);
  const indices = new Uint32Array(corners);
  /** What each vertex has become: the last one made of it, and before each made one the one made before. */
  const lastMade = new Int32Array(vertices).fill(-1);
  const madeBefore = new Int32Array(corners);
  const axes = new Uint8Array(corners);
  let count = 0;
  for (let corner = 0; corner < corners; corner += 1) {
    const vertex = mesh.indices[corner];
    const own = corner - (corner % 3);
    const ox = vectors[own];
    const oy = vectors[own + 1];
    const oz = vectors[own + 2];
    const limit = least * sizes[own];
    let nx = 0;
    let ny = 0;
    let nz = 0;
    for (let k = around.first[vertex]; k < around.first[vertex + 1]; k += 1) {
      const face = around.faces[k];
      const fx = vectors[face];
      const fy = vectors[face + 1];
      const fz = vectors[face + 2];
      if (fx * ox + fy * oy + fz * oz < limit * sizes[face]) continue;
      nx += fx;
      ny += fy;
      nz += fz;
    }
    const size = Math.hypot(nx, ny, nz);
    nx /= size;
    ny /= size;
    nz /= size;
    const axis = axisOf(ox, oy, oz);
    let index = lastMade[vertex];
    while (index >= 0) {
      const n = 3 * index;
      const same = sameNormal(normals[n], nx) && sameNormal(normals[n + 1], ny) && sameNormal(normals[n + 2], nz);
      if (same && axes[index] === axis) break;
      index = madeBefore[index];
    }
    if (index < 0) {
      index = count;
      count += 1;
      madeBefore[index] = lastMade[vertex];
      lastMade[vertex] = index;
      axes[index] = axis;
      const x = mesh.positions[3 * vertex];
      const y = mesh.positions[3 * vertex + 1];
      const z = mesh.positions[3 * vertex + 2];
      positions[3 * index] = x;
      positions[3 * index + 1] = y;
      positions[3 * index + 2] = z;
      normals[3 * index] = nx;
      normals[3 * index + 1] = ny;
      normals[3 * index + 2] = nz;
      uvs[2 * index] = axis === 0 ? z : x;
      uvs[2 * index + 1] = axis === 1 ? z : y;
    }
    indices[corner] = index;
  }
  return {
    positions: positions.slice(0, 3 * count),
    normals: Float32Array.from(normals.subarray(0, 3 * count)),
    uvs: uvs.slice(0, 2 * count),
    indices,
  };
};
