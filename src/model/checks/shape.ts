import { crossingEdges, type Point2 } from '../../math/polyline.ts';
import type { Project } from '../project.ts';
import type { Refusal } from '../refusal.ts';
import { roomShape } from '../room/shape.ts';

type Plan = Project['room']['plan'];
type Ceiling = Project['room']['ceiling'];

const words = (text: string) => ({ kind: 'words', words: text }) as const;

const LEAST_SIDE_M = 1.5;
const MOST_SIDE_M = 30;
const LEAST_HEIGHT_M = 1.8;
/** Differences of decimals are no more exact than this. */
const SLACK_M = 1e-9;

const extent = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);

const checkPlan = (plan: Plan): Refusal[] => {
  if (plan.shape !== 'polygon') return [];
  const field = 'room.plan.cornersM';
  const crossing = crossingEdges(plan.cornersM);
  if (crossing) {
    const [first, second] = crossing;
    const aside = first === second ? `edge ${first} has no length` : `edges ${first} and ${second} cross or touch`;
    return [{ field, holds: plan.cornersM, aside, allowed: words('a plan that does not cross itself') }];
  }
  const sides = [extent(plan.cornersM.map(([x]) => x)), extent(plan.cornersM.map(([, z]) => z))];
  const range = { kind: 'range', min: LEAST_SIDE_M, max: MOST_SIDE_M } as const;
  return sides.flatMap((side, axis): Refusal[] =>
    side >= LEAST_SIDE_M - SLACK_M && side <= MOST_SIDE_M + SLACK_M
      ? []
      : [{ field, holds: side, lead: axis === 0 ? 'a width of' : 'a length of', allowed: range }],
  );
};

/** The room's section: the profile closed by the walls below its ends and by the floor. */
const section = (points: readonly Point2[]): Point2[] => {
  const first = points[0];
  const last = points[points.length - 1];
  const closed = [...points];
  if (last[1] > 0) closed.push([last[0], 0]);
  if (first[1] > 0) closed.push([first[0], 0]);
  return closed;
};

/** Whether places only ever grow or only ever shrink; a step straight up or down may keep one. */
const runsOneWay = (points: readonly Point2[]): boolean => {
  const steps = points.slice(1).map(([place], i) => place - points[i][0]);
  const oneWay = steps.every((step) => step >= 0) || steps.every((step) => step <= 0);
  return oneWay && steps.some((step) => step !== 0);
};

const checkCeiling = (ceiling: Ceiling): Refusal[] => {
  if (ceiling.shape !== 'profile') return [];
  const field = 'room.ceiling.pointsM';
  const holds = ceiling.pointsM;
  const closed = section(ceiling.pointsM);
  if (closed.length < 3 || crossingEdges(closed))
    return [{ field, holds, allowed: words('a profile that crosses neither itself nor the floor') }];
  if (!runsOneWay(ceiling.pointsM))
    return [{ field, holds, allowed: words('points that go one way across the room, without overhangs') }];
  return [];
};

/** The highest point over the plan has to reach a room's height; a profile may be higher outside it. */
const checkHeight = (project: Project): Refusal[] => {
  const { ceiling } = project.room;
  if (ceiling.shape !== 'profile') return [];
  const { highestM } = roomShape(project);
  if (highestM >= LEAST_HEIGHT_M) return [];
  const allowed = { kind: 'range', min: LEAST_HEIGHT_M, max: 10 } as const;
  return [{ field: 'room.ceiling.pointsM', holds: highestM, lead: 'a highest point of', allowed }];
};

/** Plans and profiles that cross themselves, and rooms too small, too large or too low. */
export const checkShape = (project: Project): Refusal[] => {
  const refusals = [...checkPlan(project.room.plan), ...checkCeiling(project.room.ceiling)];
  return refusals.length > 0 ? refusals : checkHeight(project);
};
