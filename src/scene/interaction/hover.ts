import type { ItemRef } from '../../model/project.ts';
import { sameItem } from '../../state/chosen.ts';
import type { View } from '../../state/view.tsx';
import { levelAt, valueAt } from '../overlays/level-map.ts';
import { pointOnSlice } from '../overlays/slice-geometry.ts';
import { sliceTurn } from '../overlays/slice-turn.ts';
import { covers, floorThings, footprintOf } from './footprints.ts';
import type { Hit } from './pick.ts';

/** The item under a hit; on the bass floor, the thing whose outline is drawn there. */
export const itemAt = (view: View, hit: Hit | null): ItemRef | null => {
  if (!hit?.floor) return hit?.ref ?? null;
  const { project } = view.document.getState();
  if (view.results.getState().slice?.value.cut.normal !== 'y') return null;
  const [x, , z] = hit.atM;
  return (
    floorThings(project).find((ref) => {
      const print = footprintOf(project, ref);
      return print !== null && covers(print, x, z);
    }) ?? null
  );
};

/** Tells the session what is under the pointer: the item, and what the bass floor says there. */
export const hover = (view: View, hit: Hit | null): void => {
  const { session, results } = view;
  const { hovered, probe } = session.getState();
  const item = itemAt(view, hit);
  if (!sameItem(item, hovered)) session.setState({ hovered: item });
  const slice = results.getState().slice?.value;
  if (!hit?.floor || !slice) {
    if (probe) session.setState({ probe: null });
    return;
  }
  const [u, v] = pointOnSlice(slice.cut, hit.atM);
  const value = valueAt(slice, u, v, sliceTurn.radians);
  session.setState({ probe: { atM: hit.atM, levelDb: levelAt(slice, u, v), value } });
};
