import type { Vec3 } from '../../math/vec3.ts';
import type { ItemRef, Project } from '../project.ts';
import {
  acrossLines,
  guidesFor,
  heightLines,
  inLineLines,
  type Placing,
  quarterLines,
  wallLines,
} from './candidates.ts';
import { guideFor } from './guides.ts';
import { type Axis, lineFor, type SnapLine, undusted, wholeCm } from './lines.ts';
import type { SnapReason } from './reason.ts';

export interface SnapWish {
  readonly ref: ItemRef;
  /** The thing's middle where the hand has it, and where it was when the hand took it. */
  readonly wantedM: Vec3;
  readonly startM: Vec3;
  readonly halfM: Vec3;
  /** The axes the hand moves it along: the others are left as they are. */
  readonly axes: readonly Axis[];
  /** How near a line has to be to draw it; 0 lets go of all of them and of whole centimetres. */
  readonly reachM: number;
}

export interface Snapped {
  readonly atM: Vec3;
  /** At most one an axis, the most meaningful first; none where it went to whole centimetres. */
  readonly reasons: readonly SnapReason[];
}

const linesFor = (project: Project, wish: SnapWish): SnapLine[] => {
  const { ref, wantedM, startM, halfM, reachM } = wish;
  const placing: Placing = { ref, halfM };
  return [
    ...acrossLines(project, ref, startM[0], reachM),
    ...(ref.kind === 'subwoofer' ? quarterLines(project, reachM) : []),
    ...inLineLines(project, ref, reachM),
    ...heightLines(project, placing, reachM),
    ...wallLines(project, placing, wantedM, reachM),
  ];
};

/** The farthest any line draws a thing: a centred one is held this many times as firmly as others. */
export const FARTHEST_REACHES = 3;

/**
 * Where a dragged thing comes to stand: on a line or guide that is near enough, else on a whole centimetre. It is never
 * moved along an axis the hand does not move it along.
 */
export const snapPlace = (project: Project, wish: SnapWish): Snapped => {
  const { wantedM, startM, axes, reachM } = wish;
  if (reachM <= 0)
    return {
      atM: wantedM.map((v, axis) => (axes.includes(axis as Axis) ? undusted(v) : startM[axis])) as unknown as Vec3,
      reasons: [],
    };
  const lines = linesFor(project, wish);
  const chosen = axes.map((axis) => lineFor(wantedM[axis], axis, lines));
  const at = [...startM] as [number, number, number];
  axes.forEach((axis, i) => {
    at[axis] = chosen[i] ? undusted(chosen[i].atM) : wholeCm(wantedM[axis]);
  });
  const found = chosen.filter((line): line is SnapLine => line !== null).sort((a, b) => a.rank - b.rank);
  if (axes.includes(0) && axes.includes(2) && found.every(({ rank }) => rank === 2)) {
    const guides = guidesFor(project, { ref: wish.ref, halfM: wish.halfM }, wantedM, reachM);
    const guide = guideFor([wantedM[0], wantedM[2]], guides);
    if (guide) {
      const [x, z] = guide.atM;
      return { atM: [undusted(x), at[1], undusted(z)], reasons: [guide.reason] };
    }
  }
  return { atM: at, reasons: found.map(({ reason }) => reason) };
};
