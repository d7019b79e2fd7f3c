import type { Point2 } from '../../math/polyline.ts';
import type { Project, Row } from '../../model/project.ts';
import { chords } from '../../model/room/pieces.ts';
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
/** From a row's eyes back to where the next platform may begin: chair back and a hand's breadth. Common practice. */
const BEHIND_EYES_M = 0.65;
/** What a sitter's legs need of their own platform in front of the eyes. Common practice. */
const LEGS_M = 0.75;

const eyesOf = (row: Row): { front: number; back: number } => {
  const z = row.seats.map((seat) => seat.eyeZM ?? row.eyeZM);
  return { front: Math.min(...z), back: Math.max(...z) };
};

/** The stretch of a plan round a place, along x (at constant z) or along z. */
const stretchAt = (corners: readonly Point2[], axis: 0 | 1, place: number, through: number): Point2 | undefined =>
  chords(corners, axis, place).find(([from, to]) => through >= from - 1e-9 && through <= to + 1e-9);

const BESIDE_M = 1e-6;

/** How wide the plan is clear from one z to another about an x: the narrowest stretch on the way. */
const clearWidth = (corners: readonly Point2[], x: number, fromZM: number, toZM: number): Point2 => {
  const turns = corners.map(([, z]) => z).filter((z) => z > fromZM && z < toZM);
  const places = [fromZM + BESIDE_M, toZM - BESIDE_M, ...turns.flatMap((z) => [z - BESIDE_M, z + BESIDE_M])];
  const found = places.flatMap((z) => {
    const stretch = stretchAt(corners, 1, z, x);
    return stretch ? [stretch] : [];
  });
  if (found.length === 0) return [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  return [Math.max(...found.map(([from]) => from)), Math.min(...found.map(([, to]) => to))];
};

/** The middle of a row's seats. */
const middleXM = ({ seats }: Row): number => seats.reduce((sum, { xM }) => sum + xM, 0) / seats.length;

const extentOf = (project: Project, row: Row): Omit<StandingBox, 'baseM' | 'topM'> => {
  const { corners, minM, maxM } = roomShape(project);
  const x = Math.min(Math.max(middleXM(row), minM[0] + BESIDE_M), maxM[0] - BESIDE_M);
  const own = eyesOf(row).front;
  const [frontZM, backZM] = stretchAt(corners, 0, x, own) ?? [minM[2], maxM[2]];
  const within = (value: number) => Math.max(frontZM, Math.min(backZM, value));
  const wide = (fromZM: number, toZM: number, fromXM: number, toXM: number) => {
    const clear = toZM - fromZM > 2 * BESIDE_M ? clearWidth(corners, x, fromZM, toZM) : [minM[0], maxM[0]];
    const held = (value: number) => Math.max(clear[0], Math.min(clear[1], value));
    return { fromXM: held(fromXM), toXM: held(toXM), fromZM, toZM };
  };
  if (row.riser !== undefined) {
    const { fromXM, toXM, fromZM, toZM } = row.riser;
    return wide(
      within(Math.min(fromZM, toZM)),
      within(Math.max(fromZM, toZM)),
      Math.min(fromXM, toXM),
      Math.max(fromXM, toXM),
    );
  }
  const before = project.rows.filter((other) => other !== row && eyesOf(other).back < own);
  const nearest = Math.max(-Infinity, ...before.map((other) => eyesOf(other).back));
  const wanted = Number.isFinite(nearest) ? Math.min(nearest + BEHIND_EYES_M, own - LEGS_M) : own - LEGS_M - 0.25;
  const fromZM = within(Math.max(wanted, Number.isFinite(nearest) ? nearest + 0.3 : frontZM));
  return wide(fromZM, backZM, minM[0], maxM[0]);
};

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
 * The platform of each raised row and the steps up to it. Without an extent in the file it runs from wall to wall and from
 * behind the row in front to the back wall. Each platform stands on the floor; where it rises from a lower platform only
 * the difference is stepped.
 */
export const riserBoxes = keptWith((project: Project): readonly RiserBox[] => {
  const frontZM = roomShape(project).minM[2];
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
