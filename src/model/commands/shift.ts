import { dot, type Vec3 } from '../../math/vec3.ts';
import { isLocked, keysOf, seatIndices } from '../items.ts';
import type { ItemRef, Opening, Patch, Project } from '../project.ts';
import { frameOf, reachUpM } from '../room/places.ts';
import { roomShape } from '../room/shape.ts';
import { clampSeatInside } from './clamp.ts';
import { type Edit, setValue, withValue } from './edit.ts';
import { lockedEdit, moveLoudspeaker, moveRow, moveSeat, moveSubwoofer, noSuch } from './move.ts';

const moved = ([x, y, z]: Vec3, [dx, dy, dz]: Vec3): Vec3 => [x + dx, y + dy, z + dz];

/** A sum of a file's decimals and whole centimetres, without the dust of binary fractions. */
const clean = (valueM: number): number => Number(valueM.toFixed(6));

const cleaned = ([x, y, z]: Vec3): Vec3 => [clean(x), clean(y), clean(z)];

const SHRUNK = [1, 0.9, 0.8, 0.6, 0.4, 0.2, 0];

/** Halvings of the way to a wall or slope: of 30 m to a hundredth of a millimetre. */
const HALVINGS = 22;

/** As far as one can go from a place that is free towards another. */
const straight = (isFree: (atM: Vec3) => boolean, fromM: Vec3, toM: Vec3): Vec3 => {
  if (isFree(toM)) return toM;
  let [free, barred] = [fromM, toM];
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const middle: Vec3 = [(free[0] + barred[0]) / 2, (free[1] + barred[1]) / 2, (free[2] + barred[2]) / 2];
    if (isFree(middle)) free = middle;
    else barred = middle;
  }
  return free;
};

/**
 * Where a thing of this size comes to stand that is to go to `toM`: as near to it as the room lets it. What is lifted goes
 * straight up or down, what is moved over the floor keeps its height and slides along walls. What is let into a wall or
 * ceiling already, because it is mounted there, may go on reaching as far into it.
 */
const kept = (project: Project, fromM: Vec3, toM: Vec3, [width, height, depth]: Vec3): Vec3 => {
  const shape = roomShape(project);
  const around = (share: number): Vec3 => [(width / 2) * share, (height / 2) * share, (depth / 2) * share];
  const share = SHRUNK.find((one) => shape.contains(fromM, around(one)));
  const near = shape.nearestInside(toM, around(share ?? 1));
  const isFree = (atM: Vec3): boolean => shape.contains(atM, around(share ?? 1));
  const lifted = fromM[0] === toM[0] && fromM[2] === toM[2];
  const level = fromM[1] === toM[1];
  if (share === undefined || (level && near[1] === toM[1]) || (!level && !lifted)) return cleaned(near);
  if (lifted) return cleaned(straight(isFree, fromM, toM));
  const across = straight(isFree, fromM, [toM[0], fromM[1], fromM[2]]);
  return cleaned(straight(isFree, across, [across[0], fromM[1], toM[2]]));
};

const clampTo = (value: number, max: number): number => Math.min(Math.max(0, value), Math.max(0, max));

/** An opening or patch at another place of its surface, kept whole on it. */
export const slideOnSurface = (
  project: Project,
  ref: ItemRef & { kind: 'opening' | 'patch' },
  byAlongM: number,
  byUpM: number,
): Edit => {
  const list = ref.kind === 'opening' ? 'openings' : 'patches';
  const index = project.room[list].findIndex(({ id }) => id === ref.id);
  if (index < 0) return noSuch(ref);
  if (isLocked(project, ref)) return lockedEdit(project, ref);
  const item: Opening | Patch = project.room[list][index];
  const frame = frameOf(project, item);
  if (!frame) return { ok: true, project };
  const fromM = clean(clampTo(item.fromM + byAlongM, frame.alongM - item.widthM));
  const bottomM = clean(clampTo(item.bottomM + byUpM, reachUpM(frame, { ...item, fromM }) - item.heightM));
  if (fromM === item.fromM && bottomM === item.bottomM) return { ok: true, project };
  return setValue(project, ['room', list, index], { ...item, fromM, bottomM });
};

const shiftObject = (project: Project, id: string, byM: Vec3): Edit => {
  const index = project.room.objects.findIndex((one) => one.id === id);
  const object = project.room.objects[index];
  const sizeM = object.maxM.map((max, axis) => max - object.minM[axis]) as unknown as Vec3;
  const middle = object.minM.map((min, axis) => min + sizeM[axis] / 2) as unknown as Vec3;
  const to = kept(project, middle, moved(middle, byM), sizeM);
  const by = to.map((value, axis) => value - middle[axis]) as unknown as Vec3;
  const minM = cleaned(moved(object.minM, by));
  const maxM = cleaned(moved(object.maxM, by));
  return setValue(project, ['room', 'objects', index], { ...object, minM, maxM });
};

