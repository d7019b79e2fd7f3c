import { clamp, dampedShare, smoothstep } from '../../engines/movement/easing.ts';
import {
  corners,
  type FreeArea,
  fitPoints,
  focalPx,
  naturalFovDeg,
  type Orbit,
  orbitEye,
} from '../../engines/movement/framing.ts';
import { anglesTo, directionOf, mixPoses, type Pose } from '../../engines/movement/pose.ts';
import { degreesOf, radiansOf, wrapDegrees } from '../../math/angles.ts';
import { add, cross, distance, mix, scale, type Vec3 } from '../../math/vec3.ts';
import type { ViewMode } from '../../state/session.ts';

/** What the rig stands in, read afresh before each step. */
export interface RigScene {
  readonly mode: ViewMode;
  readonly seatId: string;
  /** Grows when the whole room, or the look straight ahead, is asked for. */
  readonly wholeViews: number;
  readonly reducedMotion: boolean;
  readonly minM: Vec3;
  readonly maxM: Vec3;
  /** The chosen seat's eye, null without one. */
  readonly eyeM: Vec3 | null;
  readonly pictureCentreM: Vec3;
  /** Angles under which the chosen seat sees the picture. */
  readonly horizontalDeg: number;
  readonly verticalDeg: number;
  readonly free: FreeArea;
}

/** What is drawn: the one camera's pose, where its axis meets the canvas, and how dark a cut has made the view. */
export interface Shot {
  pose: Pose;
  axisX: number;
  axisY: number;
  fade: number;
}

export const OVERLOOK_FOV_DEG = 36;
const HOME_YAW_DEG = -27;
const HOME_PITCH_DEG = -31;
const FRAME_SHARE = 0.97;
const PICTURE_SHARE = 0.92;
const SIT_FOV_DEG = [50, 75] as const;
const PITCH_DEG = [-89, 12] as const;
const DISTANCE_M = [0.8, 40] as const;
const LOOK_YAW_DEG = 100;
const LOOK_PITCH_DEG = 60;
const DAMPING_S = 0.075;
const TRANSITION_S = 0.75;
const CUT_S = 0.18;
/** The lowest an overlooking eye goes: it never looks from under the floor. */
const LOWEST_EYE_M = 0.15;

interface Transition {
  readonly from: Pose;
  elapsedS: number;
}

/** The only writer of the camera: overlook and sit, what lies between them, and the hand on either. */
export class Rig {
  private scene: RigScene | null = null;
  private mode: ViewMode = 'overlook';
  private seatId = '';
  /** Where the hand wants the orbit, and where it is on its way there. */
  private goal: Orbit = { targetM: [0, 1, 3], yawDeg: HOME_YAW_DEG, pitchDeg: HOME_PITCH_DEG, distanceM: 10 };
  private orbit: Orbit = this.goal;
  private lookGoal = { yawDeg: 0, pitchDeg: 0 };
  private look = { yawDeg: 0, pitchDeg: 0 };
  private untouched = true;
  private carryM: Vec3 = [0, 0, 0];
  /** How far the overlooking camera, as drawn last, goes along with what is being moved under it. */
  carriedM: Vec3 = this.carryM;
  private transition: Transition | null = null;
  private cutS: number | null = null;
  private cutSeatPose: Pose | null = null;
  readonly shot: Shot = {
    pose: { atM: [0, 3, 9], yawDeg: 0, pitchDeg: 0, fovYDeg: OVERLOOK_FOV_DEG },
    axisX: 0,
    axisY: 0,
    fade: 0,
  };

  /** Takes in what changed around the camera. */
  read(next: RigScene): void {
    const last = this.scene;
    this.scene = next;
    const moved =
      !last || !sameFree(last.free, next.free) || distance(last.minM, next.minM) + distance(last.maxM, next.maxM) > 0;
    if (moved && this.untouched) {
      this.goal = this.homeOrbit(next);
      if (!last || next.reducedMotion) this.orbit = this.goal;
    }
    if (!last) {
      this.mode = next.mode;
      this.seatId = next.seatId;
      this.shot.axisX = axisOf(next.free).x;
      this.shot.axisY = axisOf(next.free).y;
      this.shot.pose = this.base(next);
      return;
    }
    if (next.wholeViews !== last.wholeViews) this.home();
    if (next.mode !== this.mode) {
      this.mode = next.mode;
      this.seatId = next.seatId;
      if (next.mode === 'sit') this.lookStraight();
      this.cutS = null;
      this.transition = { from: this.shot.pose, elapsedS: -1 };
    } else if (next.seatId !== this.seatId) {
      this.seatId = next.seatId;
      if (this.mode === 'sit' && !this.transition) {
        this.cutSeatPose = this.shot.pose;
        this.cutS = -1;
      }
      this.lookStraight();
    }
  }

