import type { Vec3 } from '../../math/vec3.ts';

/**
 * A signed distance in metres, negative inside; close to true near the surface, which is all that is asked of it. Writes
 * its gradient at the point into `slope` (x, y, z): along the surface's normal, of about unit length.
 */
export type Field = (x: number, y: number, z: number, slope: Float64Array) => number;

/** Near enough to a surface: a fifth of a millimetre. */
const NEAR_M = 2e-4;

/** A limb of changing thickness between two points: the distance to the axis less the thickness beside it. */
export const taper = (a: Vec3, b: Vec3, radiusA: number, radiusB: number): Field => {
  const [ax, ay, az] = a;
  const dx = b[0] - ax;
  const dy = b[1] - ay;
  const dz = b[2] - az;
  const square = dx * dx + dy * dy + dz * dz;
  const thicker = radiusB - radiusA;
  return (x, y, z, slope) => {
    const px = x - ax;
    const py = y - ay;
    const pz = z - az;
    const along = (px * dx + py * dy + pz * dz) / square;
    const t = Math.max(0, Math.min(1, along));
    const ox = px - t * dx;
    const oy = py - t * dy;
    const oz = pz - t * dz;
    const off = Math.sqrt(ox * ox + oy * oy + oz * oz);
    const out = off > 0 ? 1 / off : 0;
    const taken = along === t ? thicker / square : 0;
    slope[0] = ox * out - taken * dx;
    slope[1] = oy * out - taken * dy;
    slope[2] = oz * out - taken * dz;
    return off - (radiusA + thicker * t);
  };
};

/** An ellipsoid whose second and third axes are tipped back by an angle given as cosine and sine. */
export const ellipsoid = (centre: Vec3, radii: Vec3, cos: number, sin: number): Field => {
  const [cx, cy, cz] = centre;
  const [wx, wy, wz] = [radii[0] ** -2, radii[1] ** -2, radii[2] ** -2];
  const deepest = -Math.min(...radii);
  return (x, y, z, slope) => {
    const px = x - cx;
    const up = (y - cy) * cos + (z - cz) * sin;
    const back = (z - cz) * cos - (y - cy) * sin;
    const [bx, by, bz] = [px * wx, up * wy, back * wz];
    const near = Math.sqrt(px * bx + up * by + back * bz);
    const steep = Math.sqrt(bx * bx + by * by + bz * bz);
    if (!(steep > 0)) {
      slope.fill(0);
      return deepest;
    }
    // d = near (near - 1) / steep, both of them functions of the place.
    const f = (2 * near - 1) / (near * steep);
    const g = (near * (near - 1)) / (steep * steep * steep);
    const upward = by * (f - g * wy);
    const backward = bz * (f - g * wz);
    slope[0] = bx * (f - g * wx);
    slope[1] = upward * cos - backward * sin;
    slope[2] = upward * sin + backward * cos;
    return (near * (near - 1)) / steep;
  };
};

/**
 * The distance to two shapes run together with a fillet about `k` metres wide (quadratic smooth minimum); `slopeA` becomes
 * the gradient of the whole.
 */
export const blend = (a: number, b: number, k: number, slopeA: Float64Array, slopeB: Float64Array): number => {
  const h = Math.max(k - Math.abs(a - b), 0) / k;
  const share = a < b ? h / 2 : 1 - h / 2;
  for (let i = 0; i < 3; i += 1) slopeA[i] += (slopeB[i] - slopeA[i]) * share;
  return Math.min(a, b) - (h * h * k) / 4;
};

export const blended = (k: number, ...fields: readonly Field[]): Field => {
  const own = new Float64Array(3);
  return (x, y, z, slope) => {
    let d = fields[0](x, y, z, slope);
    for (let i = 1; i < fields.length; i += 1) d = blend(d, fields[i](x, y, z, own), k, slope, own);
    return d;
  };
};

const steps = new Float64Array(3);

/** The distance from an inner point along a direction to the field's surface, at most `limit`. */
export const reachTo = (field: Field, from: Vec3, along: Vec3, limit: number): number => {
  let t = 0;
  for (let step = 0; step < 24; step += 1) {
    const d = field(from[0] + along[0] * t, from[1] + along[1] * t, from[2] + along[2] * t, steps);
    if (d > -NEAR_M) break;
    t -= d * 0.95;
    if (t >= limit) return limit;
  }
  return t;
};

/**
 * Brings a point close under a field's surface out on to it; a point deeper than `depthM` stays where it is. Writes place
 * and unit normal (six numbers) and returns how far from the surface the place is.
 */
export const drawnTo = (field: Field, from: Vec3, depthM: number, out: Float64Array): number => {
  let [x, y, z] = from;
  let d = field(x, y, z, steps);
  for (let step = 0; step < 3; step += 1) {
    if (Math.abs(d) > depthM || Math.abs(d) < NEAR_M) break;
    const by = d / (Math.hypot(steps[0], steps[1], steps[2]) || 1);
    x -= steps[0] * by;
    y -= steps[1] * by;
    z -= steps[2] * by;
    d = field(x, y, z, steps);
  }
  const size = Math.hypot(steps[0], steps[1], steps[2]) || 1;
  out[0] = x;
  out[1] = y;
  out[2] = z;
  out[3] = steps[0] / size;
  out[4] = steps[1] / size;
  out[5] = steps[2] / size;
  return Math.abs(d);
};
