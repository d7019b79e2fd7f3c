import type { Vec3 } from '../../math/vec3.ts';
import { seatIndices } from '../items.ts';
import type { Project } from '../project.ts';
import { type RoomBox, roomBox } from '../room.ts';
import { seatPose } from '../seating.ts';
import type { SeatPlace } from './move.ts';

/** The nearest value that keeps `sizeM` around it within the span; the middle where it does not fit. */
const clampSpan = (value: number, sizeM: number, minM: number, maxM: number): number => {
  const half = Math.min(sizeM, maxM - minM) / 2;
  return Math.min(Math.max(value, minM + half), maxM - half);
};

/** The place nearest to `atM` where a box of `sizeM` (width, height, depth along x, y, z) stands wholly inside the room. */
export const clampInside = (room: RoomBox, atM: Vec3, sizeM: Vec3): Vec3 => [
  clampSpan(atM[0], sizeM[0], room.minM[0], room.maxM[0]),
  clampSpan(atM[1], sizeM[1], room.minM[1], room.maxM[1]),
  clampSpan(atM[2], sizeM[2], room.minM[2], room.maxM[2]),
];

/** From the middle of the head to its back, near enough to keep a head off the wall. */
const HEAD_BEHIND_EAR_M = 0.1;

/** The place nearest to `to` where the seat stands between the side walls and its sitter's head in the room. */
export const clampSeatInside = (project: Project, id: string, to: SeatPlace): SeatPlace => {
  const indices = seatIndices(project, id);
  if (!indices) return to;
  const { row, eyeM, earM, seat } = seatPose(project, ...indices);
  const room = roomBox(project);
  const xM = clampSpan(to.xM, row.seat.widthM, room.minM[0], room.maxM[0]);
  if (to.eyeZM === undefined) return { xM };
  const upright = seat.eyeZM ?? row.eyeZM;
  const frontM = Math.min(eyeM[2], earM[2]) - upright;
  const backM = Math.max(eyeM[2], earM[2]) - upright + HEAD_BEHIND_EAR_M;
  return { xM, eyeZM: Math.max(Math.min(to.eyeZM, room.maxM[2] - backM), room.minM[2] - frontM) };
};
