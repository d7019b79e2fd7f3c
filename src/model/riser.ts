import type { Point2 } from '../math/polyline.ts';
import type { Project, Row } from './project.ts';
import { chords } from './room/pieces.ts';
import { roomShape } from './room/shape.ts';

/** A platform from above, metres in the document's axes. */
export interface Platform {
  readonly fromXM: number;
  readonly toXM: number;
  readonly fromZM: number;
  readonly toZM: number;
}

export type Riser = NonNullable<Row['riser']>;

/** From a row's eyes back to where the next platform may begin: chair back and a hand's breadth. Common practice. */
const BEHIND_EYES_M = 0.65;
/** What a sitter's legs need of their own platform in front of the eyes. Common practice. */
const LEGS_M = 0.75;
/** A platform with no row before it begins this much sooner. */
const BEFORE_LEGS_M = 0.25;
/** However near the rows stand, a platform begins this far behind the eyes before it. */
const NEAREST_BEHIND_M = 0.3;

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

/**
 * The platform a row stands on, as it is built: the file's, cut to the walls round the row; without one it runs from wall
 * to wall and from behind the row in front to the back wall (contract).
 */
export const platformOf = (project: Project, row: Row): Platform => {
  const { corners, minM, maxM } = roomShape(project);
  const x = Math.min(Math.max(middleXM(row), minM[0] + BESIDE_M), maxM[0] - BESIDE_M);
  const own = eyesOf(row).front;
  const [frontZM, backZM] = stretchAt(corners, 0, x, own) ?? [minM[2], maxM[2]];
  const within = (value: number) => Math.max(frontZM, Math.min(backZM, value));
  const wide = (fromZM: number, toZM: number, fromXM: number, toXM: number): Platform => {
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
  const led = Number.isFinite(nearest);
  const wanted = led ? Math.min(nearest + BEHIND_EYES_M, own - LEGS_M) : own - LEGS_M - BEFORE_LEGS_M;
  const fromZM = within(Math.max(wanted, led ? nearest + NEAREST_BEHIND_M : frontZM));
  return wide(fromZM, backZM, minM[0], maxM[0]);
};

const tidy = (valueM: number): number => Number(valueM.toFixed(4));

/** A row's riser as its file states it, or the one that is built without it made plain. */
export const riserOf = (project: Project, row: Row): Riser => {
  if (row.riser) return row.riser;
  const { fromXM, toXM, fromZM, toZM } = platformOf(project, row);
  return { fromXM: tidy(fromXM), toXM: tidy(toXM), fromZM: tidy(fromZM), toZM: tidy(toZM), steps: [] };
};