  /** Moves on by `stepS` seconds; true while there is more to come. */
  step(stepS: number): boolean {
    const scene = this.scene;
    if (!scene) return false;
    const share = scene.reducedMotion ? 1 : dampedShare(stepS, DAMPING_S);
    let moving = this.damp(share, scene.free);
    this.carriedM = this.carryM;
    const base = this.base(scene);
    if (this.transition) {
      const { transition } = this;
      transition.elapsedS = transition.elapsedS < 0 ? 0 : transition.elapsedS + stepS;
      const t = scene.reducedMotion ? 1 : transition.elapsedS / TRANSITION_S;
      this.shot.pose = mixPoses(transition.from, base, smoothstep(t));
      if (t >= 1) this.transition = null;
      else moving = true;
    } else if (this.cutS !== null && this.cutSeatPose) {
      this.cutS = this.cutS < 0 ? 0 : this.cutS + stepS;
      const t = scene.reducedMotion ? 1 : Math.min(1, this.cutS / CUT_S);
      this.shot.pose = t < 0.5 ? this.cutSeatPose : base;
      this.shot.fade = 1 - Math.abs(2 * t - 1);
      if (t >= 1) this.cutS = null;
      else moving = true;
    } else {
      this.shot.pose = base;
      this.shot.fade = 0;
    }
    return moving;
  }

  /** A turn by the hand or the keys: round the room in overlook, the head in sit. */
  turn(yawDeg: number, pitchDeg: number): void {
    const scene = this.scene;
    if (!scene) return;
    if (this.mode === 'sit') {
      const straight = this.straight(scene);
      this.lookGoal = {
        yawDeg: clamp(this.lookGoal.yawDeg + yawDeg, -LOOK_YAW_DEG, LOOK_YAW_DEG),
        pitchDeg:
          clamp(straight.pitchDeg + this.lookGoal.pitchDeg + pitchDeg, -LOOK_PITCH_DEG, LOOK_PITCH_DEG) -
          straight.pitchDeg,
      };
      return;
    }
    this.touch({
      ...this.goal,
      yawDeg: this.goal.yawDeg + yawDeg,
      pitchDeg: clamp(this.goal.pitchDeg + pitchDeg, PITCH_DEG[0], PITCH_DEG[1]),
    });
  }

  /** Nearer (below 1) or farther (above 1); only overlook has a distance. */
  zoom(factor: number): void {
    if (this.mode === 'sit') return;
    this.touch({ ...this.goal, distanceM: clamp(this.goal.distanceM * factor, DISTANCE_M[0], DISTANCE_M[1]) });
  }

  /** Moves the overlooked point so that it follows the hand by this many CSS pixels. */
  pan(xPx: number, yPx: number): void {
    const scene = this.scene;
    if (!scene || this.mode === 'sit') return;
    const metres = this.goal.distanceM / focalPx(OVERLOOK_FOV_DEG, scene.free.canvasHeight);
    const ahead = directionOf(this.goal.yawDeg, this.goal.pitchDeg);
    const yaw = radiansOf(this.goal.yawDeg);
    const right: Vec3 = [Math.cos(yaw), 0, Math.sin(yaw)];
    const moved = add(this.goal.targetM, add(scale(right, -xPx * metres), scale(cross(right, ahead), yPx * metres)));
    this.touch({
      ...this.goal,
      targetM: within(moved, scene.minM, scene.maxM),
    });
  }

  /** Back to the whole room, or to the picture. */
  home(): void {
    if (!this.scene) return;
    this.lookStraight(false);
    this.untouched = true;
    this.goal = this.homeOrbit(this.scene);
  }

  /** Eases the overlook to a view that holds these points. */
  frame(points: readonly Vec3[], yawDeg: number, pitchDeg: number): void {
    if (!this.scene || points.length === 0) return;
    const fit = fitPoints(points, yawDeg, pitchDeg, OVERLOOK_FOV_DEG, this.scene.free, 0.8);
    const from = this.shot.pose;
    this.touch({ ...fit, yawDeg: this.orbit.yawDeg + wrapDegrees(yawDeg - this.orbit.yawDeg) });
    this.orbit = this.goal;
    if (this.mode === 'overlook') this.transition = { from, elapsedS: -1 };
  }

  /** The axes of the document have gone this far since a wall was taken hold of: what stands still is to be seen still. */
  carry(byM: Vec3): void {
    this.carryM = byM;
  }

  /** The wall is let go where it is: from now on this is the view. */
  keepCarried(): void {
    this.goal = { ...this.goal, targetM: add(this.goal.targetM, this.carryM) };
    this.orbit = { ...this.orbit, targetM: add(this.orbit.targetM, this.carryM) };
    this.carryM = [0, 0, 0];
  }

