import { type FlatTarget, targetFacing } from '../engines/sight/flat-target.ts';
import { loudspeakerGrid, pictureGrid } from '../engines/sight/occlusion.ts';
import { shortPerson } from '../engines/sight/people.ts';
import { pictureGeometry } from '../engines/sight/picture-geometry.ts';
import { diagonalM } from '../engines/sight/picture-size.ts';
import { subtract, type Vec3 } from '../math/vec3.ts';
import type { Project } from '../model/project.ts';
import { soundSpeedOf } from '../model/room.ts';
import { type SeatPose, seatPose, seatPoses } from '../model/seating.ts';
import { pictureFace } from '../shapes/picture.ts';
import { loudspeakerAim } from '../shapes/sources/aim.ts';
import { loudspeakerFront } from '../shapes/sources/standing.ts';
import { clearanceOf, rowEyes } from './geometry/clearance.ts';
import { loudspeakerReadout } from './geometry/loudspeakers.ts';
import { type Hiding, hidingBy, thingsIn } from './geometry/occlusion.ts';
import { roomReadout } from './geometry/room.ts';
import { seenFraction } from './geometry/seen.ts';
import { tallPoses } from './geometry/worst-case.ts';
import type { GeometryReadout, LoudspeakerReadout, PictureReadout, RoomReadout } from './types.ts';

type PictureFinder = (pose: SeatPose) => PictureReadout;

/** The picture from any seat, people as given and in the worst case: a short person behind tall ones. */
const pictureFinder = (
  project: Project,
  poses: readonly SeatPose[],
  tall: readonly SeatPose[],
  hiding: Hiding,
  tallHiding: Hiding,
): PictureFinder => {
  const face = pictureFace(project);
  const lowerEdge = [face.centreM[0], face.bottomM, face.zM] as const;
  const [pixelsAcross] = project.picture.pixels;
  const eyes = rowEyes(poses);
  const tallEyes = rowEyes(tall);
  return (pose) => {
    const { id } = pose.seat;
    const { pixelsPerDegree, ...angles } = pictureGeometry(pose.eyeM, face, pixelsAcross);
    const short = seatPose(project, pose.rowIndex, pose.seatIndex, { ...pose.body, ...shortPerson });
    const seen = (name: string, eye: SeatPose, past: Hiding): number =>
      seenFraction(`${id} ${name}`, eye.eyeM, face, past.fromSeat(id), pictureGrid);
    return {
      ...angles,
      pixelsPerDegree: pixelsPerDegree ?? 0,
      visibleFraction: seen('picture', pose, hiding),
      clearanceMm: clearanceOf(pose, lowerEdge, eyes)?.clearanceMm ?? null,
      worstCase: {
        visibleFraction: seen('worst case', short, tallHiding),
        clearanceMm: clearanceOf(short, lowerEdge, tallEyes)?.clearanceMm ?? null,
      },
    };
  };
};

/**
 * Only a box has one front: its baffle. What sends sound round itself (omni, dipole, bipole) is looked at as a rectangle of
 * its width and height turned to the ear, since a seat in a dipole's null faces its edge and is to be.
 */
type LoudspeakersFinder = (pose: SeatPose) => LoudspeakerReadout[];

const loudspeakersFinder = (project: Project, hiding: Hiding): LoudspeakersFinder => {
  const soundSpeed = soundSpeedOf(project);
  const fronts = project.loudspeakers.map((loudspeaker) => loudspeakerFront(project, loudspeaker));
  const targetFrom = (index: number, earM: Vec3): FlatTarget => {
    const { pattern, atM, sizeM } = project.loudspeakers[index];
    return pattern === 'box' ? fronts[index] : targetFacing(atM, subtract(earM, atM), sizeM[0], sizeM[1]);
  };
  const aims = project.loudspeakers.map((loudspeaker) => loudspeakerAim(project, loudspeaker));
  return ({ seat, earM }) =>
    project.loudspeakers.map((loudspeaker, index) => {
      const past = hiding.fromSeatTo(seat.id, loudspeaker.id);
      const seen = seenFraction(
        `${seat.id} to ${loudspeaker.id}`,
        earM,
        targetFrom(index, earM),
        past,
        loudspeakerGrid,
      );
      return loudspeakerReadout(loudspeaker, aims[index], earM, soundSpeed, seen);
    });
};

let lastRoom: { readonly room: Project['room']; readonly air: Project['air']; readonly readout: RoomReadout } | null =
  null;

/** The room's readout, kept while its part of the document is the very same. */
const keptRoom = (project: Project): RoomReadout => {
  const { room, air } = project;
  if (lastRoom?.room !== room || lastRoom.air !== air) lastRoom = { room, air, readout: roomReadout(project) };
  return lastRoom.readout;
};

/**
 * Everything about room, picture and loudspeakers that needs no wave computed: each field as design/contract.md, "Report",
 * defines it. Fast enough for the frame of a drag: lines of sight that nothing moved near are kept from the call before.
 */
export const geometryReadout = (project: Project): GeometryReadout => {
  const poses = seatPoses(project);
  const tall = tallPoses(project);
  const things = thingsIn(project);
  const hiding = hidingBy(things, poses);
  const pictureFrom = pictureFinder(project, poses, tall, hiding, hidingBy(things, tall));
  const loudspeakersFrom = loudspeakersFinder(project, hiding);
  const { widthM, heightM } = pictureFace(project);
  return {
    room: keptRoom(project),
    picture: { widthM, heightM, diagonalM: diagonalM(widthM, project.picture.aspect) },
    seats: poses.map((pose) => ({
      id: pose.seat.id,
      eyeM: pose.eyeM,
      earM: pose.earM,
      picture: pictureFrom(pose),
      loudspeakers: loudspeakersFrom(pose),
    })),
  };
};
