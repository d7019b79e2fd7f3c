import type { Project, Row } from '../../model/project.ts';
import { roomBox } from '../../model/room.ts';
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
/** From a row's eyes back to where the next platform may begin: chair back and a hand's breadth. Common practice. */
const BEHIND_EYES_M = 0.65;
/** What a sitter's legs need of their own platform in front of the eyes. Common practice. */
const LEGS_M = 0.75;

const eyesOf = (row: Row): { front: number; back: number } => {
  const z = row.seats.map((seat) => seat.eyeZM ?? row.eyeZM);
  return { front: Math.min(...z), back: Math.max(...z) };
};

const extentOf = (project: Project, row: Row): Omit<StandingBox, 'baseM' | 'topM'> => {
  const { widthM, lengthM } = roomBox(project);
  const within = (value: number, limit: number) => Math.max(0, Math.min(limit, value));
  if (row.riser !== undefined) {
    const { fromXM, toXM, fromZM, toZM } = row.riser;
    const half = widthM / 2;
    return {
      fromXM: within(Math.min(fromXM, toXM) + half, widthM) - half,
      toXM: within(Math.max(fromXM, toXM) + half, widthM) - half,
      fromZM: within(Math.min(fromZM, toZM), lengthM),
      toZM: within(Math.max(fromZM, toZM), lengthM),
    };
  }
  const own = eyesOf(row).front;
  const before = project.rows.filter((other) => other !== row && eyesOf(other).back < own);
  const nearest = Math.max(-Infinity, ...before.map((other) => eyesOf(other).back));
  const wanted = Number.isFinite(nearest) ? Math.min(nearest + BEHIND_EYES_M, own - LEGS_M) : own - LEGS_M - 0.25;
  const fromZM = within(Math.max(wanted, Number.isFinite(nearest) ? nearest + 0.3 : 0), lengthM);
  return { fromXM: -widthM / 2, toXM: widthM / 2, fromZM, toZM: lengthM };
};

/** Equal steps up the front of a platform at both its ends, none higher than HIGHEST_STEP_M, the top one the platform. */
const stepsOf = (box: StandingBox): StandingBox[] => {
  const rise = box.topM - box.baseM;
  const risers = Math.ceil(rise / HIGHEST_STEP_M - 1e-9);
  const width = Math.min(STEP_WIDTH_M, (box.toXM - box.fromXM) / 2);
  const steps: StandingBox[] = [];
  for (let k = 1; k < risers; k += 1) {
    const toZM = box.fromZM - (risers - 1 - k) * TREAD_M;
    const fromZM = Math.max(0, toZM - TREAD_M);
    if (toZM - fromZM < 0.05) continue;
    const step = { fromZM, toZM, baseM: box.baseM, topM: box.baseM + (rise * k) / risers };
    steps.push({ ...step, fromXM: box.fromXM, toXM: box.fromXM + width });
    steps.push({ ...step, fromXM: box.toXM - width, toXM: box.toXM });
  }
  return steps;
};

/**
 * The platform of each raised row and the steps up to it. Without an extent in the file it runs from wall to wall and from
 * behind the row in front to the back wall. Each platform stands on the floor; where it rises from a lower platform only
 * the difference is stepped.
 */
export const riserBoxes = keptWith((project: Project): readonly RiserBox[] => {
  const raised = project.rows.filter((row) => row.floorM > 0 && row.seats.length > 0);
  const extents = raised.map((row) => ({ row, extent: extentOf(project, row) }));
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
      return { ...rise, baseM: 0, rowId: row.id, riseM: row.floorM - below, steps: stepsOf(rise) };
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
