import type { Occluder } from '../../engines/sight/sight-pyramid.ts';
import type { Project } from '../../model/project.ts';

/** What may hide things in a room: each body with what it belongs to, so that one can look past one's own. */
export interface Hiding {
  /** Everything but what belongs to this seat: its sitter and its chair. For the picture. */
  fromSeat(seatId: string): readonly Occluder[];
  /** The same without a loudspeaker's own cabinet, and with an opaque picture. */
  fromSeatTo(seatId: string, loudspeakerId: string): readonly Occluder[];
}

export const hidingIn = (_project: Project, _people: 'given' | 'tall'): Hiding => ({
  fromSeat: () => [],
  fromSeatTo: () => [],
});
