import type { Project } from '../../model/project.ts';
import { builtRisers, type Step } from '../../model/riser-steps.ts';
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
  /** The ways up to it, each from its lowest step. */
  readonly flights: readonly (readonly StandingBox[])[];
  /** All of their steps, the lowest first. */
  readonly steps: readonly StandingBox[];
}

/** A step stands on what lies before its platform; one that is lower than that, on the floor. */
const stepBox = (step: Step, belowM: number): StandingBox => ({
  ...step,
  baseM: step.topM > belowM + 0.01 ? belowM : 0,
});

/** The platform of each raised row, standing on the floor, and the steps up to it. */
export const riserBoxes = keptWith((project: Project): readonly RiserBox[] =>
  builtRisers(project)
    .map(({ row, belowM, flights, fromXM, toXM, fromZM, toZM }): RiserBox => {
      const boxes = flights.map((flight) => flight.map((step) => stepBox(step, belowM)));
      const steps = boxes.flat().sort((a, b) => a.topM - b.topM);
      const platform = { fromXM, toXM, fromZM, toZM, baseM: 0, topM: row.floorM };
      return { ...platform, rowId: row.id, riseM: row.floorM - belowM, flights: boxes, steps };
    })
    .filter(({ fromXM, toXM, fromZM, toZM }) => toXM - fromXM > 0.01 && toZM - fromZM > 0.01),
);

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
