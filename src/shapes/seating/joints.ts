import { radiansOf } from '../../math/angles.ts';
import type { Vec3 } from '../../math/vec3.ts';
import { headMiddleBehindEyeM } from './head.ts';
import { ARM_ABOVE_PAN_M, BACK_PLANE_M, RAIL_LEAN_DEG } from './sitting.ts';

/** All that a seated figure depends on, in the chair's axes. Heights above the row's floor. */
export interface FigureMeasures {
  readonly panM: number;
  readonly eyeAbovePanM: number;
  readonly earBehindEyeM: number;
  readonly reclineDeg: number;
  /** How far the trunk is turned from the head, which faces the picture. */
  readonly facingDeg: number;
  /** Half the distance between the armrests' middles; null for hands in the lap. */
  readonly elbowHalfM: number | null;
  readonly legRaiseDeg: number;
  /** Whether the feet rest on a high stool's rail. */
  readonly onRail: boolean;
}

/** The right side's joints; the left side mirrors them. `trunk` places (x, up along the trunk, back from the hip). */
export interface Joints {
  readonly trunk: (x: number, up: number, back: number) => Vec3;
  readonly leanCos: number;
  readonly leanSin: number;
  /** Height of this trunk over the median one's, and the girth that goes with it. */
  readonly tall: number;
  readonly girth: number;
  readonly neckFoot: Vec3;
  readonly neckTop: Vec3;
  readonly shoulder: Vec3;
  readonly elbow: Vec3;
  readonly wrist: Vec3;
  readonly fingers: Vec3;
  readonly hip: Vec3;
  readonly knee: Vec3;
  readonly ankle: Vec3;
  readonly heel: Vec3;
  readonly toe: Vec3;
}

/** A trunk as tall as the house's default sitter. */
const DEFAULT_EYE_ABOVE_PAN_M = 0.69;
const UPPER_ARM_M = 0.265;
const LOWER_LEG_M = 0.405;
const ANKLE_M = 0.085;
/** A shod foot's half thickness at heel and toes; the sole is flat on the floor. */
export const FOOT_HEEL_M = 0.038;
export const FOOT_TOE_M = 0.03;

const armOf = (
  shoulder: Vec3,
  { elbowHalfM, panM }: FigureMeasures,
  girth: number,
): { elbow: Vec3; wrist: Vec3; fingers: Vec3 } => {
  const reach = UPPER_ARM_M * girth;
  const rest = elbowHalfM !== null;
  const x = rest ? elbowHalfM : 0.25 * girth;
  const y = panM + (rest ? ARM_ABOVE_PAN_M + 0.042 : 0.2);
  const aside = (x - shoulder[0]) ** 2 + (y - shoulder[1]) ** 2;
  const z = shoulder[2] - Math.sqrt(Math.max(0.0004, reach * reach - aside));
  if (rest) {
    return { elbow: [x, y, z], wrist: [x - 0.012, y + 0.002, z - 0.235], fingers: [x - 0.022, y - 0.008, z - 0.345] };
  }
  const lap = panM + 0.17;
  return {
    elbow: [x, y, z],
    wrist: [0.14, lap + 0.012, z - 0.19],
    fingers: [0.065, lap, z - 0.29],
  };
};

/**
 * Where the ankle goes: on the floor if the leg reaches it, forward if the pan is low, raised on a leg rest, back to a high
 * stool's rail.
 */
const ankleOf = (knee: Vec3, { legRaiseDeg, onRail }: FigureMeasures): { ankle: Vec3; raise: number } => {
  const drop = knee[1] - ANKLE_M;
  const forward = Math.acos(Math.max(0, Math.min(1, drop / LOWER_LEG_M)));
  const raise = onRail ? -radiansOf(RAIL_LEAN_DEG) : Math.max(radiansOf(legRaiseDeg), forward);
  const down = LOWER_LEG_M * Math.cos(raise);
  return { ankle: [knee[0] + 0.005, knee[1] - down, knee[2] - LOWER_LEG_M * Math.sin(raise)], raise };
};

/**
 * Where a seated body's joints are. The trunk turns about the hip, on the pan under an upright sitter's eye (as
 * model/seating places the eye); lengths follow DIN 33402-2's median man where it gives them, else by eye.
 */
export const jointsOf = (m: FigureMeasures): Joints => {
  const { panM, eyeAbovePanM } = m;
  const lean = radiansOf(m.reclineDeg);
  const [c, s] = [Math.cos(lean), Math.sin(lean)];
  const tall = eyeAbovePanM / DEFAULT_EYE_ABOVE_PAN_M;
  const girth = Math.max(0.6, Math.min(1.25, tall)) ** 0.6;
  const trunk = (x: number, up: number, back: number): Vec3 => [x, panM + up * c - back * s, up * s + back * c];
  const spine = BACK_PLANE_M - 0.105 * girth;
  const eye = trunk(0, eyeAbovePanM, 0);
  const turn = radiansOf(m.facingDeg);
  const nape = headMiddleBehindEyeM(m.earBehindEyeM) + 0.004;
  const shoulder = trunk(0.184 * girth, 0.44 * tall, spine);
  const hip: Vec3 = [0.088 * girth, panM + 0.088 * girth, 0.04];
  const knee: Vec3 = [0.112 * girth, panM + 0.066, -0.4];
  const { ankle, raise } = ankleOf(knee, m);
  // A foot on the floor stays flat; a raised one turns up with the leg.
  const tilt = m.legRaiseDeg > 0 ? raise * 0.94 : 0;
  const sole = (along: number, below: number): Vec3 => [
    ankle[0] + 0.012 * (along / 0.17),
    ankle[1] - below * Math.cos(tilt) + along * Math.sin(tilt),
    ankle[2] - along * Math.cos(tilt) - below * Math.sin(tilt),
  ];
  return {
    trunk,
    leanCos: c,
    leanSin: s,
    tall,
    girth,
    neckFoot: trunk(0, 0.46 * tall, spine),
    // The head is turned back by the facing: the neck meets it where it stands in the chair's axes.
    neckTop: [eye[0] + nape * Math.sin(turn), eye[1] - 0.05, eye[2] + nape * Math.cos(turn)],
    shoulder,
    ...armOf(shoulder, m, girth),
    hip,
    knee,
    ankle,
    heel: sole(-0.03, ANKLE_M - FOOT_HEEL_M),
    toe: sole(0.168, ANKLE_M - FOOT_TOE_M),
  };
};
