import { dot, scale, subtract, type Vec3 } from '../../math/vec3.ts';
import { type FlatTarget, frontOf } from './flat-target.ts';

/**
 * A triangle mesh that may hide something. `positions` holds x, y, z of each vertex in world metres, `indices` three
 * vertices a triangle in any turning sense; the bounds hold every vertex.
 */
export interface Occluder {
  readonly id: string;
  readonly positions: Float32Array | Float64Array;
  readonly indices: Uint32Array;
  readonly boundsMin: Vec3;
  readonly boundsMax: Vec3;
}

/** An occluder with its bounds found from its vertices. Throws on an empty mesh: it has no bounds. */
export const occluderOf = (id: string, positions: Float32Array | Float64Array, indices: Uint32Array): Occluder => {
  if (positions.length < 3) throw new Error(`Occluder "${id}" has no vertices.`);
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < positions.length; i += 1) {
    const axis = i % 3;
    if (positions[i] < low[axis]) low[axis] = positions[i];
    if (positions[i] > high[axis]) high[axis] = positions[i];
  }
  return { id, positions, indices, boundsMin: low, boundsMax: high };
};

/**
 * The pyramid from an eye to a flat target. A point's place in it is (across, upward, depth): metres along the target's
 * right and up from the eye, and metres from the eye towards the target's plane. Only depths from `nearM` to `farM` can
 * hide anything; farM stops a hair short of the plane, so that a surface lying in it (a cabinet's own front) hides nothing.
 */
export interface SightPyramid {
  readonly eye: Vec3;
  readonly right: Vec3;
  readonly up: Vec3;
  readonly inward: Vec3;
  /** Eye's place along right and up from the target's centre, and its distance from the plane. */
  readonly eyeAcrossM: number;
  readonly eyeUpwardM: number;
  readonly depthM: number;
  readonly nearM: number;
  readonly farM: number;
  /** Inward normals of the four sides, x y z each: a point p is inside where normal . (p - eye) > 0. */
  readonly sides: Float64Array;
}

const nearShare = 1e-6;
const planeShare = 1e-5;
const planeM = 1e-5;

/** The pyramid from `eye` to `target`, or null where the eye sees no front: behind the target or edge on to it. */
export const sightPyramid = (eye: Vec3, target: FlatTarget): SightPyramid | null => {
  const front = frontOf(target);
  const fromCentre = subtract(eye, target.centreM);
  const depthM = dot(fromCentre, front);
  if (!(depthM > 2 * planeM)) return null;
  const inward = scale(front, -1);
  const eyeAcrossM = dot(fromCentre, target.right);
  const eyeUpwardM = dot(fromCentre, target.up);
  const sides = new Float64Array(12);
  const side = (at: number, axis: Vec3, sign: number, edgeM: number): void => {
    // Inside where sign * (along * depthM - depth * edgeM) > 0: the plane through the eye and that edge.
    for (let i = 0; i < 3; i += 1) sides[at + i] = sign * (axis[i] * depthM - inward[i] * edgeM);
  };
  side(0, target.right, 1, -target.widthM / 2 - eyeAcrossM);
  side(3, target.right, -1, target.widthM / 2 - eyeAcrossM);
  side(6, target.up, 1, -target.heightM / 2 - eyeUpwardM);
  side(9, target.up, -1, target.heightM / 2 - eyeUpwardM);
  return {
    eye,
    right: target.right,
    up: target.up,
    inward,
    eyeAcrossM,
    eyeUpwardM,
    depthM,
    nearM: depthM * nearShare,
    farM: depthM - Math.max(depthM * planeShare, planeM),
    sides,
  };
};

/** The greatest value of normal . (p - eye) over a box. */
const reach = (eye: Vec3, nx: number, ny: number, nz: number, low: Vec3, high: Vec3): number =>
  nx * ((nx > 0 ? high[0] : low[0]) - eye[0]) +
  ny * ((ny > 0 ? high[1] : low[1]) - eye[1]) +
  nz * ((nz > 0 ? high[2] : low[2]) - eye[2]);

/** False only where a box certainly lies outside the pyramid, wholly behind the eye or wholly beyond the target's plane. */
export const mayHide = (pyramid: SightPyramid, low: Vec3, high: Vec3): boolean => {
  const { eye, inward, sides } = pyramid;
  if (reach(eye, inward[0], inward[1], inward[2], low, high) <= pyramid.nearM) return false;
  if (-reach(eye, -inward[0], -inward[1], -inward[2], low, high) >= pyramid.farM) return false;
  for (let i = 0; i < 12; i += 3) {
    if (reach(eye, sides[i], sides[i + 1], sides[i + 2], low, high) <= 0) return false;
  }
  return true;
};
