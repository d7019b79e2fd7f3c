import type { Vec3 } from '../../math/vec3.ts';
import { addQuad, addVertex, emptyMesh, type RawMesh } from '../mesh/raw.ts';

/** A rectangle in a slab's plane. */
export interface Cut {
  readonly u0: number;
  readonly u1: number;
  readonly v0: number;
  readonly v1: number;
}

/** Grid lines from `from` to `to` at every wanted place and nowhere farther apart than `step`. */
const linesOf = (from: number, to: number, wanted: readonly number[], step: number): number[] => {
  const fixed = [from, ...wanted.filter((v) => v > from + 1e-6 && v < to - 1e-6), to].sort((a, b) => a - b);
  const lines: number[] = [fixed[0]];
  for (let i = 1; i < fixed.length; i += 1) {
    const gap = fixed[i] - fixed[i - 1];
    if (gap < 1e-6) continue;
    const pieces = Math.max(1, Math.ceil(gap / step - 1e-9));
    for (let k = 1; k < pieces; k += 1) lines.push(fixed[i - 1] + (gap * k) / pieces);
    lines.push(fixed[i]);
  }
  return lines;
};

export interface SlabFrame {
  readonly origin: Vec3;
  /** Unit vectors: along, up and, at right angles out of the face that is looked at, u x v = n. */
  readonly u: Vec3;
  readonly v: Vec3;
  readonly n: Vec3;
}

/**
 * A slab of even thickness behind a gridded face, with rectangular holes right through it; closed, reveals included.
 * `lines` are further places where the face must have grid lines.
 */
export const slab = (
  frame: SlabFrame,
  extent: Cut,
  thicknessM: number,
  holes: readonly Cut[],
  lines: { readonly u: readonly number[]; readonly v: readonly number[]; readonly stepM: number },
): RawMesh => {
  const us = linesOf(extent.u0, extent.u1, [...holes.flatMap((h) => [h.u0, h.u1]), ...lines.u], lines.stepM);
  const vs = linesOf(extent.v0, extent.v1, [...holes.flatMap((h) => [h.v0, h.v1]), ...lines.v], lines.stepM);
  const solid = (i: number, j: number): boolean => {
    if (i < 0 || j < 0 || i >= us.length - 1 || j >= vs.length - 1) return false;
    const u = (us[i] + us[i + 1]) / 2;
    const v = (vs[j] + vs[j + 1]) / 2;
    return !holes.some((h) => u > h.u0 && u < h.u1 && v > h.v0 && v < h.v1);
  };
  const mesh = emptyMesh();
  const known = new Map<number, number>();
  const point = (i: number, j: number, behind: 0 | 1): number => {
    const key = 2 * (j * us.length + i) + behind;
    const found = known.get(key);
    if (found !== undefined) return found;
    const at = (k: number) =>
      frame.origin[k] + frame.u[k] * us[i] + frame.v[k] * vs[j] - frame.n[k] * behind * thicknessM;
    const made = addVertex(mesh, at(0), at(1), at(2));
    known.set(key, made);
    return made;
  };
  const side = (i0: number, j0: number, i1: number, j1: number): void =>
    addQuad(mesh, point(i0, j0, 0), point(i0, j0, 1), point(i1, j1, 1), point(i1, j1, 0));
  for (let j = 0; j + 1 < vs.length; j += 1) {
    for (let i = 0; i + 1 < us.length; i += 1) {
      if (!solid(i, j)) continue;
      addQuad(mesh, point(i, j, 0), point(i + 1, j, 0), point(i + 1, j + 1, 0), point(i, j + 1, 0));
      addQuad(mesh, point(i, j + 1, 1), point(i + 1, j + 1, 1), point(i + 1, j, 1), point(i, j, 1));
      if (!solid(i, j - 1)) side(i, j, i + 1, j);
      if (!solid(i + 1, j)) side(i + 1, j, i + 1, j + 1);
      if (!solid(i, j + 1)) side(i + 1, j + 1, i, j + 1);
      if (!solid(i - 1, j)) side(i, j + 1, i, j);
    }
  }
  return mesh;
};
