import { blockersOf } from '../../engines/sight/occlusion.ts';
import type { ItemRef, Project } from '../../model/project.ts';
import { sameBesides } from '../../model/same-besides.ts';
import { type SeatPose, seatPoses } from '../../model/seating.ts';
import type { ItemOccluder } from '../../shapes/occluders.ts';
import { pictureFace } from '../../shapes/picture.ts';
import { hidingBy, thingsIn } from './occlusion.ts';

/** What stands in the way: the thing itself, and what it is called. */
export interface Hider {
  readonly ref: ItemRef | null;
  readonly name: string;
}

const hiderFrom = (project: Project, { kind, id, seatId }: ItemOccluder): Hider => {
  if (seatId !== undefined) return { ref: { kind: 'seat', id: seatId }, name: seatId };
  if (kind === 'loudspeaker') return { ref: { kind, id }, name: `loudspeaker ${id}` };
  const object = project.room.objects.find((one) => one.id === id);
  return object ? { ref: { kind: 'object', id }, name: object.name || id } : { ref: null, name: 'part of the room' };
};

/** The last room's worst hiders, by seat: which is the worst is asked again and again while a subwoofer is moved. */
let last: { readonly project: Project; readonly bySeat: Map<string, ItemOccluder | null> } | null = null;

/** What hides most of the picture from a seat if it stood alone; null where nothing does. */
export const pictureHider = (project: Project, pose: SeatPose): Hider | null => {
  // Subwoofers hide nothing (see `thingsIn`).
  if (last === null || !sameBesides(last.project, project, 'subwoofers')) last = { project, bySeat: new Map() };
  const { bySeat } = last;
  let found = bySeat.get(pose.seat.id);
  if (found === undefined) {
    const things = hidingBy(thingsIn(project), seatPoses(project)).fromSeat(pose.seat.id);
    const [worst] = blockersOf(pose.eyeM, pictureFace(project), things);
    found = (worst && things.find(({ id }) => id === worst.id)) ?? null;
    bySeat.set(pose.seat.id, found);
  }
  return found && hiderFrom(project, found);
};
