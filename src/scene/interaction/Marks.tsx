import { useEffect, useLayoutEffect, useMemo } from 'react';
import type { SliceAs } from '../../analysis/slice/wish.ts';
import type { Vec3 } from '../../math/vec3.ts';
import { extentOf, middleOf } from '../../model/extents.ts';
import { aimPoint } from '../../model/handles/things.ts';
import { chosenItems, sameItem } from '../../state/chosen.ts';
import { useFloorShown } from '../../state/floor-shown.ts';
import { requestFrame } from '../../state/frames.ts';
import { useDocument, useResults, useSession } from '../../state/view.tsx';
import { useKit } from '../kit.ts';
import type { Label } from '../overlays/label-board.ts';
import type { LineStyle } from '../overlays/lines.ts';
import { SeatMarks } from '../overlays/SeatMarks.tsx';
import { drawnAtM } from '../overlays/slice-geometry.ts';
import { TONE } from '../overlays/tones.ts';
import { useLines } from '../overlays/use-lines.ts';
import { type Footprint, floorThings, footprintOf } from './footprints.ts';
import { HandMarks } from './HandMarks.tsx';
import { Overlaps } from './Overlaps.tsx';
import { surfaceLoop } from './surface-loops.ts';

const PLAN: LineStyle = { widthPx: 1.25, opacity: 0.9, casing: true, hidden: 0 };
const MARKED: LineStyle = { widthPx: 1.5, casing: true, hidden: 0.5 };
const ABOVE_M = 0.012;
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
  const shown = useFloorShown();
  return useResults(({ slice }) => (shown && slice?.value.cut.normal === 'y' ? drawnAtM(slice.value.cut) : null));
};

/** A thing's plan on the bass floor, what the pointer is over, what is chosen, and what the hand is doing. */
export const Marks = () => {
  const project = useDocument((state) => state.project);
  const hovered = useSession((state) => state.hovered);
  const selection = useSession((state) => state.selection);
  const alsoSelected = useSession((state) => state.alsoSelected);
  const dragging = useSession((state) => state.dragging);
  const mapM = useMapHeight();
  const overlook = useSession((state) => state.mode === 'overlook');
  const plan = useLines(PLAN);
  const marked = useLines(MARKED);
  const chosen = useMemo(() => chosenItems(project, { selection, alsoSelected }), [project, selection, alsoSelected]);

  useLayoutEffect(() => {
    plan.begin();
    marked.begin();
    const things = floorThings(project);
    const isThing = (ref: (typeof things)[number]) => things.some((one) => sameItem(one, ref));
    const others = [...chosen, ...(hovered ? [hovered] : [])].filter((ref) => !isThing(ref));
    for (const ref of overlook ? [...things, ...others] : []) {
      const print = footprintOf(project, ref);
      if (!print) continue;
      const held = sameItem(ref, dragging) || chosen.some((one) => sameItem(one, ref));
      const wanted = held || sameItem(ref, hovered);
      const standsOver = mapM !== null && print.baseM > mapM;
      const heightM =
        mapM === null || standsOver ? print.baseM + ABOVE_M : Math.max(mapM + ABOVE_M / 4, print.baseM + ABOVE_M);
      if (wanted) marked.line(outline(print, heightM), tint(held));
      else if (mapM !== null && ref.kind === 'subwoofer') plan.line(outline(print, heightM), TONE.brass);
    }
    for (const ref of overlook ? chosen : []) {
      const loop = surfaceLoop(project, ref);
      if (loop) marked.line(loop, TONE.strong);
      const from = ref.kind === 'loudspeaker' && chosen.length === 1 ? extentOf(project, ref) : null;
      const aim = from && aimPoint(project, ref.id);
      if (aim) marked.line([middleOf(from), aim], TONE.brass);
    }
    plan.end();
    marked.end();
    requestFrame('session');
  }, [plan, marked, project, hovered, chosen, dragging, mapM, overlook]);

  const held = dragging && (chosen.length > 1 ? chosen : [dragging]);
  const extents = held ? held.flatMap((ref) => extentOf(project, ref) ?? []) : [];
  return (
    <group>
      <primitive object={plan.object} />
      <primitive object={marked.object} />
      {mapM !== null && <SeatMarks heightM={mapM} />}
      <HandMarks extents={extents} mapM={mapM} />
      {overlook && <Overlaps refs={chosen} />}
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
