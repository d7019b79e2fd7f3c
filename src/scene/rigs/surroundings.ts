import { degreesOf } from '../../math/angles.ts';
import { add, cross, dot, length, scale, subtract, type Vec3 } from '../../math/vec3.ts';
import type { Project } from '../../model/project.ts';
import { roomShape } from '../../model/room/shape.ts';
import { type SeatPose, seatPoses } from '../../model/seating.ts';
import { type PictureFace, pictureFace } from '../../shapes/picture.ts';
import type { SessionState } from '../../state/session.ts';
import { freeAreaOf, readInsets } from './free-area.ts';
import type { RigScene } from './rig.ts';

/** A point on the picture: across and up from -1 to 1 of its half sizes. */
export const onPicture = (face: PictureFace, across: number, up: number): Vec3 =>
  add(face.centreM, add(scale(face.right, (across * face.widthM) / 2), scale(face.up, (up * face.heightM) / 2)));

export const pictureCorners = (project: Project): readonly Vec3[] => {
  const face = pictureFace(project);
  return [onPicture(face, -1, -1), onPicture(face, 1, -1), onPicture(face, 1, 1), onPicture(face, -1, 1)];
};

export const chosenSeat = (project: Project, seatId: string): SeatPose | undefined =>
  seatPoses(project).find((pose) => pose.seat.id === seatId);

const angleDeg = (eye: Vec3, a: Vec3, b: Vec3): number => {
  const u = subtract(a, eye);
  const v = subtract(b, eye);
  return degreesOf(Math.atan2(length(cross(u, v)), dot(u, v)));
};

/** Everything the rig has to know, from the stores and the window. */
export const surroundings = (project: Project, session: SessionState, width: number, height: number): RigScene => {
  const room = roomShape(project);
  const frame = pictureFace(project);
  const eyeM = chosenSeat(project, session.seatId)?.eyeM ?? null;
  const angle = (a: Vec3, b: Vec3) => (eyeM ? angleDeg(eyeM, a, b) : 40);
  return {
    mode: session.mode === 'sit' && eyeM ? 'sit' : 'overlook',
    seatId: session.seatId,
    wholeViews: session.wholeViews,
    reducedMotion: session.reducedMotion,
    minM: room.minM,
    maxM: room.maxM,
    eyeM,
    pictureCentreM: frame.centreM,
    horizontalDeg: angle(onPicture(frame, -1, 0), onPicture(frame, 1, 0)),
    verticalDeg: angle(onPicture(frame, 0, -1), onPicture(frame, 0, 1)),
    free: freeAreaOf(width, height, readInsets(width, height, session.stageCleared)),
  };
};
