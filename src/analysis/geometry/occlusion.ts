import type { Project } from '../../model/project.ts';
import type { SeatPose } from '../../model/seating.ts';
import { type ItemOccluder, occluders, personOccluder } from '../../shapes/occluders.ts';

/** What may hide things in a room, as one seat looks past it. */
export interface Hiding {
  /** Everything that may hide the picture from a seat: not its own sitter and chair, not the picture's frame. */
  fromSeat(seatId: string): readonly ItemOccluder[];
  /** Everything that may hide a loudspeaker: not one's own sitter and chair, not its own cabinet; an opaque picture does. */
  fromSeatTo(seatId: string, loudspeakerId: string): readonly ItemOccluder[];
}

/**
 * Everything in a room that can hide something but its people. Subwoofers are left out: the contract counts heads, backs
 * and objects, and so the drag of a subwoofer recomputes no line of sight.
 */
export const thingsIn = (project: Project): ItemOccluder[] =>
  occluders(project, { people: () => null, subwoofers: false });

/** What things and a set of seated people, as the file seats them or all of them tall, hide from one another. */
export const hidingBy = (things: readonly ItemOccluder[], people: readonly SeatPose[]): Hiding => {
  const bodies = [...things, ...people.flatMap(personOccluder)];
  const bySeat = new Map<string, readonly ItemOccluder[]>();
  /** All but one seat's own sitter and chair. */
  const apartFrom = (seatId: string): readonly ItemOccluder[] => {
    const found = bySeat.get(seatId);
    if (found) return found;
    const made = bodies.filter((body) => body.seatId !== seatId);
    bySeat.set(seatId, made);
    return made;
  };
  return {
    fromSeat: (seatId) => apartFrom(seatId).filter(({ kind }) => kind !== 'picture'),
    fromSeatTo: (seatId, loudspeakerId) =>
      apartFrom(seatId).filter(({ kind, id }) => kind !== 'loudspeaker' || id !== loudspeakerId),
  };
};
