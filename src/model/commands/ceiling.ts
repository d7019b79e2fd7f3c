import type { Point2 } from '../../math/polyline.ts';
import type { Project } from '../project.ts';
import { type Edit, refuse, setValue } from './edit.ts';

const LEAST_M = 1.8;
const MOST_M = 10;

const tidy = (valueM: number): number => Number(valueM.toFixed(4)) + 0;
const within = (value: number, min: number, max: number): number => Math.min(Math.max(value, min), Math.max(min, max));

/** How far heights may all be lifted together: none past what a room may be, the highest no lower. */
const liftWithin = (byM: number, lowestM: number, highestM: number, leastM: number): number =>
  within(byM, Math.max(leastM - lowestM, LEAST_M - highestM), MOST_M - highestM);

/** The ceiling raised or lowered as a whole: every height of it by the same, as far as a room may be high. */
export const raiseCeiling = (project: Project, byM: number): Edit => {
  const { ceiling } = project.room;
  const set = (value: Project['room']['ceiling']): Edit => setValue(project, ['room', 'ceiling'], value);
  switch (ceiling.shape) {
    case 'flat':
      return set({ ...ceiling, heightM: within(tidy(ceiling.heightM + byM), LEAST_M, MOST_M) });
    case 'slope': {
      const { startHeightM: start, endHeightM: end } = ceiling;
      const by = liftWithin(byM, Math.min(start, end), Math.max(start, end), LEAST_M);
      return set({ ...ceiling, startHeightM: tidy(start + by), endHeightM: tidy(end + by) });
    }
    case 'profile': {
      const heights = ceiling.pointsM.map(([, heightM]) => heightM);
      const by = liftWithin(byM, Math.min(...heights), Math.max(...heights), 0);
      return set({
        ...ceiling,
        pointsM: ceiling.pointsM.map(([at, heightM]): [number, number] => [at, tidy(heightM + by)]),
      });
    }
  }
};

/** One end of a sloping ceiling at another height: 0 the end at the least place, 1 the other. */
const tiltCeiling = (project: Project, index: number, heightM: number): Edit => {
  const key = index === 0 ? 'startHeightM' : 'endHeightM';
  return setValue(project, ['room', 'ceiling', key], tidy(within(heightM, LEAST_M, MOST_M)));
};

/** Bends keep this far apart along the ceiling; two of one place are a step and may stay one. */
const APART_M = 0.05;

/** Where a bend may go, from and to: not past its neighbours, whichever way the points run. */
const betweenOf = (points: readonly Point2[], index: number, wantedM: number): Point2 => {
  const own = points[index][0];
  const [before, after] = [points[index - 1]?.[0], points[index + 1]?.[0]];
  const rising = points[0][0] <= points[points.length - 1][0];
  const [below, above] = rising ? [before, after] : [after, before];
  const clear = (placeM: number) => (placeM === own ? 0 : APART_M);
  return [below === undefined ? wantedM : below + clear(below), above === undefined ? wantedM : above - clear(above)];
};

/**
 * Moves one bend of a ceiling (ridge, knee, step) to a place along it and a height; it stays between its neighbours. Of a
 * slope the ends are its bends, which keep their places.
 */
export const moveCeilingBend = (project: Project, index: number, [placeM, heightM]: Point2): Edit => {
  const { ceiling } = project.room;
  if (ceiling.shape === 'slope' && (index === 0 || index === 1)) return tiltCeiling(project, index, heightM);
  if (ceiling.shape !== 'profile' || !ceiling.pointsM[index]) {
    const last = ceiling.shape === 'profile' ? ceiling.pointsM.length - 1 : ceiling.shape === 'slope' ? 1 : 0;
    const allowed = { kind: 'range', min: 0, max: last, whole: true } as const;
    return refuse({ field: 'room.ceiling.pointsM', holds: index, lead: 'the number', allowed });
  }
  const points = ceiling.pointsM;
  const [low, high] = betweenOf(points, index, placeM);
  const others = points.filter((_, i) => i !== index).map(([, height]) => height);
  const leastM = Math.max(...others) >= LEAST_M ? 0 : LEAST_M;
  const to: [number, number] = [tidy(within(placeM, low, high)), tidy(within(heightM, leastM, MOST_M))];
  return setValue(project, ['room', 'ceiling'], { ...ceiling, pointsM: points.with(index, to) });
};
