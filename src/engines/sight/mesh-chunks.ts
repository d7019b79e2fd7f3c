import type { Occluder, SightPyramid } from './sight-pyramid.ts';

/** Corners in a chunk: 32 triangles, which in a mesh written ring by ring or face by face lie close together. */
export const CHUNK_CORNERS = 96;
/** Numbers a chunk: least x, y, z, then greatest. */
const BOUNDS = 6;

/** Runs of at most 32 successive triangles of a mesh with the box round each, six numbers a chunk. */
export interface MeshChunks {
  readonly indices: Uint32Array;
  readonly bounds: Float64Array;
}

const known = new WeakMap<Occluder['positions'], MeshChunks>();

const boxesOf = ({ positions, indices }: Occluder): Float64Array => {
  const count = Math.ceil(indices.length / CHUNK_CORNERS);
  const bounds = new Float64Array(count * BOUNDS);
  for (let chunk = 0; chunk < count; chunk += 1) {
    const at = chunk * BOUNDS;
    bounds.fill(Number.POSITIVE_INFINITY, at, at + 3);
    bounds.fill(Number.NEGATIVE_INFINITY, at + 3, at + BOUNDS);
    const to = Math.min(indices.length, (chunk + 1) * CHUNK_CORNERS);
    for (let i = chunk * CHUNK_CORNERS; i < to; i += 1) {
      const p = 3 * indices[i];
      for (let axis = 0; axis < 3; axis += 1) {
        const value = positions[p + axis];
        if (value < bounds[at + axis]) bounds[at + axis] = value;
        if (value > bounds[at + 3 + axis]) bounds[at + 3 + axis] = value;
      }
    }
  }
  return bounds;
};

/** The chunks of a mesh, kept for as long as its vertices are: neither array may change afterwards. */
export const chunksOf = (occluder: Occluder): MeshChunks => {
  const found = known.get(occluder.positions);
  if (found?.indices === occluder.indices) return found;
  const made = { indices: occluder.indices, bounds: boxesOf(occluder) };
  known.set(occluder.positions, made);
  return made;
};

/** As mayHide, for the box of one chunk: false only where no triangle in it can hide any of the target. */
export const chunkMayHide = (pyramid: SightPyramid, bounds: Float64Array, chunk: number): boolean => {
  const { eye, inward, sides } = pyramid;
  const at = chunk * BOUNDS;
  const middleX = (bounds[at] + bounds[at + 3]) / 2 - eye[0];
  const middleY = (bounds[at + 1] + bounds[at + 4]) / 2 - eye[1];
  const middleZ = (bounds[at + 2] + bounds[at + 5]) / 2 - eye[2];
  const halfX = (bounds[at + 3] - bounds[at]) / 2;
  const halfY = (bounds[at + 4] - bounds[at + 1]) / 2;
  const halfZ = (bounds[at + 5] - bounds[at + 2]) / 2;
  const depth = middleX * inward[0] + middleY * inward[1] + middleZ * inward[2];
  const deep = halfX * Math.abs(inward[0]) + halfY * Math.abs(inward[1]) + halfZ * Math.abs(inward[2]);
  if (depth + deep <= pyramid.nearM || depth - deep >= pyramid.farM) return false;
  for (let i = 0; i < 12; i += 3) {
    const x = sides[i];
    const y = sides[i + 1];
    const z = sides[i + 2];
    const inside = middleX * x + middleY * y + middleZ * z;
    if (inside + halfX * Math.abs(x) + halfY * Math.abs(y) + halfZ * Math.abs(z) <= 0) return false;
  }
  return true;
};
