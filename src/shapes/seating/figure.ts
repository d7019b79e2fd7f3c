import { add, mix, scale, subtract, type Vec3 } from '../../math/vec3.ts';
import type { MeshGeometry } from '../solid.ts';
import { blend, blended, ellipsoid, type Field, taper } from './figure-field.ts';
import { emptySkin, type Station, skinLimb, twoSided } from './figure-skin.ts';
import { type FigureMeasures, FOOT_HEEL_M, FOOT_TOE_M, type Joints, jointsOf } from './joints.ts';
import { BACK_PLANE_M } from './sitting.ts';

/** How wide the pieces of the trunk run into one another. */
const TORSO_FILLET_M = 0.07;

const mirroredPoint = ([x, y, z]: Vec3): Vec3 => [-x, y, z];
const both = (a: Vec3, b: Vec3, radiusA: number, radiusB: number): Field[] => [
  taper(a, b, radiusA, radiusB),
  taper(mirroredPoint(a), mirroredPoint(b), radiusA, radiusB),
];

/** The trunk from hips to shoulders, one side like the other. */
const torsoField = (j: Joints): Field => {
  const { trunk, tall, girth, leanCos, leanSin, shoulder } = j;
  const round = (up: number, rx: number, ru: number, rv: number): Field =>
    ellipsoid(trunk(0, up * tall, BACK_PLANE_M - rv * girth), [rx * girth, ru * tall, rv * girth], leanCos, leanSin);
  const trapezius = trunk(0.07 * girth, 0.487 * tall, BACK_PLANE_M - 0.1 * girth);
  return blended(
    TORSO_FILLET_M,
    round(0.1, 0.182, 0.1, 0.12),
    round(0.22, 0.16, 0.16, 0.108),
    round(0.35, 0.178, 0.145, 0.118),
    ...both(trapezius, shoulder, 0.04 * girth, 0.056 * girth),
  );
};

/** The right arm, from the shoulder to the fingers. */
const armField = ({ shoulder, elbow, wrist, fingers, girth: g }: Joints): Field => {
  const palm = mix(wrist, fingers, 0.5);
  return blended(
    0.02,
    taper(shoulder, elbow, 0.052 * g, 0.043 * g),
    taper(elbow, wrist, 0.045 * g, 0.03 * g),
    taper(wrist, palm, 0.028 * g, 0.036 * g),
    taper(palm, fingers, 0.036 * g, 0.023 * g),
  );
};

/** The right leg, from the hip to the toes. */
const legField = ({ hip, knee, ankle, heel, toe, girth: g }: Joints): Field => {
  const calf = mix(knee, ankle, 0.35);
  return blended(
    0.04,
    taper(hip, knee, 0.086 * g, 0.061 * g),
    taper(knee, calf, 0.056 * g, 0.056 * g),
    taper(calf, ankle, 0.056 * g, 0.038 * g),
    taper(heel, toe, FOOT_HEEL_M, FOOT_TOE_M),
  );
};

/**
 * The whole body: arms and legs of both sides (the right ones looked up in a mirror) each run into the trunk with a fillet;
 * arm and leg meet in a crease.
 */
const bodyField = (trunk: Field, arm: Field, leg: Field): Field => {
  const withArm = new Float64Array(3);
  const limb = new Float64Array(3);
  return (x, y, z, slope) => {
    const side = x < 0 ? -1 : 1;
    const own = trunk(x, y, z, slope);
    withArm.set(slope);
    const armD = arm(side * x, y, z, limb);
    limb[0] *= side;
    const d = blend(own, armD, 0.045, withArm, limb);
    const legD = leg(side * x, y, z, limb);
    limb[0] *= side;
    const e = blend(own, legD, 0.05, slope, limb);
    if (d < e) slope.set(withArm);
    return Math.min(d, e);
  };
};

/** Stations from one joint to the next at the given fractions. */
const between = (a: Vec3, b: Vec3, limitM: number, fractions: readonly number[]): Station[] =>
  fractions.map((t) => ({ at: add(a, scale(subtract(b, a), t)), limitM }));

/**
 * A seated body without its head, one calm surface: each limb is skinned to the smooth union of limb and trunk, so the
 * parts run into each other without a seam. Flattened where it rests on the pan and against the back. In the chair's axes.
 * Only the neck is not the same on both sides, where the trunk is turned; turned to the left it is built turned to the
 * right and mirrored.
 */
export const bodyGeometry = (m: FigureMeasures): MeshGeometry => {
  const j = jointsOf({ ...m, facingDeg: Math.abs(m.facingDeg) });
  const { trunk, tall, girth: g } = j;
  const torso = torsoField(j);
  const trunkShape = blended(TORSO_FILLET_M, torso, taper(j.neckFoot, j.neckTop, 0.062 * g, 0.054 * g));
  const [arm, leg] = [armField(j), legField(j)];
  const onBack = (p: Vec3): Vec3 => {
    const up = (p[1] - m.panM) * j.leanCos + p[2] * j.leanSin;
    const back = p[2] * j.leanCos - (p[1] - m.panM) * j.leanSin;
    return trunk(p[0], up, Math.min(back, BACK_PLANE_M));
  };
  // Shins that lean back under the seat of a high stool are not lifted on to it.
  const onPan = ([x, y, z]: Vec3): Vec3 => [x, z > -0.33 && y > m.panM - 0.06 ? Math.max(y, m.panM) : y, z];
  // A sole is flat: the lowest of the foot's round is pressed on the floor.
  const onFloor = ([x, y, z]: Vec3): Vec3 => [x, y < 0.014 ? 0 : y, z];

  const spine = BACK_PLANE_M - 0.095 * g;
  const middle = emptySkin();
  const rise = [0, 0.012, 0.07, 0.17, 0.28, 0.36, 0.41, 0.45, 0.485, 0.51];
  const trunkStations: Station[] = rise.map((up) => ({ at: trunk(0, up * tall, spine), limitM: 0.32 }));
  trunkStations.push(...between(j.neckFoot, j.neckTop, 0.1, [0.62, 1]));
  const whole = bodyField(trunkShape, arm, leg);
  skinLimb(middle, trunkStations, {
    limb: trunkShape,
    whole,
    around: 20,

    settle: (p) => onPan(onBack(p)),
  });

  const armStations = [
    ...between(j.shoulder, j.elbow, 0.08 * g, [-0.19, -0.185, -0.14, -0.03, 0.25, 0.6, 0.88, 1]),
    ...between(j.elbow, j.wrist, 0.055 * g, [0.25, 0.75]),
    ...between(j.wrist, j.fingers, 0.046 * g, [0.4, 1, 1.22]),
  ];
  const legStations = [
    ...between(j.hip, j.knee, 0.115 * g, [0, 0.12, 0.45, 0.84, 1]),
    ...between(j.knee, j.ankle, 0.078 * g, [0.13, 0.4, 0.72, 0.96]),
  ];
  const footStations = between(j.heel, j.toe, 0.07, [-0.13, -0.12, 0.06, 0.3, 0.55, 0.8, 1]);
  // The neck reaches no limb, so that one side serves for both.
  const right = emptySkin();
  const limbs = bodyField(torso, arm, leg);
  skinLimb(right, armStations, { limb: arm, whole: limbs, around: 10, settle: onBack });
  skinLimb(right, legStations, { limb: leg, whole: limbs, around: 9, settle: onPan });
  skinLimb(right, footStations, { limb: leg, whole: limbs, around: 7, settle: onFloor });
  return twoSided(middle, right, m.facingDeg < 0);
};
