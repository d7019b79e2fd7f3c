import { add, cross, mix, normalise, scale, subtract, type Vec3 } from '../../math/vec3.ts';
import type { MeshGeometry } from '../solid.ts';
import { blended, drawnTo, ellipsoid, type Field, nearest, normalOf, reachTo, taper } from './figure-field.ts';
import { type FigureMeasures, FOOT_HEEL_M, FOOT_TOE_M, type Joints, jointsOf } from './joints.ts';
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
  const trapezius = trunk(0.07 * girth, 0.487 * tall, BACK_PLANE_M - 0.1 * girth);
  return blended(
    0.07,
    round(0.1, 0.182, 0.1, 0.12),
    round(0.22, 0.16, 0.16, 0.108),
    round(0.35, 0.178, 0.145, 0.118),
    ...both(trapezius, shoulder, 0.04 * girth, 0.056 * girth),
    taper(neckFoot, neckTop, 0.062 * girth, 0.054 * girth),
  );
};

/** Within this depth under the whole body's surface a limb's skin is drawn out to it. */
const FILLET_M = 0.03;
/** Skin nearer the whole body's surface than this takes its normal from it. */
const ON_SURFACE_M = 0.004;

interface Cover {
  /** The limb alone, which the skin is first thrown out to. */
  readonly limb: Field;
  /** The whole body, which it is then drawn to. */
  readonly whole: Field;
  readonly around: number;
  /** Flattens a point against what the body rests on. */
  readonly settle: (p: Vec3) => Vec3;
}

/** Skins a limb: rings square to its axis, a point at each end. */
const skin = (out: Skin, stations: readonly Station[], { limb, whole, around, settle }: Cover): void => {
  const put = (thrown: Vec3, outward: Vec3): number => {
    const raw = drawnTo(whole, thrown, FILLET_M);
    const near = Math.abs(whole(raw[0], raw[1], raw[2])) < ON_SURFACE_M;
    out.normals.push(...(near ? normalOf(whole, raw) : outward));
    return out.positions.push(...settle(raw)) / 3 - 1;
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
  const arm = blended(
    0.02,
    taper(j.shoulder, j.elbow, 0.052 * g, 0.043 * g),
    taper(j.elbow, j.wrist, 0.045 * g, 0.03 * g),
    taper(j.wrist, mix(j.wrist, j.fingers, 0.5), 0.028 * g, 0.036 * g),
    taper(mix(j.wrist, j.fingers, 0.5), j.fingers, 0.036 * g, 0.023 * g),
  );
  const leg = blended(
    0.04,
    taper(j.hip, j.knee, 0.086 * g, 0.061 * g),
    taper(j.knee, mix(j.knee, j.ankle, 0.35), 0.056 * g, 0.056 * g),
    taper(mix(j.knee, j.ankle, 0.35), j.ankle, 0.056 * g, 0.038 * g),
    taper(j.heel, j.toe, FOOT_HEEL_M, FOOT_TOE_M),
  );
  const right = nearest(blended(0.05, trunkShape, leg), blended(0.045, trunkShape, arm));
  const mirror =
    (field: Field): Field =>
    (x, y, z) =>
      field(-x, y, z);
  const whole: Field = (x, y, z) => right(Math.abs(x), y, z);

  // A sole is flat: the lowest of the foot's round is pressed on the floor.
  const onFloor = ([x, y, z]: Vec3): Vec3 => [x, y < 0.014 ? 0 : y, z];
  const spine = BACK_PLANE_M - 0.095 * g;
  const rise = [0, 0.012, 0.06, 0.15, 0.25, 0.34, 0.4, 0.44, 0.47, 0.488, 0.502];
  const trunkStations: Station[] = rise.map((up) => ({ at: trunk(0, up * tall, spine), limitM: 0.32 }));
  trunkStations.push(...between(j.neckFoot, j.neckTop, 0.1, [0.5, 1]));
  skin(out, trunkStations, { limb: trunkShape, whole, around: 18, settle: (p) => onPan(onBack(p)) });

  const armStations = [
    ...between(j.shoulder, j.elbow, 0.08 * g, [-0.17, -0.16, 0, 0.28, 0.6, 0.88, 1]),
    ...between(j.elbow, j.wrist, 0.055 * g, [0.2, 0.55, 0.9]),
    ...between(j.wrist, j.fingers, 0.046 * g, [0.3, 0.65, 1, 1.22]),
  ];
  const legStations = [
    ...between(j.hip, j.knee, 0.115 * g, [0, 0.12, 0.35, 0.62, 0.86, 1]),
    ...between(j.knee, j.ankle, 0.078 * g, [0.13, 0.4, 0.72, 0.96]),
  ];
  const footStations = between(j.heel, j.toe, 0.07, [-0.13, -0.12, 0.06, 0.3, 0.55, 0.8, 1]);
  for (const left of [false, true]) {
    const cover = (limb: Field, around: number, settle: (p: Vec3) => Vec3): Cover => ({
      limb: left ? mirror(limb) : limb,
      whole,
      around,
      settle,
    });
    const along = (stations: Station[]) => (left ? mirroredStations(stations) : stations);
    skin(out, along(armStations), cover(arm, 8, onBack));
    skin(out, along(legStations), cover(leg, 10, onPan));
    skin(out, along(footStations), cover(leg, 8, onFloor));
  }
  const positions = new Float32Array(out.positions);
  return {
    positions,
    normals: new Float32Array(out.normals),
    uvs: new Float32Array((positions.length / 3) * 2),
    indices: new Uint32Array(out.indices),
  };
};
