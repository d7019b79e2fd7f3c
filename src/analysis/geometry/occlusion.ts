import { tallPerson } from '../../engines/sight/people.ts';
import type { Project } from '../../model/project.ts';
import { type ItemOccluder, type OccluderOptions, occluders } from '../../shapes/occluders.ts';

/** What may hide things in a room, as one seat looks past it. */
export interface Hiding {
  /** Everything that may hide the picture from a seat: not its own sitter and chair, not the picture's frame. */
  fromSeat(seatId: string): readonly ItemOccluder[];
  /** Everything that may hide a loudspeaker: not one's own sitter and chair, not its own cabinet; an opaque picture does. */
  fromSeatTo(seatId: string, loudspeakerId: string): readonly ItemOccluder[];
}

/**
 * The bodies of a room, people as the file seats them or all of them tall. Subwoofers are left out: the contract counts
 * heads, backs and objects, and so the drag of a subwoofer recomputes no line of sight.
 */
export const hidingIn = (project: Project, people: 'given' | 'tall'): Hiding => {
  const seated: OccluderOptions = people === 'tall' ? { people: ({ body }) => ({ ...body, ...tallPerson }) } : {};
  const bodies = occluders(project, seated).filter(({ kind }) => kind !== 'subwoofer');
  return {
    fromSeat: (seatId) => bodies.filter((body) => body.kind !== 'picture' && body.seatId !== seatId),
    fromSeatTo: (seatId, loudspeakerId) =>
      bodies.filter((body) => body.seatId !== seatId && !(body.kind === 'loudspeaker' && body.id === loudspeakerId)),
  };
};
