import type { Project, Row } from './project.ts';
import { type Platform, platformOf, type Riser } from './riser.ts';
import { roomShape } from './room/shape.ts';

/** One step up to a platform: its plan and the height of its top above the room's floor, metres. */
export interface Step extends Platform {
  readonly topM: number;
}

/** A raised row's platform, what it rises from, and the ways up to it. */
export interface BuiltRiser extends Platform {
  readonly row: Row;
  /** The height of what lies before it: a lower platform it joins, or the floor. */
  readonly belowM: number;
  /** Each flight from its lowest step to its highest; the next step up is the platform. */
  readonly flights: readonly (readonly Step[])[];
}

/** The highest single step a dwelling's stair may have, IRC R311.7.5 (facts 7.2, read): 7 3/4 in. */
export const HIGHEST_STEP_M = 0.197;
/** A step's depth; IRC asks for at least 254 mm (facts 7.2, read), commercial stairs 279 mm. */
const TREAD_M = 0.28;
const STEP_WIDTH_M = 0.7;
/** A step cut shallower than this by the front wall is none. */
const LEAST_TREAD_M = 0.05;

type Rise = Platform & { readonly belowM: number; readonly topM: number };

/** Equal steps up the front of a platform at both its ends, none higher than HIGHEST_STEP_M, the top one the platform. */
const usualFlights = (rise: Rise, frontZM: number): Step[][] => {
  const heightM = rise.topM - rise.belowM;
  const risers = Math.ceil(heightM / HIGHEST_STEP_M - 1e-9);
  const width = Math.min(STEP_WIDTH_M, (rise.toXM - rise.fromXM) / 2);
  const flights: [Step[], Step[]] = [[], []];
  for (let k = 1; k < risers; k += 1) {
    const toZM = rise.fromZM - (risers - 1 - k) * TREAD_M;
    const fromZM = Math.max(frontZM, toZM - TREAD_M);
    if (toZM - fromZM < LEAST_TREAD_M) continue;
    const step = { fromZM, toZM, topM: rise.belowM + (heightM * k) / risers };
    flights[0].push({ ...step, fromXM: rise.fromXM, toXM: rise.fromXM + width });
    flights[1].push({ ...step, fromXM: rise.toXM - width, toXM: rise.toXM });
  }
  return flights.filter((flight) => flight.length > 0);
};

/** Whether an entry of the file's list says anything of what a step is; one that does not is no step. */
const isStated = ({ fromXM, toXM, fromZM, toZM, heightM }: Riser['steps'][number]): boolean =>
  [fromXM, toXM, fromZM, toZM, heightM].some((value) => value !== undefined);

/** The file's own steps; none of them is as good as no list. */
export const statedSteps = (row: Row | undefined): Riser['steps'] => (row?.riser?.steps ?? []).filter(isStated);

/**
 * The file's own steps, the lowest first. What one leaves out is as usual: as wide as the platform, one tread deep before
 * the next step, and the rise in equal parts. None is higher than its platform.
 */
const ownSteps = (
  rise: Rise,
  steps: Riser['steps'],
  { minM, maxM }: { minM: readonly number[]; maxM: readonly number[] },
) => {
  const held = (value: number, axis: 0 | 2) => Math.max(minM[axis], Math.min(maxM[axis], value));
  return steps
    .map((step, i): Step => {
      const after = steps.length - 1 - i;
      const toZM = step.toZM ?? (step.fromZM === undefined ? rise.fromZM - after * TREAD_M : step.fromZM + TREAD_M);
      const topM = step.heightM ?? rise.belowM + ((rise.topM - rise.belowM) * (i + 1)) / (steps.length + 1);
      return {
        fromXM: held(step.fromXM ?? rise.fromXM, 0),
        toXM: held(step.toXM ?? rise.toXM, 0),
        fromZM: held(step.fromZM ?? toZM - TREAD_M, 2),
        toZM: held(toZM, 2),
        topM: Math.min(topM, rise.topM),
      };
    })
    .filter(({ fromXM, toXM, fromZM, toZM }) => toXM - fromXM >= LEAST_TREAD_M && toZM - fromZM >= LEAST_TREAD_M);
};

const beside = (a: Platform, b: Platform): boolean => a.fromXM < b.toXM - 1e-6 && b.fromXM < a.toXM - 1e-6;

/** Steps one can walk up one after the other: those that overlap across the room. */
const inFlights = (steps: readonly Step[]): Step[][] => {
  const flights: Step[][] = [];
  for (const step of steps) {
    const joined = flights.filter((flight) => flight.some((one) => beside(one, step)));
    const rest = flights.filter((flight) => !joined.includes(flight));
    flights.splice(0, flights.length, ...rest, [...joined.flat(), step]);
  }
  return flights.map((flight) => flight.sort((a, b) => a.topM - b.topM));
};

/** Every raised row's platform and steps. Where a platform rises from a lower one only the difference is stepped. */
export const builtRisers = (project: Project): readonly BuiltRiser[] => {
  const shape = roomShape(project);
  const raised = project.rows
    .filter((row) => row.floorM > 0 && row.seats.length > 0)
    .map((row) => ({ row, ...platformOf(project, row) }));
  return raised.map((own) => {
    const under = raised.filter(
      (other) =>
        other.row.floorM < own.row.floorM && other.fromZM < own.fromZM - 0.05 && other.toZM > own.fromZM - 0.02,
    );
    const belowM = Math.max(0, ...under.map((other) => other.row.floorM));
    const rise = { ...own, belowM, topM: own.row.floorM };
    const steps = statedSteps(own.row);
    const flights = steps.length > 0 ? inFlights(ownSteps(rise, steps, shape)) : usualFlights(rise, shape.minM[2]);
    return { ...own, belowM, flights };
  });
};

const tidy = (valueM: number): number => Number(valueM.toFixed(4));

const plain = ({ fromXM, toXM, fromZM, toZM, topM }: Step): Riser['steps'][number] => ({
  fromXM: tidy(fromXM),
  toXM: tidy(toXM),
  fromZM: tidy(fromZM),
  toZM: tidy(toZM),
  heightM: tidy(topM),
});

/** One step more for a row's list: against its riser's front edge at the left end, half as high. */
export const anotherStep = (project: Project, row: Row): Riser['steps'][number] => {
  const platform = platformOf(project, row);
  const { fromXM, fromZM } = platform;
  const toXM = Math.min(platform.toXM, fromXM + STEP_WIDTH_M);
  const { minM } = roomShape(project);
  return plain({
    fromXM,
    toXM,
    fromZM: Math.max(minM[2], fromZM - TREAD_M),
    toZM: fromZM,
    topM: row.floorM / 2,
  });
};

/** The steps up to a row as they are built, made plain for its file; one to begin with where none are built. */
export const plainSteps = (project: Project, row: Row): Riser['steps'] => {
  const built = builtRisers(project).find((one) => one.row === row);
  const steps = (built?.flights ?? []).flat().sort((a, b) => a.topM - b.topM);
  return steps.length > 0 ? steps.map(plain) : [anotherStep(project, row)];
};
