import type { MeshGeometry } from '../../shapes/solid.ts';

/**
 * Cuts triangles until no edge is longer than `longestM`, so that light kept per vertex can vary across a wall. An edge
 * is halved or not by its length alone, so both triangles on it agree and no crack opens. Unchanged if all are short.
 */
export const subdivide = (geometry: MeshGeometry, longestM: number): MeshGeometry => {
  let current = geometry;
  for (let pass = 0; pass < 8; pass++) {
    const next = halveLongEdges(current, longestM);
    if (next === current) return current;
    current = next;
  }
  return current;
};

class Growing {
  readonly positions: number[];
  readonly normals: number[];
  readonly uvs: number[];
  private readonly middles = new Map<number, number>();
  private readonly count: number;

  constructor({ positions, normals, uvs }: MeshGeometry) {
    this.positions = Array.from(positions);
    this.normals = Array.from(normals);
    this.uvs = Array.from(uvs);
    this.count = positions.length / 3;
  }

  isLong(a: number, b: number, longest: number): boolean {
    const p = this.positions;
    const dx = p[a * 3] - p[b * 3];
    const dy = p[a * 3 + 1] - p[b * 3 + 1];
    const dz = p[a * 3 + 2] - p[b * 3 + 2];
    return dx * dx + dy * dy + dz * dz > longest * longest;
  }

  middle(a: number, b: number): number {
    const key = Math.min(a, b) * this.count + Math.max(a, b);
    const found = this.middles.get(key);
    if (found !== undefined) return found;
    const index = this.positions.length / 3;
    for (let axis = 0; axis < 3; axis++) {
      this.positions.push((this.positions[a * 3 + axis] + this.positions[b * 3 + axis]) / 2);
      this.normals.push((this.normals[a * 3 + axis] + this.normals[b * 3 + axis]) / 2);
    }
    const [nx, ny, nz] = this.normals.slice(index * 3);
    const long = Math.hypot(nx, ny, nz) || 1;
    for (let axis = 0; axis < 3; axis++) this.normals[index * 3 + axis] /= long;
    this.uvs.push((this.uvs[a * 2] + this.uvs[b * 2]) / 2, (this.uvs[a * 2 + 1] + this.uvs[b * 2 + 1]) / 2);
    this.middles.set(key, index);
    return index;
  }
}

const halveLongEdges = (geometry: MeshGeometry, longest: number): MeshGeometry => {
  const grown = new Growing(geometry);
  const indices: number[] = [];
  let changed = false;
  for (let t = 0; t < geometry.indices.length; t += 3) {
    const a = geometry.indices[t];
    const b = geometry.indices[t + 1];
    const c = geometry.indices[t + 2];
    const ab = grown.isLong(a, b, longest) ? grown.middle(a, b) : -1;
    const bc = grown.isLong(b, c, longest) ? grown.middle(b, c) : -1;
    const ca = grown.isLong(c, a, longest) ? grown.middle(c, a) : -1;
    if (ab >= 0 || bc >= 0 || ca >= 0) changed = true;
    cutTriangle(indices, a, b, c, ab, bc, ca);
  }
  if (!changed) return geometry;
  return {
    positions: Float32Array.from(grown.positions),
    normals: Float32Array.from(grown.normals),
    uvs: Float32Array.from(grown.uvs),
    indices: Uint32Array.from(indices),
  };
};

/** The triangle abc with the middles of its long edges (-1 where an edge stays whole), turned so that ab is cut first. */
const cutTriangle = (out: number[], a: number, b: number, c: number, ab: number, bc: number, ca: number): void => {
  const cuts = Number(ab >= 0) + Number(bc >= 0) + Number(ca >= 0);
  if (cuts === 0) out.push(a, b, c);
  else if (cuts === 3) out.push(a, ab, ca, ab, b, bc, ca, bc, c, ab, bc, ca);
  else if (cuts === 1) {
    if (ab >= 0) out.push(a, ab, c, ab, b, c);
    else cutTriangle(out, b, c, a, bc, ca, ab);
  } else if (ab >= 0 && bc >= 0) out.push(ab, b, bc, a, ab, bc, a, bc, c);
  else cutTriangle(out, b, c, a, bc, ca, ab);
};
