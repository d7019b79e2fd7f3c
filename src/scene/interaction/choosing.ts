import type { ItemRef, Project } from '../../model/project.ts';
import { chosenOnly, toggled } from '../../state/chosen.ts';
import type { SessionStore } from '../../state/session.ts';
import type { SurfacePoint } from './surface-aim.ts';

const DOUBLE_MS = 350;

let lastClick: { readonly seatId: string; readonly at: number } | null = null;

/** A surface of the room as a thing that can be chosen; a polygon's wall by its edge. */
export const surfaceRef = ({ room }: Project, { surface, edge }: SurfacePoint): ItemRef => ({
  kind: 'surface',
  id: room.plan.shape === 'polygon' && edge !== null ? String(edge) : surface,
});

/** Chooses what was clicked; with `add` it joins what is chosen or leaves it. A second click on a seat sits in it. */
export const choose = (session: SessionStore, ref: ItemRef | null, add: boolean): void => {
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
  session.setState({ ...chosenOnly([ref]), seatId: ref.id, ...(again ? { mode: 'sit' } : {}) });
};
