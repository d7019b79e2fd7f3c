import { useFrame } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useMemo, useRef } from 'react';
import { clearanceOf, rowEyes } from '../../analysis/geometry/clearance.ts';
import { mix, type Vec3 } from '../../math/vec3.ts';
import type { Project } from '../../model/project.ts';
import { seatPoses } from '../../model/seating.ts';
import { pictureFace } from '../../shapes/picture.ts';
import { requestFrame } from '../../state/frames.ts';
import { useDocument, useResults, useSession } from '../../state/view.tsx';
import { useKit } from '../kit.ts';
import { onPicture } from '../rigs/surroundings.ts';
import type { LineStyle } from './lines.ts';
import { besideTheBass } from './shown.ts';
import { firstHidden, hidersOf } from './sight-cast.ts';
import { TONE } from './tones.ts';
import { useLines } from './use-lines.ts';

const CLEAR: LineStyle = { widthPx: 1.5, opacity: 0.9, casing: true, hidden: 0.25 };
const HIDDEN: LineStyle = { widthPx: 1.5, opacity: 0.55, dashM: [0.06, 0.06], hidden: 0.2 };
const DIMENSION: LineStyle = { widthPx: 1.5, casing: true, hidden: 0.5 };
const TICK_M = 0.06;
const PRIORITY = 70;

interface Crossing {
  readonly lowM: Vec3;
  readonly highM: Vec3;
}

interface Lines {
  readonly eyeM: Vec3;
  readonly endsM: readonly Vec3[];
  /** The row in front that is passed most closely: its eyes' height and the line's. */
  readonly crossing: Crossing | null;
}

const linesOf = (project: Project, seatId: string): Lines | null => {
  const poses = seatPoses(project);
  const pose = poses.find(({ seat }) => seat.id === seatId);
  if (!pose) return null;
  const face = pictureFace(project);
  const { eyeM } = pose;
  const lower = onPicture(face, 0, -1);
  const rows = rowEyes(poses);
  const least = clearanceOf(pose, lower, rows);
  const row = rows.find(({ id }) => id === least?.rowId);
  const highM = row && mix(eyeM, lower, (eyeM[2] - row.eyeZM) / (eyeM[2] - lower[2]));
  return {
    eyeM,
    endsM: [onPicture(face, 0, 1), lower, onPicture(face, -1, 0), onPicture(face, 1, 0)],
    crossing: row && highM ? { lowM: [highM[0], row.eyeHeightM, row.eyeZM], highM } : null,
  };
};

const ticks = ({ lowM, highM }: Crossing): Vec3[] =>
  [lowM, highM].flatMap(([x, y, z]): Vec3[] => [
    [x - TICK_M / 2, y, z],
    [x + TICK_M / 2, y, z],
  ]);

/** From the chosen seat's eye to the picture's edges, dashed from where something hides the rest, and the C-value. */
export const Sightlines = () => {
  const { labels } = useKit();
  const project = useDocument((state) => state.project);
  const seatId = useSession((state) => state.seatId);
  const shown = useSession((state) => state.overlays.sightlines && besideTheBass(state));
  const named = useSession((state) => state.overlays.labels);
  const clearanceMm = useResults(
    ({ geometry }) => geometry?.value.seats.find(({ id }) => id === seatId)?.picture.clearanceMm ?? null,
  );
  const clear = useLines(CLEAR);
  const hidden = useLines(HIDDEN);
  const dimension = useLines(DIMENSION);
  const lines = useMemo(() => (shown ? linesOf(project, seatId) : null), [project, seatId, shown]);
  const pending = useRef<Lines | null>(null);

  useLayoutEffect(() => {
    pending.current = lines;
    dimension.begin();
    if (lines?.crossing) {
      dimension.line([lines.crossing.lowM, lines.crossing.highM], TONE.strong);
      dimension.pieces(ticks(lines.crossing), TONE.strong);
    }
    dimension.end();
    requestFrame('session');
  }, [lines, dimension]);

  // What hides a line is asked of the drawn scene itself, once a change, when its parts stand where they belong.
  useFrame(({ scene }) => {
    const { current } = pending;
    if (!current) return;
    pending.current = null;
    scene.updateMatrixWorld();
    const hiders = hidersOf(scene, seatId);
    clear.begin();
    hidden.begin();
    for (const end of current.endsM) {
      const at = firstHidden(hiders, current.eyeM, end);
      clear.line([current.eyeM, at ?? end], TONE.sight);
      if (at) hidden.line([at, end], TONE.sight);
    }
    clear.end();
    hidden.end();
  }, -4);

  const crossing = lines?.crossing ?? null;
  useEffect(() => {
    const written = crossing && clearanceMm !== null && named;
    labels.set(
      'sight',
      written
        ? [
            {
              key: 'C',
              atM: crossing.highM,
              before: 'C-value',
              value: `${Math.round(clearanceMm)}`,
              after: 'mm',
              priority: PRIORITY,
            },
          ]
        : [],
    );
    requestFrame('session');
    return () => labels.set('sight', []);
  }, [labels, crossing, clearanceMm, named]);

  if (!lines) return null;
  return (
    <group>
      {[clear, hidden, dimension].map(({ object }) => (
        <primitive key={object.id} object={object} />
      ))}
    </group>
  );
};