  /** The part of the canvas that nothing covers; null before the first reading. */
  get free(): FreeArea | null {
    return this.scene?.free ?? null;
  }

  get overlooking(): boolean {
    return this.mode === 'overlook';
  }

  private touch(goal: Orbit): void {
    this.untouched = false;
    const eye = orbitEye(goal);
    const lowest = LOWEST_EYE_M - eye[1];
    this.goal = lowest > 0 ? { ...goal, targetM: [goal.targetM[0], goal.targetM[1] + lowest, goal.targetM[2]] } : goal;
  }

  private lookStraight(atOnce = true): void {
    this.lookGoal = { yawDeg: 0, pitchDeg: 0 };
    if (atOnce) this.look = this.lookGoal;
  }

  private homeOrbit(scene: RigScene): Orbit {
    const points = corners(scene.minM, scene.maxM);
    return fitPoints(points, HOME_YAW_DEG, HOME_PITCH_DEG, OVERLOOK_FOV_DEG, scene.free, FRAME_SHARE);
  }

  private straight(scene: RigScene): { readonly yawDeg: number; readonly pitchDeg: number } {
    return scene.eyeM ? anglesTo(scene.eyeM, scene.pictureCentreM) : { yawDeg: 0, pitchDeg: 0 };
  }

  /** The pose the present mode asks for, without any transition. */
  private base(scene: RigScene): Pose {
    if (this.mode === 'sit' && scene.eyeM) {
      const straight = this.straight(scene);
      const { horizontalDeg, verticalDeg, free } = scene;
      return {
        atM: scene.eyeM,
        yawDeg: straight.yawDeg + this.look.yawDeg,
        pitchDeg: straight.pitchDeg + this.look.pitchDeg,
        fovYDeg: naturalFovDeg(horizontalDeg, verticalDeg, free, PICTURE_SHARE, SIT_FOV_DEG[0], widestDeg(free)),
      };
    }
    const { yawDeg, pitchDeg } = this.orbit;
    return { atM: add(orbitEye(this.orbit), this.carryM), yawDeg, pitchDeg, fovYDeg: OVERLOOK_FOV_DEG };
  }

  private damp(share: number, free: FreeArea): boolean {
    const { orbit, goal, look, lookGoal, shot } = this;
    const axis = axisOf(free);
    const left =
      Math.abs(goal.yawDeg - orbit.yawDeg) +
      Math.abs(goal.pitchDeg - orbit.pitchDeg) +
      20 * (Math.abs(goal.distanceM - orbit.distanceM) + distance(goal.targetM, orbit.targetM)) +
      Math.abs(lookGoal.yawDeg - look.yawDeg) +
      Math.abs(lookGoal.pitchDeg - look.pitchDeg) +
      0.1 * (Math.abs(axis.x - shot.axisX) + Math.abs(axis.y - shot.axisY));
    const near = left < 0.02;
    const s = near ? 1 : share;
    const towards = (from: number, to: number) => from + (to - from) * s;
    this.orbit = {
      targetM: mix(orbit.targetM, goal.targetM, s),
      yawDeg: towards(orbit.yawDeg, goal.yawDeg),
      pitchDeg: towards(orbit.pitchDeg, goal.pitchDeg),
      distanceM: towards(orbit.distanceM, goal.distanceM),
    };
    this.look = {
      yawDeg: towards(look.yawDeg, lookGoal.yawDeg),
      pitchDeg: towards(look.pitchDeg, lookGoal.pitchDeg),
    };
    shot.axisX = towards(shot.axisX, axis.x);
    shot.axisY = towards(shot.axisY, axis.y);
    return !near && share < 1;
  }
}

const within = (point: Vec3, minM: Vec3, maxM: Vec3): Vec3 => [
  clamp(point[0], minM[0], maxM[0]),
  clamp(point[1], minM[1], maxM[1]),
  clamp(point[2], minM[2], maxM[2]),
];

/** Where a sheet hides more than half of the canvas, the limit holds for what is left to be seen. */
const widestDeg = ({ height, canvasHeight }: FreeArea): number => {
  if (height >= canvasHeight / 2) return SIT_FOV_DEG[1];
  return degreesOf(2 * Math.atan((Math.tan(radiansOf(SIT_FOV_DEG[1] / 2)) * canvasHeight) / height));
};

const axisOf = (free: FreeArea) => ({ x: free.left + free.width / 2, y: free.top + free.height / 2 });

const sameFree = (a: FreeArea, b: FreeArea): boolean =>
  a.left === b.left &&
  a.top === b.top &&
  a.width === b.width &&
  a.height === b.height &&
  a.canvasWidth === b.canvasWidth &&
  a.canvasHeight === b.canvasHeight;
