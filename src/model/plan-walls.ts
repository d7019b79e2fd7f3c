import type { Point2 } from '../math/polyline.ts';
import type { Project } from './project.ts';

/** One wall of the plan, seen from above, in file order. */
export interface PlanWall {
  /** Edge i runs from corner i to corner i + 1; a rectangle's are front, right, back, left. */
  readonly edge: number;
  readonly name: 'front' | 'back' | 'left' | 'right';
  /** Corners as [x, z], metres. */
  readonly fromM: Point2;
  readonly toM: Point2;
  /** Unit vector into the room. */
  readonly inward: Point2;
}

export const planCorners = ({ room: { plan } }: Project): readonly Point2[] => {
  if (plan.shape === 'polygon') return plan.cornersM;
  const half = plan.widthM / 2;
  return [
    [-half, 0],
    [half, 0],
    [half, plan.lengthM],
    [-half, plan.lengthM],
  ];
};

/** Twice the signed area: positive where the corners run clockwise as drawn with x to the right and z downwards. */
const twiceArea = (corners: readonly Point2[]): number =>
  corners.reduce((sum, [x, z], i) => {
    const [nextX, nextZ] = corners[(i + 1) % corners.length];
    return sum + x * nextZ - nextX * z;
  }, 0);

/** Square metres of floor. */
export const planAreaM2 = (corners: readonly Point2[]): number => Math.abs(twiceArea(corners)) / 2;

/** Walls are named by their outward normal, the z component winning at 45 degrees (contract). */
const nameOf = ([inX, inZ]: Point2): PlanWall['name'] => {
  if (Math.abs(inZ) >= Math.abs(inX) - 1e-9) return inZ > 0 ? 'front' : 'back';
  return inX > 0 ? 'left' : 'right';
};

export const planWalls = (project: Project): readonly PlanWall[] => {
  const corners = planCorners(project);
  const sense = Math.sign(twiceArea(corners));
  return corners.map((fromM, edge) => {
    const toM = corners[(edge + 1) % corners.length];
    const dx = toM[0] - fromM[0];
    const dz = toM[1] - fromM[1];
    const length = Math.hypot(dx, dz);
    const inward: Point2 = length > 0 ? [(-dz / length) * sense, (dx / length) * sense] : [0, 0];
    return { edge, name: nameOf(inward), fromM, toM, inward };
  });
};

export const wallLengthM = ({ fromM, toM }: PlanWall): number => Math.hypot(toM[0] - fromM[0], toM[1] - fromM[1]);

/** How far a point of the plan lies inside a wall's line, metres; negative behind it. */
export const insideWallM = ({ fromM, inward }: PlanWall, [x, z]: Point2): number =>
  (x - fromM[0]) * inward[0] + (z - fromM[1]) * inward[1];
