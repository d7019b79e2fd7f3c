import { followed } from '../../model/follow.ts';
import { referenceSeatId } from '../../model/seating.ts';
import type { View } from '../../state/view.tsx';

/** Keeps what is chosen to things that are there: renamed ones are followed, removed ones let go. */
export const feedSelection = ({ document, session }: View): (() => void) => {
  let before = document.getState().project;
  return document.subscribe(({ project }) => {
    if (project === before) return;
    const was = before;
    before = project;
    const { selection, alsoSelected, seatId } = session.getState();
    const now = [...(selection ? [selection] : []), ...alsoSelected];
    const [first, ...others] = now.flatMap((ref) => followed(was, project, ref) ?? []);
    const seat = followed(was, project, { kind: 'seat', id: seatId });
    const same = first === (selection ?? undefined) && others.every((ref, index) => ref === alsoSelected[index]);
    if (!same || others.length !== alsoSelected.length)
      session.setState({ selection: first ?? null, alsoSelected: others });
    if (seat?.id !== seatId) session.setState({ seatId: seat?.id ?? referenceSeatId(project) });
  });
};
