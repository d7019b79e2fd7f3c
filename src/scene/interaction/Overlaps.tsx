import { useEffect, useLayoutEffect, useMemo } from 'react';
import type { Vec3 } from '../../math/vec3.ts';
import { type Extent, extentOf, joined, middleOf } from '../../model/extents.ts';
import type { ItemRef } from '../../model/project.ts';
import { overlapsOf } from '../../shapes/overlaps.ts';
import { requestFrame } from '../../state/frames.ts';
import { useDocument, useView } from '../../state/view.tsx';
import { overlapText } from '../../words/things.ts';
import { useKit } from '../kit.ts';
import type { LineStyle } from '../overlays/lines.ts';
import { useLines } from '../overlays/use-lines.ts';

const CAUTION = '#e0a94a';
const STYLE: LineStyle = { widthPx: 2, casing: true, hidden: 0.7, dashM: [0.06, 0.04] };
const PRIORITY = 105;
const MOST_SAID = 3;

/** The twelve edges of a thing's box, as pairs of points. */
const edges = ({ minM, maxM }: Extent): Vec3[] => {
  const at = (x: number, y: number, z: number): Vec3 => [
    x ? maxM[0] : minM[0],
    y ? maxM[1] : minM[1],
    z ? maxM[2] : minM[2],
  ];
  const ends = [0, 1];
  return ends.flatMap((a) =>
    ends.flatMap((b) => [at(0, a, b), at(1, a, b), at(a, 0, b), at(a, 1, b), at(a, b, 0), at(a, b, 1)]),
  );
};

/** What stands in another's room is shown and said, and left to the person: round both a caution's outline, with a sentence. */
export const Overlaps = ({ refs }: { readonly refs: readonly ItemRef[] }) => {
  const { labels } = useKit();
  const { session } = useView();
  const project = useDocument((state) => state.project);
  const lines = useLines(STYLE);
  const overlaps = useMemo(() => overlapsOf(project, refs), [project, refs]);

  useLayoutEffect(() => {
    lines.begin();
    for (const { a, b } of overlaps)
      for (const ref of [a, b]) {
        const extent = extentOf(project, ref);
        if (extent) lines.pieces(edges(extent), CAUTION);
      }
    lines.end();
    requestFrame('session');
  }, [lines, overlaps, project]);

  useEffect(() => {
    const said = overlaps.slice(0, MOST_SAID).map(({ a, b }) => ({ a, b, text: overlapText(project, a, b) }));
    labels.set(
      'overlaps',
      said.flatMap(({ a, b, text }) => {
        const extent = joined([a, b].flatMap((ref) => extentOf(project, ref) ?? []));
        if (!extent) return [];
        return [{ key: text, atM: middleOf(extent), value: text, priority: PRIORITY, tone: 'caution' as const }];
      }),
    );
    const texts = said.map(({ text }) => text);
    if (texts.join() !== session.getState().overlaps.join()) session.setState({ overlaps: texts });
    requestFrame('session');
  }, [labels, session, overlaps, project]);
  useEffect(
    () => () => {
      labels.set('overlaps', []);
      if (session.getState().overlaps.length > 0) session.setState({ overlaps: [] });
    },
    [labels, session],
  );
  return <primitive object={lines.object} />;
};
