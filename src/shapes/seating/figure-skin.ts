import { add, cross, normalise, scale, subtract, type Vec3 } from '../../math/vec3.ts';
import type { MeshGeometry } from '../solid.ts';
import { drawnTo, type Field, reachTo } from './figure-field.ts';

/** A place on a limb's axis and how far its skin may lie from it. */
export interface Station {
  readonly at: Vec3;
  readonly limitM: number;
}

/** Vertices, normals and triangles as they are gathered. */
export interface Skin {
  readonly positions: number[];
  readonly normals: number[];
  readonly indices: number[];
}

export const emptySkin = (): Skin => ({ positions: [], normals: [], indices: [] });

export interface Cover {
  /** The limb alone, which the skin is first thrown out to. */
  readonly limb: Field;
  /** The whole body, which it is then drawn to. */
  readonly whole: Field;
  readonly around: number;
  /** Flattens a point against what the body rests on. */
  readonly settle: (p: Vec3) => Vec3;
}

/** Within this depth under the whole body's surface a limb's skin is drawn out to it. */
const FILLET_M = 0.03;
/** Skin nearer the whole body's surface than this takes its normal from it. */
const ON_SURFACE_M = 0.004;

const drawn = new Float64Array(6);

/** Skins a limb: rings square to its axis, a point at each end. */
export const skinLimb = (out: Skin, stations: readonly Station[], { limb, whole, around, settle }: Cover): void => {
  const put = (thrown: Vec3, outward: Vec3): number => {
    const near = drawnTo(whole, thrown, FILLET_M, drawn) < ON_SURFACE_M;
    if (near) out.normals.push(drawn[3], drawn[4], drawn[5]);
    else out.normals.push(outward[0], outward[1], outward[2]);
    const [x, y, z] = settle([drawn[0], drawn[1], drawn[2]]);
    return out.positions.push(x, y, z) / 3 - 1;
  };
  const rings: number[][] = [];
  const last = stations.length - 1;
  const tangentAt = (k: number): Vec3 =>
    normalise(subtract(stations[Math.min(last, k + 1)].at, stations[Math.max(0, k - 1)].at));
  const reachOn = ({ at, limitM }: Station, way: Vec3): Vec3 =>
    add(at, scale(way, Math.max(0, reachTo(limb, at, way, limitM))));
  const root = scale(tangentAt(0), -1);
  const begin = put(reachOn(stations[0], root), root);
  for (let k = 1; k <= last; k += 1) {
    const tangent = tangentAt(k);
    // With the limb running forward or down, its side is the body's side.
    const side = normalise(subtract([1, 0, 0], scale(tangent, tangent[0])));
    const other = cross(tangent, side);
    rings.push(
      Array.from({ length: around }, (_, i) => {
        const angle = (2 * Math.PI * (i + 0.5)) / around;
        const outward = add(scale(side, Math.cos(angle)), scale(other, Math.sin(angle)));
        return put(reachOn(stations[k], outward), outward);
      }),
    );
  }
  const tip = tangentAt(last);
  const end = put(reachOn(stations[last], tip), tip);
  const [first, final] = [rings[0], rings[rings.length - 1]];
  for (let i = 0; i < around; i += 1) out.indices.push(begin, first[(i + 1) % around], first[i]);
  for (let k = 0; k + 1 < rings.length; k += 1) {
    for (let i = 0; i < around; i += 1) {
      const next = (i + 1) % around;
      const [a, b, c, d] = [rings[k][i], rings[k][next], rings[k + 1][next], rings[k + 1][i]];
      out.indices.push(a, b, c, a, c, d);
    }
  }
  for (let i = 0; i < around; i += 1) out.indices.push(end, final[i], final[(i + 1) % around]);
};

/** The mirror image in the plane x = 0, still counter-clockwise from outside. */
const mirrorSkin = ({ positions, normals, indices }: Skin): Skin => ({
  positions: positions.map((value, i) => (i % 3 === 0 ? -value : value)),
  normals: normals.map((value, i) => (i % 3 === 0 ? -value : value)),
  indices: indices.map((_, i) => indices[i % 3 === 0 ? i : i % 3 === 1 ? i + 1 : i - 1]),
});

const joinSkins = (skins: readonly Skin[]): Skin => {
  const all = emptySkin();
  for (const { positions, normals, indices } of skins) {
    const first = all.positions.length / 3;
    for (const value of positions) all.positions.push(value);
    for (const value of normals) all.normals.push(value);
    for (const index of indices) all.indices.push(first + index);
  }
  return all;
};

/**
 * A middle piece with a right side and that side's mirror image; with `toLeft` all of it mirrored, so that what is turned
 * one way is the exact mirror image of what is turned the other.
 */
export const twoSided = (middle: Skin, right: Skin, toLeft: boolean): MeshGeometry => {
  const whole = joinSkins([middle, right, mirrorSkin(right)]);
  const { positions, normals, indices } = toLeft ? mirrorSkin(whole) : whole;
  return {
    positions: new Float32Array(positions),
    normals: new Float32Array(normals),
    uvs: new Float32Array((positions.length / 3) * 2),
    indices: new Uint32Array(indices),
  };
};
