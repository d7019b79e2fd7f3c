import { ACROSS } from '../box-state.ts';
import type { Admittance, Axis, BoxSpec, WallPatch } from '../room-field.ts';
import { MOST_FUNCTIONS, type PatchArea } from './patch-functions.ts';

/** A patch of a box whose admittance differs from its wall's. */
export interface BoxPatch extends PatchArea {
  readonly normal: Axis;
  /** 0: the wall at 0; 1: the wall at the far end. */
  readonly side: 0 | 1;
  /** The two axes of the wall, ascending. */
  readonly axes: readonly [Axis, Axis];
}

/** A box as even walls and what stands out from them. */
export interface DividedBox {
  readonly even: BoxSpec;
  readonly patches: readonly BoxPatch[];
  /** How many patches were spread over their walls because there were too many. */
  readonly spread: number;
}

/** Share of a wall that counts as all of it. */
const WHOLE = 1 - 1e-9;

const areaOf = ({ fromM, toM }: WallPatch): number => (toM[0] - fromM[0]) * (toM[1] - fromM[1]);

const less = (a: Admittance, b: Admittance): [number, number] => [a[0] - b[0], a[1] - b[1]];

/** The patch cut to its wall; null when nothing of it is left. */
const onWall = (patch: WallPatch, sizeM: readonly number[]): WallPatch | null => {
  const [u, v] = ACROSS[patch.wall >> 1];
  const within = (x: number, axis: Axis): number => Math.min(sizeM[axis], Math.max(0, x));
  const fromM = [within(patch.fromM[0], u), within(patch.fromM[1], v)] as const;
  const toM = [within(patch.toM[0], u), within(patch.toM[1], v)] as const;
  return toM[0] - fromM[0] > 1e-6 && toM[1] - fromM[1] > 1e-6 ? { ...patch, fromM, toM } : null;
};

/**
 * A patch over a whole wall becomes that wall, one of its wall's own admittance vanishes, and of more than MOST_FUNCTIONS
 * those that matter least (area times difference) give their wall the mean of what they cover.
 */
export const divideBox = (spec: BoxSpec): DividedBox => {
  const admittance = spec.admittance.map(([re, im]): [number, number] => [re, im]);
  const wallArea = (wall: number): number => {
    const [u, v] = ACROSS[wall >> 1];
    return spec.sizeM[u] * spec.sizeM[v];
  };
  let rest: WallPatch[] = [];
  for (const given of spec.patches ?? []) {
    const patch = onWall(given, spec.sizeM);
    if (patch === null) continue;
    if (areaOf(patch) > WHOLE * wallArea(patch.wall)) admittance[patch.wall] = [...patch.admittance];
    else rest.push(patch);
  }
  const weight = (patch: WallPatch): number => {
    const [re, im] = less(patch.admittance, admittance[patch.wall]);
    return Math.hypot(re, im) * areaOf(patch);
  };
  rest = rest.filter((patch) => weight(patch) > 0);
  let spread = 0;
  if (rest.length > MOST_FUNCTIONS) {
    const ranked = rest.map((patch, i) => [weight(patch), i] as const).sort((a, b) => b[0] - a[0] || a[1] - b[1]);
    const kept = new Set(ranked.slice(0, MOST_FUNCTIONS).map(([, i]) => i));
    spread = rest.length - kept.size;
    const mean = admittance.map(([re, im]): [number, number] => [re, im]);
    rest.forEach((patch, i) => {
      if (kept.has(i)) return;
      const [re, im] = less(patch.admittance, admittance[patch.wall]);
      mean[patch.wall][0] += (re * areaOf(patch)) / wallArea(patch.wall);
      mean[patch.wall][1] += (im * areaOf(patch)) / wallArea(patch.wall);
    });
    mean.forEach((value, wall) => {
      admittance[wall] = value;
    });
    rest = rest.filter((_, i) => kept.has(i));
  }
  return {
    even: { sizeM: spec.sizeM, soundSpeed: spec.soundSpeed, admittance },
    spread,
    patches: rest.map((patch) => ({
      normal: (patch.wall >> 1) as Axis,
      side: (patch.wall & 1) as 0 | 1,
      axes: ACROSS[patch.wall >> 1],
      fromM: patch.fromM,
      toM: patch.toM,
      delta: less(patch.admittance, admittance[patch.wall]),
    })),
  };
};
