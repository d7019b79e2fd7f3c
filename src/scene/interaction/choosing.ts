import { sofaOf } from '../../model/handles/things.ts';
import type { ItemRef, Project } from '../../model/project.ts';
import { chosenOnly, toggled } from '../../state/chosen.ts';
import type { View } from '../../state/view.tsx';
import type { SurfacePoint } from './surface-aim.ts';

const DOUBLE_MS = 350;

let lastClick: { readonly seatId: string; readonly at: number } | null = null;

/** A surface of the room as a thing that can be chosen; a polygon's wall by its edge. */
export const surfaceRef = ({ room }: Project, { surface, edge }: SurfacePoint): ItemRef => ({
  kind: 'surface',
  id: room.plan.shape === 'polygon' && edge !== null ? String(edge) : surface,
});

/** What a click on a seat chooses: of a sofa, which is one piece, first all of it, and from then on the seat. */
const chosenBy = (project: Project, seat: ItemRef, selection: ItemRef | null): ItemRef => {
  const sofa = sofaOf(project, seat.id);
  if (!sofa) return seat;
  const within =
    selection?.kind === 'row'
      ? selection.id === sofa.id
      : selection?.kind === 'seat' && sofa.seats.some(({ id }) => id === selection.id);
  return within ? seat : { kind: 'row', id: sofa.id };
};

/** Chooses what was clicked; with `add` it joins what is chosen or leaves it. A quick second click on a seat sits in it. */
export const choose = ({ document, session }: View, ref: ItemRef | null, add: boolean): void => {
  if (add) {
    if (ref && ref.kind !== 'surface') session.setState(toggled(session.getState(), ref));
    else session.setState({ gathering: false });
    return;
  }
  if (ref?.kind !== 'seat') {
    session.setState(chosenOnly(ref ? [ref] : []));
    lastClick = null;
    return;
  }
  const at = performance.now();
  const again = lastClick?.seatId === ref.id && at - lastClick.at < DOUBLE_MS;
  lastClick = again ? null : { seatId: ref.id, at };
  const chosen = chosenBy(document.getState().project, ref, session.getState().selection);
  session.setState({ ...chosenOnly([chosen]), seatId: ref.id, ...(again ? { mode: 'sit' } : {}) });
};
