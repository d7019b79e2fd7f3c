import type { Vec3 } from '../../math/vec3.ts';

export interface Ranked {
  /** Numbers of the candidate places. */
  readonly chosen: readonly number[];
  readonly placesM: readonly Vec3[];
  /** Lower is better. */
  readonly score: number;
}

/** Two arrangements differ truly where some subwoofer has to be carried at least this far to make one the other. Ours. */
export const DIFFERENT_M = 1;

/** The greatest way any subwoofer has to go, paired so that this is least. Equal numbers of places, at most four. */
export const farthestMoveM = (a: readonly Vec3[], b: readonly Vec3[]): number => {
  if (a.length === 0) return 0;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < b.length; i += 1) {
    const here = Math.hypot(a[0][0] - b[i][0], a[0][1] - b[i][1], a[0][2] - b[i][2]);
    if (here >= least) continue;
    const rest = b.filter((_, index) => index !== i);
    least = Math.min(least, Math.max(here, farthestMoveM(a.slice(1), rest)));
  }
  return least;
};

/** The best `most` of the list that differ truly from one another, best first; equals in the order they came. */
export const rankedDifferent = (all: readonly Ranked[], most: number): Ranked[] => {
  const kept: Ranked[] = [];
  for (const one of [...all].sort((a, b) => a.score - b.score)) {
    if (kept.length >= most) break;
    if (kept.every((other) => farthestMoveM(one.placesM, other.placesM) >= DIFFERENT_M)) kept.push(one);
  }
  return kept;
};
