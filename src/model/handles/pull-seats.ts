import { degreesOf, radiansOf, wrapDegrees } from '../../math/angles.ts';
import type { Vec3 } from '../../math/vec3.ts';
import { clampSeatInside } from '../commands/clamp.ts';
import type { Edit } from '../commands/edit.ts';
import { moveSeat } from '../commands/move.ts';
import { shiftRow } from '../commands/shift.ts';
import { aimLoudspeaker, facingOf, reclineSeat, turnSeat } from '../commands/stretch.ts';
import { middleOf, pictureExtent } from '../extents.ts';
import { isLocked, seatIndices } from '../items.ts';
import { centreXM, partnerOf } from '../pairs.ts';
import type { ItemRef, Project } from '../project.ts';
import { referenceSeatId, seatPose, seatPoses } from '../seating.ts';
import { undusted, wholeCm } from '../snap/lines.ts';
import { snapPlace } from '../snap/place.ts';
import type { SnapReason } from '../snap/reason.ts';
import type { Handle, Pulled, PullOptions } from './handle.ts';
import { aimPoint } from './things.ts';

const still = (project: Project): Pulled => ({ edit: { ok: true, project }, reasons: [] });

/** A seat nearer than this to where a line led it stands there; farther off a wall stopped it before. */
const ARRIVED_M = 1e-3;

/** A seat goes along its row by itself; towards the picture it takes its row with it, unless it has a place of its own. */
export const pullSeat = (start: Project, ref: ItemRef, byM: Vec3, reachM: number): Pulled => {
  const indices = seatIndices(start, ref.id);
  if (!indices) return still(start);
  const { row, seat } = seatPose(start, ...indices);
  const z = seat.eyeZM ?? row.eyeZM;
  const startM: Vec3 = [seat.xM, 0, z];
  const wantedM: Vec3 = [seat.xM + byM[0], 0, z + byM[2]];
  const halfM: Vec3 = [row.seat.widthM / 2, 0, 0];
  const snapped = snapPlace(start, { ref, wantedM, startM, halfM, axes: [0, 2], reachM });
  const to = clampSeatInside(start, ref.id, { xM: snapped.atM[0], eyeZM: snapped.atM[2] });
  const there = [to.xM, to.eyeZM ?? z];
  const arrived = [0, 2].every((axis, i) => Math.abs(there[i] - snapped.atM[axis]) < ARRIVED_M);
  const reasons = arrived ? snapped.reasons : [];
  if (seat.eyeZM !== undefined) return { edit: moveSeat(start, ref.id, to), reasons };
  const along = moveSeat(start, ref.id, { xM: to.xM });
  if (!along.ok || to.eyeZM === undefined) return { edit: along, reasons };
  return { edit: shiftRow(along.project, row.id, 0, to.eyeZM - row.eyeZM), reasons };
};

/** The seat whose ears a point of the plan is nearest to, when it is near enough. */
const seatAt = (project: Project, [x, , z]: Vec3, reachM: number) => {
  const near = seatPoses(project)
    .map(({ seat, earM }) => ({ seat, earM, away: Math.hypot(earM[0] - x, earM[2] - z) }))
    .filter(({ away }) => away <= reachM)
    .sort((a, b) => a.away - b.away);
  return near[0] ?? null;
};

/** Ears are what aims are for: they draw from this much farther than lines do. */
const AIM_REACHES = 3;

export const pullAim = (start: Project, handle: Handle, byM: Vec3, { reachM, pairs }: PullOptions): Pulled => {
  const { ref } = handle;
  // The handle may be drawn elsewhere, on the bass floor: the aim keeps its own height.
  const atM = aimPoint(start, ref.id) ?? handle.atM;
  const wanted: Vec3 = [atM[0] + byM[0], atM[1], atM[2] + byM[2]];
  const seat = seatAt(start, wanted, reachM * AIM_REACHES);
  const reasons: SnapReason[] = seat ? [{ kind: 'aimSeat', seatId: seat.seat.id }] : [];
  const free: Vec3 = reachM > 0 ? [wholeCm(wanted[0]), wanted[1], wholeCm(wanted[2])] : wanted;
  const aim = seat === null ? free : seat.seat.id === referenceSeatId(start) ? ('reference' as const) : seat.earM;
  const edit = aimLoudspeaker(start, ref.id, aim);
  const partner = pairs ? partnerOf(start, ref) : null;
  if (!edit.ok || !partner || isLocked(start, partner)) return { edit, reasons };
  const twin = aim === 'reference' ? aim : ([undusted(2 * centreXM(start) - aim[0]), aim[1], aim[2]] as const);
  return { edit: aimLoudspeaker(edit.project, partner.id, twin), reasons };
};

const FACING_REACH_DEG = 3;

export const pullFacing = (start: Project, { ref, atM }: Handle, byM: Vec3, reachM: number): Pulled => {
  const indices = seatIndices(start, ref.id);
  if (!indices) return still(start);
  const { row, seat } = seatPose(start, ...indices);
  const z = seat.eyeZM ?? row.eyeZM;
  const wanted = facingOf(atM[0] + byM[0] - seat.xM, atM[2] + byM[2] - z);
  const [pictureXM, , pictureZM] = middleOf(pictureExtent(start));
  const toPicture = facingOf(pictureXM - seat.xM, pictureZM - z);
  const near = (deg: number) => reachM > 0 && Math.abs(wrapDegrees(wanted - deg)) <= FACING_REACH_DEG;
  if (near(0)) return { edit: turnSeat(start, ref.id, 0), reasons: [{ kind: 'straight' }] };
  if (near(toPicture)) return { edit: turnSeat(start, ref.id, toPicture), reasons: [{ kind: 'toPicture' }] };
  return { edit: turnSeat(start, ref.id, wanted), reasons: [] };
};

/** The head moves back by the sine of the recline: pulling it there leans the chair. */
export const pullRecline = (start: Project, { ref }: Handle, byM: Vec3): Pulled => {
  const indices = seatIndices(start, ref.id);
  if (!indices) return still(start);
  const { reclineDeg, body } = seatPose(start, ...indices);
  const backM = body.eyeAbovePanM * Math.sin(radiansOf(reclineDeg)) + byM[2];
  const sine = Math.min(1, Math.max(0, backM / body.eyeAbovePanM));
  const edit: Edit = reclineSeat(start, ref.id, degreesOf(Math.asin(sine)));
  return { edit, reasons: [] };
};
