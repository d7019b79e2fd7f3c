import { useLayoutEffect } from 'react';
import { radiansOf } from '../../math/angles.ts';
import type { Vec3 } from '../../math/vec3.ts';
import { type SeatPose, seatPoses } from '../../model/seating.ts';
import { requestFrame } from '../../state/frames.ts';
import { useProjectBesides } from '../../state/steady-project.ts';
import { useSession } from '../../state/view.tsx';
import type { LineStyle } from './lines.ts';
import { TONE } from './tones.ts';
import { useLines } from './use-lines.ts';

const OUTLINE: LineStyle = { widthPx: 1.5, casing: true, hidden: 0 };
const ABOVE_M = 0.004;
/** A chair in plan, from the middle of its sitter's head: its front edge, its back, and the inside of that back. */
const AHEAD_M = 0.58;
const BEHIND_M = 0.26;
const BACKREST_M = 0.16;
const HEAD_M = 0.1;
const HEAD_CORNERS = 20;

/** A seat's plan: the chair with its back, and the sitter's head. */
const seatLines = ({ earM, facingDeg, row }: SeatPose, heightM: number): Vec3[][] => {
  const turn = radiansOf(facingDeg);
  const half = row.seat.widthM / 2;
  const at = (right: number, behind: number): Vec3 => [
    earM[0] + right * Math.cos(turn) - behind * Math.sin(turn),
    heightM + ABOVE_M,
    earM[2] + right * Math.sin(turn) + behind * Math.cos(turn),
  ];
  const chair = [at(-half, -AHEAD_M), at(half, -AHEAD_M), at(half, BEHIND_M), at(-half, BEHIND_M), at(-half, -AHEAD_M)];
  const back = [at(-half, BACKREST_M), at(half, BACKREST_M)];
  const head = Array.from({ length: HEAD_CORNERS + 1 }, (_, i) => {
    const angle = (2 * Math.PI * i) / HEAD_CORNERS;
    return at(HEAD_M * Math.cos(angle), HEAD_M * Math.sin(angle));
  });
  return row.furniture === 'stool' ? [chair, head] : [chair, back, head];
};

/** Thin plans of the chairs on a level bass floor, so that one sees where people sit. */
export const SeatMarks = ({ heightM }: { readonly heightM: number }) => {
  const project = useProjectBesides('subwoofers');
  const seatId = useSession((state) => state.seatId);
  const lines = useLines(OUTLINE);
  useLayoutEffect(() => {
    lines.begin();
    for (const pose of seatPoses(project)) {
      // A chair on a platform above the map is seen itself.
      if (pose.row.floorM > heightM) continue;
      const tone = pose.seat.id === seatId ? TONE.strong : TONE.sight;
      for (const line of seatLines(pose, heightM)) lines.line(line, tone);
    }
    lines.end();
    requestFrame('session');
  }, [lines, project, seatId, heightM]);
  return <primitive object={lines.object} />;
};
