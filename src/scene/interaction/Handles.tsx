import { useFrame } from '@react-three/fiber';
import { useLayoutEffect, useMemo } from 'react';
import { PerspectiveCamera } from 'three';
import type { Vec3 } from '../../math/vec3.ts';
import { extentOf } from '../../model/extents.ts';
import type { Handle } from '../../model/handles/handle.ts';
import { handlesFor } from '../../model/handles/handles.ts';
import type { Project } from '../../model/project.ts';
import { chosenItems } from '../../state/chosen.ts';
import { useFloorShown } from '../../state/floor-shown.ts';
import { requestFrame } from '../../state/frames.ts';
import { useDocument, useResults, useSession, useView } from '../../state/view.tsx';
import { useKit } from '../kit.ts';
import { drawnAtM } from '../overlays/slice-geometry.ts';
import { placeBar } from './bar-place.ts';

const ON_FLOOR = new Set<Handle['kind']>(['place', 'facing', 'rowPlace', 'rowDistance']);

/** What lies under the bass floor is taken hold of where its outline is drawn on it. */
const lifted = (project: Project, handles: readonly Handle[], mapM: number | null): readonly Handle[] => {
  if (mapM === null) return handles;
  return handles.map((one) => {
    const extent = extentOf(project, one.ref);
    if (!extent || extent.minM[1] >= mapM) return one;
    if (one.atM[1] >= mapM && !ON_FLOOR.has(one.kind)) return one;
    if (extent.maxM[1] > mapM && !ON_FLOOR.has(one.kind)) return one;
    const [x, y, z] = one.atM;
    const atM: Vec3 = [x, y + mapM - extent.minM[1], z];
    return { ...one, atM };
  });
};

/** Inside the canvas: hands the chosen things' handles to the board and moves them, and the bar, after the camera. */
export const Handles = () => {
  const kit = useKit();
  const view = useView();
  const project = useDocument((state) => state.project);
  const selection = useSession((state) => state.selection);
  const alsoSelected = useSession((state) => state.alsoSelected);
  const shown = useSession((state) => state.mode === 'overlook' && !state.gathering && state.tool === null);
  const mapM = useResults(({ slice }) => (slice?.value.cut.normal === 'y' ? drawnAtM(slice.value.cut) : null));
  const mapShown = useFloorShown();
  const handles = useMemo(() => {
    if (!shown) return [];
    const chosen = chosenItems(project, { selection, alsoSelected });
    return lifted(project, handlesFor(project, chosen), mapShown ? mapM : null);
  }, [project, selection, alsoSelected, shown, mapM, mapShown]);

  useLayoutEffect(() => {
    kit.handles.set(handles);
    requestFrame('session');
  }, [kit, handles]);

  useFrame(({ camera }) => {
    const area = kit.rig.free;
    if (!area || !(camera instanceof PerspectiveCamera)) return;
    kit.handles.draw(camera, area);
    // Reading where the bar and the legend stand makes the page lay itself out: not in every frame of a drag.
    if (view.session.getState().dragging !== null) return;
    // The bar and the legend are panels': the scene only knows their marks, and where the bar belongs.
    const bar = document.querySelector<HTMLElement>('[data-selection-bar]');
    if (bar) placeBar(bar, kit.handles.shown(), area, document.querySelector('.legend'));
  }, -6);
  return null;
};
