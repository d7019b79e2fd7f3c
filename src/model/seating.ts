import { radiansOf } from '../math/angles.ts';
import type { Vec3 } from '../math/vec3.ts';
import type { Project, Row, Seat } from './project.ts';

export interface Body {
  readonly eyeAbovePanM: number;
  readonly earAbovePanM: number;
  readonly earBehindEyeM: number;
  readonly crownAboveEyeM: number;
}

/** Where a seated person's eyes and ears are, and what carries them. Metres in the document's axes. */
export interface SeatPose {
  readonly row: Row;
  readonly seat: Seat;
  readonly rowIndex: number;
  readonly seatIndex: number;
  readonly eyeM: Vec3;
  /** The middle of the head at ear height. */
  readonly earM: Vec3;
  readonly panHeightM: number;
  readonly facingDeg: number;
  readonly reclineDeg: number;
  readonly body: Body;
}

export const bodyOf = (project: Project, seat: Seat): Body => ({ ...project.people, ...seat.people });

/**
 * The pose of a seated person. The trunk turns about the hip, straight under the eye of an upright sitter, so recline
 * lowers the head and moves it back the way the chair faces; the head itself stays turned to the picture, so the ear is
 * `earBehindEyeM` farther along z whatever way the chair faces (contract: eye and ear heights).
 */
export const seatPose = (project: Project, rowIndex: number, seatIndex: number, body?: Body): SeatPose => {
  const row = project.rows[rowIndex];
  const seat = row.seats[seatIndex];
  const person = body ?? bodyOf(project, seat);
  const facingDeg = seat.facingDeg ?? 0;
  const reclineDeg = seat.reclineDeg ?? 0;
  const recline = radiansOf(reclineDeg);
  const facing = radiansOf(facingDeg);
  const panHeightM = row.floorM + row.seat.panHeightM;
  const upright = seat.eyeZM ?? row.eyeZM;
  const at = (abovePanM: number, behindM: number): Vec3 => {
    const backM = abovePanM * Math.sin(recline);
    return [
      seat.xM - backM * Math.sin(facing),
      panHeightM + abovePanM * Math.cos(recline),
      upright + backM * Math.cos(facing) + behindM,
    ];
  };
  return {
    row,
    seat,
    rowIndex,
    seatIndex,
    eyeM: at(person.eyeAbovePanM, 0),
    earM: at(person.earAbovePanM, person.earBehindEyeM),
    panHeightM,
    facingDeg,
    reclineDeg,
    body: person,
  };
};

/** Every seat's pose, rows from the file's first to its last. */
export const seatPoses = (project: Project): SeatPose[] =>
  project.rows.flatMap((row, rowIndex) => row.seats.map((_, seatIndex) => seatPose(project, rowIndex, seatIndex)));

/** The seat the layout is judged at: the one named, else the one nearest the picture's centre line in the first row. */
export const referenceSeatId = (project: Project): string => {
  if (project.referenceSeat !== undefined) return project.referenceSeat;
  const off = (seat: Seat) => Math.abs(seat.xM - project.picture.centreXM);
  return project.rows[0].seats.reduce((best, seat) => (off(seat) < off(best) ? seat : best)).id;
};
