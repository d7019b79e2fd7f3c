import { crossingEdges, type Point2 } from '../../math/polyline.ts';
import type { Project } from '../project.ts';
import type { Refusal } from '../refusal.ts';

type Plan = Project['room']['plan'];
type Ceiling = Project['room']['ceiling'];

const words = (text: string) => ({ kind: 'words', words: text }) as const;

const LEAST_SIDE_M = 1.5;
const MOST_SIDE_M = 30;
const LEAST_HEIGHT_M = 1.8;

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
  const outside = sides.flatMap((side, axis): Refusal[] =>
    side >= LEAST_SIDE_M && side <= MOST_SIDE_M
      ? []
      : [{ field, holds: side, lead: axis === 0 ? 'a width of' : 'a length of', allowed: range }],
  );
  if (outside.length > 0) return outside;
  return [{ field: 'room.plan.shape', holds: plan.shape, allowed: { kind: 'notYet', what: 'polygon plans' } }];
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

const checkCeiling = (ceiling: Ceiling): Refusal[] => {
  if (ceiling.shape === 'flat') return [];
  if (ceiling.shape === 'profile') {
    const field = 'room.ceiling.pointsM';
    const closed = section(ceiling.pointsM);
    if (closed.length < 3 || crossingEdges(closed))
      return [{ field, holds: ceiling.pointsM, allowed: words('a profile that crosses neither itself nor the floor') }];
    const top = Math.max(...ceiling.pointsM.map(([, height]) => height));
    if (top < LEAST_HEIGHT_M)
      return [
        { field, holds: top, lead: 'a highest point of', allowed: { kind: 'range', min: LEAST_HEIGHT_M, max: 10 } },
      ];
  }
  const what = 'sloped and profiled ceilings';
  return [{ field: 'room.ceiling.shape', holds: ceiling.shape, allowed: { kind: 'notYet', what } }];
};

/** Plans and profiles that cross themselves, and good ones that the engines cannot compute so far. */
export const checkShape = (project: Project): Refusal[] => [
  ...checkPlan(project.room.plan),
  ...checkCeiling(project.room.ceiling),
];