const shiftSource = (project: Project, kind: 'loudspeaker' | 'subwoofer', id: string, byM: Vec3): Edit => {
  const list = kind === 'loudspeaker' ? project.loudspeakers : project.subwoofers;
  const { atM, sizeM } = list.find((one) => one.id === id)!;
  const move = kind === 'loudspeaker' ? moveLoudspeaker : moveSubwoofer;
  return move(project, id, kept(project, atM, moved(atM, byM), sizeM));
};

/** The picture across, up or off its wall; kept inside the room. */
const shiftPicture = (project: Project, [dx, dy, dz]: Vec3): Edit => {
  const { picture } = project;
  const { widthM, aspect, centreXM, bottomM, offFrontWallM } = picture;
  const sizeM: Vec3 = [widthM, widthM / aspect, 0];
  const frontZM = roomShape(project).minM[2];
  const from: Vec3 = [centreXM, bottomM + sizeM[1] / 2, frontZM + offFrontWallM];
  const to = moved(from, [dx, dy, dz]);
  const [x, y, at] = kept(project, from, to, sizeM);
  const z = clean(at - frontZM);
  const bottom = Math.max(0, clean(y - sizeM[1] / 2));
  if (x === centreXM && bottom === bottomM && z === offFrontWallM) return { ok: true, project };
  return setValue(project, ['picture'], { ...picture, centreXM: x, bottomM: bottom, offFrontWallM: z });
};

export const shiftProjector = (project: Project, byM: Vec3): Edit => {
  const { projector } = project.picture;
  if (!projector) return { ok: true, project };
  const to = kept(project, projector.atM, moved(projector.atM, byM), [0.42, 0.15, 0.36]);
  return setValue(project, ['picture', 'projector', 'atM'], [...to]);
};

/** One seat, out of line with its row when it is moved towards the picture or away from it. */
const shiftSeat = (project: Project, id: string, [dx, , dz]: Vec3): Edit => {
  const [rowIndex, seatIndex] = seatIndices(project, id)!;
  const row = project.rows[rowIndex];
  const seat = row.seats[seatIndex];
  const wanted = { xM: clean(seat.xM + dx), ...(dz === 0 ? {} : { eyeZM: clean((seat.eyeZM ?? row.eyeZM) + dz) }) };
  return moveSeat(project, id, clampSeatInside(project, id, wanted));
};

/** A row with its seats, stopped where the first of them would leave the room. */
export const shiftRow = (project: Project, id: string, byXM: number, byZM: number): Edit => {
  const row = project.rows.find((one) => one.id === id);
  if (!row) return noSuch({ kind: 'row', id });
  let x = byXM;
  let z = byZM;
  for (const seat of row.seats) {
    const from = { xM: seat.xM, eyeZM: seat.eyeZM ?? row.eyeZM };
    const to = clampSeatInside(project, seat.id, { xM: from.xM + byXM, eyeZM: from.eyeZM + byZM });
    if (Math.abs(to.xM - from.xM) < Math.abs(x)) x = to.xM - from.xM;
    if (Math.abs((to.eyeZM ?? from.eyeZM) - from.eyeZM) < Math.abs(z)) z = (to.eyeZM ?? from.eyeZM) - from.eyeZM;
  }
  const eyeZM = clean(row.eyeZM + z);
  const there = moveRow(project, id, { eyeZM, byXM: x });
  if (!there.ok || there.project === project) return there;
  const index = there.project.rows.findIndex((one) => one.id === id);
  const seats = there.project.rows[index].seats.map((seat) => ({
    ...seat,
    xM: clean(seat.xM),
    ...(seat.eyeZM === undefined ? {} : { eyeZM: clean(seat.eyeZM) }),
  }));
  return { ok: true, project: withValue(there.project, ['rows', index, 'seats'], seats) as Project };
};

/**
 * Moves one thing by so much along the document's axes, kept inside the room; what it cannot do (a seat cannot rise, a
 * window cannot leave its wall) is left out. Refused when it is locked.
 */
export const shiftItem = (project: Project, ref: ItemRef, byM: Vec3): Edit => {
  const { kind, id } = ref;
  if (!keysOf(project, ref) || kind === 'surface') return noSuch(ref);
  if (isLocked(project, ref)) return lockedEdit(project, ref);
  if (byM.every((value) => value === 0)) return { ok: true, project };
  switch (kind) {
    case 'loudspeaker':
    case 'subwoofer':
      return shiftSource(project, kind, id, byM);
    case 'object':
      return shiftObject(project, id, byM);
    case 'picture':
      return shiftPicture(project, byM);
    case 'row':
      return shiftRow(project, id, byM[0], byM[2]);
    case 'seat':
      return shiftSeat(project, id, byM);
    case 'opening':
    case 'patch': {
      const item = project.room[kind === 'opening' ? 'openings' : 'patches'].find((one) => one.id === id)!;
      const frame = frameOf(project, item);
      return frame
        ? slideOnSurface(project, { kind, id }, dot(byM, frame.u), dot(byM, frame.v) / dot(frame.v, frame.v))
        : { ok: true, project };
    }
  }
};
