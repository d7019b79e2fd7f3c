import type { Vec3 } from '../../math/vec3.ts';
import { addQuad, addVertex, emptyMesh, moved, type RawMesh, shaped } from './raw.ts';

export interface RoundedBoxOptions {
  /** Edge radius, metres; cut to half the least side. */
  readonly radiusM?: number;
  /** Straight pieces in each eighth of a turn of an edge; two such pieces' runs make the quarter round. */
  readonly arc?: number;
  /** Into how many pieces the flat between the roundings is cut along x, y and z. */
  readonly cuts?: Vec3;
}

/** Where grid lines lie along one axis of the cube that is pulled in to a rounded box. */
const linesAlong = (half: number, radius: number, arc: number, cuts: number): number[] => {
  const flat = half - radius;
  const lines: number[] = [];
  if (radius > 0) for (let k = arc; k > 0; k -= 1) lines.push(-flat - radius * Math.tan((Math.PI / 4) * (k / arc)));
  for (let j = 0; j <= cuts; j += 1) lines.push(-flat + (2 * flat * j) / cuts);
  if (radius > 0) for (let k = 1; k <= arc; k += 1) lines.push(flat + radius * Math.tan((Math.PI / 4) * (k / arc)));
  return lines;
};

/** A box with rounded edges about the origin, closed, its vertices shared. Size as width, height, depth. */
export const roundedBox = (size: Vec3, options: RoundedBoxOptions = {}): RawMesh => {
  const { radiusM = 0.01, arc = 1, cuts = [1, 1, 1] } = options;
  const radius = Math.max(0, Math.min(radiusM, size[0] / 2, size[1] / 2, size[2] / 2));
  const half: Vec3 = [size[0] / 2, size[1] / 2, size[2] / 2];
  const lines = half.map((h, axis) => linesAlong(h, radius, arc, cuts[axis]));
  const mesh = emptyMesh();
  const known = new Map<string, number>();
  const vertexAt = (cube: readonly number[]): number => {
    const flat = cube.map((value, axis) => Math.max(radius - half[axis], Math.min(half[axis] - radius, value)));
    const out = cube.map((value, axis) => value - flat[axis]);
    const reach = Math.hypot(out[0], out[1], out[2]);
    const point = flat.map((value, axis) => value + (reach > 0 ? (radius * out[axis]) / reach : 0));
    const key = point.map((value) => Math.round(value * 1e7)).join(' ');
    const found = known.get(key);
    if (found !== undefined) return found;
    const made = addVertex(mesh, point[0], point[1], point[2]);
    known.set(key, made);
    return made;
  };
  for (let axis = 0; axis < 3; axis += 1) {
    const across = (axis + 1) % 3;
    const along = (axis + 2) % 3;
    for (const sign of [-1, 1]) {
      const cube = [0, 0, 0];
      cube[axis] = sign * half[axis];
      const rows = lines[along].map((v) =>
        lines[across].map((u) => {
          cube[across] = u;
          cube[along] = v;
          return vertexAt(cube);
        }),
      );
      for (let j = 0; j + 1 < rows.length; j += 1) {
        for (let i = 0; i + 1 < rows[j].length; i += 1) {
          const [a, b, c, d] = [rows[j][i], rows[j][i + 1], rows[j + 1][i + 1], rows[j + 1][i]];
          if (sign > 0) addQuad(mesh, a, b, c, d);
          else addQuad(mesh, d, c, b, a);
        }
      }
    }
  }
  return mesh;
};

/** A rounded box by its least and greatest corner. */
export const boxBetween = (min: Vec3, max: Vec3, options: RoundedBoxOptions = {}): RawMesh =>
  moved(roundedBox([max[0] - min[0], max[1] - min[1], max[2] - min[2]], options), [
    (min[0] + max[0]) / 2,
    (min[1] + max[1]) / 2,
    (min[2] + max[2]) / 2,
  ]);

/**
 * A cushion: a rounded box that is fullest in its middle and thinner by the fraction `crown` towards its rim, measured
 * along `axis`. Its greatest thickness stays the box's.
 */
export const cushion = (size: Vec3, axis: 0 | 1 | 2, crown: number, options: RoundedBoxOptions = {}): RawMesh => {
  const across = (axis + 1) % 3;
  const along = (axis + 2) % 3;
  return shaped(roundedBox(size, options), (p) => {
    const u = (2 * p[across]) / size[across];
    const v = (2 * p[along]) / size[along];
    const thinner = 1 - crown * (1 - (1 - u * u) * (1 - v * v));
    const out: [number, number, number] = [p[0], p[1], p[2]];
    out[axis] *= thinner;
    return out;
  });
};
