import type { ItemRef, Row } from '../../model/project.ts';
import { HIGHEST_STEP_M } from '../../model/riser-steps.ts';
import type { RiserBox, StandingBox } from '../../shapes/room/riser-boxes.ts';
import { bodyBoxes } from './boxes.ts';
import { type Context, rowRef, seatRef } from './context.ts';
import { footprintBounds, footprints } from './footprints.ts';
import { meet, planOf } from './plans.ts';
import type { Measurement } from './rule.ts';

/** The least going (depth) of a step in a dwelling: 10 in, the same model building code (facts 7.2, read). */
const LEAST_GOING_M = 0.254;

interface Standing {
  readonly ref: ItemRef;
  readonly name: string;
}

/** What stands where a flight of steps would go: chairs, and bodies that begin lower than its steps. */
const standingOn = (context: Context, flight: readonly StandingBox[]): Standing[] => {
  const onFlight = flight.map((step) => ({ plan: planOf(step), topM: step.topM }));
  const chairs = footprints(context.project)
    .filter((chair) => onFlight.some(({ plan }) => meet(footprintBounds(chair), plan)))
    .map(({ pose }) => ({ ref: seatRef(pose.seat.id), name: pose.seat.id }));
  const bodies = bodyBoxes(context.project).filter(({ minM, maxM }) => {
    const plan = { minX: minM[0], maxX: maxM[0], minZ: minM[2], maxZ: maxM[2] };
    return onFlight.some((step) => minM[1] < step.topM && meet(plan, step.plan));
  });
  return [...chairs, ...bodies.map(({ ref, name }) => ({ ref, name }))];
};

const leastGoingM = (flight: readonly StandingBox[]): number =>
  Math.min(...flight.map(({ fromZM, toZM }) => toZM - fromZM));

/** The highest rise of a flight, from what lies before it to its platform. */
const highestRiseM = (flight: readonly StandingBox[], { topM, riseM }: RiserBox): number => {
  const tops = [topM - riseM, ...flight.map((step) => step.topM), topM];
  return Math.max(...tops.slice(1).map((top, i) => top - tops[i]));
};

/**
 * How far one climbs to a row from what lies before it, or steps down from a higher row there. What is more than a step may
 * rise takes steps between, the file's own or those that are drawn without: that is close where at least one flight has its
 * room, no rise of it too high, every step of it deep enough and nothing standing on it, and missed else.
 */
export const measureSteps = (context: Context, row: Row, box: RiserBox): Measurement<'riser-step'> => {
  const ahead = context.project.rows.filter(({ eyeZM }) => eyeZM < row.eyeZM);
  const before = ahead.reduce<Row | null>((last, one) => (last && last.eyeZM > one.eyeZM ? last : one), null);
  const dropM = (before?.floorM ?? 0) - row.floorM;
  const riseM = Math.max(box.riseM, dropM);
  const needed = Math.max(0, Math.ceil(riseM / HIGHEST_STEP_M - 1e-9) - 1);
  const flights = box.flights.filter(
    (flight) => highestRiseM(flight, box) <= HIGHEST_STEP_M + 1e-6 && leastGoingM(flight) >= LEAST_GOING_M,
  );
  const drawn = needed > 0 && dropM <= box.riseM && flights.length > 0;
  const inTheWay = drawn ? flights.map((flight) => standingOn(context, flight)) : [];
  const room = inTheWay.some((things) => things.length === 0);
  const blocking = room ? [] : [...new Map(inTheWay.flat().map((thing) => [thing.name, thing])).values()];
  return {
    rule: 'riser-step',
    seat: null,
    item: row.id,
    value: riseM,
    ranges: {
      range: [null, HIGHEST_STEP_M],
      closeRange: [null, room ? HIGHEST_STEP_M * (needed + 1) : HIGHEST_STEP_M],
    },
    causes: [rowRef(row.id), ...blocking.map(({ ref }) => ref)],
    facts: {
      steps: drawn ? flights[0].length : needed,
      stepM: drawn ? highestRiseM(flights[0], box) : riseM / (needed + 1),
      goingM: drawn ? leastGoingM(flights[0]) : 0,
      leastGoingM: LEAST_GOING_M,
      // Chairs go by their causes: how a seat is called is the reader's affair.
      inTheWay: blocking.flatMap(({ ref, name }) => (ref.kind === 'seat' ? [] : [name])).join(', '),
    },
  };
};
