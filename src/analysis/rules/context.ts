import type { ItemRef, Loudspeaker, Project, TargetSet } from '../../model/project.ts';
import { referenceSeatId, type SeatPose, seatPoses } from '../../model/seating.ts';
import type { BassReadout, GeometryReadout, LoudspeakerReadout, SeatReadout } from '../types.ts';

/** What every measurement may look at. */
export interface Context {
  readonly project: Project;
  readonly set: TargetSet;
  readonly geometry: GeometryReadout;
  /** Null while it is being computed. */
  readonly bass: BassReadout | null;
  readonly poses: readonly SeatPose[];
  readonly seats: ReadonlyMap<string, SeatReadout>;
  readonly reference: SeatReadout;
}

export const contextOf = (project: Project, geometry: GeometryReadout, bass: BassReadout | null): Context => {
  const seats = new Map(geometry.seats.map((seat) => [seat.id, seat]));
  const reference = seats.get(referenceSeatId(project)) ?? geometry.seats[0];
  return { project, set: project.targets.set, geometry, bass, poses: seatPoses(project), seats, reference };
};

export const seatRef = (id: string): ItemRef => ({ kind: 'seat', id });
export const rowRef = (id: string): ItemRef => ({ kind: 'row', id });
export const loudspeakerRef = (id: string): ItemRef => ({ kind: 'loudspeaker', id });
export const pictureRef: ItemRef = { kind: 'picture', id: 'picture' };

/** A loudspeaker of the document with what a seat's readout says of it. */
export interface Heard {
  readonly loudspeaker: Loudspeaker;
  readonly readout: LoudspeakerReadout;
}

/** The loudspeakers as a seat hears them, in the document's order. */
export const heardFrom = ({ project }: Context, seat: SeatReadout): Heard[] =>
  project.loudspeakers.map((loudspeaker, index) => ({ loudspeaker, readout: seat.loudspeakers[index] }));

export const isCentre = ({ channel }: Loudspeaker): boolean => channel === 'M+000';
