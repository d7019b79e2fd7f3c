import { blockersOf } from '../../engines/sight/occlusion.ts';
import type { ItemRef, Project } from '../../model/project.ts';
import type { SeatPose } from '../../model/seating.ts';
import type { ItemOccluder } from '../../shapes/occluders.ts';
import { pictureFace } from '../../shapes/picture.ts';
import { hidingBy, thingsIn } from './occlusion.ts';

/** What stands in the way: the thing itself, and what it is called. */
export interface Hider {
  readonly ref: ItemRef | null;
  readonly name: string;
}

const hiderFrom = (project: Project, { kind, id, seatId }: ItemOccluder): Hider => {
  if (seatId !== undefined) return { ref: { kind: 'seat', id: seatId }, name: `who sits in seat ${seatId}` };
  if (kind === 'loudspeaker') return { ref: { kind, id }, name: `loudspeaker ${id}` };
  const object = project.room.objects.find((one) => one.id === id);
  return object ? { ref: { kind: 'object', id }, name: object.name || id } : { ref: null, name: 'part of the room' };
};

/** What hides most of the picture from a seat if it stood alone; null where nothing does. */
export const pictureHider = (project: Project, poses: readonly SeatPose[], pose: SeatPose): Hider | null => {
  const things = hidingBy(thingsIn(project), poses).fromSeat(pose.seat.id);
  const [worst] = blockersOf(pose.eyeM, pictureFace(project), things);
  const found = worst && things.find(({ id }) => id === worst.id);
  return found ? hiderFrom(project, found) : null;
};
