import { useEffect, useLayoutEffect, useMemo } from 'react';
import { useStore } from 'zustand';
import { mix, type Vec3 } from '../../math/vec3.ts';
import { type Extent, joined } from '../../model/extents.ts';
import { handlesFor } from '../../model/handles/handles.ts';
import { pointOn } from '../../model/room/places.ts';
import { roomShape } from '../../model/room/shape.ts';
import { chosenItems } from '../../state/chosen.ts';
import { requestFrame } from '../../state/frames.ts';
import { useDocument, useSession } from '../../state/view.tsx';
import { handleValue } from '../../words/handles.ts';
import { formatQuantity } from '../../words/quantities.ts';
import { snapText, stopText } from '../../words/snap.ts';
import { useKit } from '../kit.ts';
import type { Label } from '../overlays/label-board.ts';
import type { LineStyle } from '../overlays/lines.ts';
import { TONE } from '../overlays/tones.ts';
import { useLines } from '../overlays/use-lines.ts';
import { type Dimension, dimensionsOf, dimensionTicks } from './dimensions.ts';
import type { Drawn } from './surface-draw.ts';

const FINE: LineStyle = { widthPx: 1.5, casing: true, hidden: 0.5 };
const ABOVE_M = 0.012;
const MEASURE_PRIORITY = 120;
const REASON_PRIORITY = 115;
/** What is drawn on a surface stands this much before it. */
const BEFORE_M = 0.01;

const drawnLoop = ({ point: { frame }, rect }: Drawn): Vec3[] => {
  const at = (along: number, up: number): Vec3 => {
    const p = pointOn(frame, rect.fromM + along * rect.widthM, rect.bottomM + up * rect.heightM);
    return [p[0] + frame.n[0] * BEFORE_M, p[1] + frame.n[1] * BEFORE_M, p[2] + frame.n[2] * BEFORE_M];
  };
  return [at(0, 0), at(1, 0), at(1, 1), at(0, 1), at(0, 0)];
};

interface Props {
  /** What is being moved. */
  readonly extents: readonly Extent[];
  readonly mapM: number | null;
}

/** Measures while the hand moves or draws something: dimension lines, the number it changes, and why it stopped. */
export const HandMarks = ({ extents, mapM }: Props) => {
  const { labels, hand } = useKit();
  const project = useDocument((state) => state.project);
  const selection = useSession((state) => state.selection);
  const alsoSelected = useSession((state) => state.alsoSelected);
  const reasons = useStore(hand, (state) => state.reasons);
  const stopped = useStore(hand, (state) => state.stopped);
  const drawn = useStore(hand, (state) => state.drawn);
  const held = useStore(hand, (state) => state.held);
  const lines = useLines(FINE);
  const { units } = project.display;
  const extent = joined(extents);

  const dimensions = useMemo((): readonly Dimension[] => {
    if (!extent) return [];
    const under = mapM !== null && extent.minM[1] < mapM;
    return dimensionsOf(extent, roomShape(project), (under ? mapM : extent.minM[1]) + ABOVE_M);
  }, [project, extent, mapM]);

  const handle = useMemo(
    () =>
      held === null
        ? undefined
        : handlesFor(project, chosenItems(project, { selection, alsoSelected })).find(({ id }) => id === held),
    [project, selection, alsoSelected, held],
  );

  useLayoutEffect(() => {
    lines.begin();
    for (const dimension of dimensions) {
      lines.line([dimension.fromM, dimension.toM], TONE.strong);
      lines.pieces(dimensionTicks(dimension), TONE.strong);
    }
    if (drawn) lines.line(drawnLoop(drawn), TONE.strong);
    lines.end();
    requestFrame('session');
  }, [lines, dimensions, drawn]);

  useEffect(() => {
    const measure = (key: string, atM: Vec3, value: string, after?: string, priority = MEASURE_PRIORITY): Label => ({
      key,
      atM,
      value,
      after,
      priority,
      tone: 'chosen',
    });
    const found = dimensions.map(({ key, fromM, toM, lengthM }) =>
      measure(key, mix(fromM, toM, 0.5), formatQuantity(lengthM, 'length', units)),
    );
    if (drawn) {
      const [near, , far] = drawnLoop(drawn);
      const m = (value: number) => formatQuantity(value, 'length', units);
      const { widthM, heightM, fromM } = drawn.rect;
      found.push(measure('drawn', mix(near, far, 0.5), `${m(widthM)} × ${m(heightM)}`, `${m(fromM)} along`));
    }
    const value = handle && handleValue(project, handle);
    const at = handle?.atM ?? (extent && mix(extent.minM, extent.maxM, 0.5));
    if (value && at) found.push(measure('value', at, value));
    const why = stopped ? stopText(project, stopped) : reasons.map((reason) => snapText(project, reason)).join('; ');
    if (at && why !== '') found.push({ ...measure('reason', at, why, undefined, REASON_PRIORITY), tone: 'plain' });
    labels.set('hand', found);
    requestFrame('session');
  }, [labels, project, dimensions, units, drawn, handle, reasons, stopped, extent]);

  return <primitive object={lines.object} />;
};
