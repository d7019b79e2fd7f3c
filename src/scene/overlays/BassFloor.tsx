import { useEffect, useLayoutEffect, useMemo } from 'react';
import { useFloorShown } from '../../state/floor-shown.ts';
import { requestFrame } from '../../state/frames.ts';
import { sliceLegend } from '../../state/slice-legend.ts';
import { useProjectBesides } from '../../state/steady-project.ts';
import { useDocument, useResults, useSession } from '../../state/view.tsx';
import { FloorShadow } from './FloorShadow.tsx';
import { FloorMap } from './floor-shader.ts';
import type { LineStyle } from './lines.ts';
import { NearSources } from './NearSources.tsx';
import { PressureWave } from './PressureWave.tsx';
import { mapOutline, sliceGeometry, slicePoint } from './slice-geometry.ts';
import { sliceTurn } from './slice-turn.ts';
import { TONE } from './tones.ts';
import { useLines } from './use-lines.ts';

const FLOOR = { kind: 'floor', id: 'floor' };
const RIM: LineStyle = { widthPx: 1.5, opacity: 0.95, hidden: 0.25 };

/** Whether the slice answers for the document and frequency of just now. */
const useSliceStale = (): boolean => {
  const revision = useDocument((state) => state.revision);
  const variant = useDocument((state) => state.variant);
  const frequencyHz = useSession((state) => state.frequencyHz);
  return useResults(({ slice }) =>
    slice === null
      ? false
      : slice.revision !== revision ||
        slice.variant !== variant ||
        (slice.value.bandHz === null && Math.abs(slice.value.frequencyHz - frequencyHz) > 0.01 * frequencyHz),
  );
};

/** The slice as a coloured map with contours and a thin brass rim; while sitting it is kept out of the view of the picture. */
export const BassFloor = () => {
  const slice = useResults((state) => state.slice?.value ?? null);
  const scale = useResults((state) => state.scale);
  const project = useProjectBesides('subwoofers');
  const alone = useSession((state) => state.slice.ownScale);
  const wanted = useFloorShown();
  const stale = useSliceStale();
  // The furniture stands under the map: while any of it is in hand only the rim is left.
  const aside = useSession(({ dragging }) => dragging !== null && dragging.kind !== 'subwoofer');
  const map = useMemo(() => new FloorMap(), []);
  const rim = useLines(RIM);
  useEffect(() => () => map.dispose(), [map]);

  const { normal = 'y', atM = 0 } = slice?.cut ?? {};
  const cut = useMemo(() => ({ normal, atM }), [normal, atM]);
  const outline = useMemo(() => mapOutline(project, cut), [project, cut]);
  const geometry = useMemo(() => sliceGeometry(cut, outline), [cut, outline]);
  useEffect(() => () => geometry.dispose(), [geometry]);

  useLayoutEffect(() => {
    if (!slice || !scale) return;
    map.show(slice, sliceLegend(slice, scale, alone));
    sliceTurn.radians = map.turnTo(0);
  }, [map, slice, scale, alone]);
  useLayoutEffect(() => map.dim(stale), [map, stale]);
  useLayoutEffect(() => {
    rim.begin();
    for (const corners of outline)
      rim.line(
        [...corners, corners[0]].map((corner) => slicePoint(cut, corner)),
        TONE.brass,
      );
    rim.end();
    requestFrame('session');
  }, [rim, outline, cut]);

  if (!slice || !wanted) return null;
  return (
    <group userData={FLOOR}>
      <mesh userData={FLOOR} material={map.material} geometry={geometry} visible={!aside} />
      <primitive object={rim.object} />
      <FloorShadow cut={cut} outline={outline} />
      <NearSources cut={cut} />
      {slice.as === 'pressure' && slice.pressure && <PressureWave map={map} />}
    </group>
  );
};
