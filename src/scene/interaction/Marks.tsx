import { useEffect, useLayoutEffect, useMemo } from 'react';
import type { SliceAs } from '../../analysis/slice/wish.ts';
import { mix, type Vec3 } from '../../math/vec3.ts';
import { roomBox } from '../../model/room.ts';
import { requestFrame } from '../../state/frames.ts';
import { useDocument, useResults, useSession } from '../../state/view.tsx';
import { formatQuantity } from '../../words/quantities.ts';
import { useKit } from '../kit.ts';
import type { Label } from '../overlays/label-board.ts';
import type { LineStyle } from '../overlays/lines.ts';
import { SeatMarks } from '../overlays/SeatMarks.tsx';
import { drawnAtM } from '../overlays/slice-geometry.ts';
import { TONE } from '../overlays/tones.ts';
import { useLines } from '../overlays/use-lines.ts';
import { type Dimension, dimensionTicks, wallDimensions } from './dimensions.ts';
import { type Footprint, footprintOf, handlesOf } from './drag.ts';
import { sameRef } from './hover.ts';

const PLAN: LineStyle = { widthPx: 1.25, opacity: 0.9, casing: true, hidden: 0 };
const MARKED: LineStyle = { widthPx: 1.5, casing: true, hidden: 0.5 };
const ABOVE_M = 0.012;
const DIMENSION_PRIORITY = 100;
const PROBE_PRIORITY = 110;

const outline = ({ minXM, maxXM, minZM, maxZM }: Footprint, heightM: number): Vec3[] => [
  [minXM, heightM, minZM],
  [maxXM, heightM, minZM],
  [maxXM, heightM, maxZM],
  [minXM, heightM, maxZM],
  [minXM, heightM, minZM],
];

/** Height of a level bass floor as drawn, null while there is none. */
const useMapHeight = (): number | null => {
  const shown = useSession((state) => state.slice.shown && state.mode === 'overlook');
  return useResults(({ slice }) => (shown && slice?.value.cut.normal === 'y' ? drawnAtM(slice.value.cut) : null));
};

/** A thing's plan on the bass floor, what the pointer is over, what is chosen, and how far a dragged thing is from the walls. */
export const Marks = () => {
  const { labels } = useKit();
  const project = useDocument((state) => state.project);
  const hovered = useSession((state) => state.hovered);
  const selection = useSession((state) => state.selection);
  const dragging = useSession((state) => state.dragging);
  const mapM = useMapHeight();
  const overlook = useSession((state) => state.mode === 'overlook');
  const plan = useLines(PLAN);
  const marked = useLines(MARKED);

  const dimensions = useMemo((): readonly Dimension[] => {
    const print = dragging && footprintOf(project, dragging);
    return print ? wallDimensions(print, roomBox(project), Math.max(print.baseM, mapM ?? 0) + ABOVE_M) : [];
  }, [project, dragging, mapM]);

  useLayoutEffect(() => {
    plan.begin();
    marked.begin();
    for (const ref of overlook ? handlesOf(project) : []) {
      const print = footprintOf(project, ref);
      if (!print) continue;
      const chosen = sameRef(ref, selection) || sameRef(ref, dragging);
      const wanted = chosen || sameRef(ref, hovered);
      const heightM = mapM === null ? print.baseM + ABOVE_M : Math.max(mapM + ABOVE_M / 4, print.baseM + ABOVE_M);
      if (wanted) marked.line(outline(print, heightM), tint(chosen));
      else if (mapM !== null && ref.kind === 'subwoofer') plan.line(outline(print, heightM), TONE.brass);
    }
    for (const dimension of dimensions) {
      marked.line([dimension.fromM, dimension.toM], TONE.strong);
      marked.pieces(dimensionTicks(dimension), TONE.strong);
    }
    plan.end();
    marked.end();
    requestFrame('session');
  }, [plan, marked, project, hovered, selection, dragging, mapM, overlook, dimensions]);

  const { units } = project.display;
  useEffect(() => {
    labels.set(
      'dimensions',
      dimensions.map(
        ({ key, fromM, toM, lengthM }): Label => ({
          key,
          atM: mix(fromM, toM, 0.5),
          value: formatQuantity(lengthM, 'length', units),
          priority: DIMENSION_PRIORITY,
          tone: 'chosen',
        }),
      ),
    );
    requestFrame('session');
  }, [labels, dimensions, units]);

  return (
    <group>
      <primitive object={plan.object} />
      <primitive object={marked.object} />
      {mapM !== null && <SeatMarks heightM={mapM} />}
      <ProbeLabel />
    </group>
  );
};

const tint = (chosen: boolean): string => (chosen ? TONE.strong : TONE.brass);

/** What the bass floor says under the pointer, on a card beside it. */
const ProbeLabel = () => {
  const { labels } = useKit();
  const probe = useSession((state) => state.probe);
  const as = useResults(({ slice }) => slice?.value.as ?? 'level');
  useEffect(() => {
    labels.set('probe', probe ? [{ key: 'level', atM: probe.atM, ...probeWords(probe, as) }] : []);
    requestFrame('session');
  }, [labels, probe, as]);
  return null;
};

type ProbeWords = Pick<Label, 'value' | 'after' | 'priority' | 'tone'>;

const decibels = (value: number, plus: string): string => `${value < 0 ? '\u2212' : plus}${Math.abs(value).toFixed(1)}`;

/** The level, or the difference with its sign; of a pressure its level too, which holds still while the sign changes. */
const probeWords = ({ levelDb, value }: { levelDb: number; value: number }, as: SliceAs): ProbeWords => ({
  value: as === 'difference' ? decibels(value, '+') : decibels(levelDb, ''),
  after: as === 'difference' ? 'dB from the mean' : 'dB',
  priority: PROBE_PRIORITY,
  tone: 'chosen',
});
