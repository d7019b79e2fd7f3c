import type { Vec3 } from '../../math/vec3.ts';
import { seatIndices } from '../items.ts';
import type { Project } from '../project.ts';
import { heightAt } from '../room/ceiling.ts';
import { type RoomShape, roomShape } from '../room/shape.ts';
import { seatPose } from '../seating.ts';
import type { SeatPlace } from './move.ts';

/** The place nearest to `atM` where a box of `sizeM` (width, height, depth along x, y, z) stands wholly inside the room. */
export const clampInside = (room: RoomShape, atM: Vec3, sizeM: Vec3): Vec3 =>
  room.nearestInside(atM, [sizeM[0] / 2, sizeM[1] / 2, sizeM[2] / 2]);

/** From the middle of the head to its back, near enough to keep a head off the wall. */
const HEAD_BEHIND_EAR_M = 0.1;

/** The place along the ceiling's axis nearest to `place` where what is `clearM` to both sides is `heightM` high. */
const clampUnder = ({ ceiling }: RoomShape, place: number, heightM: number, clearM: number): number => {
  const open = (s: number) =>
    Math.min(heightAt(ceiling, s - clearM), heightAt(ceiling, s), heightAt(ceiling, s + clearM)) >= heightM - 1e-9;
  if (open(place)) return place;
  const crossings = ceiling.knots.slice(1).flatMap(([s1, h1], i) => {
    const [s0, h0] = ceiling.knots[i];
    if (h0 >= heightM === h1 >= heightM) return [];
    return [h1 === h0 ? s1 : s0 + ((s1 - s0) * (heightM - h0)) / (h1 - h0)];
  });
  const tried = crossings
    .flatMap((s) => [s - clearM, s + clearM])
    .sort((a, b) => Math.abs(a - place) - Math.abs(b - place));
  return tried.find(open) ?? place;
};

/** Without the dust of binary fractions: a place that was good already is given back as it came. */
const clean = (valueM: number): number => Number(valueM.toFixed(6)) + 0;

/** The place nearest to `to` where the seat stands within the walls and its sitter's head below the ceiling. */
export const clampSeatInside = (project: Project, id: string, to: SeatPlace): SeatPlace => {
  const indices = seatIndices(project, id);
  if (!indices) return to;
  const { row, eyeM, earM, seat, body } = seatPose(project, ...indices);
  const room = roomShape(project);
  const upright = seat.eyeZM ?? row.eyeZM;
  const frontM = Math.min(eyeM[2], earM[2]) - upright;
  const backM = Math.max(eyeM[2], earM[2]) - upright + HEAD_BEHIND_EAR_M;
  const middleM = (frontM + backM) / 2;
  const crownM = eyeM[1] + body.crownAboveEyeM;
  const alongX = room.ceiling.axis === 0;
  let x = to.xM;
  let z = (to.eyeZM ?? upright) + middleM;
  // The chair within the plan, the head under the ceiling; the walls have the last word.
  for (let round = 0; round < 3; round += 1) {
    if (alongX) x = clampUnder(room, x, crownM, HEAD_BEHIND_EAR_M);
    else z = clampUnder(room, z, crownM, (backM - frontM) / 2);
    [x, , z] = room.nearestInside([x, 0, z], [row.seat.widthM / 2, 0, (backM - frontM) / 2]);
  }
  return to.eyeZM === undefined ? { xM: clean(x) } : { xM: clean(x), eyeZM: clean(z - middleM) };
};
