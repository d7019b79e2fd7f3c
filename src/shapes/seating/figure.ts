import { add, cross, normalise, scale, subtract, type Vec3 } from '../../math/vec3.ts';
import type { MeshGeometry } from '../solid.ts';
import { blended, ellipsoid, type Field, normalOf, reachTo, taper } from './figure-field.ts';
import { type FigureMeasures, type Joints, jointsOf } from './joints.ts';
import { BACK_PLANE_M } from './sitting.ts';

/** A place on a limb's axis and how far its skin may lie from it. */
interface Station {
  readonly at: Vec3;
  readonly limitM: number;
}

interface Skin {
  readonly positions: number[];
  readonly normals: number[];
  readonly indices: number[];
}

const mirroredPoint = ([x, y, z]: Vec3): Vec3 => [-x, y, z];
const both = (a: Vec3, b: Vec3, radiusA: number, radiusB: number): Field[] => [
  taper(a, b, radiusA, radiusB),
  taper(mirroredPoint(a), mirroredPoint(b), radiusA, radiusB),
];

const trunkField = (j: Joints): Field => {
  const { trunk, tall, girth, leanCos, leanSin, shoulder, neckFoot, neckTop } = j;
  const round = (up: number, rx: number, ru: number, rv: number): Field =>
    ellipsoid(trunk(0, up * tall, BACK_PLANE_M - rv * girth), [rx * girth, ru * tall, rv * girth], leanCos, leanSin);
  const trapezius = trunk(0.06 * girth, 0.52 * tall, BACK_PLANE_M - 0.1 * girth);
  return blended(
    0.07,
    round(0.1, 0.178, 0.1, 0.118),
    round(0.23, 0.15, 0.17, 0.102),
    round(0.375, 0.168, 0.16, 0.112),
    ...both(trapezius, shoulder, 0.042 * girth, 0.056 * girth),
    taper(neckFoot, neckTop, 0.058 * girth, 0.05 * girth),
  );
};

/** Skins a limb: rings square to its axis, each point thrown out to the field's surface, a point at each end. */
const skin = (out: Skin, stations: readonly Station[], field: Field, around: number, settle: (p: Vec3) => Vec3) => {
  const put = (raw: Vec3, outward: Vec3): number => {
    const p = settle(raw);
    const near = Math.abs(field(raw[0], raw[1], raw[2])) < 0.004;
    out.normals.push(...(near ? normalOf(field, raw) : outward));
    return out.positions.push(...p) / 3 - 1;
  };
  const rings: number[][] = [];
  const last = stations.length - 1;
  const tangentAt = (k: number): Vec3 =>
    normalise(subtract(stations[Math.min(last, k + 1)].at, stations[Math.max(0, k - 1)].at));
  const begin = put(stations[0].at, scale(tangentAt(0), -1));
  for (let k = 1; k <= last; k += 1) {
    const { at, limitM } = stations[k];
    const tangent = tangentAt(k);
    // With the limb running forward or down, its side is the body's side.
    const side = normalise(subtract([1, 0, 0], scale(tangent, tangent[0])));
    const other = cross(tangent, side);
    rings.push(
      Array.from({ length: around }, (_, i) => {
        const angle = (2 * Math.PI * (i + 0.5)) / around;
        const outward = add(scale(side, Math.cos(angle)), scale(other, Math.sin(angle)));
        return put(add(at, scale(outward, reachTo(field, at, outward, limitM))), outward);
      }),
    );
  }
  const tip = tangentAt(last);
  const end = put(
    add(stations[last].at, scale(tip, reachTo(field, stations[last].at, tip, stations[last].limitM))),
    tip,
  );
  for (let i = 0; i < around; i += 1) {
    const next = (i + 1) % around;
    out.indices.push(begin, rings[0][next], rings[0][i]);
    for (let k = 0; k + 1 < rings.length; k += 1) {
      const [a, b, c, d] = [rings[k][i], rings[k][next], rings[k + 1][next], rings[k + 1][i]];
      out.indices.push(a, b, c, a, c, d);
    }
    out.indices.push(end, rings[rings.length - 1][i], rings[rings.length - 1][next]);
  }
};

