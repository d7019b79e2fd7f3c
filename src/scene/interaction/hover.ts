import type { ItemRef } from '../../model/project.ts';
import { roomBox } from '../../model/room.ts';
import type { View } from '../../state/view.tsx';
import { levelAt } from '../overlays/level-map.ts';
import { covers, footprintOf, handlesOf } from './drag.ts';
import type { Hit } from './pick.ts';

export const sameRef = (a: ItemRef | null, b: ItemRef | null): boolean =>
  a === b || (a !== null && b !== null && a.kind === b.kind && a.id === b.id);

/** The item under a hit; on the bass floor, the thing whose outline is drawn there. */
export const itemAt = (view: View, hit: Hit | null): ItemRef | null => {
  if (!hit?.floor) return hit?.ref ?? null;
  const { project } = view.document.getState();
  const [x, , z] = hit.atM;
  return (
    handlesOf(project).find((ref) => {
      const print = footprintOf(project, ref);
      return print !== null && covers(print, x, z);
    }) ?? null
  );
};

/** Tells the session what is under the pointer: the item, and the level of the bass floor. */
export const hover = (view: View, hit: Hit | null): void => {
  const { session, results, document } = view;
  const { hovered, probe } = session.getState();
  const item = itemAt(view, hit);
  if (!sameRef(item, hovered)) session.setState({ hovered: item });
  const floor = results.getState().floor?.value;
  if (!hit?.floor || !floor) {
    if (probe) session.setState({ probe: null });
    return;
  }
  const { minM, maxM } = roomBox(document.getState().project);
  const [x, , z] = hit.atM;
  const xM = Math.min(maxM[0], Math.max(minM[0], x));
  const zM = Math.min(maxM[2], Math.max(minM[2], z));
  session.setState({ probe: { xM, zM, levelDb: levelAt(floor, xM, zM) } });
};
