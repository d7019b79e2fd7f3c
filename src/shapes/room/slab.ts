import type { Vec3 } from '../../math/vec3.ts';
import { addQuad, addTriangle, addVertex, emptyMesh, type RawMesh } from '../mesh/raw.ts';

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

interface Grid {
  readonly us: readonly number[];
  readonly vs: readonly number[];
  /** Whether a cell is slab: not hole, not beyond the rim. */
  readonly solid: (i: number, j: number) => boolean;
}

const gridOf = (
  extent: Cut,
  wantedU: readonly number[],
  wantedV: readonly number[],
  stepM: number,
  holes: readonly Cut[],
): Grid => {
  const us = linesOf(extent.u0, extent.u1, wantedU, stepM);
  const vs = linesOf(extent.v0, extent.v1, wantedV, stepM);
  const solid = (i: number, j: number): boolean => {
    if (i < 0 || j < 0 || i >= us.length - 1 || j >= vs.length - 1) return false;
    const u = (us[i] + us[i + 1]) / 2;
    const v = (vs[j] + vs[j + 1]) / 2;
    return !holes.some((h) => u > h.u0 && u < h.u1 && v > h.v0 && v < h.v1);
  };
  return { us, vs, solid };
};

/** Lines that all but coincide are drawn as one, so a line is looked for by place and not by its very number. */
const nearest = (lines: readonly number[], at: number): number =>
  lines.reduce((best, line, k) => (Math.abs(line - at) < Math.abs(lines[best] - at) ? k : best), 0);

const forSolid = ({ us, vs, solid }: Grid, visit: (i: number, j: number) => void): void => {
  for (let j = 0; j + 1 < vs.length; j += 1) for (let i = 0; i + 1 < us.length; i += 1) if (solid(i, j)) visit(i, j);
};

/**
 * A slab of even thickness behind a gridded face, with rectangular holes right through it; closed, reveals included.
 * `lines` are further places where the face must have grid lines; its back has none but those of the holes.
 */
export const slab = (
  frame: SlabFrame,
  extent: Cut,
  thicknessM: number,
  holes: readonly Cut[],
  lines: { readonly u: readonly number[]; readonly v: readonly number[]; readonly stepM: number },
): RawMesh => {
  const wantedU = holes.flatMap((h) => [h.u0, h.u1]);
  const wantedV = holes.flatMap((h) => [h.v0, h.v1]);
  const fine = gridOf(extent, [...wantedU, ...lines.u], [...wantedV, ...lines.v], lines.stepM, holes);
  // Nobody lights the outside: it is cut no finer than its holes ask for.
  const coarse = gridOf(extent, wantedU, wantedV, Number.POSITIVE_INFINITY, holes);
  const mesh = emptyMesh();
  const pointsOf = ({ us, vs }: Grid, behindM: number) => {
    const known = new Map<number, number>();
    return (i: number, j: number): number => {
      const key = j * us.length + i;
      const found = known.get(key);
      if (found !== undefined) return found;
      const at = (k: number) => frame.origin[k] + frame.u[k] * us[i] + frame.v[k] * vs[j] - frame.n[k] * behindM;
      const made = addVertex(mesh, at(0), at(1), at(2));
      known.set(key, made);
      return made;
    };
  };
  const front = pointsOf(fine, 0);
  const back = pointsOf(coarse, thicknessM);
  forSolid(fine, (i, j) => addQuad(mesh, front(i, j), front(i + 1, j), front(i + 1, j + 1), front(i, j + 1)));
  const fineU = coarse.us.map((u) => nearest(fine.us, u));
  const fineV = coarse.vs.map((v) => nearest(fine.vs, v));
  /** The rim or a reveal from one coarse point to the next, the slab on its left: a fan of the fine points between. */
  const side = (i0: number, j0: number, i1: number, j1: number): void => {
    const [from, to] = [back(i0, j0), back(i1, j1)];
    const [du, dv] = [Math.sign(i1 - i0), Math.sign(j1 - j0)];
    let [u, v] = [fineU[i0], fineV[j0]];
    addTriangle(mesh, front(u, v), from, to);
    while (u !== fineU[i1] || v !== fineV[j1]) {
      addTriangle(mesh, front(u, v), to, front(u + du, v + dv));
      u += du;
      v += dv;
    }
  };
  forSolid(coarse, (i, j) => {
    addQuad(mesh, back(i, j + 1), back(i + 1, j + 1), back(i + 1, j), back(i, j));
    if (!coarse.solid(i, j - 1)) side(i, j, i + 1, j);
    if (!coarse.solid(i + 1, j)) side(i + 1, j, i + 1, j + 1);
    if (!coarse.solid(i, j + 1)) side(i + 1, j + 1, i, j + 1);
    if (!coarse.solid(i - 1, j)) side(i, j + 1, i, j);
  });
  return mesh;
};