/** Stations from one joint to the next at the given fractions. */
const between = (a: Vec3, b: Vec3, limitM: number, fractions: readonly number[]): Station[] =>
  fractions.map((t) => ({ at: add(a, scale(subtract(b, a), t)), limitM }));

const mirroredStations = (stations: readonly Station[]): Station[] =>
  stations.map(({ at, limitM }) => ({ at: mirroredPoint(at), limitM }));

/**
 * A seated body without its head, one calm surface: each limb is skinned to the smooth union of limb and trunk, so the
 * parts run into each other without a seam. Flattened where it rests on the pan and against the back. In the chair's axes.
 */
export const bodyGeometry = (m: FigureMeasures): MeshGeometry => {
  const j = jointsOf(m);
  const { trunk, tall, girth: g } = j;
  const trunkShape = trunkField(j);
  const out: Skin = { positions: [], normals: [], indices: [] };
  const onBack = (p: Vec3): Vec3 => {
    const up = (p[1] - m.panM) * j.leanCos + p[2] * j.leanSin;
    const back = p[2] * j.leanCos - (p[1] - m.panM) * j.leanSin;
    return trunk(p[0], up, Math.min(back, BACK_PLANE_M));
  };
  const onPan = ([x, y, z]: Vec3): Vec3 => [x, z > -0.33 ? Math.max(y, m.panM) : y, z];
  const spine = BACK_PLANE_M - 0.095 * g;
  const rise = [0, 0.012, 0.05, 0.11, 0.18, 0.25, 0.32, 0.385, 0.435, 0.475, 0.505, 0.535];
  const trunkStations: Station[] = rise.map((up) => ({ at: trunk(0, up * tall, spine), limitM: 0.32 }));
  trunkStations.push(...between(j.neckFoot, j.neckTop, 0.1, [0.5, 1]));
  const settleTrunk = (p: Vec3): Vec3 => onPan(onBack(p));
  skin(out, trunkStations, trunkShape, 20, settleTrunk);

  const arm = [
    taper(j.shoulder, j.elbow, 0.056 * g, 0.043 * g),
    taper(j.elbow, j.wrist, 0.044 * g, 0.03 * g),
    taper(j.wrist, j.fingers, 0.031 * g, 0.026 * g),
  ];
  const armField = blended(0.03, trunkShape, blended(0.02, ...arm));
  const armStations = [
    ...between(j.shoulder, j.elbow, 0.068 * g, [0, 0.06, 0.3, 0.6, 0.86, 1]),
    ...between(j.elbow, j.wrist, 0.055 * g, [0.16, 0.5, 0.85]),
    ...between(j.wrist, j.fingers, 0.046 * g, [0.12, 0.5, 0.8, 1]),
  ];
  const leg = [
    taper(j.hip, j.knee, 0.086 * g, 0.06 * g),
    taper(j.knee, j.ankle, 0.058 * g, 0.037 * g),
    taper(j.heel, j.toe, 0.035, 0.028),
  ];
  const legField = blended(0.05, trunkShape, blended(0.03, ...leg));
  const legStations = [
    ...between(j.hip, j.knee, 0.105 * g, [0, 0.12, 0.35, 0.62, 0.86, 1]),
    ...between(j.knee, j.ankle, 0.075 * g, [0.13, 0.4, 0.7, 0.9]),
  ];
  const footStations = between(j.heel, j.toe, 0.07, [-0.17, -0.08, 0.08, 0.3, 0.55, 0.8, 1]);
  for (const mirror of [false, true]) {
    const on = (field: Field): Field => (mirror ? (x, y, z) => field(-x, y, z) : field);
    const along = (stations: Station[]) => (mirror ? mirroredStations(stations) : stations);
    skin(out, along(armStations), on(armField), 9, (p) => p);
    skin(out, along(legStations), on(legField), 11, onPan);
    skin(out, along(footStations), on(blended(0.03, ...leg)), 9, (p) => p);
  }
  const positions = new Float32Array(out.positions);
  return {
    positions,
    normals: new Float32Array(out.normals),
    uvs: new Float32Array((positions.length / 3) * 2),
    indices: new Uint32Array(out.indices),
  };
};
