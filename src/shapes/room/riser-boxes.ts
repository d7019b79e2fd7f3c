import type { Project } from '../../model/project.ts';
import { platformOf } from '../../model/riser.ts';
import { roomShape } from '../../model/room/shape.ts';
import { keptWith } from '../memo.ts';

/** A block one can stand on, metres. */
export interface StandingBox {
  readonly fromXM: number;
  readonly toXM: number;
  readonly fromZM: number;
  readonly toZM: number;
  readonly baseM: number;
  readonly topM: number;
}

export interface RiserBox extends StandingBox {
  readonly rowId: string;
  /** How far it rises above what lies before it: a lower platform it joins, or the floor. */
  readonly riseM: number;
  /** What is drawn to climb that in rises of at most HIGHEST_STEP_M: equal flights at its left and right end. */
  readonly steps: readonly StandingBox[];
}

/** The highest single step a dwelling's stair may have, IRC R311.7.5 (facts 7.2, read): 7 3/4 in. */
export const HIGHEST_STEP_M = 0.197;
/** A step's depth; IRC asks for at least 254 mm (facts 7.2, read), commercial stairs 279 mm. */
const TREAD_M = 0.28;
const STEP_WIDTH_M = 0.7;
/** Equal steps up the front of a platform at both its ends, none higher than HIGHEST_STEP_M, the top one the platform. */
const stepsOf = (box: StandingBox, frontZM: number): StandingBox[] => {
  const rise = box.topM - box.baseM;
  const risers = Math.ceil(rise / HIGHEST_STEP_M - 1e-9);
  const width = Math.min(STEP_WIDTH_M, (box.toXM - box.fromXM) / 2);
  const steps: StandingBox[] = [];
  for (let k = 1; k < risers; k += 1) {
    const toZM = box.fromZM - (risers - 1 - k) * TREAD_M;
    const fromZM = Math.max(frontZM, toZM - TREAD_M);
    if (toZM - fromZM < 0.05) continue;
    const step = { fromZM, toZM, baseM: box.baseM, topM: box.baseM + (rise * k) / risers };
    steps.push({ ...step, fromXM: box.fromXM, toXM: box.fromXM + width });
    steps.push({ ...step, fromXM: box.toXM - width, toXM: box.toXM });
  }
  return steps;
};

/**
 * The platform of each raised row and the steps up to it. Each platform stands on the floor; where it rises from a lower
 * platform only the difference is stepped.
 */
export const riserBoxes = keptWith((project: Project): readonly RiserBox[] => {
  const frontZM = roomShape(project).minM[2];
  const raised = project.rows.filter((row) => row.floorM > 0 && row.seats.length > 0);
  const extents = raised.map((row) => ({ row, extent: platformOf(project, row) }));
  return extents
    .map(({ row, extent }) => {
      const under = extents.filter(
        (other) =>
          other.row.floorM < row.floorM &&
          other.extent.fromZM < extent.fromZM - 0.05 &&
          other.extent.toZM > extent.fromZM - 0.02,
      );
      const below = Math.max(0, ...under.map((other) => other.row.floorM));
      const rise = { ...extent, baseM: below, topM: row.floorM };
      return { ...rise, baseM: 0, rowId: row.id, riseM: row.floorM - below, steps: stepsOf(rise, frontZM) };
    })
    .filter(({ fromXM, toXM, fromZM, toZM }) => toXM - fromXM > 0.01 && toZM - fromZM > 0.01);
});

/** The height one stands at on a spot of the floor: the highest platform or step there, else 0. */
export const floorHeightAt = (project: Project, x: number, z: number): number => {
  let height = 0;
  for (const riser of riserBoxes(project)) {
    for (const box of [riser, ...riser.steps]) {
      const on = x >= box.fromXM && x <= box.toXM && z >= box.fromZM && z <= box.toZM;
      if (on) height = Math.max(height, box.topM);
    }
  }
  return height;
};
