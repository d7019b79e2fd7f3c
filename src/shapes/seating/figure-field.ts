import type { Vec3 } from '../../math/vec3.ts';

/** A signed distance in metres: negative inside. Close to true near the surface, which is all that is asked of it. */
export type Field = (x: number, y: number, z: number) => number;

/** Near enough to a surface: a fifth of a millimetre. */
const NEAR_M = 2e-4;

/** A limb of changing thickness between two points: the distance to the axis less the thickness beside it. */
export const taper = (a: Vec3, b: Vec3, radiusA: number, radiusB: number): Field => {
  const [ax, ay, az] = a;
  const dx = b[0] - ax;
  const dy = b[1] - ay;
  const dz = b[2] - az;
  const square = dx * dx + dy * dy + dz * dz;
  return (x, y, z) => {
    const px = x - ax;
    const py = y - ay;
    const pz = z - az;
    const t = Math.max(0, Math.min(1, (px * dx + py * dy + pz * dz) / square));
    const ox = px - t * dx;
    const oy = py - t * dy;
    const oz = pz - t * dz;
    return Math.sqrt(ox * ox + oy * oy + oz * oz) - (radiusA + (radiusB - radiusA) * t);
  };
};

/** An ellipsoid whose second and third axes are tipped back by an angle given as cosine and sine. */
export const ellipsoid = (centre: Vec3, radii: Vec3, cos: number, sin: number): Field => {
  const [cx, cy, cz] = centre;
  const [rx, ry, rz] = radii;
  return (x, y, z) => {
    const px = x - cx;
    const up = (y - cy) * cos + (z - cz) * sin;
    const back = (z - cz) * cos - (y - cy) * sin;
    const [ax, ay, az] = [px / rx, up / ry, back / rz];
    const [bx, by, bz] = [ax / rx, ay / ry, az / rz];
    const near = Math.sqrt(ax * ax + ay * ay + az * az);
    const slope = Math.sqrt(bx * bx + by * by + bz * bz);
    return slope > 0 ? (near * (near - 1)) / slope : -Math.min(rx, ry, rz);
  };
};

/** Two shapes run together with a fillet about `k` metres wide (quadratic smooth minimum). */
const blend = (a: number, b: number, k: number): number => {
  const h = Math.max(k - Math.abs(a - b), 0) / k;
  return Math.min(a, b) - (h * h * k) / 4;
};

export const blended = (k: number, ...fields: readonly Field[]): Field => {
  const [first, ...rest] = fields;
  return (x, y, z) => {
    let d = first(x, y, z);
    for (const field of rest) d = blend(d, field(x, y, z), k);
    return d;
  };
};

/** Two shapes with a sharp crease between them. */
export const nearest =
  (a: Field, b: Field): Field =>
  (x, y, z) =>
    Math.min(a(x, y, z), b(x, y, z));

/** The unit normal of a field at a point, by central differences over a millimetre. */
export const normalOf = (field: Field, [x, y, z]: Vec3): Vec3 => {
  const e = 1e-3;
  const gx = field(x + e, y, z) - field(x - e, y, z);
  const gy = field(x, y + e, z) - field(x, y - e, z);
  const gz = field(x, y, z + e) - field(x, y, z - e);
  const size = Math.sqrt(gx * gx + gy * gy + gz * gz);
  return size > 0 ? [gx / size, gy / size, gz / size] : [0, 1, 0];
};

/** The distance from an inner point along a direction to the field's surface, at most `limit`. */
export const reachTo = (field: Field, from: Vec3, along: Vec3, limit: number): number => {
  let t = 0;
  for (let step = 0; step < 24; step += 1) {
    const d = field(from[0] + along[0] * t, from[1] + along[1] * t, from[2] + along[2] * t);
    if (d > -NEAR_M) break;
    t -= d * 0.95;
    if (t >= limit) return limit;
  }
  return t;
};

/** A point close under a field's surface brought out on to it; a point deeper than `depthM` stays where it is. */
export const drawnTo = (field: Field, from: Vec3, depthM: number): Vec3 => {
  let p = from;
  for (let step = 0; step < 3; step += 1) {
    const d = field(p[0], p[1], p[2]);
    if (d < -depthM || d > depthM || Math.abs(d) < NEAR_M) return p;
    const n = normalOf(field, p);
    p = [p[0] - n[0] * d, p[1] - n[1] * d, p[2] - n[2] * d];
  }
  return p;
};
